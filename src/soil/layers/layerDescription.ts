import type { LayerOrigin } from "./layerOrigin.ts";
import type { SoilStructure } from "../equations/penetrationFactor.ts";

/**
 * One soil layer as the user or a survey describes it: plain SI numbers, most of them optional.
 * Water is a share of the whole volume of soil, stones included; density and texture are of the fine earth.
 */
export interface LayerDescription {
  readonly name: string;
  readonly topMm: number;
  readonly bottomMm: number;
  /** USDA class by name; needed unless sand and clay are given. */
  readonly texture?: string | undefined;
  readonly sandFraction?: number | undefined;
  readonly clayFraction?: number | undefined;
  readonly organicMatterPercent?: number | undefined;
  readonly bulkDensityKgPerM3?: number | undefined;
  /** Stones > 2 mm, by volume or by weight of the whole soil; at most one of the two. */
  readonly gravelVolumeFraction?: number | undefined;
  readonly gravelMassFraction?: number | undefined;
  readonly fieldCapacity?: number | undefined;
  readonly wiltingPoint?: number | undefined;
  /** Field capacity less wilting point, where that is what is known. */
  readonly availableWater?: number | undefined;
  readonly saturation?: number | undefined;
  readonly saturatedConductivityMmPerDay?: number | undefined;
  /** Penetrometer reading at field capacity; replaces density as what holds roots back. */
  readonly penetrationResistanceMPa?: number | undefined;
  readonly structure?: SoilStructure | undefined;
  /** Origin of its density. */
  readonly origin?: LayerOrigin | undefined;
  /** Share of the front that finds cracks and old root channels. */
  readonly openShare?: number | undefined;
}

/** What each property is called in a scenario file, for messages. */
export const layerFieldNames: Readonly<Record<keyof LayerDescription, string>> = {
  name: "name",
  topMm: "top",
  bottomMm: "bottom",
  texture: "texture",
  sandFraction: "sand",
  clayFraction: "clay",
  organicMatterPercent: "organicMatter",
  bulkDensityKgPerM3: "bulkDensity",
  gravelVolumeFraction: "gravelVolume",
  gravelMassFraction: "gravelMass",
  fieldCapacity: "fieldCapacity",
  wiltingPoint: "wiltingPoint",
  availableWater: "availableWater",
  saturation: "saturation",
  saturatedConductivityMmPerDay: "saturatedConductivity",
  penetrationResistanceMPa: "penetrationResistance",
  structure: "structure",
  origin: "origin",
  openShare: "openShare",
};

/** A value nobody gave: where, what, and where it comes from (same shape as the scenario's `DefaultUsed`). */
export interface SoilDefault {
  readonly field: string;
  readonly value: string;
  readonly why: string;
}
