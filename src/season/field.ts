import type { SeasonInput } from "./season.ts";
import type { Storage } from "./storage.ts";

/** What a run is worked on, as types: every process takes its part of it. `layOut.ts` makes it. */

/** Share of each slice that lies within the evaporating depth, indexed by slice; `count` slices reach it. */
export interface EvaporatingZone {
  readonly count: number;
  readonly shareBySlice: Float64Array;
  /** TEW of bare soil: 1000 (FC - 0.5 WP) Ze. FAO-56 eq. 73. */
  readonly totalEvaporableMm: number;
}

/** The residue of a run: what lies there, and the half month that it is next to rot by. */
export interface Residue {
  /** Share of the ground, 0 to 1; on the first day of the run, and now. */
  readonly firstCover: number;
  cover: number;
  massTPerHa: number;
  /** Since the half month began. */
  days: number;
  rainMm: number;
  /** Sum of the daily means, C. */
  warmthC: number;
}

/** Frost in the ground, carried from day to day. A run begins on ground that is not frozen. */
export interface Frost {
  indexCDays: number;
  isFrozen: boolean;
  /** Share of the pores of the topsoil that held water when it froze, 0 to 1. */
  poresFilled: number;
  /** Melted since the ground froze, mm. */
  meltedMm: number;
}

/**
 * What roots can draw on, by slice: available water is (water - emptyMm) x shareAbove.
 *
 * Below the evaporating layer that is water above wilting point. Within it, evaporation dries to half the wilting point and
 * rain wets it from the top, so its mean water hides a wet part and a dry one: roots find the wet part. Counting linearly from
 * empty to field capacity says so, and gives the same answer however thin the slices are. The line is ours.
 */
export interface RootSupply {
  readonly emptyMm: Float64Array;
  readonly shareAbove: Float64Array;
  /** What roots can take of (water - emptyMm) in a day: shareAbove times the share of the depth. */
  readonly takenPerDay: Float64Array;
}

/** Where roots are, on one day. */
export interface Rooted {
  frontMm: number;
  /** Index of the slice that holds the front. */
  slice: number;
  /** Water of that slice were it all as wet as its part beneath the front, mm. */
  beneathMm: number;
  /** Water of that slice this morning, mm. */
  morningMm: number;
}

/** Slices that may hold water which still drains; none outside does. Kept from day to day: most slices rest on most days. */
export interface Draining {
  from: number;
  to: number;
  /** Slices from here down were left as they were today. */
  reached: number;
}

/** Scratch arrays indexed by slice, for columns of up to `count` slices. A thousand runs share one. */
export interface Workspace {
  readonly waterMmBySlice: Float64Array;
  readonly availableMmBySlice: Float64Array;
  readonly rootSupply: RootSupply;
  /** Left behind by a run: water by slice on the morning of sowing. */
  readonly waterAtSowingMmBySlice: Float64Array;
  /** Left behind by a run, beside the water: straw still on the ground, and water in the snow that lies. */
  readonly left: { residueTPerHa: number; snowMm: number };
}

/** A curve number when dry, at average wetness and when wet. */
export interface CurveNumbers {
  dry: number;
  average: number;
  wet: number;
}

/**
 * The field a run is worked on: what is asked, what follows from it once and for all, what follows from the residue of the day
 * (residue.ts writes it), and where roots and draining water are.
 */
export interface Field {
  readonly input: SeasonInput;
  readonly workspace: Workspace;
  readonly zone: EvaporatingZone;
  /** Total and readily evaporable water of the ground in crop and in fallow, mm. */
  readonly totalEvaporableMm: { readonly crop: number; fallow: number };
  readonly readilyEvaporableMm: { readonly crop: number; fallow: number };
  readonly residue: Residue;
  cropResidueFactor: number;
  /** What residue leaves of the first stage of evaporation. */
  firstStageShare: number;
  snowCatchShare: number;
  /** Of the fallow: of the day, on the first day, and without residue. */
  readonly curveNumbers: {
    readonly crop: Readonly<CurveNumbers>;
    readonly fallow: CurveNumbers;
    readonly firstFallow: Readonly<CurveNumbers>;
    readonly bareFallow: Readonly<CurveNumbers>;
  };
  readonly bottomMm: number;
  /** Depth that the front may not pass, mm. */
  readonly stopMm: number;
  readonly rooted: Rooted;
  readonly draining: Draining;
  readonly storage: Storage;
  readonly frost: Frost;
  /** The slices whose wetness decides what frozen ground lets in. */
  readonly frostZone: EvaporatingZone;
}
