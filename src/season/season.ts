import type { CropCourse } from "../crop/course.ts";
import type { Slices } from "../soil/layers/layer.ts";
import type { DailyWeather } from "../weather/records/record.ts";

/** The soil surface: what decides runoff, evaporation and snow. */
export interface Ground {
  /** Curve numbers of fallow and crop at average wetness, 30 to 100; dry and wet ones follow from the handbook's table. */
  readonly curveNumberFallow: number;
  readonly curveNumberCrop: number;
  /** Of the same fallow without residue; equal to the other where a curve number was stated. */
  readonly curveNumberBareFallow: number;
  /** Share of the surface under dead residue, 0 to 1: on the first day of fallow, and on the day of sowing. */
  readonly residueCoverFallow: number;
  /** Null: what the fallow leaves. */
  readonly residueCoverCrop: number | null;
  /** It rots by rain and warmth; else it stays as stated. */
  readonly residueDecays: boolean;
  /**
   * Share of the snowfall that standing stubble keeps beyond what bare ground does, added to the snow on the ground: what is kept
   * whatever lies there (as stated, else 0), and how much more under full residue (0 where it was stated).
   */
  readonly snowCatchBareShare: number;
  readonly snowCatchByCover: number;
  /** Air below this mean temperature brings snow, C. */
  readonly snowBelowC: number;
  /** Degree-day factor, mm per C and day. */
  readonly meltMmPerCDay: number;
  /** Depth that evaporation can dry, mm (FAO-56 Ze). */
  readonly evaporatingDepthMm: number;
  /** Readily evaporable water, mm (FAO-56 REW; Ritchie's U). */
  readonly readilyEvaporableMm: number;
  /** Evaporation after that, mm per square root of a day (Ritchie's alpha). */
  readonly secondStageMmPerRootDay: number;
}

/** How deep the roots go. */
export type Rooting =
  /** The front grows through what lies beneath it. */
  | { readonly kind: "grown" }
  /** As grown, but it stops at the stated depth. */
  | { readonly kind: "stops"; readonly depthMm: number }
  /** Another case's front of the same run, stretched in proportion. */
  | { readonly kind: "stretched"; readonly frontMmByDay: Float64Array; readonly factor: number };

/** FAO-56's own form is the second. */
export type EvaporationRule = "two-stage" | "dual coefficient";

export interface UptakeRule {
  readonly rule: "by slice" | "root-zone average";
  /** Share of a rooted slice's available water a day, where roots are dense. */
  readonly sharePerDay: number;
  /** Down to here roots are dense. */
  readonly denseRootsMm: number;
  /** Beneath that, the depth over which the share falls to half. */
  readonly halvingMm: number;
  /** FAO-56 p, for the root-zone average. */
  readonly depletionFraction: number;
}

/** What was measured in the field in the middle of a run: from that morning on it stands in place of what was simulated. */
export interface FoundOnMorning {
  /** Day of the run. */
  readonly day: number;
  /** Water in each slice, mm; null = as simulated. */
  readonly waterMmBySlice: Float64Array | null;
  /** Depth of the root front, mm, within the soil and above any stop; null = as simulated. */
  readonly frontMm: number | null;
}

/** One run of one case: fallow, if any, then the season. */
export interface SeasonInput {
  readonly slices: Slices;
  /** Water in each slice on the first morning, mm. Not changed. */
  readonly startWaterMm: Float64Array;
  /** Water in the snow that lies on the first morning, mm. Left out: none. */
  readonly startSnowMm?: number;
  readonly weather: DailyWeather;
  /** Index in `weather` of the run's first day. */
  readonly firstIndex: number;
  readonly course: CropCourse;
  readonly ground: Ground;
  readonly rooting: Rooting;
  readonly uptake: UptakeRule;
  readonly evaporation: EvaporationRule;
  /** In the order of their days, after sowing; left out or null: nothing was measured on the way. */
  readonly found?: readonly FoundOnMorning[] | null;
}

/** Sums from sowing to maturity, mm, unless said otherwise. */
export interface SeasonTotals {
  rainMm: number;
  runoffMm: number;
  drainageMm: number;
  evaporationMm: number;
  transpirationMm: number;
  /** Evaporation plus transpiration: the water use of the yield lines. */
  waterUseMm: number;
  /** Transpiration after flowering. */
  transpirationAfterFloweringMm: number;
  /** What a fully watered crop would have transpired. */
  transpirationDemandMm: number;
  /** Share of the demand met in the windows of `floweringStress.ts`, 0 to 1; 1 where there was no demand. */
  metBeforeFlowering: number;
  metAtFlowering: number;
  metAfterFlowering: number;
  /** All three windows together. */
  metAroundFlowering: number;
  /** Depth of the front at maturity. */
  finalRootDepthMm: number;
  /** Available water (above wilting point) in the whole column on the morning of sowing. */
  storedAtSowingMm: number;
  /** Over the whole run, fallow included: largest absolute daily residual of the balance. */
  balanceErrorMm: number;
  /** Over the fallow before sowing. */
  fallowRainMm: number;
  fallowGainMm: number;
}

/** Caller-owned arrays a run writes, so that a thousand runs allocate once. Indexed by day unless said otherwise. */
export interface Ledger {
  /** Rain only; what falls as snow stands in snowfallMm. */
  readonly rainMm: Float64Array;
  readonly snowfallMm: Float64Array;
  /** Blown snow that standing stubble kept beyond the snowfall. */
  readonly snowCaughtMm: Float64Array;
  readonly meltMm: Float64Array;
  readonly snowOnGroundMm: Float64Array;
  readonly runoffMm: Float64Array;
  readonly infiltrationMm: Float64Array;
  readonly evaporationMm: Float64Array;
  readonly transpirationMm: Float64Array;
  readonly transpirationDemandMm: Float64Array;
  readonly drainageMm: Float64Array;
  readonly frontMm: Float64Array;
  readonly storageMm: Float64Array;
  readonly residualMm: Float64Array;
  /** Water by day and slice, [day * count + slice], at day's end; null when not asked for. */
  readonly waterMmByDayAndSlice: Float64Array | null;
}
