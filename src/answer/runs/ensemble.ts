import type { Case, Scenario } from "../../scenario/scenario.ts";
import { sumOver } from "../../season/ledger.ts";
import type { SeasonTotals } from "../../season/season.ts";
import { dayNumber } from "../../quantity/calendar.ts";
import type { AnswerCache } from "./answerCache.ts";
import type { RunDraws } from "./draws.ts";
import { makeRunBuffers, runCases, type CaseAfterRun, type RunBuffers, type ReadyCase } from "./run.ts";
import { capacityBetweenMm, storedBetweenMm } from "./threeNumbers.ts";
import { yieldOfRun } from "./yieldOfRun.ts";
import { prepare, type Preparation } from "./prepare.ts";
import { readyRun } from "./readyRun.ts";

/** Results of all runs, kept apart by run, so that seasons can be told one by one. */
export interface Ensemble {
  readonly preparation: Preparation;
  readonly runs: number;
  readonly byRainTotal: readonly EnsembleAtRain[];
}

export interface EnsembleAtRain {
  /** What each year was scaled to; null = years as they were. */
  readonly rainTotalMm: number | null;
  /** Rain of the calendar year of sowing; null where one of those years is not whole in the record. */
  readonly annualRainMmByRun: Float64Array | null;
  readonly cases: readonly CaseRuns[];
  /** One for each case after the first, in their order: that case against the first. */
  readonly pairs: readonly PairRuns[];
}

export interface CaseRuns {
  readonly name: string;
  /** Season totals, each indexed by run. */
  readonly byRun: { readonly [K in keyof SeasonTotals]: Float64Array };
  readonly yieldKgPerHaByRun: Float64Array;
  /** 1 in runs whose season ended before the crop was ripe. */
  readonly unripeByRun: Uint8Array;
}

/** What of a pair can only be told while both soils are there; indexed by run. */
export interface PairRuns {
  readonly ruleOfThumbMmByRun: Float64Array;
  readonly storedInExtraDepthMmByRun: Float64Array;
}

export const totalNames: readonly (keyof SeasonTotals)[] = [
  "rainMm",
  "runoffMm",
  "drainageMm",
  "evaporationMm",
  "transpirationMm",
  "waterUseMm",
  "transpirationAfterFloweringMm",
  "transpirationDemandMm",
  "metBeforeFlowering",
  "metAtFlowering",
  "metAfterFlowering",
  "metAroundFlowering",
  "finalRootDepthMm",
  "storedAtSowingMm",
  "balanceErrorMm",
  "fallowRainMm",
  "fallowGainMm",
];

/** All runs of a scenario. `onProgress` hears of every run done. */
export function runEnsemble(
  scenario: Scenario,
  onProgress?: (done: number, total: number) => void,
  cache?: AnswerCache,
): Ensemble {
  const ensemble = emptyEnsemble(prepare(scenario, cache));
  const { preparation, runs, byRainTotal } = ensemble;
  const totals = byRainTotal.length;
  const buffers = makeRunBuffers("sums");
  for (let run = 0; run < runs; run++) {
    const ready = readyRun(preparation, run);
    for (let t = 0; t < totals; t++) {
      runInto(ensemble, run, t, ready, buffers);
      onProgress?.(run * totals + t + 1, runs * totals);
    }
  }
  return ensemble;
}

/** An ensemble before its first run, all results 0; `runInto` fills it in any order. */
export function emptyEnsemble(preparation: Preparation): Ensemble {
  const { scenario, rainTotalsMm, yearByRun } = preparation;
  const runs = yearByRun.length;
  const byRainTotal = rainTotalsMm.map((total, t) =>
    emptyResults(total, scenario.cases, runs, annualRain(preparation, t)),
  );
  return { preparation, runs, byRainTotal };
}

/** Runs every case of one run at one of the totals and writes the results down; what it returns lies in the buffers. */
export function runInto(
  { preparation, byRainTotal }: Ensemble,
  run: number,
  totalIndex: number,
  ready: readonly ReadyCase[],
  buffers: RunBuffers,
): CaseAfterRun[] {
  const after = runAtRain(preparation, ready, totalIndex, buffers);
  note(byRainTotal[totalIndex]!, run, after, preparation.drawsByRun[run]!, preparation.scenario);
  return after;
}

/** One run of every case at one of the rainfall totals. */
export function runAtRain(
  { weatherYears }: Preparation,
  ready: readonly ReadyCase[],
  totalIndex: number,
  buffers: RunBuffers = makeRunBuffers(),
): CaseAfterRun[] {
  return runCases(ready, weatherYears.weatherByTotal[totalIndex]!, buffers);
}

function emptyResults(
  rainTotalMm: number | null,
  cases: Scenario["cases"],
  runs: number,
  annualRainMmByRun: Float64Array | null,
): EnsembleAtRain {
  const column = () => new Float64Array(runs);
  return {
    rainTotalMm,
    annualRainMmByRun,
    cases: cases.map(({ name }: Case) => ({
      name,
      byRun: Object.fromEntries(totalNames.map((key) => [key, column()])) as CaseRuns["byRun"],
      yieldKgPerHaByRun: column(),
      unripeByRun: new Uint8Array(runs),
    })),
    pairs: cases.slice(1).map(() => ({ ruleOfThumbMmByRun: column(), storedInExtraDepthMmByRun: column() })),
  };
}

/** Rain of each run's calendar year of sowing, mm; null where one of those years is not whole. */
export function annualRain(
  { weatherYears, yearByRun }: Preparation,
  totalIndex: number,
): Float64Array | null {
  const { firstDay, days, rainMm } = weatherYears.weatherByTotal[totalIndex]!;
  const annual = new Float64Array(yearByRun.length);
  for (const [run, { year }] of yearByRun.entries()) {
    const from = dayNumber(year, 1, 1) - firstDay;
    const to = dayNumber(year + 1, 1, 1) - firstDay;
    if (from < 0 || to > days) return null;
    annual[run] = sumOver(rainMm, from, to - 1);
  }
  return annual;
}

function note(
  results: EnsembleAtRain,
  run: number,
  after: readonly CaseAfterRun[],
  { slope }: RunDraws,
  { yieldLine }: Scenario,
): void {
  const first = after[0]!.totals;
  after.forEach(({ totals, course, ordinaryEvaporationMm }, c) => {
    const kept = results.cases[c]!;
    for (const key of totalNames) kept.byRun[key][run] = totals[key];
    kept.unripeByRun[run] = course.ripe ? 0 : 1;
    kept.yieldKgPerHaByRun[run] = yieldOfRun(yieldLine, slope, totals, ordinaryEvaporationMm);
  });
  const from = first.finalRootDepthMm;
  after.slice(1).forEach((later, p) => {
    const pair = results.pairs[p]!;
    const to = later.totals.finalRootDepthMm;
    // The extra depth is soil of the case whose roots are in it.
    const deeper = to >= from ? later : after[0]!;
    pair.ruleOfThumbMmByRun[run] = capacityBetweenMm(deeper.slices, from, to);
    const { slices, waterAtSowingMmBySlice } = deeper;
    pair.storedInExtraDepthMmByRun[run] = storedBetweenMm(slices, waterAtSowingMmBySlice, from, to);
  });
}
