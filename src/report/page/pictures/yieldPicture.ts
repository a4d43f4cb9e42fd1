import { fixed } from "../../tables/formatters.ts";
import { marksBetween, scaleTo } from "../../../drawing/axis.ts";
import { svgOf, textAt } from "./drawing.ts";
import { caseColour, caseLetter } from "../reportStyle.ts";
import type { ReportInput } from "../reportInput.ts";
import { bottomAxis, rangeBar, reachOf } from "../ranges.ts";

export const defaults = {
  title:
    "Yield of each case: one year in ten is below the bar, one above, half are on either side of the mark",
  width: 350,
  labelPx: 22,
  valuePx: 74,
  rowPx: 19,
  mostCases: 8,
} as const;

/** Yield ranges side by side. */
export function yieldPicture({ comparison }: ReportInput): string {
  const cases = comparison.cases.slice(0, defaults.mostCases);
  const { unit } = cases[0]!.yield;
  const [from, to] = reachOf(cases.flatMap(({ yield: { p10, p90 } }) => [p10, p90]));
  const x = scaleTo(from, to, defaults.labelPx, defaults.width - defaults.valuePx);
  const bottom = cases.length * defaults.rowPx + 4;
  const said = ({ p10, p50, p90 }: (typeof cases)[number]["yield"]) =>
    comparison.method.runs === 1 ? fixed(p50, 0) : `${fixed(p50, 0)} (${fixed(p10, 0)}, ${fixed(p90, 0)})`;
  return svgOf({
    id: "yields",
    width: defaults.width,
    height: bottom + 15,
    title: defaults.title,
    says: cases
      .map(
        ({ name, yield: { p10, p50, p90 } }) =>
          `"${name}": ${fixed(p10, 0)}, ${fixed(p50, 0)} and ${fixed(p90, 0)} ${unit} low, middle and high.`,
      )
      .join(" "),
    parts: [
      ...bottomAxis(marksBetween(from, to, 5), (mark) => fixed(mark, 0), x, 0, bottom, unit),
      ...cases.flatMap(({ yield: grown }, c) => {
        const y = c * defaults.rowPx + 4;
        return [
          textAt(defaults.labelPx - 8, y + 10.5, caseLetter(c), {
            anchor: "end",
            bold: true,
            fill: caseColour(c),
          }),
          rangeBar(grown, x, y, 14, caseColour(c)),
          textAt(x(grown.p90) + 6, y + 10.5, said(grown), { size: 9.5 }),
        ];
      }),
    ],
  });
}
