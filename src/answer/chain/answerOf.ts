import type { Units } from "../../quantity/kinds.ts";
import type { Scenario } from "../../scenario/scenario.ts";
import { comparisonOf } from "../comparison/compare.ts";
import type { Comparison } from "../comparison/comparison.ts";
import type { AnswerCache } from "../runs/answerCache.ts";
import { runEnsemble } from "../runs/ensemble.ts";
import { chainAnswerOf } from "./boilChains.ts";
import { chainsOverRain } from "./chainsOverRain.ts";
import { yearAfterYear } from "./chainEnsemble.ts";
import { moneyOfChains } from "./moneyOfChains.ts";
import { prepareChains } from "./prepareChains.ts";
import { runChains } from "./runChains.ts";

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
  const prepared = prepareChains(scenario, rotation, cache);
  const byRain = runChains(prepared, onProgress);
  const money = scenario.money === null ? null : moneyOfChains(prepared, byRain, scenario.money);
  const rest = comparisonOf(
    yearAfterYear(prepared, byRain),
    units,
    "with evidence",
    "year after year",
    money,
  );
  return {
    ...rest,
    chain: { ...chainAnswerOf(prepared, byRain, units), overRain: chainsOverRain(prepared, byRain) },
  };
}
