import table from "../../../data-reference/bulk-density-factor.json" with { type: "json" };
import type { Hindrance } from "../layers/layer.ts";
import { textureClass } from "./texture.ts";

/** Family particle-size classes of the survey, as far as density goes. */
export type FamilyClass =
  | "sandy"
  | "coarse-loamy"
  | "fine-loamy"
  | "coarse-silty"
  | "fine-silty"
  | "clayey 35 to 45 %"
  | "clayey over 45 %";

/** Bulk density at field capacity where roots begin to slow, where restriction begins, and where it is root-limiting. */
export interface DensityThresholds {
  readonly unhinderedKgPerM3: number;
  readonly restrictionBeginsKgPerM3: number;
  readonly rootLimitingKgPerM3: number;
}

/**
 * Family particle-size class of a fine earth; sand and clay are fractions inside the triangle.
 * The survey counts very fine sand as silt; here all sand counts as sand, so a silt loam with 15 % sand or more reads as loamy.
 * Source: [Soil Taxonomy] family classes, memory, as `data-reference/bulk-density-factor.json` uses them.
 */
export function familyClass(sandFraction: number, clayFraction: number): FamilyClass {
  if (clayFraction > 0.45) return "clayey over 45 %";
  if (clayFraction >= 0.35) return "clayey 35 to 45 %";
  const texture = textureClass(sandFraction, clayFraction);
  if (texture === "sand" || texture === "loamy sand") return "sandy";
  const fine = clayFraction >= 0.18;
  if (sandFraction < 0.15) return fine ? "fine-silty" : "coarse-silty";
  return fine ? "fine-loamy" : "coarse-loamy";
}

/** Source: [NSSH 618] Figure 618-A2, read, for the last two; [Pierce et al. 1983], memory, for the first. */
export function densityThresholds(family: FamilyClass): DensityThresholds {
  const row = table.find(({ inputs }) => inputs.familyClass === family);
  if (!row) throw new Error(`no density thresholds for ${family}`);
  const { unhinderedGPerCm3, restrictionBeginsGPerCm3, rootLimitingGPerCm3 } = row.expected;
  return {
    unhinderedKgPerM3: unhinderedGPerCm3 * 1000,
    restrictionBeginsKgPerM3: restrictionBeginsGPerCm3 * 1000,
    rootLimitingKgPerM3: rootLimitingGPerCm3 * 1000,
  };
}

/**
 * What density leaves of the root front's pace at field capacity, 0 to 1, read three ways.
 *
 * Straight between the thresholds, flat outside them. Usual: 1, then 0.5 where restriction begins, then 0.05 where density is
 * root-limiting. Strict: 1, 0.33, 0. Lenient: 1 until restriction begins, then 0.05. The thresholds are published, these
 * heights are ours; the choice between the readings moves the answer more than most inputs.
 */
export function densityHindrance(
  sandFraction: number,
  clayFraction: number,
  bulkDensityKgPerM3: number,
): Hindrance {
  const at = densityThresholds(familyClass(sandFraction, clayFraction));
  return {
    strict: pace(bulkDensityKgPerM3, at, 0.33, 0),
    usual: pace(bulkDensityKgPerM3, at, 0.5, 0.05),
    lenient: pace(bulkDensityKgPerM3, at, 1, 0.05),
    basis: "bulk density",
  };
}

/** Two straight segments through 1, `atBeginning` and `atLimit`. */
function pace(densityKgPerM3: number, at: DensityThresholds, atBeginning: number, atLimit: number): number {
  const { unhinderedKgPerM3, restrictionBeginsKgPerM3, rootLimitingKgPerM3 } = at;
  if (densityKgPerM3 <= unhinderedKgPerM3) return 1;
  if (densityKgPerM3 >= rootLimitingKgPerM3) return atLimit;
  if (densityKgPerM3 <= restrictionBeginsKgPerM3) {
    const share = (densityKgPerM3 - unhinderedKgPerM3) / (restrictionBeginsKgPerM3 - unhinderedKgPerM3);
    return 1 + share * (atBeginning - 1);
  }
  const share =
    (densityKgPerM3 - restrictionBeginsKgPerM3) / (rootLimitingKgPerM3 - restrictionBeginsKgPerM3);
  return atBeginning + share * (atLimit - atBeginning);
}
