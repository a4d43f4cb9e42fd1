import parameters from "../../data-reference/frozen-ground.json" with { type: "json" };
import type { EvaporatingZone, Field, Frost } from "./field.ts";
import type { Today } from "./today.ts";

/** Whether the ground is frozen, and how much of the melting snow frozen ground lets in. Numbers: data-reference/frozen-ground.json. */

const { keptPerDay, coldPerCm, warmPerCm, frozenAboveCDays, thawedBelowCDays } = parameters.index;
const { factor, power, topsoilMm } = parameters.intake;
const { kgPerM3 } = parameters.lyingSnow;

export function noFrost(): Frost {
  return { indexCDays: 0, isFrozen: false, poresFilled: 0, meltedMm: 0 };
}

/**
 * Depth of lying snow, cm, from the water in it, mm.
 * Source: [Pomeroy & Gray 1995] mean density of prairie snow that wind has packed (memory). Newly fallen snow is looser.
 */
export function snowDepthCm(snowOnGroundMm: number): number {
  return (snowOnGroundMm * 100) / kgPerM3;
}

/**
 * Frozen ground index of a day: the cold of the past days, fading, held off by the snow that lies.
 *
 * @param lastCDays yesterday's index, C days, >= 0 (the source's CFGI)
 * @param meanAirC mean air temperature of the day (T)
 * @param depthCm depth of snow on the ground (D)
 * @returns C days, >= 0
 * @example frozenGroundIndex(50, -10, 0) // 58.5
 * Source: [Molnau & Bissell 1983] (memory): A 0.97 a day, K 0.5 per cm in frost and 0.08 in thaw.
 */
export function frozenGroundIndex(lastCDays: number, meanAirC: number, depthCm: number): number {
  const perCm = meanAirC < 0 ? coldPerCm : warmPerCm;
  const reaching = depthCm > 0 ? Math.exp(-0.4 * perCm * depthCm) : 1;
  return Math.max(0, keptPerDay * lastCDays - meanAirC * reaching);
}

/**
 * Frozen above 83 C days, not frozen below 56.
 * Source: [Molnau & Bissell 1983] (memory). Between the two ground stays what it was: ours.
 */
export function isFrozenAt(indexCDays: number, wasFrozen: boolean): boolean {
  return wasFrozen ? indexCDays >= thawedBelowCDays : indexCDays > frozenAboveCDays;
}

/** The topsoil whose wetness decides, mm: the equation below is written for it. */
export const frozenTopsoilMm = topsoilMm;

/**
 * What frozen ground lets in of the snow that has melted on it.
 *
 * @param meltedMm all melt since the ground froze, mm, >= 0 (the source's SWE: it takes all the snow as melting at once)
 * @param poresFilled share of the pores of the upper 300 mm filled when the ground froze, 0 to 1 (its theta)
 * @returns mm, 0 to meltedMm
 * @example frozenIntakeMm(60, 0.5) // 27.31
 * Source: [Granger, Gray & Dyck 1984; Gray et al. 1985] frozen prairie soils of limited intake (memory): INF = 5 (1 - theta) SWE^0.584.
 * Cracked clay takes all and a sheet of ice nothing: the source has classes for them, we don't.
 */
export function frozenIntakeMm(meltedMm: number, poresFilled: number): number {
  return Math.min(meltedMm, factor * Math.max(0, 1 - poresFilled) * meltedMm ** power);
}

/** Share of the pores of a zone that hold water. */
function filledShare(
  { count, shareBySlice }: Pick<EvaporatingZone, "count" | "shareBySlice">,
  waterMmBySlice: Float64Array,
  saturationMm: Float64Array,
): number {
  let water = 0;
  let pores = 0;
  for (let j = 0; j < count; j++) {
    water += shareBySlice[j]! * waterMmBySlice[j]!;
    pores += shareBySlice[j]! * saturationMm[j]!;
  }
  return water / pores;
}

/**
 * Frost goes into the ground or out of it, under the snow that the day met. A record without temperatures has no frost.
 * Reads snow on the ground and melt; changes the frost.
 */
export function freezeAndThaw(today: Today, { input, workspace, frost, frostZone }: Field): void {
  const { weather, slices } = input;
  if (!weather.hasTemperature) return;
  const meanC = weather.tMeanC[today.index]!;
  if (meanC >= 0 && frost.indexCDays === 0) return;
  frost.indexCDays = frozenGroundIndex(
    frost.indexCDays,
    meanC,
    snowDepthCm(today.snowOnGroundMm + today.meltMm),
  );
  const wasFrozen = frost.isFrozen;
  frost.isFrozen = isFrozenAt(frost.indexCDays, wasFrozen);
  if (frost.isFrozen && !wasFrozen) {
    frost.poresFilled = filledShare(frostZone, workspace.waterMmBySlice, slices.saturationMm);
    frost.meltedMm = 0;
  }
}

/**
 * What frozen ground sheds of a day's melt. Melt counts from the day the ground froze, so that a winter of many thaws lets in no
 * more than one thaw of the same snow: ours. Changes the frost.
 *
 * @returns mm, 0 to meltMm
 */
export function shedMeltMm(meltMm: number, frost: Frost): number {
  const before = frozenIntakeMm(frost.meltedMm, frost.poresFilled);
  frost.meltedMm += meltMm;
  // Never below 0 or above the melt; the bounds are for rounding.
  return Math.min(meltMm, Math.max(0, meltMm - (frozenIntakeMm(frost.meltedMm, frost.poresFilled) - before)));
}
