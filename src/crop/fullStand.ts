import table from "../../data-reference/full-stands.json";
import { m2PerAcre } from "../quantity/constants.ts";
import type { SourceMark } from "./crops.ts";

/** A full stand on dry land. */
export interface FullStand {
  readonly plantsPerM2: number;
  readonly source: string;
  readonly mark: SourceMark;
}

/** The full stand of a crop by its name in the crop table; null for a crop of the user's own. */
export function fullStandOf(crop: string): FullStand | null {
  const found = table.stands.find((one) => one.crop === crop);
  if (found === undefined) return null;
  return { plantsPerM2: found.full / m2PerAcre, source: found.source, mark: found.mark as SourceMark };
}

/**
 * Shares of a full stand between which a population can be one; beyond, its unit is wrong. Ours: a field with a twentieth is a lost
 * stand, and nobody sows two and a half times a full one, watered or not.
 */
export const believableShares = { from: 0.05, to: 2.5 };
