import { evaporationCoefficient, evaporationReduction } from "./dualCoefficient.ts";
import type { EvaporatingZone, Field } from "../field.ts";
import type { Today } from "../today.ts";
import { twoStageEvaporationMm } from "./twoStageEvaporation.ts";

/** Evaporation from the soil: how much, by the rule of the run, and where it is taken from: the real water of the top slices. */

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

/** Step 4: evaporation from the top slices, none from under snow. Writes evaporation and its coefficient. */
export function evaporate(today: Today, field: Field): void {
  today.evaporationCoefficient = 0;
  today.evaporationMm = 0;
  if (today.snowOnGroundMm > 0) return;
  const { input, workspace, zone } = field;
  const { slices } = input;
  const { waterMmBySlice } = workspace;
  const lackingMm = zoneDepletionMm(zone, waterMmBySlice, slices.fieldCapacityMm);
  const wantedMm =
    input.evaporation === "two-stage"
      ? twoStage(today, field, lackingMm)
      : byDualCoefficient(today, field, lackingMm);
  today.evaporationMm = takeEvaporation(wantedMm, zone, waterMmBySlice, slices.wiltingPointMm);
}

/** What the weather asks of wet ground that crop and residue shade. */
function twoStage(today: Today, { input, firstStageShare }: Field, lackingMm: number): number {
  const { course, ground } = input;
  const { day } = today;
  const shaded = evaporationCoefficient(
    1,
    course.kcMaxByDay[day]!,
    course.kcbByDay[day]!,
    1 - course.coverByDay[day]!,
  );
  const potentialMm = shaded * today.et0Mm * firstStageShare;
  const evaporationMm = twoStageEvaporationMm(
    lackingMm,
    today.reachingMm - today.runoffMm,
    potentialMm,
    ground.readilyEvaporableMm,
    ground.secondStageMmPerRootDay,
  );
  today.evaporationCoefficient = today.et0Mm > 0 ? evaporationMm / today.et0Mm : 0;
  return evaporationMm;
}

/** Residue slows it in crop and shrinks what can evaporate in fallow, never both. */
function byDualCoefficient(
  today: Today,
  { input, readilyEvaporableMm, totalEvaporableMm, cropResidueFactor }: Field,
  depletionMm: number,
): number {
  const { course } = input;
  const kcMax = course.kcMaxByDay[today.day]!;
  let leftMm: number;
  if (today.inCrop) {
    const reduction = evaporationReduction(depletionMm, readilyEvaporableMm.crop, totalEvaporableMm.crop);
    const exposed = 1 - course.coverByDay[today.day]!;
    today.evaporationCoefficient =
      cropResidueFactor * evaporationCoefficient(reduction, kcMax, course.kcbByDay[today.day]!, exposed);
    leftMm = totalEvaporableMm.crop - depletionMm;
  } else {
    const reduction = evaporationReduction(depletionMm, readilyEvaporableMm.fallow, totalEvaporableMm.fallow);
    today.evaporationCoefficient = evaporationCoefficient(reduction, kcMax, 0, 1);
    leftMm = totalEvaporableMm.fallow - depletionMm;
  }
  // A day begun freely does not dry the ground beyond what can evaporate: De <= TEW (FAO-56 eq. 78).
  const wantedMm = today.evaporationCoefficient * today.et0Mm;
  return leftMm <= 0 ? 0 : Math.min(wantedMm, leftMm);
}
