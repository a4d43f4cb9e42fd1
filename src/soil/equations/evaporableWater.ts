import type { SoilLayer } from "../layers/layer.ts";

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

/**
 * Second-stage coefficient by clay, mm per square root of a day: sand 3.34, loam 4.04, clay loam 5.08, clay 3.5.
 * Source: [Ritchie 1972] table of four soils (memory). Their clay shares, and straight lines between them, are ours.
 */
const secondStage = [
  { clayFraction: 0.03, mmPerRootDay: 3.34 },
  { clayFraction: 0.2, mmPerRootDay: 4.04 },
  { clayFraction: 0.33, mmPerRootDay: 5.08 },
  { clayFraction: 0.55, mmPerRootDay: 3.5 },
] as const;

/** Alpha of the second stage, 3.34 to 5.08 mm per square root of a day, by the clay of the topsoil. */
export function secondStageMmPerRootDay(clayFraction: number): number {
  const first = secondStage[0];
  if (clayFraction <= first.clayFraction) return first.mmPerRootDay;
  for (let i = 1; i < secondStage.length; i++) {
    const [below, above] = [secondStage[i - 1]!, secondStage[i]!];
    if (clayFraction > above.clayFraction) continue;
    const way = (clayFraction - below.clayFraction) / (above.clayFraction - below.clayFraction);
    return below.mmPerRootDay + way * (above.mmPerRootDay - below.mmPerRootDay);
  }
  return secondStage.at(-1)!.mmPerRootDay;
}

/** TEW of a column: of all layers within the evaporating depth. */
export function columnTotalEvaporableMm(layers: readonly SoilLayer[], evaporatingDepthMm: number): number {
  let totalMm = 0;
  for (const { topMm, bottomMm, fieldCapacity, wiltingPoint } of layers) {
    const thicknessMm = Math.min(bottomMm, evaporatingDepthMm) - topMm;
    if (thicknessMm <= 0) break;
    totalMm += totalEvaporableMm(fieldCapacity, wiltingPoint, thicknessMm);
  }
  return totalMm;
}

/** REW of a column: by the texture of its top layer, stones taken off, never above the TEW of the evaporating depth. */
export function columnReadilyEvaporableMm(layers: readonly SoilLayer[], evaporatingDepthMm: number): number {
  const top = layers[0];
  if (!top) throw new Error("a column has at least one layer");
  const totalMm = columnTotalEvaporableMm(layers, evaporatingDepthMm);
  const fine = 1 - top.gravelVolumeFraction;
  return Math.min(readilyEvaporableMm(top.sandFraction, top.clayFraction) * fine, totalMm);
}
