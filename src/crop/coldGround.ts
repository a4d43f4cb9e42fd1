/**
 * Ground in cold weather gives off little, wet or dry: it is frozen, frosted or under patchy snow much of the time, which
 * the dual coefficient knows nothing of. The limit holds for evaporation and transpiration together.
 * Source: [Allen et al. 1998, FAO-56] ch. 11, p. 209 (read): coefficient about 0.25 with frosts (Wright 1993). Taking it as an
 * upper limit, and below 5 C in the weekly mean, is ours.
 */
const coldKcMax = 0.25;

/** Mean of the last seven days below which the limit holds, C. */
export const coldGroundBelowC = 5;

/** Kcmax in cold weather: never above what it would be otherwise, never below Kcb + 0.05 (FAO-56 eq. 72). */
export function coldUpperCoefficient(kcMax: number, kcb: number): number {
  return Math.min(kcMax, Math.max(coldKcMax, kcb + 0.05));
}
