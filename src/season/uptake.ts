import type { Slices } from "../soil/layers/layer.ts";
import type { Field, Rooted, RootSupply } from "./field.ts";
import type { UptakeRule } from "./season.ts";
import type { Today } from "./today.ts";

export function makeRootSupply(count: number): RootSupply {
  return {
    emptyMm: new Float64Array(count),
    shareAbove: new Float64Array(count),
    takenPerDay: new Float64Array(count),
  };
}

/**
 * Share of the available water that roots at a depth can take in a day: all of it where they are dense, half as much with every
 * `halvingMm` beneath.
 *
 * Source: roots thin out exponentially ([Gerwitz & Page 1974], abstract, read); uptake far slower than they do, so the halving is
 * its own number (data-reference/uptake-by-depth.json).
 */
export function shareAtDepth(
  depthMm: number,
  { sharePerDay, denseRootsMm, halvingMm }: Pick<UptakeRule, "sharePerDay" | "denseRootsMm" | "halvingMm">,
): number {
  return depthMm <= denseRootsMm
    ? sharePerDay
    : sharePerDay * Math.exp((-Math.LN2 * (depthMm - denseRootsMm)) / halvingMm);
}

/** Fills `supply` for a column whose first `evaporating` slices evaporation can dry. */
export function setRootSupply(
  supply: RootSupply,
  slices: Slices,
  evaporating: number,
  uptake: UptakeRule,
): void {
  for (let j = 0; j < slices.count; j++) {
    const wiltingPoint = slices.wiltingPointMm[j]!;
    const fieldCapacity = slices.fieldCapacityMm[j]!;
    supply.emptyMm[j] = j < evaporating ? 0.5 * wiltingPoint : wiltingPoint;
    supply.shareAbove[j] =
      (slices.rootsLeft[j]! * (fieldCapacity - wiltingPoint)) / (fieldCapacity - supply.emptyMm[j]!);
    supply.takenPerDay[j] =
      supply.shareAbove[j]! * shareAtDepth(slices.topMm[j]! + 0.5 * slices.thicknessMm[j]!, uptake);
  }
}

/**
 * Available water of the rooted part of the slice that holds the front.
 *
 * Roots dry only the part they are in: the rest stays as it was when the front came. Taking the slice's mean instead would let
 * a resting front draw on water beneath it, more of it the thicker the slices.
 *
 * @param availableMm of the whole slice, mm
 * @param beneathAvailableMm what the whole slice would have were it all as wet as its part beneath the front, mm
 * @param part share of the slice above the front, 0 to 1
 * @returns mm, 0 to availableMm
 */
export function rootedPartMm(availableMm: number, beneathAvailableMm: number, part: number): number {
  const rooted = availableMm - (beneathAvailableMm > 0 ? beneathAvailableMm : 0) * (1 - part);
  if (rooted <= 0) return 0;
  return rooted < availableMm ? rooted : availableMm;
}

/**
 * Writes what each rooted slice has for roots, (water - emptyMm) x share of the slice, mm, to availableMmBySlice; returns how many
 * slices are rooted.
 */
function availableToRoots(
  rooted: Pick<Rooted, "frontMm" | "beneathMm">,
  emptyMm: Float64Array,
  share: Float64Array,
  slices: Slices,
  waterMmBySlice: Float64Array,
  availableMmBySlice: Float64Array,
): number {
  const { count, topMm, thicknessMm } = slices;
  const { frontMm, beneathMm } = rooted;
  let j = 0;
  for (; j < count && topMm[j]! < frontMm; j++) {
    const empty = emptyMm[j]!;
    let available = (waterMmBySlice[j]! - empty) * share[j]!;
    const reach = frontMm - topMm[j]!;
    const thickness = thicknessMm[j]!;
    if (reach < thickness)
      available = rootedPartMm(available, (beneathMm - empty) * share[j]!, reach / thickness);
    availableMmBySlice[j] = available > 0 ? available : 0;
  }
  return j;
}

/** Takes a share of what each of the first `rooted` slices has available; returns mm taken. */
function takeShare(
  share: number,
  rooted: number,
  waterMmBySlice: Float64Array,
  availableMmBySlice: Float64Array,
): number {
  let taken = 0;
  for (let j = 0; j < rooted; j++) {
    const take = share * availableMmBySlice[j]!;
    waterMmBySlice[j] = waterMmBySlice[j]! - take;
    taken += take;
  }
  return taken;
}

/**
 * Uptake of a day, slice by slice: each rooted slice can give a share of its available water that its depth alone decides, and
 * the crop takes the smaller of its demand and all they can give, from each in proportion. A deeper front only adds to what can be given, so it
 * never makes a day's uptake smaller.
 *
 * Changes waterMmBySlice; uses availableMmBySlice as scratch; returns mm taken.
 * Source: [Monteith 1986]; [Dardanelli et al. 2004], about 0.096 a day (memory).
 */
export function takeBySlice(
  demandMm: number,
  rooted: Pick<Rooted, "frontMm" | "beneathMm">,
  supply: RootSupply,
  slices: Slices,
  waterMmBySlice: Float64Array,
  availableMmBySlice: Float64Array,
): number {
  if (demandMm <= 0) return 0;
  const count = availableToRoots(
    rooted,
    supply.emptyMm,
    supply.takenPerDay,
    slices,
    waterMmBySlice,
    availableMmBySlice,
  );
  let canGive = 0;
  for (let j = 0; j < count; j++) canGive += availableMmBySlice[j]!;
  if (canGive <= 0) return 0;
  return takeShare(demandMm < canGive ? demandMm / canGive : 1, count, waterMmBySlice, availableMmBySlice);
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
 * Changes waterMmBySlice; uses availableMmBySlice as scratch; returns mm taken, from rooted slices in proportion to their
 * available water.
 */
export function takeByRootZoneAverage(
  demandMm: number,
  depletionFraction: number,
  rooted: Pick<Rooted, "frontMm" | "beneathMm">,
  supply: RootSupply,
  slices: Slices,
  waterMmBySlice: Float64Array,
  availableMmBySlice: Float64Array,
): number {
  if (demandMm <= 0) return 0;
  const { topMm, thicknessMm, wiltingPointMm, fieldCapacityMm } = slices;
  const count = availableToRoots(
    rooted,
    supply.emptyMm,
    supply.shareAbove,
    slices,
    waterMmBySlice,
    availableMmBySlice,
  );
  let totalAvailable = 0;
  let held = 0;
  for (let j = 0; j < count; j++) {
    const part = Math.min(1, (rooted.frontMm - topMm[j]!) / thicknessMm[j]!);
    totalAvailable += part * slices.rootsLeft[j]! * (fieldCapacityMm[j]! - wiltingPointMm[j]!);
    held += availableMmBySlice[j]!;
  }
  if (held <= 0) return 0;
  const wanted = demandMm * stressCoefficient(totalAvailable - held, totalAvailable, depletionFraction);
  return takeShare(wanted < held ? wanted / held : 1, count, waterMmBySlice, availableMmBySlice);
}

/** Step 6: the crop takes up what it wants and roots can give. Writes demand and transpiration. */
export function takeUp(today: Today, { input, workspace, rooted }: Field): void {
  today.demandMm = 0;
  today.transpirationMm = 0;
  if (!today.inCrop) return;
  const { slices, course, uptake } = input;
  const { rootSupply, waterMmBySlice, availableMmBySlice } = workspace;
  const kcb = course.kcbByDay[today.day]!;
  const demandMm = kcb * today.et0Mm;
  today.demandMm = demandMm;
  if (uptake.rule === "by slice") {
    today.transpirationMm = takeBySlice(
      demandMm,
      rooted,
      rootSupply,
      slices,
      waterMmBySlice,
      availableMmBySlice,
    );
  } else {
    const etcMm = (kcb + today.evaporationCoefficient) * today.et0Mm;
    const p = adjustedDepletionFraction(uptake.depletionFraction, etcMm);
    today.transpirationMm = takeByRootZoneAverage(
      demandMm,
      p,
      rooted,
      rootSupply,
      slices,
      waterMmBySlice,
      availableMmBySlice,
    );
  }
}
