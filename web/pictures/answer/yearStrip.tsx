import { fixed } from "../../../src/report/tables/formatters.ts";
import type { Axis } from "../../../src/drawing/axis.ts";
import type { PictureTable } from "../kit/frame.tsx";
import { markPath } from "../kit/caseLooks.ts";
import { caseStyle, fontFamily, palette } from "../kit/palette.ts";
import { SvgPicture } from "../kit/svgPicture.tsx";
import { yearAt, type StripLayout, type YearOfStrip } from "./yearStripLayout.ts";

export const defaults = { fileName: "seasons", sizePx: 13 } as const;

interface YearStripProps {
  readonly name: string;
  readonly years: readonly YearOfStrip[];
  readonly layout: StripLayout;
  readonly width: number;
  /** What stands over the differences and over the rain. */
  readonly moreSaid: string;
  readonly rainSaid: string;
  /** Place of the case among all. */
  readonly c: number;
  /** The year looked at, by its place; null = none. */
  readonly chosen: number | null;
  readonly onChoose: (place: number) => void;
  readonly table: PictureTable;
  readonly faint: boolean;
}

/** A bar for each year, up for more and down for less, and under it the rain that the year had. */
export function YearStrip(props: YearStripProps) {
  const { name, years, layout, width, moreSaid, rainSaid, c, chosen, onChoose, table, faint } = props;
  const colours = palette();
  const { color, mark } = caseStyle(c, colours);
  const { sizePx } = defaults;
  const { left, right, slotPx, barPx, more, rain, names, rainTop, rainBottom, height, xOf } = layout;
  const bars = years.map(({ more: value }, i) => bar(xOf(i), barPx, more.at(0), more.at(value))).join("");
  const drops = years.map(({ rain: value }, i) => bar(xOf(i), barPx, rainBottom, rain.at(value))).join("");
  const radius = Math.min(5, barPx * 0.55);
  const tips = years.map(({ more: value }, i) => markPath(mark, xOf(i), more.at(value), radius)).join("");
  const choose = (event: MouseEvent & { readonly currentTarget: SVGRectElement }) => {
    const box = event.currentTarget.getBoundingClientRect();
    const x = left + ((event.clientX - box.left) / box.width) * (right - left);
    onChoose(yearAt(layout, years.length, x));
  };
  return (
    <SvgPicture {...{ name, width, height, table, faint }} fileName={defaults.fileName}>
      <rect width={width} height={height} fill={colours.paper} />
      <g font-family={fontFamily} font-size={sizePx} fill={colours.pencil}>
        {chosen !== null && (
          <rect
            x={xOf(chosen) - Math.max(slotPx, 6) / 2}
            y={18}
            width={Math.max(slotPx, 6)}
            height={rainBottom - 18}
            fill={colours.asked}
            stroke={colours.ink}
            stroke-width="1"
          />
        )}
        <text x="0" y="13">
          {moreSaid}
        </text>
        <Scale axis={more} {...{ left, right, sizePx }} />
        <path d={bars} fill={color} fill-opacity={barPx > 4 ? 0.55 : 0.85} />
        {radius >= 2 && <path d={tips} fill={color} stroke={colours.paper} stroke-width="1" />}
        <path d={`M${left} ${more.at(0)}H${right}`} stroke={colours.ink} stroke-width="1.4" />
        {names.labels.map(({ x, text }, i) =>
          names.upright ? (
            <text
              key={i}
              transform={`translate(${(x + sizePx * 0.35).toFixed(1)} ${names.top + 8}) rotate(-90)`}
              text-anchor="end"
            >
              {text}
            </text>
          ) : (
            <text key={i} x={x.toFixed(1)} y={names.top + 6 + sizePx} text-anchor="middle">
              {text}
            </text>
          ),
        )}
        <text x="0" y={rainTop - 8}>
          {rainSaid}
        </text>
        <Scale axis={rain} {...{ left, right, sizePx }} />
        <path d={drops} fill={colours.rain} fill-opacity="0.75" />
        <path d={`M${left} ${rainBottom}H${right}`} stroke={colours.pencil} />
        <rect
          class="strip-years"
          x={left}
          y="0"
          width={right - left}
          height={height}
          fill="none"
          pointer-events="all"
          onClick={choose}
        />
      </g>
    </SvgPicture>
  );
}

function bar(x: number, width: number, from: number, to: number): string {
  return `M${(x - width / 2).toFixed(1)} ${from.toFixed(1)}h${width.toFixed(1)}V${to.toFixed(1)}h${(-width).toFixed(1)}z`;
}

interface ScaleProps {
  readonly axis: Axis;
  readonly left: number;
  readonly right: number;
  readonly sizePx: number;
}

function Scale({ axis, left, right, sizePx }: ScaleProps) {
  const { rule } = palette();
  return (
    <>
      {axis.ticks.map((tick) => (
        <g key={tick}>
          <path d={`M${left} ${axis.at(tick).toFixed(1)}H${right}`} stroke={rule} />
          <text x={left - 6} y={axis.at(tick) + 0.35 * sizePx} text-anchor="end">
            {fixed(tick, axis.digits).replace("-", "−")}
          </text>
        </g>
      ))}
    </>
  );
}
