import { comparisonOfYears, type YearsInARow } from "../../src/answer/chain/answerOf.ts";
import type { Comparison } from "../../src/answer/comparison/comparison.ts";
import type { Scenario } from "../../src/scenario/scenario.ts";
import { comparisonOf } from "../../src/answer/comparison/compare.ts";
import { readyRun } from "../../src/answer/runs/readyRun.ts";
import { runAtRain, type Ensemble } from "../../src/answer/runs/ensemble.ts";
import type { Units } from "../../src/quantity/kinds.ts";
import { fieldParts } from "../../src/report/sentences/field/fieldText.ts";
import { comparisonText } from "../../src/report/sentences/comparisonText.ts";
import { ledgerCsv, ledgerTable } from "../../src/report/tables/ledgerCsv.ts";
import type { KeptScenario } from "../../src/report/page/embedded.ts";
import { reportInput } from "../../src/report/page/reportInput.ts";
import { reportHtml } from "../../src/report/page/reportPage.ts";
import { unitsBeside, unitsOf } from "../../src/report/tables/unitsBeside.ts";
import { jsonText } from "../../src/report/tables/roundForPrint.ts";
import { runSaid } from "../../src/report/tables/runSaid.ts";
import { describeScenario } from "../../src/scenario/say/describe.ts";
import { fileNameOf } from "../state/fileName.ts";
import type { KeptText, TextKind } from "./protocol.ts";

/**
 * Texts to keep, the same as the command line writes.
 *
 * @param ensemble seasons by themselves, which a ledger is one of
 * @param answered what the answer is of: the same, or years in a row
 * @param kept what the ensemble answers, as it was written
 */
export function keptText(
  what: TextKind,
  ensemble: Ensemble,
  answered: Ensemble | YearsInARow,
  run: number,
  totalIndex: number,
  units: Units,
  kept: KeptScenario,
): KeptText {
  const { preparation } = ensemble;
  const { scenario, yearByRun, weatherYears } = preparation;
  const name = fileNameOf(scenario.name);
  switch (what) {
    case "ledger": {
      const { year } = yearByRun[run]!;
      const after = runAtRain(preparation, readyRun(preparation, run), totalIndex);
      const text = ledgerCsv(ledgerTable(after, weatherYears.weather, units));
      return {
        what,
        text,
        fileName: `${name}-${year}-ledger.csv`,
        said: runSaid(
          run,
          { year, isGenerated: scenario.weather.source.kind === "normals" },
          preparation.rainTotalsMm[totalIndex] ?? null,
          units,
        ),
      };
    }
    case "json":
      return {
        what,
        text: jsonText(unitsBeside(answerIn(answered, units), unitsOf(scenario, units))),
        fileName: `${name}-answer.json`,
        said: "the whole answer",
      };
    case "text":
      return {
        what,
        text: answerText(scenario, answerIn(answered, units), units),
        fileName: `${name}-answer.txt`,
        said: "the whole answer",
      };
    case "check":
      return {
        what,
        text: describeScenario(scenario, units),
        fileName: `${name}-inputs.txt`,
        said: "the scenario in words",
      };
    case "report":
      return {
        what,
        text: reportHtml(reportInput(answered, units, kept)),
        fileName: `${name}-report.html`,
        said: "the report",
      };
  }
}

function answerIn(answered: Ensemble | YearsInARow, units: Units): Comparison {
  return "ensemble" in answered ? comparisonOfYears(answered, units) : comparisonOf(answered, units);
}

function answerText(scenario: Scenario, comparison: Comparison, units: Units): string {
  return comparisonText(comparison, units, "deciding", fieldParts(comparison, scenario, units));
}
