import { comparisonOf } from "../../answer/comparison/compare.ts";
import type { Comparison } from "../../answer/comparison/comparison.ts";
import { middleRun } from "../../answer/runs/chosenRun.ts";
import { middleTotalIndex } from "../../answer/runs/middleTotal.ts";
import { readyRun } from "../../answer/runs/readyRun.ts";
import { runAtRain, type Ensemble } from "../../answer/runs/ensemble.ts";
import type { Preparation } from "../../answer/runs/prepare.ts";
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

export function reportInput(ensemble: Ensemble, units: Units, kept: KeptScenario): ReportInput {
  const { preparation } = ensemble;
  return {
    scenario: preparation.scenario,
    comparison: comparisonOf(ensemble, units),
    season: typicalSeason(preparation, middleRun(ensemble)),
    shown: shownIn(units),
    kept,
  };
}

function typicalSeason(preparation: Preparation, run: number): TypicalSeason {
  const totalIndex = middleTotalIndex(preparation.rainTotalsMm);
  const { firstDay } = preparation.weatherYears.weather;
  const after = runAtRain(preparation, readyRun(preparation, run), totalIndex);
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
