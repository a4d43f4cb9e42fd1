import { comparisonOf } from "../../answer/comparison/compare.ts";
import { comparisonOfYears, type YearsInARow } from "../../answer/chain/answerOf.ts";
import { linksCounted } from "../../answer/chain/chainEnsemble.ts";
import { walkChain } from "../../answer/chain/walkedChain.ts";
import type { Comparison } from "../../answer/comparison/comparison.ts";
import { middleRun } from "../../answer/runs/chosenRun.ts";
import { middleTotalIndex } from "../../answer/runs/middleTotal.ts";
import { readyRun } from "../../answer/runs/readyRun.ts";
import { runAtRain, type Ensemble } from "../../answer/runs/ensemble.ts";
import type { Preparation } from "../../answer/runs/prepare.ts";
import type { CaseAfterRun } from "../../answer/runs/run.ts";
import type { Units } from "../../quantity/kinds.ts";
import type { Scenario } from "../../scenario/scenario.ts";
import { shownIn, type Formatters } from "../tables/formatters.ts";
import type { KeptScenario } from "./embedded.ts";

/** All that a report tells of; each section takes from it what it needs. */
export interface ReportInput {
  readonly scenario: Scenario;
  readonly comparison: Comparison;
  readonly season: TypicalSeason;
  readonly shown: Formatters;
  /** The scenario as it was written, to be opened again. */
  readonly kept: KeptScenario;
}

/** A part of the report: its heading and what stands under it, as markup; null where there is nothing to tell. */
export type Section = (input: ReportInput) => { readonly heading: string; readonly body: string } | null;

/** The run in the middle, day by day, as far as it is drawn. Days are numbers since 1970-01-01. */
export interface TypicalSeason {
  /** Counted from 1. */
  readonly run: number;
  readonly year: number;
  readonly cases: readonly {
    readonly sowingDay: number;
    readonly floweringDay: number;
    readonly maturityDay: number;
    /** From sowing to maturity, by day. */
    readonly frontMm: readonly number[];
  }[];
}

/** Of seasons by themselves, or of years in a row. */
export function reportInput(answered: Ensemble | YearsInARow, units: Units, kept: KeptScenario): ReportInput {
  const inARow = "ensemble" in answered;
  const { preparation } = inARow ? answered.ensemble : answered;
  return {
    scenario: preparation.scenario,
    comparison: inARow ? comparisonOfYears(answered, units) : comparisonOf(answered, units),
    season: inARow ? typicalYear(answered) : typicalSeason(preparation, middleRun(answered)),
    shown: shownIn(units),
    kept,
  };
}

function typicalSeason(preparation: Preparation, run: number): TypicalSeason {
  const totalIndex = middleTotalIndex(preparation.rainTotalsMm);
  const after = runAtRain(preparation, readyRun(preparation, run), totalIndex);
  return seasonOf(preparation, run, after);
}

/** The year in the middle, each case with the water that its own roots left. */
function typicalYear({ prepared, byRain, ensemble }: YearsInARow): TypicalSeason {
  const totalIndex = middleTotalIndex(byRain.map(({ rainTotalMm }) => rainTotalMm));
  const run = middleRun(ensemble);
  const middle = linksCounted(prepared, byRain[totalIndex]!.links)[run]!;
  let found: TypicalSeason | null = null;
  walkChain(prepared, middle, totalIndex, ({ link, own }) => {
    if (link.year === middle.year) found = seasonOf(ensemble.preparation, run, own);
  });
  if (found === null) throw new Error("the year in the middle is not in its chain");
  return found;
}

function seasonOf(preparation: Preparation, run: number, after: readonly CaseAfterRun[]): TypicalSeason {
  const { firstDay } = preparation.weatherYears.weather;
  return {
    run: run + 1,
    year: preparation.yearByRun[run]!.year,
    cases: after.map(({ firstIndex, course, ledger }) => {
      const begins = firstDay + firstIndex;
      const { sowingDay, floweringDay, maturityDay } = course;
      return {
        sowingDay: begins + sowingDay,
        floweringDay: begins + floweringDay,
        maturityDay: begins + maturityDay,
        frontMm: Array.from(ledger.frontMm.subarray(sowingDay, maturityDay + 1)),
      };
    }),
  };
}
