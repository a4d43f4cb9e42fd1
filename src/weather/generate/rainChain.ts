import generator from "../../../data-reference/rain-generator.json" with { type: "json" };

/** A day with this much rain or more is a wet one, mm: a hundredth of an inch, the least a gauge is read to. */
export const wetFromMm = 0.25;

/**
 * Wet and dry days as a chain of two states, for places of which only monthly totals and wet days are known.
 * Source: the chain [Gabriel & Neumann 1962], its use in a generator [Richardson 1981], one persistence beside the wet share
 * [Geng et al. 1986] (memory).
 */
export interface WetChances {
  readonly afterDry: number;
  readonly afterWet: number;
}

/**
 * Chances of a wet day. The chain's own wet share is exactly the one given.
 *
 * @param wetShare wet days over all days of the month, 0 to 1 (f)
 * @param persistence correlation of wet and dry with the day before, 0 to 1 (r); 0.25 in [Geng et al. 1986], whose chances
 *   are 0.75 f and 0.25 + 0.75 f
 * @example wetChances(0.2, 0.25) // { afterDry: 0.15, afterWet: 0.4 }
 */
export function wetChances(wetShare: number, persistence: number): WetChances {
  const afterDry = (1 - persistence) * wetShare;
  return { afterDry, afterWet: persistence + afterDry };
}

/** Whether today is wet. @param drawn evenly from 0 to 1 */
export function isWet(wetYesterday: boolean, chances: WetChances, drawn: number): boolean {
  return drawn < (wetYesterday ? chances.afterWet : chances.afterDry);
}

/**
 * Mean rain of a wet day where wet days are not known, mm: less in cold months, more in wet ones.
 * (a + b T) (P / 30)^c, fitted on open gauges; see data-reference.
 *
 * @param monthMeanC mean temperature of the month, C (T)
 * @param monthRainMm its rain, mm (P)
 */
export function usualRainPerWetDayMm(monthMeanC: number, monthRainMm: number): number {
  const { at0C, perC, power, least, most } = generator.rainPerWetDay;
  const mm = Math.max(least, at0C + perC * monthMeanC) * (monthRainMm / 30) ** power;
  return Math.min(most, Math.max(least, mm));
}
