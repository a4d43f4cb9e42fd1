import type { Units } from "../../quantity/kinds.ts";
import type { RotationPlan, Scenario } from "../../scenario/scenario.ts";
import { comparisonOf } from "../comparison/compare.ts";
import type { Comparison } from "../comparison/comparison.ts";
import type { AnswerCache } from "../runs/answerCache.ts";
import { runEnsemble, type Ensemble } from "../runs/ensemble.ts";
import { chainAnswerOf } from "./boilChains.ts";
import { chainsOverRain } from "./chainsOverRain.ts";
import { yearAfterYear } from "./chainEnsemble.ts";
import { moneyOfChains } from "./moneyOfChains.ts";
import { prepareChains, type ChainPreparation } from "./prepareChains.ts";
import { runChains, type ChainsAtRain } from "./runChains.ts";

/**
 * The answer of a scenario: seasons by themselves, or with a rotation years in a row.
 *
 * @param cache of an earlier answer, where there is one: saves time, changes nothing
 */
export function answerOf(
  scenario: Scenario,
  units: Units,
  onProgress?: (done: number, total: number) => void,
  cache?: AnswerCache,
): Comparison {
  const { rotation } = scenario;
  if (rotation === null) return comparisonOf(runEnsemble(scenario, onProgress, cache), units);
  return comparisonOfYears(runYears(scenario, rotation, onProgress, cache), units);
}

/** All chains of a scenario, run. */
export interface YearsInARow {
  readonly prepared: ChainPreparation;
  readonly byRain: readonly ChainsAtRain[];
  /** The crop in question year after year: a run is a link. */
  readonly ensemble: Ensemble;
}

export function runYears(
  scenario: Scenario,
  rotation: RotationPlan,
  onProgress?: (done: number, total: number) => void,
  cache?: AnswerCache,
): YearsInARow {
  const prepared = prepareChains(scenario, rotation, cache);
  return yearsInARow(prepared, runChains(prepared, onProgress));
}

export function yearsInARow(prepared: ChainPreparation, byRain: readonly ChainsAtRain[]): YearsInARow {
  return { prepared, byRain, ensemble: yearAfterYear(prepared, byRain) };
}

export function comparisonOfYears({ prepared, byRain, ensemble }: YearsInARow, units: Units): Comparison {
  const plan = ensemble.preparation.scenario.money;
  const money = plan === null ? null : moneyOfChains(prepared, byRain, plan);
  const rest = comparisonOf(ensemble, units, "with evidence", "year after year", money);
  return {
    ...rest,
    chain: { ...chainAnswerOf(prepared, byRain, units), overRain: chainsOverRain(prepared, byRain) },
  };
}
