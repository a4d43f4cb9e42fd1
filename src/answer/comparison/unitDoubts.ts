import { mmPerInch } from "../../quantity/constants.ts";
import type { WeatherRecord } from "../../weather/records/record.ts";

/**
 * A year's rain beyond these has another unit than its file says, or falls where no dryland crop is grown, mm.
 * Ours: 2 in is a desert's and 80 in a wet coast's; tenths of a millimeter taken for millimeters make 13 in into 130.
 */
export const drylandRainMm = { least: 2 * mmPerInch, most: 80 * mmPerInch } as const;
/** No station of the world has a mean daily maximum above this over its record, C. Ours, with room. */
const hottestMeanC = 45;
/**
 * Where no month's mean comes up to this, C, is polar climate without even trees: Köppen's limit (memory). Asked here of the
 * days' highest alone, which lie above their means: only a record far too cold falls short.
 */
const warmestMonthLeastC = 10;
const monthDays = 30;
/** Shorter records say nothing of a year. */
const tellingDays = 330;

/** Where a record's figures look as if they stood in another unit than the file says. */
export function unitDoubts({ rainMm, tMaxC }: WeatherRecord): string[] {
  const yearlyMm = meanOf(rainMm) * 365.25;
  const rain =
    rainMm.length < tellingDays || (yearlyMm <= drylandRainMm.most && yearlyMm >= drylandRainMm.least)
      ? []
      : [
          `Rain comes to ${(yearlyMm / mmPerInch).toFixed(1)} in (${yearlyMm.toFixed(0)} mm) a year, which is hard to believe: is its unit right?`,
        ];
  const warmC = tMaxC === null ? 0 : meanOf(tMaxC);
  const warmth =
    warmC <= hottestMeanC
      ? []
      : [
          `The highest temperatures are ${(warmC * 1.8 + 32).toFixed(0)} F (${warmC.toFixed(0)} C) on average, which no place has: is their unit right?`,
        ];
  const warmestC = tMaxC === null || tMaxC.length < tellingDays ? Infinity : warmestMeanC(tMaxC);
  const cold =
    warmestC >= warmestMonthLeastC
      ? []
      : [
          `Even in the warmest month the highest temperatures are ${(warmestC * 1.8 + 32).toFixed(0)} F (${warmestC.toFixed(0)} C) on average, where no crop grows: is their unit right?`,
        ];
  return [...rain, ...warmth, ...cold];
}

/** Highest mean of a month of days on end that have a figure; Infinity where there is none. */
function warmestMeanC(tMaxC: Float64Array): number {
  const known = tMaxC.filter((value) => !Number.isNaN(value));
  if (known.length < monthDays) return Infinity;
  let sum = 0;
  let highest = -Infinity;
  for (const [day, value] of known.entries()) {
    sum += value - (day >= monthDays ? known[day - monthDays]! : 0);
    if (day >= monthDays - 1) highest = Math.max(highest, sum / monthDays);
  }
  return highest;
}

/** Mean of the days that have a figure; 0 where none has. */
function meanOf(values: Float64Array): number {
  let sum = 0;
  let held = 0;
  for (const value of values) {
    if (Number.isNaN(value)) continue;
    sum += value;
    held++;
  }
  return held === 0 ? 0 : sum / held;
}
