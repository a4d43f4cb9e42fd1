import { fineYield } from "../../../src/report/tables/formatters.ts";
import type { MeasuredYield } from "../../../src/report/sentences/field/measuredYield.ts";
import { countedSpan, levels, type CountedShown } from "./countedYieldLayout.ts";
import type { PictureTable } from "../kit/frame.tsx";
import { caseStyle, fontFamily, palette } from "../kit/palette.ts";
import { SvgPicture } from "../kit/svgPicture.tsx";
import { wrapped } from "../../../src/drawing/text.ts";
import { axisOver } from "../../../src/drawing/axis.ts";
import { RowWords, YieldGrid } from "../kit/valueRows.tsx";
import { Interval, Point } from "../kit/marks.tsx";

export const defaults = {
  name: "Yield by counts",
  fileName: "counted-yield",
  sizePx: 14,
  lineHeightPx: 18,
  dotPx: 5,
} as const;

type Said = Pick<MeasuredYield, "unit">;

interface CountedYieldProps {
  readonly groups: readonly CountedShown[];
  readonly said: Said;
  readonly width: number;
  readonly faint?: boolean;
}

export function countedTable(groups: readonly CountedShown[], { unit }: Said): PictureTable {
  const say = (value: number) => fineYield(value, unit);
  return {
    head: ["Counted in", "Spots", `Spot by spot, ${unit}`, "Mean", "Interval", "By kernel weight"],
    rows: groups.map(({ title, spots, mean, interval, byWeight }) => [
      title,
      String(spots.length),
      spots.map(say).join(", "),
      say(mean),
      interval === null ? "–" : `${say(interval.low)} to ${say(interval.high)}`,
      byWeight === null ? "weighed" : `${say(byWeight.low)} to ${say(byWeight.high)}`,
    ]),
  };
}

/** A dot for each spot, stacked where they meet; under them the mean with its interval, and what the kernel weight would do. */
export function CountedYield({ groups, said, width, faint = false }: CountedYieldProps) {
  const colours = palette();
  const { sizePx, lineHeightPx, dotPx } = defaults;
  const { unit } = said;
  const say = (value: number) => fineYield(value, unit);
  const edge = 24;
  const [low, high] = countedSpan(groups);
  const axis = axisOver(low, high, edge, width - edge, width < 480 ? 4 : 8);
  let y = 6;
  const rows = groups.map((one) => {
    const interval = one.interval === null ? "" : ` (${say(one.interval.low)} to ${say(one.interval.high)})`;
    const lines = wrapped(one.title, width - 2 * edge, sizePx);
    const told = wrapped(`${say(one.mean)} ${unit}${interval}`, width - 2 * edge, sizePx);
    const dotLevels = levels(one.spots.map(axis.at), 2 * dotPx + 1);
    const top = y;
    const dotsAt =
      top + (lines.length + told.length) * lineHeightPx + (Math.max(...dotLevels) + 1) * (2 * dotPx + 1) + 4;
    const meanAt = dotsAt + 17;
    y = meanAt + (one.byWeight === null ? 22 : 36);
    return { one, lines, told, top, dotLevels, dotsAt, meanAt, style: caseStyle(one.caseIndex, colours) };
  });
  const height = y + 2.6 * lineHeightPx;
  return (
    <SvgPicture
      name={`${defaults.name}: ${rows.map(({ one, told }) => `${one.title} ${told.join(" ")}`).join("; ")}`}
      caption={captionOf(groups)}
      width={width}
      height={height}
      table={countedTable(groups, said)}
      fileName={defaults.fileName}
      faint={faint}
    >
      <rect width={width} height={height} fill={colours.paper} />
      <g font-family={fontFamily} font-size={sizePx} fill={colours.ink}>
        <YieldGrid
          axis={axis}
          bottom={y}
          lineHeightPx={lineHeightPx}
          title={`Yield by counts, ${unit}`}
          right={width - edge}
        />
        {rows.map(({ one, lines, told, top, dotLevels, dotsAt, meanAt, style }) => (
          <g key={one.title}>
            <RowWords name={lines} said={told} left={edge} top={top} lineHeightPx={lineHeightPx} />
            {one.spots.map((spot, s) => (
              <circle
                key={s}
                class="counted-spot"
                cx={axis.at(spot)}
                cy={dotsAt - dotLevels[s]! * (2 * dotPx + 1)}
                r={dotPx}
                fill={colours.paper}
                stroke={style.color}
                stroke-width="2"
              />
            ))}
            {one.byWeight !== null && (
              <path
                d={`M${axis.at(one.byWeight.low)} ${meanAt + 17}H${axis.at(one.byWeight.high)}`}
                stroke={colours.pencil}
                stroke-width="2"
                stroke-dasharray="2 4"
                stroke-linecap="round"
              />
            )}
            {one.interval !== null && (
              <Interval {...one.interval} scale={axis.at} at={meanAt} color={style.color} />
            )}
            <Point {...style} x={axis.at(one.mean)} y={meanAt} paper={colours.paper} />
          </g>
        ))}
      </g>
    </SvgPicture>
  );
}

function captionOf(groups: readonly CountedShown[]): string {
  const weight = groups.some(({ byWeight }) => byWeight !== null)
    ? " Dotted: from the lightest to the heaviest usual kernels."
    : "";
  return `A ring is a spot; under the rings the mean of each case with its interval.${weight}`;
}
