import generator from "../../data-reference/rain-generator.json" with { type: "json" };

/**
 * Wet and dry days as a chain of two states with gamma amounts: the short method for places of which only
 * monthly totals and wet days are known.
 * Source: [Geng et al. 1986] (coefficients memory); the chain as in [Richardson 1981], gamma amounts as in
 * [Richardson & Wright 1984].
 */
export interface WetChances {
  readonly afterDry: number;
  readonly afterWet: number;
}

/**
 * Chances of a wet day. The chain's own wet share is exactly the one given.
 *
 * @param wetShare wet days over all days of the month, 0 to 1
 * @example wetChances(0.2) // { afterDry: 0.15, afterWet: 0.4 }
 */
export function wetChances(wetShare: number): WetChances {
  const afterDry = 0.75 * wetShare;
  return { afterDry, afterWet: 0.25 + afterDry };
}

/** Whether today is wet. @param drawn evenly from 0 to 1 */
export function isWet(wetYesterday: boolean, chances: WetChances, drawn: number): boolean {
  return drawn < (wetYesterday ? chances.afterWet : chances.afterDry);
}

export interface WetDayAmounts {
  readonly shape: number;
  readonly scaleMm: number;
}

/**
 * Gamma distribution of a wet day's rain, its mean always the one given.
 * Below 2.6 mm a wet day the source's line leaves the range it was fitted in (its shape would pass 1, and its
 * scale turn negative below 1.2 mm): there the amounts are exponential (shape 1), as in [Richardson 1981].
 * At 2.6 mm the two meet. A drawn wet day may bring less than the 0.25 mm that makes one in the records.
 *
 * @param meanMm mean rain of a wet day, mm, > 0
 * @example wetDayAmounts(8) // { shape: 0.641, scaleMm: 12.48 }
 */
export function wetDayAmounts(meanMm: number): WetDayAmounts {
  const scaleMm = Math.max(meanMm, -2.16 + 1.83 * meanMm);
  return { shape: meanMm / scaleMm, scaleMm };
}

/** Mean rain of a wet day where wet days are not known, mm: less in cold months. Assumption, see data-reference. */
export function usualRainPerWetDayMm(monthMeanC: number): number {
  const { at0C, perC, least, most } = generator.rainPerWetDay;
  return Math.min(most, Math.max(least, at0C + perC * monthMeanC));
}
