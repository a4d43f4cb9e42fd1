import { kcMin } from "./basalCoefficient.ts";

/** Leaf area index from which FAO-56 calls the cover full (p. 186, read). */
const fullLeafArea = 3;

/**
 * Basal coefficient of a stand by its leaf area.
 *
 * @param leafAreaIndex m2 a m2, >= 0
 * @example kcbOfLeafArea(1.1, 2) // 0.866
 * Source: [Allen et al. 1998, FAO-56] eq. 97 (read).
 */
export function kcbOfLeafArea(kcbFull: number, leafAreaIndex: number): number {
  return kcMin + (kcbFull - kcMin) * lightTaken(leafAreaIndex);
}

/**
 * The day's coefficient in a thin stand: eq. 97 against itself at full leaf area, so that a full stand keeps the
 * published coefficient (at leaf area 3 the equation alone would take off 12 %; the division is ours).
 *
 * @param standShare leaf area against a full stand, 0 to 1
 * @returns between 0.15 and `kcb`; a coefficient at or below 0.15 is that of bare soil and stays
 */
export function thinnedKcb(kcb: number, standShare: number): number {
  if (standShare >= 1 || kcb <= kcMin) return kcb;
  return kcMin + (kcbOfLeafArea(kcb, fullLeafArea * standShare) - kcMin) / lightTaken(fullLeafArea);
}

/** How plants answer to room: they branch or tiller into it, or stay small. */
export type PlantHabit = "fills in" | "stays small";

/**
 * Leaf area against a full stand from the population against a full one.
 *
 * @param populationShare 0 to 1; more than 1 counts as full
 * @example standShareOf(0.5, "fills in") // 0.71
 * Source: [Allen et al. 1998, FAO-56] Box 17 (read): exponent 0.5 for vigorous plants, 1 for plants that stay small.
 */
export function standShareOf(populationShare: number, habit: PlantHabit): number {
  const share = Math.min(1, Math.max(0, populationShare));
  return habit === "fills in" ? Math.sqrt(share) : share;
}

function lightTaken(leafAreaIndex: number): number {
  return 1 - Math.exp(-0.7 * leafAreaIndex);
}
