import type { Slices } from "../soil/layer.ts";

/**
 * What dryness leaves of the root front's pace: 1 while at least half of the available water is there, falling in a straight
 * line to 0 at wilting point.
 * Source: roots held back below 45 to 50 % of available water, [Kirkegaard & Lilley 2007] abstract (read); the line is ours.
 */
export function drynessFactor(waterMm: number, wiltingPointMm: number, fieldCapacityMm: number): number {
  const share = (waterMm - wiltingPointMm) / (fieldCapacityMm - wiltingPointMm);
  if (share >= 0.5) return 1;
  return share > 0 ? 2 * share : 0;
}

/**
 * Moves the front through one day: the day's potential descent is a budget, spent slice by slice at each slice's pace.
 *
 * @param frontMm this morning's depth, mm
 * @param descentMm how far an unhindered front would go, mm, >= 0
 * @param stopMm depth it cannot pass, mm
 * @returns tonight's depth, mm: never less than frontMm
 */
export function advancedFront(
  frontMm: number,
  descentMm: number,
  stopMm: number,
  slices: Slices,
  waterMmBySlice: Float64Array,
): number {
  const { count, topMm, thicknessMm, passage, wiltingPointMm, fieldCapacityMm } = slices;
  const bottom = Math.min(stopMm, topMm[count - 1]! + thicknessMm[count - 1]!);
  let front = frontMm;
  let budget = descentMm;
  let j = sliceAt(front, slices);
  while (budget > 0 && front < bottom && j < count) {
    const pace = passage[j]! * drynessFactor(waterMmBySlice[j]!, wiltingPointMm[j]!, fieldCapacityMm[j]!);
    if (pace <= 0) break;
    const end = Math.min(topMm[j]! + thicknessMm[j]!, bottom);
    const reach = front + budget * pace;
    if (reach < end) {
      front = reach;
      break;
    }
    budget -= (end - front) / pace;
    front = end;
    j++;
  }
  return front > frontMm ? front : frontMm;
}

/** Index of the slice just below a depth: at a boundary, the one beneath. */
export function sliceAt(depthMm: number, slices: Slices): number {
  const { count, topMm } = slices;
  let low = 0;
  let high = count - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (topMm[middle]! <= depthMm) low = middle;
    else high = middle - 1;
  }
  return low;
}
