import { middleRun, runOfYear } from "../../answer/runs/chosenRun.ts";
import { middleTotalIndex } from "../../answer/runs/middleTotal.ts";
import { prepare, type Preparation } from "../../answer/runs/prepare.ts";
import { readyRun } from "../../answer/runs/readyRun.ts";
import { runAtRain, runEnsemble } from "../../answer/runs/ensemble.ts";
import { InputError, UsageError } from "../../problem.ts";
import { ledgerCsv, ledgerObjects, ledgerTable } from "../../report/tables/ledgerCsv.ts";
import { jsonText } from "../../report/tables/roundForPrint.ts";
import { runSaid } from "../../report/tables/runSaid.ts";
import type { Scenario } from "../../scenario/index.ts";
import type { Context, RunCommand } from "../context.ts";
import type { GivenFlags } from "../flags.ts";
import { loadScenario } from "../loadScenario.ts";
import { progressOn } from "../progress.ts";
import { handOver, refuseUnwritable } from "../writeFile.ts";

/** `ledger FILE`: one run day by day. Which one it is stands on stderr, as a CSV has no place for it. */
export const run: RunCommand = async (context, file, flags) => {
  if (flags.run !== undefined && flags.year !== undefined)
    throw new UsageError("give --run or --year, not both");
  refuseUnwritable(context.cwd, flags.out);
  const scenario = await loadScenario(context, file ?? "", flags);
  const { preparation, run } = chooseRun(scenario, flags, context);
  const totalIndex = middleTotalIndex(preparation.rainTotalsMm);
  const cases = runAtRain(preparation, readyRun(preparation, run), totalIndex);
  const { weather } = preparation.weatherYears;
  const { year } = preparation.yearByRun[run]!;
  const rainTotalMm = preparation.rainTotalsMm[totalIndex] ?? null;
  if (flags.json) {
    const rows = ledgerObjects(ledgerTable(cases, weather, "metric"));
    const answer = {
      format: "rootfront-ledger/1",
      scenario: scenario.name,
      run: run + 1,
      sowingYear: year,
      rainTotalMm,
      rows,
    };
    handOver(context, jsonText(answer), flags.out);
    return;
  }
  const isGenerated = preparation.scenario.weather.source.kind === "normals";
  const which = flags.run === undefined && flags.year === undefined ? ", one near the middle" : "";
  context.stderr.write(`${runSaid(run, { year, isGenerated }, rainTotalMm, flags.units, which)}\n`);
  handOver(context, ledgerCsv(ledgerTable(cases, weather, flags.units)), flags.out);
};

/** The run asked for, counted from 0; otherwise one near the middle. */
function chooseRun(
  scenario: Scenario,
  { run, year }: GivenFlags,
  context: Context,
): { preparation: Preparation; run: number } {
  if (run === undefined && year === undefined) {
    const progress = progressOn(context, "run");
    try {
      const ensemble = runEnsemble(scenario, progress.report);
      return { preparation: ensemble.preparation, run: middleRun(ensemble) };
    } finally {
      progress.end();
    }
  }
  const preparation = prepare(scenario);
  if (run === undefined) return { preparation, run: runOfYear(preparation, year ?? 0) };
  const runs = preparation.yearByRun.length;
  if (run <= runs) return { preparation, run: run - 1 };
  throw new InputError([
    {
      field: "--run",
      expected: `a run from 1 to ${runs}`,
      found: String(run),
      mend: "take one of these, or ask for more with --years",
    },
  ]);
}
