import type { Slices } from "../soil/layer.ts";

/**
 * Uptake of a day, slice by slice: each rooted slice can give a fixed share of its available water, and the crop takes the
 * smaller of its demand and all they can give, from each in proportion. A deeper front only adds to what can be given, so it
 * never makes a day's uptake smaller.
 *
 * Changes waterMmBySlice; uses supplyMmBySlice as scratch; returns mm taken.
 * Source: [Monteith 1986]; [Dardanelli et al. 2004], about 0.096 a day (memory).
 */
export function takeBySlice(
  demandMm: number,
  frontMm: number,
  sharePerDay: number,
  slices: Slices,
  waterMmBySlice: Float64Array,
  supplyMmBySlice: Float64Array,
): number {
  if (demandMm <= 0) return 0;
  const { count, topMm, thicknessMm, wiltingPointMm } = slices;
  let total = 0;
  let rooted = 0;
  for (; rooted < count && topMm[rooted]! < frontMm; rooted++) {
    const available = waterMmBySlice[rooted]! - wiltingPointMm[rooted]!;
    let supply = 0;
    if (available > 0) {
      const reach = frontMm - topMm[rooted]!;
      const thickness = thicknessMm[rooted]!;
      supply = sharePerDay * available * (reach < thickness ? reach / thickness : 1);
    }
    supplyMmBySlice[rooted] = supply;
    total += supply;
  }
  if (total <= 0) return 0;
  const share = demandMm < total ? demandMm / total : 1;
  let taken = 0;
  for (let j = 0; j < rooted; j++) {
    const take = share * supplyMmBySlice[j]!;
    waterMmBySlice[j] = waterMmBySlice[j]! - take;
    taken += take;
  }
  return taken;
}

/** FAO-56 p moved for today's rate, 0.1 to 0.8. Table 22, footnote 2 (read). */
export function adjustedDepletionFraction(tableP: number, etcMmPerDay: number): number {
  return Math.min(0.8, Math.max(0.1, tableP + 0.04 * (5 - etcMmPerDay)));
}

/** Ks, 0 to 1, from the root zone's depletion. FAO-56 eq. 84 (read). */
export function stressCoefficient(
  depletionMm: number,
  totalAvailableMm: number,
  depletionFraction: number,
): number {
  if (depletionMm <= depletionFraction * totalAvailableMm) return 1;
  if (depletionMm >= totalAvailableMm) return 0;
  return (totalAvailableMm - depletionMm) / ((1 - depletionFraction) * totalAvailableMm);
}

/**
 * The named alternative: FAO-56's stress of the root zone's average (eq. 82 to 84). Growing into dry soil lowers it, so it
 * can hide the worth of depth; results say when it was used.
 *
 * Changes waterMmBySlice; returns mm taken, from rooted slices in proportion to their available water.
 */
export function takeByRootZoneAverage(
  demandMm: number,
  etcMmPerDay: number,
  frontMm: number,
  tableP: number,
  slices: Slices,
  waterMmBySlice: Float64Array,
  supplyMmBySlice: Float64Array,
): number {
  if (demandMm <= 0) return 0;
  const { count, topMm, thicknessMm, wiltingPointMm, fieldCapacityMm } = slices;
  let totalAvailable = 0;
  let depletion = 0;
  let held = 0;
  let rooted = 0;
  for (; rooted < count && topMm[rooted]! < frontMm; rooted++) {
    const reach = frontMm - topMm[rooted]!;
    const thickness = thicknessMm[rooted]!;
    const part = reach < thickness ? reach / thickness : 1;
    totalAvailable += part * (fieldCapacityMm[rooted]! - wiltingPointMm[rooted]!);
    depletion += part * (fieldCapacityMm[rooted]! - waterMmBySlice[rooted]!);
    const available = part * (waterMmBySlice[rooted]! - wiltingPointMm[rooted]!);
    supplyMmBySlice[rooted] = available > 0 ? available : 0;
    held += supplyMmBySlice[rooted]!;
  }
  if (held <= 0) return 0;
  const p = adjustedDepletionFraction(tableP, etcMmPerDay);
  const wanted = demandMm * stressCoefficient(depletion, totalAvailable, p);
  const share = wanted < held ? wanted / held : 1;
  let taken = 0;
  for (let j = 0; j < rooted; j++) {
    const take = share * supplyMmBySlice[j]!;
    waterMmBySlice[j] = waterMmBySlice[j]! - take;
    taken += take;
  }
  return taken;
}
