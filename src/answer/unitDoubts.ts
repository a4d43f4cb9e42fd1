import { mmPerInch } from "../quantity/constants.ts";
import type { WeatherRecord } from "../weather/record.ts";

/**
 * A year's rain beyond these has another unit than its file says, or falls where no dryland crop is grown, mm.
 * Ours: 150 in is what the wettest coasts get, and millimetres taken for inches make any field wetter than that.
 */
const mostYearlyRainMm = 3800;
const leastYearlyRainMm = 40;
/** No station of the world has a mean daily maximum above this over its record, C. Ours, with room. */
const hottestMeanC = 45;
/** Shorter records say nothing of a year. */
const tellingDays = 330;

/** Where a record's figures look as if they stood in another unit than the file says. */
export function unitDoubts({ rainMm, tMaxC }: WeatherRecord): string[] {
  const yearlyMm = meanOf(rainMm) * 365.25;
  const rain =
    rainMm.length < tellingDays || (yearlyMm <= mostYearlyRainMm && yearlyMm >= leastYearlyRainMm)
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
  return [...rain, ...warmth];
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
