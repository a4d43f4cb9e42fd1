/**
 * Radiation at the ground, MJ/m2 a day. Source of all: [Allen et al. 1998, FAO-56] ch. 3 (read).
 */

/** Solar radiation per root of the temperature range (the source's kRs). Source: eq. 50. */
export const solarPerRootRange = { inland: 0.16, coastal: 0.19 } as const;

/** Radiation under a clear sky (the source's Rso). Source: eq. 37. */
export function clearSkyMj(extraterrestrialMj: number, elevationM: number): number {
  return (0.75 + 2e-5 * elevationM) * extraterrestrialMj;
}

/**
 * Solar radiation from hours of sunshine (the source's Rs), with the usual 0.25 and 0.50.
 *
 * @param daylightHours 0 to 24; where 0 (polar night) the share of sunshine counts as 0
 * @example solarFromSunshineMj(25.1, 7.1, 10.9) // 14.45
 * Source: eq. 35.
 */
export function solarFromSunshineMj(
  extraterrestrialMj: number,
  sunshineHours: number,
  daylightHours: number,
): number {
  const share = daylightHours > 0 ? Math.min(1, sunshineHours / daylightHours) : 0;
  return (0.25 + 0.5 * share) * extraterrestrialMj;
}

/**
 * Solar radiation from the day's temperature range, never above a clear sky's.
 *
 * @example solarFromTemperaturesMj({ tMaxC: 26.6, tMinC: 14.8, extraterrestrialMj: 40.55, clearSkyMj: 30.6, perRootRange: 0.16 }) // 22.29
 * Source: eq. 50.
 */
export function solarFromTemperaturesMj(day: {
  readonly tMaxC: number;
  readonly tMinC: number;
  readonly extraterrestrialMj: number;
  readonly clearSkyMj: number;
  readonly perRootRange: number;
}): number {
  const range = Math.max(0, day.tMaxC - day.tMinC);
  return Math.min(day.clearSkyMj, day.perRootRange * Math.sqrt(range) * day.extraterrestrialMj);
}

/** Net shortwave radiation of the grass reference, albedo 0.23 (the source's Rns). Source: eq. 38. */
export function netShortwaveMj(solarMj: number): number {
  return 0.77 * solarMj;
}

/**
 * Net outgoing longwave radiation (the source's Rnl).
 *
 * @param solarMj counts as at most the clear sky's
 * @param clearSkyMj where 0 (polar night) the sky counts as four fifths clear, as the source's example 19 takes a night
 * @example netLongwaveMj(25.1, 19.1, 2.1, 14.5, 18.8) // 3.53
 * Source: eq. 39.
 */
export function netLongwaveMj(
  tMaxC: number,
  tMinC: number,
  vapourKPa: number,
  solarMj: number,
  clearSkyMj: number,
): number {
  const clear = clearSkyMj > 0 ? Math.min(1, solarMj / clearSkyMj) : 0.8;
  const black = (blackBodyMj(tMaxC) + blackBodyMj(tMinC)) / 2;
  return black * (0.34 - 0.14 * Math.sqrt(Math.max(0, vapourKPa))) * (1.35 * clear - 0.35);
}

/** Radiation of a black body, MJ/m2 a day. Source: table 2.8. */
export function blackBodyMj(airC: number): number {
  const kelvinSquared = (airC + 273.16) ** 2;
  return 4.903e-9 * kelvinSquared * kelvinSquared;
}
