import { fallowCurveNumber } from "../../season/curveNumber.ts";
import { coverOfMass } from "../../season/residue/mulch.ts";
import type { Ground } from "../../season/season.ts";
import type { Slices } from "../../soil/layers/layer.ts";
import type { CaseAfterRun } from "../runs/run.ts";

/** What one harvest hands to the next link. */
export interface Carried {
  readonly waterMmBySlice: Float64Array;
  /** Straw still on the ground, as much wheat straw as covers the same ground, t/ha. */
  readonly strawTPerHa: number;
  /** In snow that lies at harvest: none at most harvests. */
  readonly snowMm: number;
}

/** Water to the last bit. Frost is not carried: no crop of ours ripens on frozen ground. */
export function leftBy({ waterAtEndMmBySlice, slices, left }: CaseAfterRun): Carried {
  return {
    waterMmBySlice: waterAtEndMmBySlice.slice(0, slices.count),
    strawTPerHa: left.residueTPerHa,
    snowMm: left.snowMm,
  };
}

/**
 * The water of one case in the soil of another: depth by depth, all that was there. What a denser soil cannot hold goes to the
 * slice beneath; the last slice takes what is left as far as it can. Less than evaporation leaves is raised to it.
 */
export function waterInto(waterMm: Float64Array, from: Slices, to: Slices): Float64Array {
  const water = isCutAlike(from, to) ? waterMm.slice() : byDepth(waterMm, from, to);
  let over = 0;
  for (let j = 0; j < to.count; j++) {
    const wanted = water[j]! + over;
    const held = Math.min(to.saturationMm[j]!, Math.max(0.5 * to.wiltingPointMm[j]!, wanted));
    over = Math.max(0, wanted - held);
    water[j] = held;
  }
  return water;
}

function isCutAlike(a: Slices, b: Slices): boolean {
  if (a === b) return true;
  if (a.count !== b.count) return false;
  for (let j = 0; j < a.count; j++)
    if (a.topMm[j] !== b.topMm[j] || a.thicknessMm[j] !== b.thicknessMm[j]) return false;
  return true;
}

/** Below the soil that the water comes from, as wet by volume as its last slice. */
function byDepth(waterMm: Float64Array, from: Slices, to: Slices): Float64Array {
  const last = from.count - 1;
  return Float64Array.from({ length: to.count }, (_, j) => {
    const [top, bottom] = [to.topMm[j]!, to.topMm[j]! + to.thicknessMm[j]!];
    let mm = 0;
    for (let i = 0; i < from.count; i++) {
      const end = i === last ? Infinity : from.topMm[i]! + from.thicknessMm[i]!;
      const inside = Math.min(bottom, end) - Math.max(top, from.topMm[i]!);
      if (inside > 0) mm += (inside / from.thicknessMm[i]!) * waterMm[i]!;
    }
    return mm;
  });
}

/**
 * The ground of a link on whose first day so much straw lies: cover, snow that stubble catches and the curve number of fallow follow
 * as the scenario's own defaults do; what was stated of them stays.
 *
 * @param strawTPerHa as much wheat straw as covers the same ground
 */
export function groundUnder(ground: Ground, strawTPerHa: number): Ground {
  const cover = coverOfMass(strawTPerHa);
  const { curveNumberBareFallow } = ground;
  const isCurveStated = ground.curveNumberFallow === curveNumberBareFallow;
  // Field by field: the daily loop is compiled for one layout of this object.
  return {
    curveNumberFallow: isCurveStated
      ? curveNumberBareFallow
      : Math.round(10 * fallowCurveNumber(curveNumberBareFallow, cover)) / 10,
    curveNumberCrop: ground.curveNumberCrop,
    curveNumberBareFallow,
    residueCoverFallow: cover,
    residueCoverCrop: ground.residueCoverCrop,
    residueDecays: ground.residueDecays,
    snowCatchBareShare: ground.snowCatchBareShare,
    snowCatchByCover: ground.snowCatchByCover,
    snowBelowC: ground.snowBelowC,
    meltMmPerCDay: ground.meltMmPerCDay,
    evaporatingDepthMm: ground.evaporatingDepthMm,
    readilyEvaporableMm: ground.readilyEvaporableMm,
    secondStageMmPerRootDay: ground.secondStageMmPerRootDay,
  };
}
