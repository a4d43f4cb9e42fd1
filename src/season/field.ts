import { dryAndWetCurveNumber } from "./curveNumber.ts";
import { mayDrainAnywhere, type Draining } from "./drainage.ts";
import { residueFactorInCrop, totalEvaporableUnderResidue } from "./dualCoefficient.ts";
import { evaporatingZone, type EvaporatingZone } from "./evaporation.ts";
import { firstStageUnderResidue } from "./mulch.ts";
import type { SeasonInput } from "./season.ts";
import { nothingRests, type Storage } from "./storage.ts";
import { makeRootSupply, setRootSupply, type Rooted, type RootSupply } from "./uptake.ts";

/** Scratch arrays indexed by slice, for columns of up to `count` slices. A thousand runs share one. */
export interface Workspace {
  readonly waterMmBySlice: Float64Array;
  readonly availableMmBySlice: Float64Array;
  readonly rootSupply: RootSupply;
  /** Left behind by a run: water by slice on the morning of sowing. */
  readonly waterAtSowingMmBySlice: Float64Array;
}

export function makeWorkspace(count: number): Workspace {
  return {
    waterMmBySlice: new Float64Array(count),
    availableMmBySlice: new Float64Array(count),
    rootSupply: makeRootSupply(count),
    waterAtSowingMmBySlice: new Float64Array(count),
  };
}

/** A curve number when dry, at average wetness and when wet. */
export interface CurveNumbers {
  readonly dry: number;
  readonly average: number;
  readonly wet: number;
}

/** The field a run is worked on: what is asked, what follows from it once and for all, and where roots and draining water are. */
export interface Field {
  readonly input: SeasonInput;
  readonly workspace: Workspace;
  readonly zone: EvaporatingZone;
  /** Total and readily evaporable water of the ground in crop and in fallow, mm. */
  readonly totalEvaporableMm: { readonly crop: number; readonly fallow: number };
  readonly readilyEvaporableMm: { readonly crop: number; readonly fallow: number };
  readonly cropResidueFactor: number;
  /** What residue leaves of the first stage of evaporation. */
  readonly firstStageShare: { readonly crop: number; readonly fallow: number };
  readonly curveNumbers: { readonly crop: CurveNumbers; readonly fallow: CurveNumbers };
  readonly bottomMm: number;
  /** Depth that the front may not pass, mm. */
  readonly stopMm: number;
  readonly rooted: Rooted;
  readonly draining: Draining;
  readonly storage: Storage;
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
  const fallow = totalEvaporableUnderResidue(crop, ground.residueCoverFallow);
  const readily = Math.min(ground.readilyEvaporableMm, crop);
  return {
    input,
    workspace,
    zone,
    totalEvaporableMm: { crop, fallow },
    readilyEvaporableMm: { crop: readily, fallow: Math.min(readily, fallow) },
    cropResidueFactor: residueFactorInCrop(ground.residueCoverCrop),
    firstStageShare: {
      crop: firstStageUnderResidue(ground.residueCoverCrop),
      fallow: firstStageUnderResidue(ground.residueCoverFallow),
    },
    curveNumbers: {
      crop: { average: ground.curveNumberCrop, ...dryAndWetCurveNumber(ground.curveNumberCrop) },
      fallow: { average: ground.curveNumberFallow, ...dryAndWetCurveNumber(ground.curveNumberFallow) },
    },
    bottomMm: topMm[count - 1]! + thicknessMm[count - 1]!,
    stopMm: rooting.kind === "stops" ? rooting.depthMm : Infinity,
    rooted: { frontMm: 0, slice: 0, beneathMm: 0, morningMm: 0 },
    draining: mayDrainAnywhere(count),
    storage: nothingRests(count),
  };
}
