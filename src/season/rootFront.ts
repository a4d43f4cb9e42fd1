import type { Slices } from "../soil/layers/layer.ts";
import { zoneWetness } from "./evaporation/evaporation.ts";
import type { Field } from "./field.ts";
import type { Today } from "./today.ts";

/**
 * What dryness leaves of the root front's pace: 1 while at least half of the available water is there, falling in a straight
 * line to 0 at wilting point.
 * Source: roots held back below 45 to 50 % of available water, [Kirkegaard & Lilley 2007] abstract (read); the line is ours.
 */
export function drynessFactor(waterMm: number, wiltingPointMm: number, fieldCapacityMm: number): number {
  return wetnessFactor((waterMm - wiltingPointMm) / (fieldCapacityMm - wiltingPointMm));
}

/** The same from the share of available water, 0 at wilting point and 1 at field capacity. */
export function wetnessFactor(share: number): number {
  if (share >= 0.5) return 1;
  return share > 0 ? 2 * share : 0;
}

/**
 * How wet the layer that evaporation dries is for the front, share of available water: as wet as the layer together, or as the
 * soil just beneath it where that is wetter. Its mean water hides a dry top and a moist bottom; growers sow into moisture, and
 * seedling roots follow it down. Ours.
 *
 * @param zoneWetness of the layer together, 0 to 1
 */
export function seedbedWetness(
  zoneWetness: number,
  evaporating: number,
  slices: Slices,
  waterMmBySlice: Float64Array,
): number {
  if (evaporating >= slices.count) return zoneWetness;
  const wiltingPoint = slices.wiltingPointMm[evaporating]!;
  const beneath =
    (waterMmBySlice[evaporating]! - wiltingPoint) / (slices.fieldCapacityMm[evaporating]! - wiltingPoint);
  return beneath > zoneWetness ? beneath : zoneWetness;
}

/**
 * Moves the front through one day: the day's potential descent is a budget, spent slice by slice at each slice's pace.
 *
 * @param frontMm this morning's depth, mm
 * @param descentMm how far an unhindered front would go, mm, >= 0
 * @param stopMm depth it cannot pass, mm
 * @param beneathMm water of the front's slice were it all as wet as its part beneath the front, mm (see `rootedPartMm`)
 * @param evaporating how many slices evaporation dries; they count as one
 * @param evaporatingWetness of those slices for the front, 0 to 1 (see `seedbedWetness`)
 * @returns tonight's depth, mm: never less than frontMm
 */
export function advancedFront(
  frontMm: number,
  descentMm: number,
  stopMm: number,
  slices: Slices,
  waterMmBySlice: Float64Array,
  beneathMm: number,
  evaporating: number,
  evaporatingWetness: number,
): number {
  const { count, topMm, thicknessMm, passage, wiltingPointMm, fieldCapacityMm } = slices;
  const bottom = Math.min(stopMm, topMm[count - 1]! + thicknessMm[count - 1]!);
  let front = frontMm;
  let budget = descentMm;
  let j = sliceAt(front, slices);
  let water = beneathMm;
  while (budget > 0 && front < bottom && j < count) {
    const dryness =
      j < evaporating
        ? wetnessFactor(evaporatingWetness)
        : drynessFactor(water, wiltingPointMm[j]!, fieldCapacityMm[j]!);
    const pace = passage[j]! * dryness;
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
    if (j < count) water = waterMmBySlice[j]!;
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

/** Step 5: the front goes down through what lies beneath it, or along the path it is given. Writes where the roots are. */
export function growRoots(today: Today, { input, workspace, zone, rooted, stopMm, bottomMm }: Field): void {
  if (!today.inCrop) return;
  const { slices, course, rooting } = input;
  const { waterMmBySlice } = workspace;
  if (today.day === course.sowingDay) {
    rooted.frontMm = rooting.kind === "stretched" ? 0 : Math.min(course.sowingDepthMm, stopMm, bottomMm);
    rooted.slice = sliceAt(rooted.frontMm, slices);
    rooted.beneathMm = waterMmBySlice[rooted.slice]!;
  } else {
    // What came or went since morning reached both parts of the front's slice; draining leaves neither wetter than this.
    const waterMm = waterMmBySlice[rooted.slice]!;
    const wettestMm = Math.max(slices.fieldCapacityMm[rooted.slice]!, waterMm);
    rooted.beneathMm = Math.min(wettestMm, Math.max(0, rooted.beneathMm + waterMm - rooted.morningMm));
  }
  if (rooting.kind === "stretched") {
    const path = Math.min(bottomMm, rooting.frontMmByDay[today.day]! * rooting.factor);
    if (path > rooted.frontMm) rooted.frontMm = path;
  } else {
    const together = zoneWetness(zone, waterMmBySlice, slices.wiltingPointMm);
    const wetness = seedbedWetness(together, zone.count, slices, waterMmBySlice);
    const descentMm = course.descentMmByDay[today.day]!;
    const { frontMm, beneathMm } = rooted;
    rooted.frontMm = advancedFront(
      frontMm,
      descentMm,
      stopMm,
      slices,
      waterMmBySlice,
      beneathMm,
      zone.count,
      wetness,
    );
  }
  const slice = sliceAt(rooted.frontMm, slices);
  if (slice !== rooted.slice) {
    rooted.slice = slice;
    rooted.beneathMm = waterMmBySlice[slice]!;
  }
}
