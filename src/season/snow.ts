import type { Field } from "./field.ts";
import type { Ground } from "./season.ts";
import type { Today } from "./today.ts";

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

/** Share of the snowfall that standing stubble keeps, where residue covers so much of the ground. In proportion is ours. */
export function snowCatchUnder(
  cover: number,
  { snowCatchBareShare, snowCatchByCover }: Pick<Ground, "snowCatchBareShare" | "snowCatchByCover">,
): number {
  return snowCatchBareShare + snowCatchByCover * cover;
}

/**
 * Step 1: cold precipitation lies as snow, with what stubble keeps of blown snow; warm days melt it. A record without
 * temperatures has no snow. Writes rain, snowfall, snow caught, melt, snow on the ground and what reaches the ground.
 */
export function snowAndMelt(today: Today, { input, snowCatchShare }: Field): void {
  const { weather, ground } = input;
  today.rainMm = weather.rainMm[today.index]!;
  today.snowfallMm = 0;
  today.snowCaughtMm = 0;
  today.meltMm = 0;
  if (weather.hasTemperature) {
    const meanC = weather.tMeanC[today.index]!;
    if (isSnowDay(meanC, ground.snowBelowC)) {
      today.snowfallMm = today.rainMm;
      today.snowCaughtMm = today.rainMm * snowCatchShare;
      today.rainMm = 0;
    }
    const lyingMm = today.snowOnGroundMm + today.snowfallMm + today.snowCaughtMm;
    today.meltMm = meltMm(lyingMm, meanC, ground.meltMmPerCDay);
    today.snowOnGroundMm = lyingMm - today.meltMm;
  }
  today.reachingMm = today.rainMm + today.meltMm;
}
