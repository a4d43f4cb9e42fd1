/**
 * Vapour in the air, by FAO-56. Which function serves a record depends on what it holds: see vapour.ts.
 * Source of all: [Allen et al. 1998, FAO-56] ch. 3 (read).
 */

/**
 * Saturation vapour pressure (the source's e0).
 *
 * @param airC -200 to 100 C
 * @returns kPa, > 0
 * @example saturationKPa(24.5) // 3.075
 * Source: eq. 11.
 */
export function saturationKPa(airC: number): number {
  return 0.6108 * Math.exp((17.27 * airC) / (airC + 237.3));
}

/** Mean saturation vapour pressure of a day, kPa (the source's es): from both ends, not the mean. Source: eq. 12. */
export function meanSaturationKPa(tMaxC: number, tMinC: number): number {
  return (saturationKPa(tMaxC) + saturationKPa(tMinC)) / 2;
}

/**
 * Slope of the saturation curve (the source's Delta), kPa per C.
 *
 * @example saturationSlopeKPaPerC(30.2) // 0.2458
 * Source: eq. 13.
 */
export function saturationSlopeKPaPerC(airC: number): number {
  return (4098 * saturationKPa(airC)) / (airC + 237.3) ** 2;
}

/** Vapour pressure from the day's highest and lowest relative humidity, kPa (the source's ea). Source: eq. 17. */
export function vapourFromBothKPa(
  tMaxC: number,
  tMinC: number,
  rhMaxPercent: number,
  rhMinPercent: number,
): number {
  return (saturationKPa(tMinC) * rhMaxPercent + saturationKPa(tMaxC) * rhMinPercent) / 200;
}

/** Vapour pressure from dew point, kPa. Source: eq. 14. */
export function vapourFromDewPointKPa(dewPointC: number): number {
  return saturationKPa(dewPointC);
}

/** Vapour pressure from the highest relative humidity alone, kPa. Source: eq. 18. */
export function vapourFromHighestKPa(tMinC: number, rhMaxPercent: number): number {
  return (saturationKPa(tMinC) * rhMaxPercent) / 100;
}

/** Vapour pressure from mean relative humidity, kPa; the least liked of the source's rules. Source: eq. 19. */
export function vapourFromMeanKPa(tMaxC: number, tMinC: number, rhMeanPercent: number): number {
  return (meanSaturationKPa(tMaxC, tMinC) * rhMeanPercent) / 100;
}

/**
 * Dew point where no humidity was measured: the night's minimum, less 2 C in arid and semi-arid climates.
 * Source: eq. 48; the 2 C from annex 6, eq. 6-6 (the text says 2 to 3 C).
 */
export function dewPointFromMinimumC(tMinC: number, dryClimate: boolean): number {
  return dryClimate ? tMinC - 2 : tMinC;
}

/**
 * The day's lowest relative humidity, which comes with its highest temperature.
 *
 * @returns percent, 0 to 100: more vapour than the air can hold counts as 100
 * @example lowestHumidityPercent(1.68, 26.6) // 48.3
 * Source: eq. 63, 64.
 */
export function lowestHumidityPercent(vapourKPa: number, tMaxC: number): number {
  return Math.min(100, Math.max(0, (100 * vapourKPa) / saturationKPa(tMaxC)));
}
