import type { DifferenceAnswer } from "../../../answer/comparison/comparison.ts";
import { mmPerInch } from "../../../quantity/constants.ts";
import { differenceDigits } from "../../tables/differenceDigits.ts";
import { marksBetween, scaleTo } from "../../../drawing/axis.ts";
import { shortened } from "../../../drawing/text.ts";
import { box, lineBetween, svgOf, textAt } from "./drawing.ts";
import { caseColour, caseLetter, pencil } from "../reportStyle.ts";
import type { ReportInput } from "../reportInput.ts";
import { bottomAxis, reachOf, zeroLine } from "../ranges.ts";

export const defaults = {
  title:
    "Three numbers for the extra depth: what the rule of thumb says, what was stored there, what the crop took up",
  width: 350,
  labelPx: 124,
  valuePx: 84,
  rowPx: 13,
  headPx: 16,
  mostDifferences: 4,
} as const;

/** The three numbers of each difference as bars; the used one with its range. */
export function numbersPicture({ comparison, shown }: ReportInput): string {
  const perUnit = shown.length === "in" ? mmPerInch : 1;
  const differences = comparison.differences.slice(0, defaults.mostDifferences);
  const [from, to] = reachOf(
    differences.flatMap(({ ruleOfThumbMm, storedInExtraDepthMm, extraWaterUsedMm: { p10, p90 } }) =>
      [ruleOfThumbMm, storedInExtraDepthMm, p10, p90].map((mm) => mm / perUnit),
    ),
  );
  const left = defaults.labelPx;
  const x = scaleTo(from, to, left, defaults.width - defaults.valuePx);
  const groupPx = defaults.headPx + 3 * defaults.rowPx + 4;
  const bottom = differences.length * groupPx;
  const says: string[] = [];
  const parts = differences.flatMap((difference, d) => {
    const digits = differenceDigits(comparison, d, shown);
    const colour = caseColour(d + 1);
    const top = d * groupPx;
    const head = `${caseLetter(d + 1)} against A: ${shortened(difference.to, 36)}`;
    const rows = threeRows(difference);
    says.push(
      `"${difference.to}" against "${difference.from}": ${rows.map(([word, mm]) => `${word} ${digits.water(mm)} ${shown.length}`).join(", ")}.`,
    );
    return [
      textAt(0, top + 11, head, { bold: true, fill: colour }),
      ...rows.flatMap(([word, mm], i) => {
        const y = top + defaults.headPx + i * defaults.rowPx;
        const [low, high] = [Math.min(0, mm), Math.max(0, mm)].map((value) => x(value / perUnit));
        const isUsed = i === 2;
        const { p10, p90 } = difference.extraWaterUsedMm;
        const value =
          isUsed && comparison.method.runs > 1
            ? `${digits.water(mm)} (${digits.water(p10)}, ${digits.water(p90)})`
            : digits.water(mm);
        const reach = isUsed ? Math.max(high!, x(p90 / perUnit)) : high!;
        return [
          textAt(left - 6, y + 9, word, { anchor: "end" }),
          box(
            low!,
            y + 2,
            Math.max(0.8, high! - low!),
            8,
            `fill="${colour}" fill-opacity="${isUsed ? 0.85 : 0.3}"`,
          ),
          ...(isUsed ? [lineBetween(x(p10 / perUnit), y + 6, x(p90 / perUnit), y + 6, "#2b2622", 1.2)] : []),
          textAt(reach + 5, y + 9, value, { size: 9.5, fill: isUsed ? "#2b2622" : pencil }),
        ];
      }),
    ];
  });
  const marks = marksBetween(from, to, 4);
  return svgOf({
    id: "numbers",
    width: defaults.width,
    height: bottom + 15,
    title: defaults.title,
    says: says.join(" "),
    parts: [
      ...bottomAxis(
        marks,
        (mark) => String(Number(mark.toFixed(6))),
        x,
        defaults.headPx,
        bottom,
        shown.length,
      ),
      ...parts,
      zeroLine(x, defaults.headPx, bottom),
    ],
  });
}

function threeRows({ ruleOfThumbMm, storedInExtraDepthMm, extraWaterUsedMm }: DifferenceAnswer) {
  return [
    ["1 rule of thumb", ruleOfThumbMm],
    ["2 stored there", storedInExtraDepthMm],
    ["3 taken up by the crop", extraWaterUsedMm.p50],
  ] as const;
}
