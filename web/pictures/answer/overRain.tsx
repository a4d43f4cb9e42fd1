import type { OverRain } from "../../../src/answer/runs/overRain.ts";
import { fixed } from "../../../src/report/tables/formatters.ts";
import { caseStyle, fontFamily, palette } from "../kit/palette.ts";
import { SvgPicture } from "../kit/svgPicture.tsx";
import { overRainLayout, overRainTable, type OverRainUnits } from "./overRainLayout.ts";

export const defaults = {
  fileName: "depth-by-own-rain",
  heightPx: 340,
  sizePx: 13,
} as const;

interface OverRainPictureProps {
  readonly over: OverRain;
  readonly units: OverRainUnits;
  /** Of the later case. */
  readonly c: number;
  readonly name: string;
  readonly width: number;
  readonly faint: boolean;
  readonly caption: string;
}

/** A dot for each year at its own rain; in each stretch of rain a line at the middle year and a band for eight of ten. */
export function OverRainPicture({ over, units, c, name, width, faint, caption }: OverRainPictureProps) {
  const colours = palette();
  const { color } = caseStyle(c, colours);
  const { heightPx, sizePx } = defaults;
  const [left, right, top, bottom] = [52, width - 12, 26, heightPx - 46];
  const { x, y, dots, bands } = overRainLayout(over, units, { left, right, top, bottom });
  const { length } = units.shown;
  const said = units.of === "water" ? `Extra water taken up, ${length}` : `Extra yield, ${units.yieldUnit}`;
  const radius = over.years.length > 400 ? 2 : over.years.length > 120 ? 2.6 : 3.6;
  const circle = ({ x: px, y: py }: { x: number; y: number }) => `M${px.toFixed(1)} ${py.toFixed(1)}h0`;
  return (
    <SvgPicture
      {...{ name, width, faint, caption }}
      height={heightPx}
      table={overRainTable(over, units)}
      fileName={defaults.fileName}
    >
      <rect width={width} height={heightPx} fill={colours.paper} />
      <g font-family={fontFamily} font-size={sizePx} fill={colours.pencil}>
        {y.ticks.map((tick) => (
          <g key={tick}>
            <path d={`M${left} ${y.at(tick)}H${right}`} stroke={colours.rule} />
            <text x={left - 6} y={y.at(tick) + 0.35 * sizePx} text-anchor="end">
              {fixed(tick, y.digits).replace("-", "−")}
            </text>
          </g>
        ))}
        {x.ticks.map((tick) => (
          <text key={tick} x={x.at(tick)} y={bottom + 1.5 * sizePx} text-anchor="middle">
            {fixed(tick, x.digits)}
          </text>
        ))}
        <text x="0" y="13">
          {said}
        </text>
        <text x={right} y={heightPx - 6} text-anchor="end">
          {`Rain of the year, ${length}`}
        </text>
        {bands.map(({ from, to, low, high }, i) => (
          <rect
            key={i}
            x={from}
            y={high}
            width={Math.max(0, to - from)}
            height={Math.max(1, low - high)}
            fill={color}
            fill-opacity={i % 2 === 0 ? 0.24 : 0.16}
          />
        ))}
        <path
          d={dots.map(circle).join("")}
          fill="none"
          stroke={color}
          stroke-opacity="0.75"
          stroke-width={2 * radius}
          stroke-linecap="round"
        />
        <path d={`M${left} ${y.at(0)}H${right}`} stroke={colours.ink} stroke-width="1.2" />
        {bands.map(({ from, to, middle }, i) => (
          <g key={i} fill="none">
            <path d={`M${from} ${middle}H${to}`} stroke={colours.paper} stroke-width="6" />
            <path d={`M${from} ${middle}H${to}`} stroke={colours.ink} stroke-width="3" />
          </g>
        ))}
      </g>
    </SvgPicture>
  );
}
