import type { Comparison } from "../../../answer/comparison/comparison.ts";
import type { Units } from "../../../quantity/kinds.ts";
import type { Scenario } from "../../../scenario/scenario.ts";
import { bullets } from "../../../wrap.ts";
import { readingsInMoney } from "./digReadingsText.ts";
import { evidenceSentences } from "./evidenceText.ts";
import { moneyLines } from "./moneyText.ts";
import { fieldAverageLines } from "./rowPositionsText.ts";
import { shownIn } from "../../tables/formatters.ts";

/** What a comparison says beside its tables, where the scenario tells of it: what was measured, the field's rows, money. */
export function fieldParts(
  { evidence, fieldAverage, money, digReadings }: Comparison,
  scenario: Scenario,
  units: Units,
): readonly (readonly string[])[] {
  const { unit } = scenario.yieldLine;
  const shown = shownIn(units);
  const measured = evidence === null ? [] : evidenceSentences(evidence, scenario, units);
  return [
    measured.length === 0
      ? []
      : ['Measured in the field ("rootfront evidence" tells all)', ...bullets(measured)],
    fieldAverage === null ? [] : fieldAverageLines(fieldAverage, unit, shown),
    money === null
      ? []
      : [
          ...moneyLines(money, unit, shown),
          ...bullets(
            money.pairs.flatMap((_, d) => readingsInMoney(digReadings, d, money.currency, unit, shown)),
          ),
        ],
  ].filter((lines) => lines.length > 0);
}
