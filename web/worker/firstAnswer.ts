import { prepare } from "../../src/answer/runs/prepare.ts";
import { newAnswerCache, type AnswerCache } from "../../src/answer/runs/answerCache.ts";
import type { Units } from "../../src/quantity/kinds.ts";
import type { Scenario } from "../../src/scenario/scenario.ts";
import { answerShown, atMiddleTotal } from "./answerShown.ts";
import { runNext, seasonOf, startJob } from "./job.ts";
import type { Answer, SeasonShown, ShownRun } from "./protocol.ts";

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
  cache: AnswerCache,
): { readonly season: SeasonShown; readonly answer: Answer } | null {
  const { years } = scenario.ensemble;
  if (years < 2 * firstRuns) return null;
  const few = { ...scenario, ensemble: { ...scenario.ensemble, years: firstRuns } };
  // A record is read once for both; of generated years there are fewer here.
  const own = scenario.weather.source.kind === "record" ? cache : newAnswerCache();
  const job = startJob(0, prepare(few, own), units, shown, 0);
  while (!runNext(job));
  const answer = answerShown(atMiddleTotal(job.ensemble), job.traces, units, "first runs");
  return { season: { ...seasonOf(job), runs: years }, answer };
}
