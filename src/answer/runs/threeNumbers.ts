import type { Slices } from "../../soil/layers/layer.ts";

/**
 * The three numbers that are so often taken for one another:
 * the rule of thumb (extra depth x available water capacity), the water stored in the extra depth at sowing,
 * and the extra water the crop used. The first two are here; the third is a difference of two seasons.
 */

/**
 * Rule of thumb: available water capacity between two depths, mm.
 *
 * @param fromMm depth of the first case's roots
 * @param toMm depth of the other's; when it is the shallower one, the result is negative
 * @returns mm; depth below the column counts nothing
 */
export function capacityBetweenMm(slices: Slices, fromMm: number, toMm: number): number {
  let mm = 0;
  const upper = Math.min(fromMm, toMm);
  const lower = Math.max(fromMm, toMm);
  for (let i = 0; i < slices.count; i++) {
    const share = shareOfSlice(slices, i, upper, lower);
    if (share > 0) mm += share * (slices.fieldCapacityMm[i]! - slices.wiltingPointMm[i]!);
  }
  return toMm < fromMm ? -mm : mm;
}

/**
 * Available water (above wilting point) that lies between two depths, mm; sign as in `capacityBetweenMm`.
 *
 * @param waterMm water by slice
 */
export function storedBetweenMm(slices: Slices, waterMm: Float64Array, fromMm: number, toMm: number): number {
  let mm = 0;
  const upper = Math.min(fromMm, toMm);
  const lower = Math.max(fromMm, toMm);
  for (let i = 0; i < slices.count; i++) {
    const share = shareOfSlice(slices, i, upper, lower);
    if (share > 0) mm += share * Math.max(0, waterMm[i]! - slices.wiltingPointMm[i]!);
  }
  return toMm < fromMm ? -mm : mm;
}

/** How much of a slice lies between two depths, 0 to 1. */
function shareOfSlice(slices: Slices, i: number, upperMm: number, lowerMm: number): number {
  const top = slices.topMm[i]!;
  const thickness = slices.thicknessMm[i]!;
  const inside = Math.min(lowerMm, top + thickness) - Math.max(upperMm, top);
  return inside <= 0 ? 0 : inside / thickness;
}
