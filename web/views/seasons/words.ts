import { fineYield, fixed, type Formatters } from "../../../src/report/tables/formatters.ts";
import type { Answer } from "../../worker/protocol.ts";
import { rainThatTells, type SeasonRow, type SortKey, type StripOf } from "./rows.ts";
import type { SeasonWords } from "./table.ts";

/** What the bars are, and what they are of. */
export function introOf(
  { comparison, inARow, awaitsYears }: Pick<Answer, "comparison" | "inARow" | "awaitsYears">,
  { names, isGenerated, shown }: SeasonWords,
  all: number,
  years: number,
): string {
  const { rainTotalMm, method, chain } = comparison;
  const [first, later] = names;
  const what =
    later === undefined
      ? `what “${first}” used or grew`
      : `what “${later}” took up or grew more than “${first}”`;
  const rain =
    rainTotalMm === null
      ? "with the rain as it came"
      : `at ${method.rainTotalIs === undefined ? "" : "a mean of "}${shown.total(rainTotalMm)} ${shown.length} of rain in the ${method.rainTotalOver}`;
  const kind =
    inARow === null
      ? `a season by itself, each from the same starting water${awaitsYears ? " (years in a row are being run)" : ""}`
      : `a year of ${chain?.asked ?? "the crop"} in the years in a row, later ones after the change: each case with the water its own roots left`;
  const counted = isGenerated ? " The weather is generated: a year’s number stands for no real year." : "";
  const again =
    years < all
      ? ` ${years} years in ${all} runs: a year that was run several times, with other draws of soil and yield, shows its middle run.`
      : "";
  return `Each bar is ${what} in ${kind}, ${rain}.${counted}${again}`;
}

export function moreOrLess(value: string): string {
  return Number(value) > 0 ? `+${value}` : value.replace("-", "−");
}

/** What one year brought, and its own rain. */
export function linesOf(row: SeasonRow, { shown, yieldUnit }: SeasonWords): string[] {
  const { extraWaterMm, extraYield, annualRainMm, seasonRainMm, cases } = row;
  const { length } = shown;
  const numbers =
    extraWaterMm === null || extraYield === null
      ? [
          `${shown.water(cases[0]!.waterUseMm)} ${length} water used`,
          `${fixed(cases[0]!.yield, 0)} ${yieldUnit}`,
        ]
      : [
          `${moreOrLess(shown.fineWater(extraWaterMm))} ${length} water`,
          `${moreOrLess(fineYield(extraYield, yieldUnit))} ${yieldUnit}`,
        ];
  const annual = annualRainMm === null ? "" : `, ${shown.water(annualRainMm)} ${length} in the year`;
  return [...numbers, `rain ${shown.water(seasonRainMm)} ${length} in the season${annual}`];
}

/** What stands over the bars. */
export function barsSaid(of: StripOf, { names, yieldUnit, shown: { length } }: SeasonWords): string {
  const paired = names.length > 1;
  return of === "water"
    ? `${paired ? "Extra water used" : "Water used"}, ${length}`
    : `${paired ? "Extra yield" : "Yield"}, ${yieldUnit}`;
}

export function rainSaid(rows: readonly SeasonRow[], { length }: Formatters): string {
  return `Rain in the ${rainThatTells(rows)}, ${length}`;
}

export const orderSaid: Readonly<Record<SortKey, string>> = {
  size: "by size",
  year: "by year",
  rain: "driest first",
};
