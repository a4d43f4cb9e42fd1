import type { Shown } from "../../src/report/shownUnits.ts";
import { caseStyle, type Palette } from "./palette.ts";
import { LineSample } from "./pitWallFronts.tsx";
import { depthTicks, depthY, type Box, type Window } from "./pitWallLayout.ts";
import { wrapped } from "./threeNumbersLabel.ts";
import { crownIn, type TwoRootsLayout } from "./twoRootsLayout.ts";

/** What stands around the two root systems to read them by: names, the scale of depth, what the colours mean. */

interface CaseNameProps {
  readonly c: number;
  readonly name: string;
  readonly box: Box;
  readonly layout: TwoRootsLayout;
  readonly colours: Palette;
}

/** A case's name over its roots, with the line its front is drawn in. */
export function CaseName({ c, name, box, layout, colours }: CaseNameProps) {
  const size = layout.sizePx + (layout.wide ? 3 : 1);
  const lines = wrapped(name, crownIn(box) - (layout.wide ? 85 : 18), size).slice(0, layout.wide ? 2 : 3);
  return (
    <g>
      {layout.wide && (
        <svg x={box.x} y="6" width="38" height="16">
          <LineSample c={c} colours={colours} />
        </svg>
      )}
      <g
        font-size={size}
        font-weight="600"
        fill={caseStyle(c, colours).color}
        stroke={colours.paper}
        stroke-width="6"
        paint-order="stroke"
      >
        {lines.map((line, i) => (
          <text key={line} x={box.x + (layout.wide ? 44 : 2)} y={4 + size + i * size * 1.15}>
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
  readonly shown: Shown;
}

/** One scale of depth for both. */
export function DepthAxis({ layout, window, colours, shown }: AxisProps) {
  const box = layout.panels[0]!;
  const ticks = depthTicks(window.depthMm, box.height, shown.system === "us", layout.wide ? 46 : 40);
  const last = layout.panels.at(-1)!;
  return (
    <g fill={colours.pencil} text-anchor="end">
      <text x={layout.axisX} y={box.y - 14}>
        {shown.length}
      </text>
      {ticks.map(({ mm, text }) => {
        const y = depthY(box, window, mm);
        return (
          <g key={mm}>
            <text x={layout.axisX} y={y + layout.sizePx * 0.35}>
              {text}
            </text>
            <path
              d={`M${layout.axisX + 2} ${y}H${last.x + last.width}`}
              stroke={colours.rule}
              stroke-width="1"
            />
          </g>
        );
      })}
    </g>
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
  const { panels, legendY, sizePx, wide } = layout;
  const x = panels[0]!.x;
  const size = sizePx - 1;
  const words = wide ? "water that roots can take: dry" : "water: dry";
  const from = x + words.length * size * 0.52 + 8;
  const length = wide ? 160 : 90;
  return (
    <g font-size={size} fill={colours.pencil}>
      <linearGradient id={`${id}-key`}>
        {colours.water.map(([at, colour]) => (
          <stop key={at} offset={at} stop-color={colour} />
        ))}
      </linearGradient>
      <text x={x} y={legendY + 12}>
        {words}
      </text>
      <rect
        x={from}
        y={legendY}
        width={length}
        height="14"
        fill={`url(#${id}-key)`}
        stroke={colours.pencil}
        stroke-width="0.8"
      />
      <text x={from + length + 8} y={legendY + 12}>
        full
      </text>
    </g>
  );
}
