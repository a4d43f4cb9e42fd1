import generator from "../../../data-reference/rain-generator.json" with { type: "json" };
import type { MonthlyNormals } from "../records/record.ts";

/** Below it the months are equally warm but for rounding, C. */
const leastSpreadC = 1e-6;

/**
 * Whether a place has its rain in the warm or the cool months: the months' temperatures weighted by their rain, less their
 * plain mean, in standard deviations of the twelve. Near 0.6 on the plains, 0 with even rain, -0.8 with winter rain.
 * Rain of the cool season comes with fronts that stay for days and with wet and dry winters, summer rain with storms
 * that know little of each other: how wet days hang together goes by it. The measure is ours.
 *
 * @returns -3 to 3; 0 where no month brings rain, or all are equally warm
 */
export function warmRainIndex({ rainMm, tMaxC, tMinC }: MonthlyNormals): number {
  const meanC = tMaxC.map((high, month) => (high + tMinC[month]!) / 2);
  const yearC = meanC.reduce((sum, each) => sum + each, 0) / 12;
  const spreadC = Math.sqrt(meanC.reduce((sum, each) => sum + (each - yearC) ** 2, 0) / 12);
  const yearMm = rainMm.reduce((sum, mm) => sum + mm, 0);
  if (!(yearMm > 0 && spreadC > leastSpreadC)) return 0;
  return rainMm.reduce((sum, mm, month) => sum + (mm / yearMm) * ((meanC[month]! - yearC) / spreadC), 0);
}

/**
 * How much more likely rain is after a wet day than after a dry one (lag-one correlation of wet and dry), 0 to 1.
 * A line through the open gauges, see data-reference; 0.25 is Geng's for every place.
 */
export function persistenceOf(index: number): number {
  const { atZero, perIndex, least, most } = generator.persistence;
  return Math.min(most, Math.max(least, atZero + perIndex * index));
}

/** Standard deviation of the logarithm of a year's wetness (see `wetShareOfYear`). A line through the open gauges, for its square. */
export function wetnessSpreadOf(index: number): number {
  const { squareAtZero, squarePerIndex, most } = generator.yearlyWetness;
  return Math.min(most, Math.sqrt(Math.max(0, squareAtZero + squarePerIndex * index)));
}

/**
 * Wet share of a month in a year of a given wetness: f + f (1 - f) w, w = exp(s z - s^2 / 2) - 1, so that its mean over
 * years is f and it stays between 0 and 1 (above 1 only beyond anything drawn, and cut there).
 * Source: a hidden index that makes whole years wetter or drier, as in [Katz & Parlange 1993; Katz & Zheng 1999] (memory);
 * drawn for each calendar year, lognormal, the form with f (1 - f) being ours.
 *
 * @param wetShare of the normals, 0 to 1 (f)
 * @param wetness of the year, -1 or more, mean 0 (w)
 */
export function wetShareOfYear(wetShare: number, wetness: number): number {
  return Math.min(1, wetShare + wetShare * (1 - wetShare) * wetness);
}

/** A year's wetness (w) from a normal draw. @param spread standard deviation of its logarithm (s) */
export function wetnessOf(spread: number, normalDraw: number): number {
  return Math.exp(spread * normalDraw - (spread * spread) / 2) - 1;
}
