import type { Comparison } from "../../answer/comparison/comparison.ts";
import type { Spread } from "../../statistics/quantiles.ts";
import { fixed, type Formatters } from "./formatters.ts";

/** Differences in water that all stay below this are told a digit finer, mm. */
const smallMm = 12.7;
/** Differences in bushels that all stay below this, likewise. */
const fewBushels = 3;

/** How the water and the yield of one difference are written, in sentences and tables alike. */
export interface DifferenceDigits {
  readonly water: (mm: number) => string;
  readonly yield: (value: number) => string;
}

/** The digits of the d-th difference: the same at every rainfall total. */
export function differenceDigits(
  { byRainTotal }: Comparison,
  d: number,
  shown: Formatters,
): DifferenceDigits {
  const all = byRainTotal.map((at) => at.differences[d]!);
  const waterMm = Math.max(...all.map(({ extraWaterUsedMm }) => reach(extraWaterUsedMm)));
  const grown = Math.max(...all.map(({ extraYield }) => reach(extraYield)));
  const digits = all[0]!.extraYield.unit === "bu/ac" && grown < fewBushels ? 1 : 0;
  return {
    water: waterMm < smallMm ? shown.fineWater : shown.water,
    yield: (value) => fixed(value, digits),
  };
}

function reach({ p10, p50, p90 }: Spread): number {
  return Math.max(Math.abs(p10), Math.abs(p50), Math.abs(p90));
}
