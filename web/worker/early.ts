import { prepare, readyRun, runAtRain } from "../../src/answer/ensemble.ts";
import { newMemory } from "../../src/answer/memory.ts";
import { middleTotalIndex } from "../../src/answer/compare.ts";
import type { Units } from "../../src/quantity/kinds.ts";
import type { Scenario } from "../../src/scenario/scenario.ts";
import type { Answer, SeasonShown, ShownRun } from "./protocol.ts";
import { answerShown, atMiddleTotal } from "./answerShown.ts";
import { runNext, seasonOf, startWork } from "./goodWork.ts";
import { seasonShown } from "./seasonShown.ts";

/** Above this share of all years it is no gain to generate only those that are needed. */
const mostYears = 0.7;

/**
 * The season on show before all years have been generated: the first years come out the same however many are asked, so only
 * those up to the run's own are made. Reference ET looks at the whole record for whether the place is dry, so the exact
 * season, which follows, may differ a little. Null where there is nothing to gain.
 */
export function earlySeason(
  scenario: Scenario,
  shown: ShownRun,
  typicalRun: number,
  units: Units,
): SeasonShown | null {
  const { ensemble, weather } = scenario;
  const run = shown.run ?? typicalRun;
  if (run + 1 > mostYears * ensemble.years) return null;
  const preparation = prepare({ ...scenario, ensemble: { ...ensemble, years: run + 1 } }, newMemory());
  const total = shown.totalIndex ?? middleTotalIndex(weather.rainTotalsMm);
  const totalIndex = total < preparation.rainTotalsMm.length ? total : 0;
  const after = runAtRain(preparation, readyRun(preparation, run), totalIndex);
  return { ...seasonShown(preparation, after, run, totalIndex, units), runs: ensemble.years };
}

/** Runs of the first answer of all. */
const firstRuns = 40;

/**
 * The first answer of all, for a page that has nothing to show yet: from the first runs at the middle total, and of generated
 * years those alone. Null where all runs are hardly more.
 */
export function firstAnswer(
  scenario: Scenario,
  shown: ShownRun,
  units: Units,
): { readonly season: SeasonShown; readonly answer: Answer } | null {
  const { years } = scenario.ensemble;
  if (years < 2 * firstRuns) return null;
  const few = { ...scenario, ensemble: { ...scenario.ensemble, years: firstRuns } };
  const work = startWork(0, prepare(few, newMemory()), units, shown, 0);
  while (!runNext(work));
  const answer = answerShown(atMiddleTotal(work.ensemble), work.traces, units, "first runs");
  return { season: { ...seasonOf(work), runs: years }, answer };
}
