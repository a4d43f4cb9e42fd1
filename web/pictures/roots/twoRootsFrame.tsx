import type { Formatters } from "../../../src/report/tables/formatters.ts";
import { caseStyle, type Palette } from "../kit/palette.ts";
import { LineSample } from "../kit/marks.tsx";
import type { Window } from "../kit/box.ts";
import { widthOf } from "../../../src/drawing/text.ts";
import type { TwoRootsLayout } from "./twoRootsLayout.ts";
import { DepthAxis } from "../kit/depthAxis.tsx";

/** What stands around the two root systems to read them by: names, the scale of depth, what the colours mean. */

interface CaseNameProps {
  readonly c: number;
  /** Place from the left. */
  readonly n: number;
  readonly layout: TwoRootsLayout;
  readonly colours: Palette;
}

/** A case's whole name over its roots, with the line its front is drawn in. */
export function CaseName({ c, n, layout, colours }: CaseNameProps) {
  const { wide, scale, nameSizePx: size } = layout;
  const gutter = layout.gutters[n]!;
  const x = wide && gutter?.side === "left" ? gutter.x : layout.panels[n]!.x;
  return (
    <g class="root-name">
      {wide && (
        <svg x={x} y={2 + size / 2 - 7 * scale} width={38 * scale} height={14 * scale} viewBox="0 0 38 14">
          <LineSample c={c} colours={colours} />
        </svg>
      )}
      <g font-size={size} font-weight="600" fill={caseStyle(c, colours).color}>
        {layout.names[n]!.map((line, i) => (
          <text key={i} x={x + (wide ? 44 * scale : 2)} y={2 + size * (1 + i * 1.15)}>
            {line}
          </text>
        ))}
      </g>
    </g>
  );
}

interface AxisProps {
  readonly layout: TwoRootsLayout;
  readonly window: Window;
  readonly colours: Palette;
  readonly shown: Formatters;
}

/** One scale of depth for both. */
export function Depths({ layout, window, colours, shown }: AxisProps) {
  const { panels, axisX, sizePx, wide, scale } = layout;
  const box = panels[0]!;
  const last = panels.at(-1)!;
  return (
    <DepthAxis
      {...{ box, shown, colours, sizePx }}
      depthMm={window.depthMm}
      x={axisX}
      leastPx={(wide ? 46 : 40) * scale}
      stroke={{ from: axisX + 2, to: last.x + last.width, color: colours.rule }}
      unitY={box.y - 14}
    />
  );
}

/** What the colours mean. */
export function WaterKey({
  layout,
  colours,
  id,
}: {
  readonly layout: TwoRootsLayout;
  readonly colours: Palette;
  readonly id: string;
}) {
  const { panels, legendY, sizePx, wide, scale } = layout;
  const x = wide ? panels[0]!.x - layout.gutters[0]!.width : panels[0]!.x;
  const size = wide ? sizePx : sizePx - 1;
  const hasRoom = layout.width - x > 36 * size;
  const words = wide && hasRoom ? "water that roots can take: dry" : "water: dry";
  const from = x + widthOf(words, size) + 8;
  const length = wide ? 160 * scale : 90;
  const heightPx = wide ? 0.8 * size : 14;
  const base = legendY + heightPx * 0.9;
  return (
    <g font-size={size} fill={colours.pencil}>
      <linearGradient id={`${id}-key`}>
        {colours.water.map(([at, colour]) => (
          <stop key={at} offset={at} stop-color={colour} />
        ))}
      </linearGradient>
      <text x={x} y={base}>
        {words}
      </text>
      <rect
        x={from}
        y={legendY}
        width={length}
        height={heightPx}
        fill={`url(#${id}-key)`}
        stroke={colours.pencil}
        stroke-width="0.8"
      />
      <text x={from + length + 8} y={base}>
        full
      </text>
    </g>
  );
}
