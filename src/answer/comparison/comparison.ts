import type { FloweringLoss } from "../../crop/yield/floweringStress.ts";
import type { SeasonSlopes } from "../../crop/yield/seasonSlope.ts";
import type { DefaultUsed } from "../../scenario/scenario.ts";
import type { DigReadings } from "../dig/readings.ts";
import type { ChainAnswer } from "../chain/chainAnswer.ts";
import type { EvidenceAnswer } from "./evidenceAnswer.ts";
import type { FieldAverage } from "./fieldAverage.ts";
import type { MoneyAnswer } from "../money/money.ts";
import type { OverRainOfPair } from "../runs/overRain.ts";
import type { Spread } from "../../statistics/quantiles.ts";
import type { RootsEnd } from "./rootsOfCases.ts";
import type { ShownYield } from "./yieldUnits.ts";

/** The answer of `compare`, as `--json` gives it: `rootfront-comparison/1`. Water and depth in mm. */
export interface Comparison {
  readonly format: "rootfront-comparison/1";
  readonly scenario: string;
  readonly invented: boolean;
  readonly method: ComparisonMethod;
  /** What `cases` and `differences` stand for: the middle one of the totals asked; null = years as they were. */
  readonly rainTotalMm: number | null;
  readonly annualRainMm: Spread | null;
  readonly cases: readonly CaseAnswer[];
  readonly differences: readonly DifferenceAnswer[];
  /** Every total asked, with its own cases and differences; one entry with null where none was. */
  readonly byRainTotal: readonly AnswerAtRain[];
  /** What was measured in the field beside what water explains; null where nothing was. */
  readonly evidence: EvidenceAnswer | null;
  /** What else the answer could be by the plants dug; left out where there is nothing to tell, and year after year. */
  readonly digReadings?: DigReadings;
  /** The field as its rows are; null where their positions are not told. */
  readonly fieldAverage: FieldAverage | null;
  /** Null where no price is told. */
  readonly money: MoneyAnswer | null;
  readonly defaults: readonly DefaultUsed[];
  /** What of the input is hard to believe: told before everything else. */
  readonly doubts: readonly string[];
  readonly notes: readonly string[];
  readonly cautions: readonly string[];
  /** Where a total is the mean of years that vary, at the middle one: each year's own rain against what depth brought. */
  readonly overRain?: readonly OverRainOfPair[];
  /** First year and year after year, where the scenario has a rotation; what stands above is then year after year. */
  readonly chain?: ChainAnswer;
}

export interface AnswerAtRain {
  readonly rainTotalMm: number | null;
  /** Rain of the calendar years of sowing. */
  readonly annualRainMm: Spread | null;
  readonly cases: readonly CaseAnswer[];
  readonly differences: readonly DifferenceAnswer[];
}

export interface ComparisonMethod {
  readonly referenceEt: string;
  readonly uptake: string;
  readonly evaporation: string;
  /** What the rain is, in words. */
  readonly rain: string;
  readonly rainTotalOver: "year" | "season";
  /** Only where a total is the mean that years vary about; else each of them is scaled to it. */
  readonly rainTotalIs?: "long-run mean";
  readonly runs: number;
  readonly seed: number;
  /** How many different years were there to sow in; fewer than `runs` when a record is gone through again. */
  readonly sowingYears: number;
  readonly firstSowingYear: number;
  readonly lastSowingYear: number;
  readonly densityReading: "range" | "strict" | "usual" | "lenient";
  /** Of available water capacity, as words: a share of it, or of the soil's volume layer by layer. */
  readonly availableCapacitySpread: string;
  readonly deepWaterSd: number;
  /** The depth over which uptake falls to half lies between it / (1 + this) and it x (1 + this). */
  readonly deepUptakeSpread: number;
  readonly yieldLine: {
    readonly source: string;
    readonly slopeKgPerHaPerMm: { readonly low: number; readonly middle: number; readonly high: number };
    readonly thresholdMm: number;
    readonly capKgPerHa: number | null;
    /** Where the cap comes from; null where it was given, or there is none. */
    readonly capSource: string | null;
    /** Where the line holds, in words; null for a line of the user's own. */
    readonly region: string | null;
    /** What water beyond a season's ordinary use is worth; null = the line's slope. */
    readonly seasons: SeasonSlopes | null;
    /** What stress around flowering takes off; null where nothing is published. */
    readonly floweringLoss: FloweringLoss | null;
    /** kg/ha in one of the units that yields are given in. */
    readonly kgPerHaPerUnit: number;
    readonly storedInchNote: string | null;
  };
  /** Extra water from which a season counts as one in which the depth mattered. */
  readonly matteredFromMm: number;
}

/** Medians over the runs, each by itself; `balanceErrorMm` is the largest daily residual of all. */
export interface CaseAnswer {
  readonly name: string;
  readonly finalRootDepthMm: number;
  /** What stopped the roots in the middle of the runs; null where they ended by themselves, or at a depth stated for them. */
  readonly rootsEndAt: RootsEnd | null;
  /** Share of the runs in which the roots ended above the depth stated for them; null where none is stated. */
  readonly shortOfStatedShare: number | null;
  readonly transpirationMm: number;
  readonly evaporationMm: number;
  readonly runoffMm: number;
  readonly drainageMm: number;
  readonly waterUseMm: number;
  readonly seasonRainMm: number;
  readonly storedAtSowingMm: number;
  /** Share of the fallow's precipitation that was in the soil at sowing; null without fallow. */
  readonly fallowStorageShare: number | null;
  readonly balanceErrorMm: number;
  /** Share of the runs whose season ended before the crop was ripe. */
  readonly unripeShare: number;
  /** Share of what a fully watered crop would have transpired. */
  readonly demandMet: number;
  /** The same, over the six weeks around flowering. */
  readonly demandMetAroundFlowering: number;
  /** Share of the runs in which that was a quarter or less: there the yield line does not hold. */
  readonly starvedShare: number;
  readonly yield: YieldSpread;
}

export interface YieldSpread extends Spread {
  readonly unit: ShownYield["unit"];
}

/** One case against the first, run by run over the same weather and draws. */
export interface DifferenceAnswer {
  readonly from: string;
  readonly to: string;
  /** Whether the two cases are the same but for how deep their roots go. */
  readonly onlyRootsDiffer: boolean;
  readonly extraDepthMm: number;
  readonly ruleOfThumbMm: number;
  readonly storedInExtraDepthMm: number;
  /** Taken up by the crop; more evaporation from the soil is no use to it and counts in neither water nor yield. */
  readonly extraWaterUsedMm: Spread;
  /** Share of the extra transpiration that came after flowering; null where there was hardly any, and of sod. */
  readonly shareAfterFlowering: number | null;
  /** Share of the seasons with at least `method.matteredFromMm` of extra water used. */
  readonly shareOfSeasonsItMattered: number;
  readonly extraYield: YieldSpread;
  /** Share of the runs in which it pays; only where money is told. */
  readonly chanceItPays?: number;
}

/** An answer before its cautions. */
export type Uncautioned = Omit<Comparison, "cautions">;
