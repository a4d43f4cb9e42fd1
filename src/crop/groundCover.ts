import { kcMin } from "./basalCoefficient.ts";

/** Cover is kept below full so that a little soil always shows (FAO-56 p. 149, read). */
const mostCover = 0.99;

/**
 * Share of the ground that the crop covers.
 *
 * @param kcb basal coefficient; at or below 0.15 nothing is covered
 * @param kcMax upper limit of eq. 72
 * @param heightMm height reached by the crop
 * @returns 0 to 0.99
 * @example groundCover(0.9, 1.3, 1000) // 0.527
 * Source: [Allen et al. 1998, FAO-56] eq. 76 (read). Height is in m there.
 */
export function groundCover(kcb: number, kcMax: number, heightMm: number): number {
  const above = kcb - kcMin;
  if (above <= 0) return 0;
  return Math.min(mostCover, (above / (kcMax - kcMin)) ** (1 + 0.5 * (heightMm / 1000)));
}

/**
 * Height on the way up: it grows with the basal coefficient and does not shrink (the caller keeps the tallest).
 *
 * @returns 0 to `heightMm`
 * Source: as the root depth of [Allen et al. 1998, FAO-56] Annex 8, eq. 8-1 (read); for height it is ours.
 */
export function heightAtMm(kcb: number, kcbInitial: number, kcbMid: number, heightMm: number): number {
  if (kcbMid <= kcbInitial) return heightMm;
  return heightMm * Math.min(1, Math.max(0, (kcb - kcbInitial) / (kcbMid - kcbInitial)));
}
