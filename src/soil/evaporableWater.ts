import type { SoilLayer } from "./layer.ts";

/**
 * Readily evaporable water of a bare surface (REW), mm: what goes at the weather's pace before the soil holds back.
 *
 * @param sandFraction 0 to 1
 * @param clayFraction 0 to 1
 * @returns 5 to 12 mm, not yet held below TEW
 * @example readilyEvaporableMm(0.4, 0.2) // 9.6
 * Source: Ritchie et al. (1989) as quoted by [Allen et al. 2005], memory.
 */
export function readilyEvaporableMm(sandFraction: number, clayFraction: number): number {
  if (sandFraction > 0.8) return 20 - 15 * sandFraction;
  if (clayFraction > 0.5) return 11 - 6 * clayFraction;
  return 8 + 8 * clayFraction;
}

/**
 * Total evaporable water (TEW), mm: field capacity to half the wilting point over the evaporating depth.
 * Source: [FAO-56] eq. 73, read; depth in mm here, m there.
 */
export function totalEvaporableMm(
  fieldCapacity: number,
  wiltingPoint: number,
  evaporatingDepthMm: number,
): number {
  return (fieldCapacity - 0.5 * wiltingPoint) * evaporatingDepthMm;
}

/** REW of a column: by the texture of its top layer, stones taken off, never above the TEW of the evaporating depth. */
export function columnReadilyEvaporableMm(layers: readonly SoilLayer[], evaporatingDepthMm: number): number {
  const top = layers[0];
  if (!top) throw new Error("a column has at least one layer");
  let totalMm = 0;
  for (const { topMm, bottomMm, fieldCapacity, wiltingPoint } of layers) {
    const thicknessMm = Math.min(bottomMm, evaporatingDepthMm) - topMm;
    if (thicknessMm <= 0) break;
    totalMm += totalEvaporableMm(fieldCapacity, wiltingPoint, thicknessMm);
  }
  const fine = 1 - top.gravelVolumeFraction;
  return Math.min(readilyEvaporableMm(top.sandFraction, top.clayFraction) * fine, totalMm);
}
