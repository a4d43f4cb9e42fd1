import { m2PerAcre } from "../quantity/constants.ts";
import type { CropDefaults, SourceMark } from "./crops.ts";

/** A full stand on dry land. */
export interface FullStand {
  readonly plantsPerM2: number;
  readonly source: string;
  readonly mark: SourceMark;
}

/** The full stand of a crop of the table; null for sod, whose plants nobody counts. */
export function fullStandOf({ fullStandPerAcre }: CropDefaults): FullStand | null {
  if (fullStandPerAcre === null) return null;
  const { value, why, mark } = fullStandPerAcre;
  return { plantsPerM2: value / m2PerAcre, source: why, mark };
}

/**
 * Shares of a full stand between which a population can be one; beyond, its unit is wrong. Ours: a field with a twentieth is a lost
 * stand, and nobody sows two and a half times a full one, watered or not.
 */
export const believableShares = { from: 0.05, to: 2.5 };
