import { prepare, readyRun, runAtRain } from "../../src/answer/ensemble.ts";
import { newMemory, type Memory } from "../../src/answer/memory.ts";
import { generatedYears, yearsOfRun } from "../../src/answer/weatherYears.ts";
import { middleTotalIndex } from "../../src/answer/middleTotal.ts";
import type { Units } from "../../src/quantity/kinds.ts";
import type { Scenario } from "../../src/scenario/scenario.ts";
import type { Answer, SeasonShown, ShownRun } from "./protocol.ts";
import { answerShown, atMiddleTotal } from "./answerShown.ts";
import { runNext, seasonOf, startWork } from "./goodWork.ts";
import { seasonShown } from "./seasonShown.ts";

/**
 * The season on show before reference ET is worked out for all years: of the generated years only the run's own are taken.
 * Reference ET looks at the whole record for whether the place is dry, so the exact season, which follows, may differ a
 * little. Null where no years are generated.
 */
export function earlySeason(
  scenario: Scenario,
  shown: ShownRun,
  typicalRun: number,
  units: Units,
  memory: Memory,
): SeasonShown | null {
  const { ensemble, weather, site, cases } = scenario;
  if (weather.source.kind !== "normals") return null;
  const run = Math.min(shown.run ?? typicalRun, ensemble.years - 1);
  const years = generatedYears(weather, weather.source.normals, site, cases, ensemble, memory);
  const record = yearsOfRun(years, cases, run);
  const ofRun = prepare(
    {
      ...scenario,
      weather: { ...weather, source: { kind: "record", record, normals: null } },
      ensemble: { ...ensemble, years: run + 1 },
    },
    newMemory(),
  );
  // Draws are those of the run; its year is the first there is.
  const preparation = { ...ofRun, yearByRun: ofRun.yearByRun.map(() => ofRun.weatherYears.sowingYears[0]!) };
  const total = shown.totalIndex ?? middleTotalIndex(weather.rainTotalsMm);
  const totalIndex = total < preparation.rainTotalsMm.length ? total : 0;
  const after = runAtRain(preparation, readyRun(preparation, run), totalIndex);
  return { ...seasonShown(preparation, after, run, totalIndex, units), runs: ensemble.years };
}

/** Runs of the first answer of all. */
const firstRuns = 25;

/**
 * The first answer of all, for a page that has nothing to show yet: from the first runs at the middle total, and of generated
 * years those alone. Null where all runs are hardly more.
 */
export function firstAnswer(
  scenario: Scenario,
  shown: ShownRun,
  units: Units,
  memory: Memory,
): { readonly season: SeasonShown; readonly answer: Answer } | null {
  const { years } = scenario.ensemble;
  if (years < 2 * firstRuns) return null;
  const few = { ...scenario, ensemble: { ...scenario.ensemble, years: firstRuns } };
  // A record is read once for both; of generated years there are fewer here.
  const own = scenario.weather.source.kind === "record" ? memory : newMemory();
  const work = startWork(0, prepare(few, own), units, shown, 0);
  while (!runNext(work));
  const answer = answerShown(atMiddleTotal(work.ensemble), work.traces, units, "first runs");
  return { season: { ...seasonOf(work), runs: years }, answer };
}
