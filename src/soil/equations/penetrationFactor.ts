import table from "../../../data-reference/penetration-factor.json" with { type: "json" };
import type { Hindrance } from "../layers/layer.ts";

/** How easily roots find a way beside the probe's: what the limit of resistance depends on. */
export const soilStructures = ["pan without pores", "tilled", "structured"] as const;
export type SoilStructure = (typeof soilStructures)[number];

/** MPa in one pound per square inch; unit definition. */
const mPaPerPsi = 0.006894757;

/** Pressure in MPa from the dial of a penetrometer in pounds per square inch. */
export function psiToMPa(psi: number): number {
  return psi * mPaPerPsi;
}

/**
 * What a penetrometer reading leaves of the root front's pace, 0 to 1, read three ways; it replaces the density factor and
 * never multiplies it.
 *
 * A straight fall from 1 at the resistance of ordinary soil to 0 at the limit of the structure, flat outside.
 * The published paths (Borg & Grimes) were grown in ordinary field soil, so the usual fall starts at 1.03 MPa (150 psi, the
 * middle of the extension target of 100 to 200 psi), the strict one at 0, the lenient one at 1.38 MPa (200 psi): this choice
 * is ours. Limits are published, see `data-reference/penetration-factor.json`.
 *
 * @param resistanceMPa cone index at field capacity, >= 0; a drier soil reads higher without hindering as much
 */
export function penetrationHindrance(resistanceMPa: number, structure: SoilStructure): Hindrance {
  const { strict, usual, lenient } = limitMPa(structure);
  return {
    strict: linearFall(resistanceMPa, 0, strict),
    usual: linearFall(resistanceMPa, psiToMPa(150), usual),
    lenient: linearFall(resistanceMPa, psiToMPa(200), lenient),
    basis: "penetration resistance",
    resistanceMPa,
  };
}

/** Reading at which roots stop in such a soil, MPa, in its three readings. Source: see `data-reference/penetration-factor.json`. */
export function limitMPa(structure: SoilStructure): { strict: number; usual: number; lenient: number } {
  const row = table.find(({ inputs }) => inputs.structure === structure);
  if (!row) throw new Error(`no limit of resistance for ${structure}`);
  return row.expected.limitMPa;
}

function linearFall(value: number, from: number, to: number): number {
  return Math.min(1, Math.max(0, (to - value) / (to - from)));
}
