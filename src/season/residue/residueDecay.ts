/**
 * How dead straw on the ground rots: its mass falls exponentially, as fast as rain or warmth lets it, whichever holds it back more.
 * Source: [Renard et al. 1997] RUSLE, USDA Agriculture Handbook 703, ch. 5, the decay of residue by half months (memory).
 */

/** The source works by half months: rain and temperature are their means. */
export const halfMonthDays = 15;

/**
 * p, per day, where neither rain nor warmth lacks: small grain. Corn, sorghum and sunflower 0.016, soybeans 0.025; straw that stands
 * rots slower than straw that lies. [Renard et al. 1997] (memory).
 */
export const decayPerDay = 0.008;

/** Rain that is enough, mm a day (R0); the temperature at which straw rots fastest (To) and the source's A, C. (memory) */
const enoughRainMmPerDay = 4.4;
const bestC = 32.2;
const offsetC = 7.7;

/** W, 0 to 1: what rain leaves of the pace. `rainMmPerDay`: mean of the half month, snow counted. */
export function rainFactor(rainMmPerDay: number): number {
  return Math.min(1, rainMmPerDay / enoughRainMmPerDay);
}

/**
 * F, 0 to 1: what temperature leaves of the pace; none below -7.7 C, most at 32.2 C.
 *
 * @param airC mean air temperature of the half month, C
 * @example warmthFactor(10) // 0.35
 */
export function warmthFactor(airC: number): number {
  if (airC <= -offsetC) return 0;
  const warm = (airC + offsetC) ** 2;
  const best = (bestC + offsetC) ** 2;
  const factor = (2 * warm * best - warm * warm) / (best * best);
  return factor > 0 ? factor : 0;
}

/**
 * Share of the straw that is left after some days, 0 to 1.
 *
 * @param rain W, 0 to 1
 * @param warmth F, 0 to 1; 1 where no temperatures are known
 */
export function shareLeft(days: number, rain: number, warmth: number): number {
  return Math.exp(-decayPerDay * Math.min(rain, warmth) * days);
}
