import type { AnswerAtRain, Comparison } from "../../src/answer/comparison/comparison.ts";
import type { WaterAhead } from "../../src/answer/outlook/waterAhead.ts";
import type { Problem } from "../../src/problem.ts";
import type { Units } from "../../src/quantity/kinds.ts";
import type { Scenario } from "../../src/scenario/scenario.ts";
import type { SeasonTotals } from "../../src/season/season.ts";
import type { SoilLayer } from "../../src/soil/layers/layer.ts";
import type { StationInfo } from "../../src/weather/records/record.ts";
import type { DifferenceTold } from "../../src/report/sentences/firstLine.ts";
import type { FieldSentences } from "../../src/report/sentences/field/fieldSentences.ts";
import type { Json } from "../state/json.ts";
import type { Attachments } from "../state/scenarioStore.ts";

/** What the page and the engine's worker say to each other. Numbers are SI; arrays are handed over, not copied. */

export type ToEngine =
  /** The files beside the scenario, whenever they change. */
  | { readonly kind: "files"; readonly attachments: Attachments }
  /** Ends whatever is under way and answers this. */
  | {
      readonly kind: "compute";
      readonly id: number;
      readonly scenario: Json;
      readonly units: Units;
      readonly shown: ShownRun;
    }
  /** The season of this question stands on the page. */
  | { readonly kind: "drawn"; readonly id: number }
  /** The last good answer in other units: nothing is run again. */
  | { readonly kind: "units"; readonly id: number; readonly units: Units }
  /** One run of the last good answer. */
  | { readonly kind: "season"; readonly id: number; readonly shown: ShownRun }
  /** The season under way, of the last good answer. */
  | { readonly kind: "outlook"; readonly id: number }
  /** A text to keep, of the last good answer. */
  | {
      readonly kind: "text";
      readonly id: number;
      readonly what: TextKind;
      readonly shown: ShownRun;
      readonly units: Units;
    };

/** Which run to show, at which of the scenario's totals; null = one near the middle, at the middle total. */
export interface ShownRun {
  readonly run: number | null;
  readonly totalIndex: number | null;
}

/** What can be kept as text: a run's days, the answer as the command line writes it, the scenario in words, a page to print. */
export type TextKind = "ledger" | "json" | "text" | "check" | "report";

export type FromEngine =
  /** Comes first, once the scenario can be read. */
  | { readonly kind: "resolved"; readonly id: number; readonly resolved: ResolvedScenario }
  /** The scenario is wrong; the last good answer stands. */
  | { readonly kind: "refused"; readonly id: number; readonly problems: readonly Problem[] }
  /** Our own fault. */
  | { readonly kind: "fault"; readonly id: number; readonly said: string }
  | { readonly kind: "season"; readonly id: number; readonly season: SeasonShown }
  | {
      readonly kind: "progress";
      readonly id: number;
      /** Runs, or chains of years in a row. */
      readonly of: "runs" | "chains";
      readonly done: number;
      readonly total: number;
    }
  /** Comes with the middle total first, then `whole` with all of them. */
  | { readonly kind: "answer"; readonly id: number; readonly answer: Answer }
  /** Comes several times, wider each time. */
  | { readonly kind: "fan"; readonly id: number; readonly fan: RainFan }
  | { readonly kind: "outlook"; readonly id: number; readonly outlook: OutlookShown | Refused }
  | { readonly kind: "text"; readonly id: number; readonly text: KeptText };

/** There is no outlook, and why. */
export interface Refused {
  readonly problems: readonly Problem[];
}

export interface OutlookShown {
  readonly units: Units;
  /** In plain words, a paragraph each. */
  readonly sentences: readonly string[];
  readonly cautions: readonly string[];
  readonly names: readonly string[];
  /** Day number of the first value, and the place of the last known day among the values. */
  readonly firstDay: number;
  readonly today: number;
  readonly otherYears: number;
  /** By case: water within reach of the roots, day by day, mm. */
  readonly byCase: readonly WaterAhead[];
}

/** The scenario as the engine reads it: every default filled in. The record's days stay in the worker. */
export interface ResolvedScenario extends Omit<Scenario, "weather" | "cases"> {
  readonly cases: readonly ResolvedCase[];
  readonly weather: Omit<Scenario["weather"], "source"> & {
    readonly source: "record" | "normals";
    readonly station: StationInfo | null;
    readonly recordFirstDay: number | null;
    readonly recordDays: number | null;
  };
  /** Names that may be chosen. */
  readonly choices: { readonly crops: readonly string[]; readonly yieldLines: readonly string[] };
}

export type ResolvedCase = Omit<Scenario["cases"][number], "layers"> & {
  readonly layers: readonly LayerShown[];
};

export interface LayerShown extends SoilLayer {
  /** USDA class of its sand and clay. */
  readonly texture: string;
}

/** One run of every case, day by day. Days are numbers since 1970-01-01 (src/quantity/calendar.ts). */
export interface SeasonShown {
  readonly run: number;
  readonly runs: number;
  readonly year: number;
  /** The year is one of generated weather: its number stands for no real year. */
  readonly isGenerated: boolean;
  readonly totalIndex: number;
  readonly rainTotalMm: number | null;
  /** First and last day of any case: the axis that all share. */
  readonly firstDay: number;
  readonly days: number;
  /** By day from `firstDay`; rain and snow together. */
  readonly rainMm: Float32Array;
  readonly referenceEtMm: Float32Array;
  readonly cases: readonly CaseSeason[];
}

export interface CaseSeason {
  readonly name: string;
  /** Sod is not sown, and no day of flowering decides. */
  readonly isSod: boolean;
  /** Where this case's own day 0 stands on the shared axis. */
  readonly startsAt: number;
  /** Own days: from `startsAt` to maturity. */
  readonly days: number;
  /** All by own day. */
  readonly sowingDay: number;
  readonly floweringDay: number;
  readonly maturityDay: number;
  /** Stages after sowing that have a day, in order. */
  readonly stages: readonly { readonly name: string; readonly fromDay: number }[];
  /** 0 before sowing. */
  readonly frontMm: Float32Array;
  readonly transpirationMm: Float32Array;
  readonly demandMm: Float32Array;
  readonly evaporationMm: Float32Array;
  readonly runoffMm: Float32Array;
  readonly drainageMm: Float32Array;
  readonly snowOnGroundMm: Float32Array;
  /** Slices, top first. */
  readonly sliceTopMm: Float32Array;
  readonly sliceThicknessMm: Float32Array;
  /** Available water that each slice holds at field capacity, in this run. */
  readonly capacityMm: Float32Array;
  /** How much of its pace the root front keeps in each slice at field capacity, 0 to 1. */
  readonly passage: Float32Array;
  /** Plant-available water at day's end, `[day * slices + slice]`, never below 0; above capacity while it drains. */
  readonly availableMm: Float32Array;
  readonly totals: SeasonTotals;
  /** In the unit of the answer. */
  readonly yield: { readonly unit: string; readonly value: number };
}

export interface Answer {
  /** As the command line's `compare --json`, not rounded. */
  readonly comparison: Comparison;
  /** The answer in plain words, a part for each difference. */
  readonly told: readonly DifferenceTold[];
  /** What is said of things measured in the field, a sentence or two each. */
  readonly field: FieldSentences;
  /** How it came about, a paragraph each. */
  readonly method: readonly string[];
  readonly units: Units;
  /**
   * How far it has come: at a page's first opening from the first runs, soon taken over by all of them at the middle total, then
   * at all totals, then with what was measured in the field, which is left out before.
   */
  readonly stage: "first runs" | "middle total" | "all totals" | "whole";
  readonly whole: boolean;
  /** The scenario has a rotation, and this is still the answer of its seasons by themselves. */
  readonly awaitsYears: boolean;
  /** Years in a row, which `comparison` is then of; null without a rotation. */
  readonly inARow: YearsShown | null;
  /** Seasons by themselves. */
  readonly byRun: RunsShown;
}

export interface YearsShown {
  /** First year and year after year in plain words: a sentence for each difference. */
  readonly sentences: readonly string[];
  /** Sowing year of each run below. */
  readonly years: Int32Array;
  /** The crop in question year after year: a run is a year. In the order of `comparison.byRainTotal`. */
  readonly byRainTotal: readonly RunsAtRain[];
  /** The years of one chain at the middle total, from the change on: one near the middle is among them. */
  readonly walked: readonly YearOnWall[];
}

/** One crop of a chain with the fallow before it. */
export interface YearOnWall {
  readonly sinceChange: number;
  readonly crop: string;
  readonly sownYear: number;
  readonly fallowDays: number;
  readonly fallowRainMm: number;
  readonly seasonRainMm: number;
  /** Each with the water that its own roots left. */
  readonly cases: readonly CaseOfYear[];
}

export interface CaseOfYear {
  /** Where the roots ended. */
  readonly frontMm: number;
  readonly takenUpMm: number;
  /** Slices, top first; plant-available water in each, as it can hold and as it was. */
  readonly sliceTopMm: Float32Array;
  readonly sliceThicknessMm: Float32Array;
  readonly capacityMm: Float32Array;
  readonly atSowingMm: Float32Array;
  readonly atHarvestMm: Float32Array;
}

/** Every run by itself, for seasons side by side. */
export interface RunsShown {
  readonly runs: number;
  /** Sowing year of each run. */
  readonly years: Int32Array;
  /** One near the middle: shown when nothing else is chosen. */
  readonly typicalRun: number;
  /** In the order of `comparison.byRainTotal`. */
  readonly byRainTotal: readonly RunsAtRain[];
  /** At the middle total. */
  readonly traces: Traces;
}

export interface RunsAtRain {
  readonly rainTotalMm: number | null;
  readonly annualRainMm: Float64Array | null;
  readonly cases: readonly {
    readonly name: string;
    readonly seasonRainMm: Float64Array;
    readonly waterUseMm: Float64Array;
    readonly transpirationMm: Float64Array;
    readonly finalRootDepthMm: Float64Array;
    readonly storedAtSowingMm: Float64Array;
    /** In the unit of `comparison.cases[].yield`. */
    readonly yield: Float64Array;
  }[];
}

/** The course of each season in a few points, from sowing on: small multiples. */
export interface Traces {
  /** Days between points; the last point is maturity's. */
  readonly stepDays: number;
  /** Points kept for each run; after `count` of them the rest stay at the last. */
  readonly points: number;
  readonly cases: readonly {
    readonly name: string;
    /** `[run * points + point]` */
    readonly frontMm: Float32Array;
    /** Evaporation and transpiration since sowing. */
    readonly waterUsedMm: Float32Array;
    readonly count: Int32Array;
  }[];
}

/** The answer over rainfall totals, from fewer runs than the answer itself. */
export interface RainFan {
  /** Sorted by total. */
  readonly points: readonly (AnswerAtRain & { readonly rainTotalMm: number })[];
  /** From where to where it opens, mm. */
  readonly fromMm: number;
  readonly toMm: number;
  readonly runs: number;
  readonly over: "year" | "season";
  readonly whole: boolean;
  readonly units: Units;
}

export interface KeptText {
  readonly what: TextKind;
  readonly text: string;
  readonly fileName: string;
  /** Which run it is, where it is one. */
  readonly said: string;
}
