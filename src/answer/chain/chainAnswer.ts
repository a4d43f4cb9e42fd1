import type { SpreadAndMean } from "../../statistics/spreadAndMean.ts";
import type { ChainsOverRain } from "./chainsOverRain.ts";
import type { ShownYield } from "../comparison/yieldUnits.ts";

/** Years in a row, as `--json` gives them. Water and depth in mm. */
export interface ChainAnswer {
  readonly rotation: string;
  /** One a year, by year of harvest; null = a year without harvest. */
  readonly crops: readonly (string | null)[];
  readonly asked: string;
  readonly startsAsStated: boolean;
  /** Only where the day is told on which that water was measured. */
  readonly startsOn?: string;
  /** Chains of years, each with one draw of the soil, at each rainfall total and for each year of the rotation to begin with. */
  readonly chains: number;
  /** Years before the cases begin to differ, at most; fewer where the record is short. */
  readonly warmUpYears: number;
  /** Years since the cases began to differ that count as path only. */
  readonly settlingYears: number;
  /** The middle total's; null = years as they were. */
  readonly rainTotalMm: number | null;
  /** Only where a total is the mean that years vary about; else each of them is scaled to it. */
  readonly rainTotalIs?: "long-run mean";
  readonly byCrop: readonly CropChain[];
  readonly byRainTotal: readonly ChainAtRain[];
  /** At each total, for the picture over rain. */
  readonly overRain?: readonly ChainsOverRain[];
}

export interface ChainAtRain {
  readonly rainTotalMm: number | null;
  /** The crop in question first. */
  readonly byCrop: readonly CropChain[];
}

export interface CropChain {
  readonly crop: string;
  readonly isAsked: boolean;
  readonly cases: readonly ChainCase[];
  /** Each later case against the first. */
  readonly differences: readonly ChainDifference[];
}

/** Medians, year after year. */
export interface ChainCase {
  readonly name: string;
  readonly finalRootDepthMm: number;
  /** How deep the soil was wetter at sowing than at the harvest before. */
  readonly depthWettedMm: number | null;
  readonly storedAtSowingMm: number;
  /** All rain between crops together, all years: the share of it that was there at sowing. */
  readonly fallowStorageShare: number | null;
  readonly transpirationMm: number;
  /** Of what the crop took up. */
  readonly shareAfterFlowering: number;
  readonly demandMetAroundFlowering: number;
}

export interface ChainDifference {
  readonly from: string;
  readonly to: string;
  readonly onlyRootsDiffer: boolean;
  readonly extraDepthMm: number;
  /** Every case with the water that the first case's roots left, or that is stated. */
  readonly firstYear: ExtraOfYears;
  /** Every case with the water that its own roots left, long after the change. */
  readonly yearAfterYear: ExtraOfYears;
  /** Share of the years in which the soil below the shallower roots was wetted between harvest and sowing. */
  readonly wettedShare: number;
  /** By year since the change, the years in which some field harvests this crop. */
  readonly path: readonly PathYear[];
  /** Both take up as much year after year, but not at the same time. */
  readonly timingDiffers: boolean;
}

export interface ExtraOfYears {
  readonly years: number;
  readonly extraWaterUsedMm: SpreadAndMean;
  readonly extraYield: SpreadAndMean & { readonly unit: ShownYield["unit"] };
}

export interface PathYear {
  readonly year: number;
  readonly years: number;
  readonly extraWaterUsedMm: SpreadAndMean;
}
