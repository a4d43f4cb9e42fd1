import table from "../../../data-reference/bulk-density-usual.json" with { type: "json" };
import { textureClass } from "./texture.ts";

/** Lowest and highest bulk density, kg/m3. */
export interface DensityRange {
  readonly lowKgPerM3: number;
  readonly highKgPerM3: number;
}

/**
 * Bulk densities that surveys and cores list for a texture; null where the open data hold none (clay).
 * Source: `data-reference/bulk-density-usual.json`
 */
export function listedDensity(sandFraction: number, clayFraction: number): DensityRange | null {
  const texture = textureClass(sandFraction, clayFraction);
  const row = table.find(({ inputs }) => inputs.textures.includes(texture));
  if (row === undefined) return null;
  const { lowGPerCm3, highGPerCm3 } = row.expected;
  return { lowKgPerM3: lowGPerCm3 * 1000, highKgPerM3: highGPerCm3 * 1000 };
}
