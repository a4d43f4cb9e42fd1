import type { ChainDifference } from "../../../answer/chain/chainAnswer.ts";
import { pathColumns, type PathColumn, type YearsRange } from "../../../drawing/pathColumns.ts";
import { shortened } from "../../../drawing/text.ts";
import { mmPerInch } from "../../../quantity/constants.ts";
import type { Formatters } from "../../tables/formatters.ts";
import { caseColour, caseLetter, pencil, rule } from "../reportStyle.ts";
import { box, coordinate, lineBetween, svgOf, textAt } from "./drawing.ts";

export const defaults = {
  width: 350,
  height: 132,
  left: 34,
  right: 4,
  headPx: 18,
  footPx: 26,
} as const;

/** The path from the first year to those after it: a bar for each year from P10 to P90, a dot at its mean. */
export function pathPicture(difference: ChainDifference, d: number, shown: Formatters): string {
  const { width, height, left, right, headPx, footPx } = defaults;
  const perUnit = shown.length === "in" ? mmPerInch : 1;
  const inUnit = ({ mean, p10, p90 }: YearsRange) => ({
    mean: mean / perUnit,
    p10: p10 / perUnit,
    p90: p90 / perUnit,
  });
  const bottom = height - footPx;
  const { columns, columnPx, gapX, y, marks } = pathColumns(
    difference.path.map(({ year, extraWaterUsedMm }) => ({ year, ...inUnit(extraWaterUsedMm) })),
    inUnit(difference.yearAfterYear.extraWaterUsedMm),
    { left, right: width - right, top: headPx, bottom },
  );
  const colour = caseColour(d + 1);
  const known = columns.filter(({ year, range }) => year !== null && range !== null);
  const line = known.map(
    ({ x, range }, i) => `${i === 0 ? "M" : "L"}${coordinate(x)} ${coordinate(y(range!.mean))}`,
  );
  return svgOf({
    id: `path-${d}`,
    width,
    height,
    title: `The path from the first year to those after it, "${difference.to}"`,
    says: columns.flatMap((one) => said(one, difference, shown)).join(" "),
    parts: [
      textAt(0, 11, `${caseLetter(d + 1)} against A: ${shortened(difference.to, 36)}`, {
        bold: true,
        fill: colour,
      }),
      ...marks.flatMap((mark, m) => [
        lineBetween(left, y(mark), width - right, y(mark), rule, 0.6),
        textAt(
          left - 5,
          y(mark) + 3,
          String(Number(mark.toFixed(6))) + (m === marks.length - 1 ? ` ${shown.length}` : ""),
          {
            anchor: "end",
            fill: pencil,
            size: 9,
          },
        ),
      ]),
      lineBetween(left, y(0), width - right, y(0), pencil, 0.9),
      lineBetween(gapX, headPx, gapX, bottom, rule, 0.8),
      `<path d="${line.join("")}" fill="none" stroke="${colour}" stroke-width="0.9"/>`,
      ...columns.flatMap((one) => column(one, columnPx, colour, y)),
      ...columns.map(({ year, x, range }) =>
        textAt(x, bottom + 11, year === null ? "later" : range === null ? "" : String(year), {
          anchor: "middle",
          fill: pencil,
          size: 9,
        }),
      ),
      textAt(left, bottom + 22, "year since the change", { fill: pencil, size: 9 }),
    ],
  });
}

function column(
  { year, x, range }: PathColumn,
  columnPx: number,
  colour: string,
  y: (v: number) => number,
): string[] {
  // The year has no number either.
  if (range === null) return [];
  const half = Math.min(9, columnPx * 0.28);
  const [top, bottom] = [y(range.p90), y(range.p10)];
  return [
    box(
      x - half,
      top,
      2 * half,
      Math.max(0.8, bottom - top),
      `fill="${colour}" fill-opacity="${year === 1 || year === null ? 0.42 : 0.2}" stroke="${colour}" stroke-width="0.7"`,
    ),
    `<circle cx="${coordinate(x)}" cy="${coordinate(y(range.mean))}" r="2.6" fill="${colour}"/>`,
  ];
}

function said(
  { year, range }: PathColumn,
  { path, yearAfterYear }: ChainDifference,
  shown: Formatters,
): string[] {
  if (range === null) return [];
  const { mean, p10, p90 } =
    year === null ? yearAfterYear.extraWaterUsedMm : path.find((one) => one.year === year)!.extraWaterUsedMm;
  const when = year === null ? "Later years" : `Year ${year}`;
  return [
    `${when}: ${shown.fineWater(mean)} ${shown.length} (${shown.fineWater(p10)} to ${shown.fineWater(p90)}).`,
  ];
}
