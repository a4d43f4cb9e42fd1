import type { Field } from "./field.ts";
import type { Today } from "./today.ts";

/**
 * Evaporation from the soil by the dual coefficient, from the real water of the top slices.
 * Source: [Allen et al. 1998, FAO-56] ch. 7 (read); residue ch. 10 and 11 (read).
 */

/** Kr, 0 to 1: how freely the topsoil gives water. `depletionMm` is De at the start of the day. FAO-56 eq. 74. */
export function evaporationReduction(
  depletionMm: number,
  readilyEvaporableMm: number,
  totalEvaporableMm: number,
): number {
  if (depletionMm <= readilyEvaporableMm) return 1;
  if (depletionMm >= totalEvaporableMm) return 0;
  return (totalEvaporableMm - depletionMm) / (totalEvaporableMm - readilyEvaporableMm);
}

/** Ke, >= 0: limited by what the crop leaves of Kcmax, and by the exposed wetted ground. FAO-56 eq. 71. */
export function evaporationCoefficient(
  reduction: number,
  kcMax: number,
  kcb: number,
  exposedFraction: number,
): number {
  const ke = Math.min(reduction * (kcMax - kcb), exposedFraction * kcMax);
  return ke > 0 ? ke : 0;
}

/** With a crop: residue takes 5 % of the day's evaporation for every 10 % of the surface it covers. FAO-56 ch. 10, p. 197. */
export function residueFactorInCrop(residueCover: number): number {
  return 1 - 0.5 * residueCover;
}

/** In fallow: residue takes 5 % of the evaporable water for every 10 % of the surface. FAO-56 ch. 11, p. 208. */
export function totalEvaporableUnderResidue(totalEvaporableMm: number, residueCover: number): number {
  return totalEvaporableMm * (1 - 0.5 * residueCover);
}

/** Share of each slice that lies within the evaporating depth, indexed by slice; `count` slices reach it. */
export interface EvaporatingZone {
  readonly count: number;
  readonly shareBySlice: Float64Array;
  /** TEW of bare soil: 1000 (FC - 0.5 WP) Ze. FAO-56 eq. 73. */
  readonly totalEvaporableMm: number;
}

export function evaporatingZone(
  topMm: Float64Array,
  thicknessMm: Float64Array,
  fieldCapacityMm: Float64Array,
  wiltingPointMm: Float64Array,
  depthMm: number,
): EvaporatingZone {
  let count = 0;
  while (count < topMm.length && topMm[count]! < depthMm) count++;
  const shareBySlice = new Float64Array(count);
  let total = 0;
  for (let j = 0; j < count; j++) {
    const share = Math.min(1, (depthMm - topMm[j]!) / thicknessMm[j]!);
    shareBySlice[j] = share;
    total += share * (fieldCapacityMm[j]! - 0.5 * wiltingPointMm[j]!);
  }
  return { count, shareBySlice, totalEvaporableMm: total };
}

/** De: what the zone lacks to field capacity, mm, 0 to TEW. */
export function zoneDepletionMm(
  zone: EvaporatingZone,
  waterMmBySlice: Float64Array,
  fieldCapacityMm: Float64Array,
): number {
  let lacking = 0;
  for (let j = 0; j < zone.count; j++) {
    const below = fieldCapacityMm[j]! - waterMmBySlice[j]!;
    if (below > 0) lacking += zone.shareBySlice[j]! * below;
  }
  return lacking < zone.totalEvaporableMm ? lacking : zone.totalEvaporableMm;
}

/** How wet the zone is as a whole: 0 at half its wilting point, 1 at field capacity, more above it. */
export function zoneWetness(
  zone: EvaporatingZone,
  waterMmBySlice: Float64Array,
  wiltingPointMm: Float64Array,
): number {
  let above = 0;
  for (let j = 0; j < zone.count; j++) {
    above += zone.shareBySlice[j]! * (waterMmBySlice[j]! - 0.5 * wiltingPointMm[j]!);
  }
  return above > 0 ? above / zone.totalEvaporableMm : 0;
}

/**
 * Takes a day's evaporation from the zone, each slice in proportion to what it has above half its wilting point.
 * Changes waterMmBySlice; returns what was really there to take, mm.
 */
export function takeEvaporation(
  wantedMm: number,
  zone: EvaporatingZone,
  waterMmBySlice: Float64Array,
  wiltingPointMm: Float64Array,
): number {
  if (wantedMm <= 0) return 0;
  let available = 0;
  for (let j = 0; j < zone.count; j++) {
    const above = waterMmBySlice[j]! - 0.5 * wiltingPointMm[j]!;
    if (above > 0) available += zone.shareBySlice[j]! * above;
  }
  if (available <= 0) return 0;
  const share = wantedMm < available ? wantedMm / available : 1;
  let taken = 0;
  for (let j = 0; j < zone.count; j++) {
    const above = waterMmBySlice[j]! - 0.5 * wiltingPointMm[j]!;
    if (above <= 0) continue;
    const take = share * zone.shareBySlice[j]! * above;
    waterMmBySlice[j] = waterMmBySlice[j]! - take;
    taken += take;
  }
  return taken;
}

/**
 * Step 4: evaporation from the top slices, none from under snow. Residue slows it in crop and shrinks what can evaporate
 * in fallow, never both. Writes Ke and evaporation.
 */
export function evaporate(today: Today, field: Field): void {
  today.evaporationCoefficient = 0;
  today.evaporationMm = 0;
  if (today.snowOnGroundMm > 0) return;
  const { input, workspace, zone, readilyEvaporableMm, totalEvaporableMm } = field;
  const { slices, course } = input;
  const { waterMmBySlice } = workspace;
  const depletionMm = zoneDepletionMm(zone, waterMmBySlice, slices.fieldCapacityMm);
  const kcMax = course.kcMaxByDay[today.day]!;
  if (today.inCrop) {
    const reduction = evaporationReduction(depletionMm, readilyEvaporableMm.crop, totalEvaporableMm.crop);
    const exposed = 1 - course.coverByDay[today.day]!;
    today.evaporationCoefficient =
      field.cropResidueFactor *
      evaporationCoefficient(reduction, kcMax, course.kcbByDay[today.day]!, exposed);
  } else {
    const reduction = evaporationReduction(depletionMm, readilyEvaporableMm.fallow, totalEvaporableMm.fallow);
    today.evaporationCoefficient = evaporationCoefficient(reduction, kcMax, 0, 1);
  }
  const wantedMm = today.evaporationCoefficient * today.et0Mm;
  today.evaporationMm = takeEvaporation(wantedMm, zone, waterMmBySlice, slices.wiltingPointMm);
}
