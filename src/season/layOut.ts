import { dryAndWetCurveNumber } from "./curveNumber.ts";
import { mayDrainAnywhere } from "./drainage.ts";
import { evaporatingZone } from "./evaporation/evaporation.ts";
import type { CurveNumbers, Field, Workspace } from "./field.ts";
import { frozenTopsoilMm, noFrost } from "./frozenGround.ts";
import { followResidue, residueAtFirst } from "./residue/residue.ts";
import { sliceAt } from "./rootFront.ts";
import type { FoundOnMorning, SeasonInput } from "./season.ts";
import { measuredMm, nothingRests } from "./storage.ts";
import { makeRootSupply, setRootSupply } from "./uptake.ts";

export function makeWorkspace(count: number): Workspace {
  return {
    waterMmBySlice: new Float64Array(count),
    availableMmBySlice: new Float64Array(count),
    rootSupply: makeRootSupply(count),
    waterAtSowingMmBySlice: new Float64Array(count),
    left: { residueTPerHa: 0, snowMm: 0 },
  };
}

/** Lays a run out in the workspace: starting water in the slices, everything that does not change with the day worked out. */
export function layOut(input: SeasonInput, workspace: Workspace): Field {
  const { slices, ground, rooting } = input;
  const { count, topMm, thicknessMm, fieldCapacityMm, wiltingPointMm } = slices;
  workspace.waterMmBySlice.set(input.startWaterMm);
  const zone = evaporatingZone(
    topMm,
    thicknessMm,
    fieldCapacityMm,
    wiltingPointMm,
    ground.evaporatingDepthMm,
  );
  setRootSupply(workspace.rootSupply, slices, zone.count, input.uptake);
  const crop = zone.totalEvaporableMm;
  const readily = Math.min(ground.readilyEvaporableMm, crop);
  const field: Field = {
    input,
    workspace,
    zone,
    totalEvaporableMm: { crop, fallow: crop },
    readilyEvaporableMm: { crop: readily, fallow: readily },
    residue: residueAtFirst(input),
    cropResidueFactor: 1,
    firstStageShare: 1,
    snowCatchShare: 0,
    curveNumbers: {
      crop: curveNumbersOf(ground.curveNumberCrop),
      fallow: curveNumbersOf(ground.curveNumberFallow),
      firstFallow: curveNumbersOf(ground.curveNumberFallow),
      bareFallow: curveNumbersOf(ground.curveNumberBareFallow),
    },
    bottomMm: topMm[count - 1]! + thicknessMm[count - 1]!,
    stopMm: rooting.kind === "stops" ? rooting.depthMm : Infinity,
    rooted: { frontMm: 0, slice: 0, beneathMm: 0, morningMm: 0 },
    draining: mayDrainAnywhere(count),
    storage: nothingRests(count),
    frost: noFrost(),
    frostZone: evaporatingZone(topMm, thicknessMm, fieldCapacityMm, wiltingPointMm, frozenTopsoilMm),
  };
  followResidue(field);
  return field;
}

const curveNumbersOf = (average: number): CurveNumbers => ({ average, ...dryAndWetCurveNumber(average) });

/**
 * Puts what was measured on the way in place of what was simulated, before the day begins. Snow, residue and frost stay.
 *
 * @returns all water of that morning, mm: the day's balance begins with it
 */
export function takeFound({ waterMmBySlice, frontMm }: FoundOnMorning, field: Field): number {
  const { input, workspace, rooted, draining, storage } = field;
  const { slices } = input;
  if (waterMmBySlice !== null) workspace.waterMmBySlice.set(waterMmBySlice);
  if (frontMm !== null) {
    rooted.frontMm = frontMm;
    rooted.slice = sliceAt(frontMm, slices);
  }
  rooted.beneathMm = workspace.waterMmBySlice[rooted.slice]!;
  Object.assign(draining, mayDrainAnywhere(slices.count));
  return measuredMm(storage, workspace.waterMmBySlice, slices.count, slices.count);
}
