import type { CaseAnswer, Comparison } from "../../../src/answer/comparison/comparison.ts";
import { fixed, type Formatters } from "../../../src/report/tables/formatters.ts";
import type { PictureTable } from "../kit/frame.tsx";
import { caseStyle, fontFamily, palette } from "../kit/palette.ts";
import { SvgPicture } from "../kit/svgPicture.tsx";
import { wrapped } from "../../../src/drawing/text.ts";
import { axisOver } from "../../../src/drawing/axis.ts";
import { RowWords, YieldGrid } from "../kit/valueRows.tsx";
import { Interval, Point } from "../kit/marks.tsx";

export const defaults = {
  name: "Yield of each case",
  fileName: "yield-ranges",
  sizePx: 14,
  lineHeightPx: 18,
  rangePx: 34,
} as const;

/** `61 bu/ac (47 to 75)` */
export function yieldSaid({ yield: { p10, p50, p90, unit } }: CaseAnswer): string {
  return `${fixed(p50, 0)} ${unit} (${fixed(p10, 0)} to ${fixed(p90, 0)})`;
}

/** At every total that was asked for. */
export function yieldRangesTable({ byRainTotal, cases }: Comparison, shown: Formatters): PictureTable {
  const { unit } = cases[0]!.yield;
  const several = byRainTotal.length > 1;
  return {
    head: ["Case", ...(several ? [`Rain, ${shown.length}`] : []), `Typical year, ${unit}`, "P10", "P90"],
    rows: cases.flatMap(({ name }, c) =>
      byRainTotal.map(({ rainTotalMm, cases: at }) => {
        const { p10, p50, p90 } = at[c]!.yield;
        const rain = several ? [rainTotalMm === null ? "as it came" : shown.total(rainTotalMm)] : [];
        return [name, ...rain, fixed(p50, 0), fixed(p10, 0), fixed(p90, 0)];
      }),
    ),
  };
}

interface YieldRangesProps {
  readonly comparison: Comparison;
  readonly width: number;
  readonly shown: Formatters;
}

/** A line for each case from one season in ten to nine in ten, and the middle one marked. */
export function YieldRanges({ comparison, width, shown }: YieldRangesProps) {
  const colours = palette();
  const { sizePx, lineHeightPx, rangePx } = defaults;
  const { cases } = comparison;
  const { unit } = cases[0]!.yield;
  const edge = 14;
  const low = Math.min(...cases.map((one) => one.yield.p10));
  const high = Math.max(...cases.map((one) => one.yield.p90));
  // From 0, so that a small difference looks small.
  const axis = axisOver(Math.min(0, low), Math.max(high, 1), edge, width - edge, width < 420 ? 4 : 7);
  let y = 6;
  const rows = cases.map((one, c) => {
    const lines = wrapped(one.name, width - 2 * edge, sizePx);
    const said = wrapped(yieldSaid(one), width - 2 * edge, sizePx);
    const top = y;
    y += (lines.length + said.length) * lineHeightPx + rangePx;
    return { one, lines, said, top, at: y - rangePx / 2 - 4, style: caseStyle(c, colours) };
  });
  const height = y + 2.6 * lineHeightPx;
  return (
    <SvgPicture
      name={`${defaults.name}: ${cases.map((one) => `${one.name} ${yieldSaid(one)}`).join("; ")}`}
      width={width}
      height={height}
      table={yieldRangesTable(comparison, shown)}
      fileName={defaults.fileName}
    >
      <rect width={width} height={height} fill={colours.paper} />
      <g font-family={fontFamily} font-size={sizePx} fill={colours.ink}>
        <YieldGrid
          axis={axis}
          bottom={y}
          lineHeightPx={lineHeightPx}
          title={`Yield, ${unit}`}
          right={width - edge}
        />
        {rows.map(({ one, lines, said, top, at, style }) => (
          <g key={one.name}>
            <RowWords name={lines} said={said} left={edge} top={top} lineHeightPx={lineHeightPx} />
            <Interval
              low={one.yield.p10}
              high={one.yield.p90}
              scale={axis.at}
              at={at}
              capPx={8}
              color={style.color}
            />
            <Point {...style} x={axis.at(one.yield.p50)} y={at} paper={colours.paper} />
          </g>
        ))}
      </g>
    </SvgPicture>
  );
}
