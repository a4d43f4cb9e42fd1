import type { AnswerAtRain } from "../../../answer/comparison/comparison.ts";
import { mmPerInch } from "../../../quantity/constants.ts";
import { differenceDigits } from "../../tables/differenceDigits.ts";
import { percent } from "../../tables/formatters.ts";
import { marksBetween, scaleTo } from "../../../drawing/axis.ts";
import { shortened } from "../../../drawing/text.ts";
import { svgOf, textAt } from "./drawing.ts";
import { caseColour, caseLetter, pencil } from "../reportStyle.ts";
import type { ReportInput } from "../reportInput.ts";
import { bottomAxis, rangeBar, reachOf, zeroLine } from "../ranges.ts";

export const defaults = {
  title: "Extra water taken up at each rainfall total, the same seasons in both cases",
  width: 350,
  labelPx: 62,
  valuePx: 112,
  rowPx: 14,
  headPx: 16,
  mostDifferences: 3,
  mostTotals: 7,
} as const;

/** The paired difference by rainfall total: a bar for each, with what it is worth in yield beside it. */
export function differencePicture({ comparison, shown }: ReportInput): string {
  const perUnit = shown.length === "in" ? mmPerInch : 1;
  const totals = spreadOut(comparison.byRainTotal, defaults.mostTotals);
  const differences = comparison.differences.slice(0, defaults.mostDifferences);
  const inUnit = ({ p10, p50, p90 }: { p10: number; p50: number; p90: number }) => ({
    p10: p10 / perUnit,
    p50: p50 / perUnit,
    p90: p90 / perUnit,
  });
  const [from, to] = reachOf(
    totals.flatMap((at) =>
      differences.flatMap((_, d) => {
        const { p10, p90 } = at.differences[d]!.extraWaterUsedMm;
        return [p10 / perUnit, p90 / perUnit];
      }),
    ),
  );
  const x = scaleTo(from, to, defaults.labelPx, defaults.width - defaults.valuePx);
  const groupPx = defaults.headPx + totals.length * defaults.rowPx + 4;
  const bottom = differences.length * groupPx;
  const says: string[] = [];
  const parts = differences.flatMap((difference, d) => {
    const digits = differenceDigits(comparison, d, shown);
    const top = d * groupPx;
    return [
      textAt(0, top + 11, `${caseLetter(d + 1)} against A: ${shortened(difference.to, 36)}`, {
        bold: true,
        fill: caseColour(d + 1),
      }),
      ...totals.flatMap((at, t) => {
        const y = top + defaults.headPx + t * defaults.rowPx;
        const { extraWaterUsedMm, extraYield, shareOfSeasonsItMattered } = at.differences[d]!;
        const rain = rainSaid(at, shown.total, shown.length);
        const worth = `${digits.yield(extraYield.p50)} ${extraYield.unit}, ${percent(shareOfSeasonsItMattered)}`;
        says.push(
          `"${difference.to}", ${rain}: ${digits.water(extraWaterUsedMm.p10)}, ${digits.water(extraWaterUsedMm.p50)}, ${digits.water(extraWaterUsedMm.p90)} ${shown.length} low, middle and high; ${worth} of seasons.`,
        );
        return [
          textAt(defaults.labelPx - 6, y + 10, rain, { anchor: "end" }),
          rangeBar(inUnit(extraWaterUsedMm), x, y + 1, 11, caseColour(d + 1)),
          textAt(defaults.width - defaults.valuePx + 8, y + 10, worth, { size: 9.5, fill: pencil }),
        ];
      }),
    ];
  });
  return svgOf({
    id: "differences",
    width: defaults.width,
    height: bottom + 15,
    title: defaults.title,
    says: says.join(" "),
    parts: [
      ...bottomAxis(
        marksBetween(from, to, 4),
        (mark) => String(Number(mark.toFixed(6))),
        x,
        defaults.headPx,
        bottom,
        shown.length,
      ),
      zeroLine(x, defaults.headPx, bottom),
      ...parts,
    ],
  });
}

function rainSaid({ rainTotalMm }: AnswerAtRain, say: (mm: number) => string, length: string): string {
  return rainTotalMm === null ? "as it came" : `${say(rainTotalMm)} ${length}`;
}

/** At most so many of a sweep, from its first to its last. */
function spreadOut<T>(all: readonly T[], most: number): T[] {
  if (all.length <= most) return [...all];
  return Array.from({ length: most }, (_, i) => all[Math.round((i * (all.length - 1)) / (most - 1))]!);
}
