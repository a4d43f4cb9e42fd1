import { gravimetricPercent } from "../../soil/layers/startingWater.ts";
import { particleDensityKgPerM3 } from "../../soil/equations/waterLimits.ts";

/** Soil cores: what a ring or a tube of known volume tells once it is weighed and dried. */

export interface SoilCore {
  /** As taken from the field, g; null where only density is wanted. */
  readonly wetMassG: number | null;
  /** After drying at 105 C, stones and all, g; > 0. */
  readonly dryMassG: number;
  /** Of the ring, cm3; > 0. Null for a sample of any size, which tells water by weight only. */
  readonly volumeCm3: number | null;
  /** Dry stones > 2 mm of the core, g; 0 where they were not weighed out. */
  readonly stoneMassG: number;
}

/** Stones are as dense as soil grains, 2.65 g/cm3. */
const stoneDensityGPerCm3 = particleDensityKgPerM3 / 1000;

/**
 * Volume of a ring, cm3.
 *
 * @example cylinderCm3(73, 76) // 318.1
 * Source: volume of a cylinder; core method (memory).
 */
export function cylinderCm3(diameterMm: number, lengthMm: number): number {
  return (Math.PI * (diameterMm / 2) ** 2 * lengthMm) / 1000;
}

export function stoneVolumeCm3({ stoneMassG }: SoilCore): number {
  return stoneMassG / stoneDensityGPerCm3;
}

/** Stones, share of the core's volume; null without a volume. */
export function stoneVolumeFraction(core: SoilCore): number | null {
  return core.volumeCm3 === null ? null : stoneVolumeCm3(core) / core.volumeCm3;
}

/**
 * Dry mass per volume of the fine earth (< 2 mm), kg/m3: stones are taken out of mass and of volume. Null without a volume,
 * or where the stones fill all of it.
 *
 * Source: core method, "for gravel, subtract its mass and volume" (memory).
 */
export function coreDensityKgPerM3(core: SoilCore): number | null {
  if (core.volumeCm3 === null) return null;
  const fineCm3 = core.volumeCm3 - stoneVolumeCm3(core);
  return fineCm3 > 0 ? (1000 * (core.dryMassG - core.stoneMassG)) / fineCm3 : null;
}

/** Water over dry fine earth, weight percent; stones are taken as dry. Null where the core was not weighed wet. */
export function coreGravimetricPercent({ wetMassG, dryMassG, stoneMassG }: SoilCore): number | null {
  if (wetMassG === null || dryMassG <= stoneMassG) return null;
  return gravimetricPercent(wetMassG - stoneMassG, dryMassG - stoneMassG);
}

/** Water in the whole volume, stones included, 0 to 1; null without a wet mass or a volume. One gram of water is 1 cm3. */
export function coreVolumeFraction({ wetMassG, dryMassG, volumeCm3 }: SoilCore): number | null {
  return wetMassG === null || volumeCm3 === null ? null : (wetMassG - dryMassG) / volumeCm3;
}

/** Mean of what the cores tell; null where none tells it. */
export function meanOfCores(
  cores: readonly SoilCore[],
  tells: (core: SoilCore) => number | null,
): number | null {
  const told = cores.flatMap((core) => tells(core) ?? []);
  return told.length === 0 ? null : told.reduce((sum, value) => sum + value, 0) / told.length;
}
