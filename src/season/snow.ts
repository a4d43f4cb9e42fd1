/**
 * Snowfall, the snow on the ground and its melt, by degree days.
 * Source: [NRCS 2004, NEH 630] ch. 11, degree-day method (memory): melt = factor x (mean air temperature - 0 C),
 * 2.74 mm per C and day when nothing else is known. Threshold of snowfall about 1 C: [Jennings et al. 2018] abstract (read).
 */

/** Share of a day's precipitation that falls as snow: all of it below the threshold, none above. */
export function isSnowDay(meanAirC: number, snowBelowC: number): boolean {
  return meanAirC < snowBelowC;
}

/**
 * Melt of one day.
 *
 * @param snowOnGroundMm water in the snow, mm, >= 0
 * @param meltMmPerCDay degree-day factor, mm per C and day
 * @returns mm, 0 to snowOnGroundMm
 * @example meltMm(50, 2, 2.74) // 5.48
 */
export function meltMm(snowOnGroundMm: number, meanAirC: number, meltMmPerCDay: number): number {
  if (meanAirC <= 0 || snowOnGroundMm <= 0) return 0;
  return Math.min(snowOnGroundMm, meltMmPerCDay * meanAirC);
}
