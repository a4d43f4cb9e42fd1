import type { EvidenceAnswer } from "../../../answer/comparison/evidenceAnswer.ts";
import { measuredYield } from "../../sentences/field/measuredYield.ts";
import { fixed } from "../../tables/formatters.ts";
import { marksBetween, scaleTo } from "../../../drawing/axis.ts";
import { box, lineBetween, svgOf, textAt } from "./drawing.ts";
import { ink, slow } from "../reportStyle.ts";
import type { ReportInput } from "../reportInput.ts";
import { bottomAxis, reachOf, zeroLine } from "../ranges.ts";
import { shownYield } from "../../../answer/comparison/yieldUnits.ts";

export const defaults = {
  title: "Difference in yield as measured, and as water explains it",
  width: 350,
  labelPx: 96,
  rowPx: 13,
  gapPx: 5,
  mostRows: 4,
} as const;

const waterColour = "#125e8f";

/** Measured differences in yield beside those that water explains, on one axis. */
export function measuredPicture(
  { scenario, shown }: ReportInput,
  reconciliations: EvidenceAnswer["reconciliations"],
): string {
  const { unit, factor } = shownYield(scenario.yieldLine.unit, shown.system);
  const said = measuredYield(scenario.yieldLine.unit, shown.system);
  const rows = reconciliations.slice(0, defaults.mostRows).map((one) => ({ ...one }));
  const ends = rows.flatMap(({ measured, explained }) => [
    measured.low ?? measured.middle,
    measured.high ?? measured.middle,
    explained.low,
    explained.high,
  ]);
  const [from, to] = reachOf(ends.map((kgPerHa) => kgPerHa * factor));
  const x = scaleTo(from, to, defaults.labelPx, defaults.width - 26);
  const height = 2 * defaults.rowPx + defaults.gapPx;
  const bottom = rows.length * height + 2;
  const bar = (low: number, middle: number, high: number, y: number, colour: string) =>
    box(
      x(low * factor),
      y + 3,
      Math.max(1, x(high * factor) - x(low * factor)),
      7,
      `fill="${colour}" fill-opacity="0.3" stroke="${colour}" stroke-width="0.8"`,
    ) + lineBetween(x(middle * factor), y + 1, x(middle * factor), y + 12, colour, 2.4);
  return svgOf({
    id: "measured",
    width: defaults.width,
    height: bottom + 15,
    title: defaults.title,
    says: rows
      .map(
        ({ by, from: first, to: second, measured, explained }) =>
          `By ${by} "${second}" yields ${said.more(measured.middle)} than "${first}"; water explains ${said.more(explained.middle)}.`,
      )
      .join(" "),
    parts: [
      ...bottomAxis(marksBetween(from, to, 5), (mark) => fixed(mark, 0), x, 0, bottom, unit),
      zeroLine(x, 0, bottom),
      ...rows.flatMap(({ by, measured, explained }, r) => {
        const y = r * height;
        const { low, middle, high } = measured;
        return [
          textAt(0, y + 10, `${by}, measured`, { size: 9, fill: slow }),
          textAt(0, y + 10 + defaults.rowPx, "water explains", { size: 9, fill: waterColour }),
          bar(low ?? middle, middle, high ?? middle, y, slow),
          bar(explained.low, explained.middle, explained.high, y + defaults.rowPx, waterColour),
        ];
      }),
      lineBetween(defaults.labelPx, bottom, defaults.width - 26, bottom, ink, 0.6),
    ],
  });
}
