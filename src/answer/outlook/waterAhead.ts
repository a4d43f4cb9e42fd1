import { spreadOf } from "../../statistics/quantiles.ts";
import type { Scenario } from "../../scenario/scenario.ts";
import { storedBetweenMm } from "../runs/threeNumbers.ts";
import type { CaseAfterRun } from "../runs/run.ts";
import { runOutlook, type OutlookRuns } from "./outlookRuns.ts";

/** Available water within the roots of one case by day, over the runs, mm. */
export interface WaterAhead {
  readonly p10: readonly number[];
  readonly p50: readonly number[];
  readonly p90: readonly number[];
}

export interface OutlookByDay {
  readonly runs: OutlookRuns;
  /** Day number of the first value. */
  readonly firstDay: number;
  /** Place of the last known day among the values. */
  readonly today: number;
  readonly byCase: readonly WaterAhead[];
}

/** So many days before today are told too. */
const daysBefore = 30;

/** An outlook with the water within reach day by day: as it was, then as the other years may have it, until half of them are ripe. */
export function outlookByDay(
  scenario: Scenario,
  onProgress?: (done: number, total: number) => void,
): OutlookByDay {
  const valuesByCase: number[][][] = scenario.cases.map(() => []);
  let first: number | null = null;
  let [today, runsDone] = [0, 0];
  const noteRun = (after: readonly CaseAfterRun[], lastDayByCase: readonly number[]): void => {
    // All cases are told from one day on: that of the one sown last, or thirty days ago.
    today = Math.min(daysBefore, ...after.map(({ course }, c) => lastDayByCase[c]! - course.sowingDay));
    runsDone += 1;
    after.forEach(({ slices, ledger, course }, c) => {
      const water = ledger.waterMmByDayAndSlice;
      if (water === null) throw new Error("the ledger kept no water by slice");
      const from = lastDayByCase[c]! - today;
      for (let day = from; day <= course.maturityDay; day++) {
        const tonight = water.subarray(day * slices.count, (day + 1) * slices.count);
        (valuesByCase[c]![day - from] ??= []).push(storedBetweenMm(slices, tonight, 0, ledger.frontMm[day]!));
      }
    });
  };
  const runs = runOutlook(scenario, null, onProgress, (after, season, lastDayByCase) => {
    noteRun(after, lastDayByCase);
    first ??= season.day - today;
  });
  // What was measured today goes before what was simulated, as in the outlook itself.
  valuesByCase.forEach((days, c) => {
    days[today] = Array.from(runs.stateByCase[c]!.inRootsMm);
  });
  return {
    runs,
    firstDay: first ?? runs.season.day,
    today,
    byCase: valuesByCase.map((days) => {
      const told = days.filter((values) => 2 * values.length >= runsDone);
      const spreads = told.map((values) => spreadOf(Float64Array.from(values)));
      return {
        p10: spreads.map(({ p10 }) => p10),
        p50: spreads.map(({ p50 }) => p50),
        p90: spreads.map(({ p90 }) => p90),
      };
    }),
  };
}
