import table from "../../../data-reference/kernel-weights.json";
import { kgPerHaOfUs, poundsPerAcre } from "../../crop/yield/yieldLine.ts";
import { m2PerAcre, mmPerInch } from "../../quantity/constants.ts";

/** Yield of oil sunflower from its heads: multipliers on 2450 lb/ac (Kandel, NDSU Extension, read). */

const sunflower = table.sunflower[0]!;

export const seedSizes = ["light", "medium-light", "medium", "medium-heavy", "heavy"] as const;
export type SeedSize = (typeof seedSizes)[number];
export const centres = ["filled", "1 in unfilled", "2 in unfilled", "hole"] as const;
export type Centre = (typeof centres)[number];

/** A mean head of a spot. */
export interface SunflowerHeads {
  readonly diameterMm: number;
  /** Seeds that are filled, share of all. */
  readonly filledShare: number;
  readonly centre: Centre;
}

/** Heads that the published table goes over, mm. */
export const tabledHeadsMm = { from: sunflower.fromIn * mmPerInch, to: sunflower.toIn * mmPerInch };

/** 0.37 at 4.5 in to 1.36 at 10 in, straight; outside likewise, never below 0. */
export function headMultiplier(diameterMm: number): number {
  return Math.max(0, 1 + sunflower.perInch * (diameterMm / mmPerInch - sunflower.headIn));
}

export function standMultiplier(headsPerM2: number): number {
  return (headsPerM2 * m2PerAcre) / sunflower.plantsPerAc;
}

export function seedSizeMultiplier(size: SeedSize): number {
  return sunflower.seedSize[size];
}

/**
 * Yield with seed of medium size; to be multiplied by the seed's.
 *
 * @returns kg/ha
 */
export function sunflowerYield(
  headsPerM2: number,
  { diameterMm, filledShare, centre }: SunflowerHeads,
): number {
  const full = kgPerHaOfUs(sunflower.fullYieldLbPerAc, poundsPerAcre);
  return (
    full * standMultiplier(headsPerM2) * headMultiplier(diameterMm) * filledShare * sunflower.centre[centre]
  );
}
