import type { WeatherRecord } from "../records/record.ts";

/**
 * Wind 2 m above grass from another height.
 *
 * @param heightM 0.5 m or more: the source's curve has no meaning near the ground
 * @example windAt2mMPerS(3.2, 10) // 2.39
 * Source: [Allen et al. 1998, FAO-56] eq. 47 (read).
 */
export function windAt2mMPerS(windMPerS: number, heightM: number): number {
  return (windMPerS * 4.87) / Math.log(67.8 * heightM - 5.42);
}

/** Wind where none was measured, m/s. Source: [Allen et al. 1998, FAO-56] ch. 3, table 4 and text (read). */
export const usualWindMPerS = 2;

/** Less wind than this counts as this in eq. 6, m/s. Source: as above, p. 63 (read). */
export const leastWindMPerS = 0.5;

/** The record's wind at 2 m, else the usual wind every day. */
export function windOrUsual(record: WeatherRecord): Float64Array {
  return record.wind2mMPerS ?? new Float64Array(record.days).fill(usualWindMPerS);
}
