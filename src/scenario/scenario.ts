import type { MonthDay } from "../quantity/calendar.ts";
import type { DefaultUsed } from "./defaultUsed.ts";
import type { YieldLine } from "../crop/yield/yieldLine.ts";
import type { CropPlan } from "../crop/crop.ts";
import type { MoneyPlan } from "./moneyPlan.ts";
import type { RowPositions } from "./rowPositions.ts";
import type { Counts } from "../evidence/counts/counts.ts";
import type { Strips } from "../evidence/strips.ts";
import type { Dig } from "../evidence/dig/dig.ts";
import type { EvaporationRule, Ground, UptakeRule } from "../season/season.ts";
import type { SoilSamples } from "./resolve/evidence/soilSamples.ts";
import type { RestrictionKind } from "../soil/layers/column.ts";
import type { SoilLayer } from "../soil/layers/layer.ts";
import type { StartingWater } from "../soil/layers/startingWater.ts";
import type { MonthlyAir, MonthlyNormals, Site, WeatherRecord } from "../weather/records/record.ts";

export type { DefaultUsed };

/** A scenario file, resolved: SI numbers, every default filled in, nothing left to check. */
export interface Scenario {
  readonly name: string;
  /** True when the file says its data are invented. */
  readonly invented: boolean;
  readonly site: Site;
  readonly weather: WeatherPlan;
  /** At least one; the first is what the others are compared with. */
  readonly cases: readonly [Case, ...Case[]];
  readonly yieldLine: YieldLine;
  /** Crops year after year; null = seasons by themselves. */
  readonly rotation: RotationPlan | null;
  readonly ensemble: EnsemblePlan;
  /** What was measured in the field; null where nothing was. */
  readonly evidence: Evidence | null;
  /** Null where nothing is told of it. */
  readonly money: MoneyPlan | null;
  readonly rowPositions: RowPositions | null;
  /** The season under way, where the file tells of it; only the outlook looks at it. */
  readonly outlook: OutlookPlan | null;
  /** Every default that was used, for `check` and for results. */
  readonly defaults: readonly DefaultUsed[];
  /** What is hard to believe but cannot be called wrong, such as depths that look like inches under a column of cm. */
  readonly doubts: readonly string[];
  /** What the reader noticed: textures out of range, gaps filled, parts of the file that change nothing. */
  readonly notes: readonly string[];
}

export interface OutlookPlan {
  /** The day that the outlook is of, and that the water was measured on; null where none is told. */
  readonly day: number | null;
  /** Water measured on that day, case by case; null where none was. */
  readonly waterByCase: readonly (StartingWater | null)[];
}

export interface Evidence {
  /** Of every interval, above 0 and below 1. */
  readonly confidence: number;
  readonly dig: Dig | null;
  readonly counts: Counts | null;
  readonly strips: Strips | null;
}

export interface Case {
  readonly name: string;
  readonly layers: readonly SoilLayer[];
  /** What lies below the last layer and lets no root through; null = only nothing deeper is described. */
  readonly endsOn: RestrictionKind | null;
  readonly sliceThicknessMm: number;
  readonly startingWater: StartingWater;
  readonly ground: Ground;
  readonly crop: CropPlan;
  /** Days of fallow simulated before sowing; 0 = the run starts at sowing. */
  readonly fallowDays: number;
  readonly rooting:
    | { readonly kind: "grown" }
    | { readonly kind: "absolute"; readonly depthMm: number }
    /** To the first case's depth of the same run; only for cases after the first. */
    | { readonly kind: "relative"; readonly extraMm: number };
  readonly uptake: UptakeRule;
  readonly evaporation: EvaporationRule;
  /** Cores and penetrometer readings of its soil. */
  readonly samples: SoilSamples;
}

/** Crops in the order in which they follow one another on the field. */
export interface RotationPlan {
  /** As people call it: `wheat-corn-fallow`. */
  readonly said: string;
  /** One for each year, by year of harvest; null = a year without harvest. */
  readonly entries: readonly (RotationEntry | null)[];
  /** Years that run under the first case's roots before anything is counted; 0 where the starting water is stated. */
  readonly warmUpYears: number;
  /** Whether every chain begins with water that the file states. */
  readonly startsAsStated: boolean;
  /** Day of the year on which that water was measured; null = it is that of the day after a harvest. */
  readonly startsOn: MonthDay | null;
  /** Years of the path shown, from the change on. */
  readonly pathYears: number;
}

export interface RotationEntry {
  readonly crop: string;
  /** Whether it is the crop that the scenario asks about. */
  readonly isAsked: boolean;
  /** A crop that is ripe in the year after its sowing. */
  readonly sownYearBefore: boolean;
  readonly yieldLine: YieldLine;
  /** In the order of the scenario's cases: this crop in each, its ground as the crop before leaves it. */
  readonly cases: readonly Case[];
  /** Straw that it leaves, as much wheat straw as covers the same ground, t/ha. */
  readonly strawTPerHa: number;
  /** By case: whether the cover after harvest follows from the crop before; else it is as stated, year after year. */
  readonly strawFollowsByCase: readonly boolean[];
}

export type WeatherPlan = {
  readonly source:
    | { readonly kind: "record"; readonly record: WeatherRecord; readonly normals: MonthlyAir | null }
    | {
        readonly kind: "normals";
        readonly normals: MonthlyNormals;
        /** Of a built-in pattern, with temperatures of its own latitude; else of a place. */
        readonly ofPattern?: boolean;
      };
  readonly referenceEt: "penman-monteith" | "hargreaves";
  /** Totals to scale each year to; empty = years as they are. */
  readonly rainTotalsMm: readonly number[];
  readonly rainTotalOver: "year" | "season";
  /** What each total is: of every year, or the mean about which the years vary as they do. */
  readonly rainTotalIs: "each year" | "long-run mean";
};

export interface EnsemblePlan {
  /** Weather years run for each rainfall total; a record shorter than that is gone through again with other draws. */
  readonly years: number;
  readonly seed: number;
  /** Standard deviation of available water capacity, share of it, where one was given; null = each layer's own. */
  readonly availableCapacitySd: number | null;
  /** Standard deviation of the draw that shifts starting water below `deepBelowMm`, share of available capacity. */
  readonly deepWaterSd: number;
  /** The depth over which uptake falls to half is drawn between it / (1 + this) and it x (1 + this). */
  readonly deepUptakeSpread: number;
  readonly deepBelowMm: number;
  /** "range" draws between the strict and lenient reading of the density table; otherwise one of them. */
  readonly densityReading: "range" | "strict" | "usual" | "lenient";
}
