import type { ChainDifference } from "../../../src/answer/chain/chainAnswer.ts";
import { pathColumns, type PathColumn, type YearsRange } from "../../../src/drawing/pathColumns.ts";
import { mmPerInch } from "../../../src/quantity/constants.ts";
import type { Formatters } from "../../../src/report/tables/formatters.ts";
import type { PictureTable } from "../kit/frame.tsx";
import { Point } from "../kit/marks.tsx";
import { caseStyle, fontFamily, palette, type CaseStyle } from "../kit/palette.ts";
import { SvgPicture } from "../kit/svgPicture.tsx";

export const defaults = {
  name: "The path from the first year to those after it",
  fileName: "years-path",
  sizePx: 13,
  heightPx: 300,
  left: 46,
  topPx: 26,
  footPx: 46,
} as const;

/** The years of the path, then those after it. */
function rangesOf({ path, yearAfterYear }: ChainDifference): { year: string; range: YearsRange }[] {
  return [
    ...path.map(({ year, extraWaterUsedMm }) => ({ year: String(year), range: extraWaterUsedMm })),
    { year: "later", range: yearAfterYear.extraWaterUsedMm },
  ];
}

export function yearsPathTable(difference: ChainDifference, shown: Formatters): PictureTable {
  return {
    head: ["Year since the change", `Extra water, ${shown.length}: mean`, "P10", "P90"],
    rows: rangesOf(difference).map(({ year, range: { mean, p10, p90 } }) => [
      year,
      ...[mean, p10, p90].map(shown.fineWater),
    ]),
  };
}

interface YearsPathProps {
  readonly difference: ChainDifference;
  /** Of the later case. */
  readonly c: number;
  readonly width: number;
  readonly shown: Formatters;
  readonly faint: boolean;
}

/** A bar for each year since the change, from P10 to P90 with its mean, and one for all years after the path. */
export function YearsPath({ difference, c, width, shown, faint }: YearsPathProps) {
  const colours = palette();
  const style = caseStyle(c, colours);
  const { sizePx, heightPx, left, topPx, footPx } = defaults;
  const perUnit = shown.length === "in" ? mmPerInch : 1;
  const inUnit = ({ mean, p10, p90 }: YearsRange) => ({
    mean: mean / perUnit,
    p10: p10 / perUnit,
    p90: p90 / perUnit,
  });
  const bottom = heightPx - footPx;
  const right = width - 6;
  const { columns, columnPx, gapX, y, marks } = pathColumns(
    difference.path.map(({ year, extraWaterUsedMm }) => ({ year, ...inUnit(extraWaterUsedMm) })),
    inUnit(difference.yearAfterYear.extraWaterUsedMm),
    { left, right, top: topPx, bottom },
  );
  const known = columns.flatMap(({ year, x, range }) =>
    year === null || range === null ? [] : [{ x, range }],
  );
  const line = known.map(
    ({ x, range }, i) => `${i === 0 ? "M" : "L"}${x.toFixed(1)} ${y(range.mean).toFixed(1)}`,
  );
  const name = `${defaults.name}, “${difference.to}” against “${difference.from}”: ${rangesOf(difference)
    .map(({ year, range }) => `${year} ${shown.fineWater(range.mean)}`)
    .join(", ")} ${shown.length}`;
  return (
    <SvgPicture
      name={name}
      width={width}
      height={heightPx}
      table={yearsPathTable(difference, shown)}
      fileName={defaults.fileName}
      faint={faint}
      caption="Bar: from P10 to P90 of the years. Mark and number: their mean. Years without a harvest of this crop have no bar."
    >
      <rect width={width} height={heightPx} fill={colours.paper} />
      <g font-family={fontFamily} font-size={sizePx} fill={colours.pencil}>
        {marks.map((mark) => (
          <g key={mark}>
            <line x1={left} x2={right} y1={y(mark)} y2={y(mark)} stroke={colours.rule} />
            <text x={left - 6} y={y(mark) + 0.35 * sizePx} text-anchor="end">
              {Number(mark.toFixed(6))}
            </text>
          </g>
        ))}
        <text x={0} y={14}>
          Extra water taken up, {shown.length}
        </text>
        <line x1={left} x2={right} y1={y(0)} y2={y(0)} stroke={colours.pencil} stroke-width="1.4" />
        <line x1={gapX} x2={gapX} y1={topPx} y2={bottom} stroke={colours.pencil} stroke-dasharray="2 5" />
        <path d={line.join("")} fill="none" stroke={style.color} stroke-width="1.4" />
        {columns.map((one) => (
          <Column
            key={one.year ?? "later"}
            {...{ one, columnPx, style, shown, perUnit, y, bottom, sizePx }}
          />
        ))}
        <text x={left} y={heightPx - 8}>
          Year since the change
        </text>
      </g>
    </SvgPicture>
  );
}

interface ColumnProps {
  readonly one: PathColumn;
  readonly columnPx: number;
  readonly style: CaseStyle;
  readonly shown: Formatters;
  readonly perUnit: number;
  readonly y: (value: number) => number;
  readonly bottom: number;
  readonly sizePx: number;
}

function Column({ one, columnPx, style, shown, perUnit, y, bottom, sizePx }: ColumnProps) {
  const { ink, paper } = palette();
  const { year, x, range } = one;
  if (range === null) return null;
  const half = Math.min(20, columnPx * 0.34);
  const [top, low] = [y(range.p90), y(range.p10)];
  // The two answers are told in numbers too.
  const isTold = year === 1 || year === null;
  return (
    <g>
      <rect
        x={x - half}
        y={top}
        width={2 * half}
        height={Math.max(1, low - top)}
        fill={style.color}
        fill-opacity={isTold ? 0.38 : 0.16}
        stroke={style.color}
        stroke-width={isTold ? 1.4 : 0.8}
      />
      <Point {...style} x={x} y={y(range.mean)} paper={paper} radiusPx={5} edgePx={1.5} />
      {isTold && (
        <text
          x={x}
          y={y(range.mean) - 9}
          text-anchor="middle"
          fill={ink}
          font-weight="600"
          stroke={paper}
          stroke-width="4"
          paint-order="stroke"
        >
          {shown.fineWater(range.mean * perUnit)}
        </text>
      )}
      <text x={x} y={bottom + 1.4 * sizePx} text-anchor="middle" fill={isTold ? ink : undefined}>
        {year ?? "later"}
      </text>
    </g>
  );
}
