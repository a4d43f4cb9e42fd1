import type { Spread } from "../../statistics/quantiles.ts";
import type { ComparisonMethod, DifferenceAnswer, YieldSpread } from "../comparison/comparison.ts";
import type { DefaultUsed } from "../../scenario/scenario.ts";

/** The answer of `outlook`, as `--json` gives it: `rootfront-outlook/1`. Water and depth in mm. */
export interface Outlook {
  readonly format: "rootfront-outlook/1";
  readonly scenario: string;
  readonly invented: boolean;
  /** The last day known, such as 2012-07-04. */
  readonly date: string;
  /** Calendar years of the day that follows it. */
  readonly otherYears: { readonly count: number; readonly first: number; readonly last: number };
  /** Where each case stands on the evening of that day. */
  readonly now: readonly CaseNow[];
  /** How the season may end, in the order of the cases. */
  readonly end: readonly CaseEnd[];
  /** Each case after the first against it. */
  readonly differences: readonly OutlookDifference[];
  readonly method: ComparisonMethod;
  readonly defaults: readonly DefaultUsed[];
  readonly notes: readonly string[];
  readonly cautions: readonly string[];
}

export interface CaseNow {
  readonly name: string;
  readonly crop: string;
  readonly sown: string;
  /** See `stageNames`. */
  readonly stage: string;
  /** Counted from sowing, the day of sowing being 1. */
  readonly dayOfSeason: number;
  /** Days from this one to maturity, over the other years; 0 on the last day of the season. */
  readonly daysToMaturity: Spread;
  readonly rootFrontMm: Spread;
  /** The day on which plants of this case were dug, and the front taken from them; null: as simulated. */
  readonly dugOn: string | null;
  /** The day on which its water was measured; null: as simulated from the start of the run. */
  readonly waterMeasuredOn: string | null;
  readonly takenUpSoFarMm: number;
  /** Share of what a fully watered crop would have transpired since sowing. */
  readonly demandMetSoFar: number;
  readonly availableInRootsMm: Spread;
  readonly availableBelowRootsMm: Spread;
  readonly layers: readonly LayerNow[];
  /** Mean demand of the next seven days, mm a day; of fewer where the crop is ripe before. */
  readonly usualDemandMmPerDay: number;
  /** Whole days that the water within the roots lasts at the usual demand; null = until the crop is ripe. */
  readonly lastsDays: { readonly [K in keyof Spread]: number | null };
}

/** Medians over the runs. */
export interface LayerNow {
  readonly name: string;
  readonly topMm: number;
  readonly bottomMm: number;
  readonly availableMm: number;
  /** Of it, what lies above the root front. */
  readonly inRootsMm: number;
}

export interface CaseEnd {
  readonly name: string;
  /** From sowing to maturity, and of it what is still to come. */
  readonly takenUpMm: Spread;
  readonly takenUpFromNowMm: Spread;
  readonly finalRootDepthMm: number;
  readonly yield: YieldSpread;
}

export interface OutlookDifference extends Pick<
  DifferenceAnswer,
  "from" | "to" | "onlyRootsDiffer" | "extraWaterUsedMm" | "extraYield"
> {
  /** In water within the roots now. */
  readonly extraInRootsNowMm: Spread;
  readonly extraWaterFromNowMm: Spread;
}
