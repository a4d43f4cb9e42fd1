import type { LayerOrigin, ShareRange } from "./layerOrigin.ts";

/** One user layer, resolved: plain SI numbers, nothing left to decide. */
export interface SoilLayer {
  readonly name: string;
  readonly topMm: number;
  readonly bottomMm: number;
  /** Of the fine earth, 0 to 1. */
  readonly sandFraction: number;
  readonly clayFraction: number;
  readonly organicMatterPercent: number;
  /** Of the fine earth (< 2 mm), dry mass per volume at field capacity. */
  readonly bulkDensityKgPerM3: number;
  /** Stones > 2 mm, share of the whole volume, 0 to 1. */
  readonly gravelVolumeFraction: number;
  /** Volume of water per whole volume of soil, stones included, 0 to 1. */
  readonly wiltingPoint: number;
  readonly fieldCapacity: number;
  readonly saturation: number;
  /** Standard deviation of field capacity less wilting point, share of the whole volume. */
  readonly availableWaterSd: number;
  readonly saturatedConductivityMmPerDay: number;
  /** Stated, not estimated. */
  readonly conductivityMeasured: boolean;
  /** K = Ks (theta / theta s) ^ drainExponent; 3 + 2 / lambda. */
  readonly drainExponent: number;
  /** What the density (or the penetrometer reading, which replaces it) leaves of the root front's pace, 0 to 1, before cracks. */
  readonly hindrance: Hindrance;
  readonly origin: LayerOrigin;
  /** Neither the layer's origin nor its open share was said, and it holds roots back: an answer has to name the choice. */
  readonly originAssumed: boolean;
  /** Share of the front that finds cracks and old root channels, 0 to 1; all three the same where it was said. */
  readonly openShare: ShareRange;
}

/** Pace factors of the same layer read three ways; the ensemble draws between strict and lenient. */
export interface Hindrance {
  readonly strict: number;
  readonly usual: number;
  readonly lenient: number;
  readonly basis: "bulk density" | "penetration resistance";
  /** The reading, MPa, where that is the basis. */
  readonly resistanceMPa?: number;
}

/** The column as the season sees it: arrays indexed by slice, top first. */
export interface Slices {
  readonly count: number;
  readonly topMm: Float64Array;
  readonly thicknessMm: Float64Array;
  /** Index of the user layer the slice lies in. */
  readonly layer: Int32Array;
  /** Water in the slice, mm, at each limit. */
  readonly wiltingPointMm: Float64Array;
  readonly fieldCapacityMm: Float64Array;
  readonly saturationMm: Float64Array;
  readonly saturatedConductivityMmPerDay: Float64Array;
  readonly drainExponent: Float64Array;
  /** Pace factor at field capacity, cracks included: open + (1 - open) x hindrance. */
  readonly passage: Float64Array;
  /** What layers above, and the slice's own, leave of the uptake share, 0 to 1; 1 where nothing hinders. */
  readonly rootsLeft: Float64Array;
}
