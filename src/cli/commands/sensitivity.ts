import { usualBudget, yearsFor } from "../../answer/sensitivity/budget.ts";
import { sensitivityGround } from "../../answer/sensitivity/ground.ts";
import {
  planSensitivity,
  sensitivitySteps,
  type Sensitivity,
  type SensitivityPlan,
} from "../../answer/sensitivity/sensitivity.ts";
import { InputError, UsageError } from "../../problem.ts";
import { sensitivityText } from "../../report/sentences/sensitivityText.ts";
import { csvText } from "../../report/tables/csvText.ts";
import { jsonText } from "../../report/tables/roundForPrint.ts";
import { sensitivityJson } from "../../report/tables/sensitivityShown.ts";
import { sensitivityTable } from "../../report/tables/sensitivityTable.ts";
import { unitsOf } from "../../report/tables/unitsBeside.ts";
import type { Scenario } from "../../scenario/index.ts";
import { exitCodes, type Context, type RunCommand } from "../context.ts";
import { flagWritten, type GivenFlags } from "../flags.ts";
import { loadScenario } from "../loadScenario.ts";
import { progressOn } from "../progress.ts";
import { handOver, refuseUnwritable } from "../writeFile.ts";

/** `sensitivity FILE`: what moves the answer. How much will be run is told before; it may be stopped on the way. */
export const run: RunCommand = async (context, file, flags) => {
  if (flags.json && flags.csv)
    throw new UsageError(`${flagWritten("json")} and ${flagWritten("csv")} do not go together: give one`);
  refuseUnwritable(context.cwd, flags.out);
  const scenario = await loadScenario(context, file ?? "", flags);
  refuseOneCase(scenario);
  const ground = sensitivityGround(scenario, flags.years ?? yearsFor(scenario.cases.length));
  const budget = flags.budget ?? usualBudget;
  const plan = planSensitivity(ground, budget);
  refuseNothing(plan);
  refuseSmall(plan, budget);
  context.stderr.write(
    `rootfront: ${plan.factors.length} factors, ${plan.cases} cases, ${plan.years} weather years: ${plan.seasons} seasons to run\n`,
  );
  const found = await runPlan(context, plan);
  if (found === null) return exitCodes.stopped;
  handOver(context, asAsked(found, scenario, flags), flags.out);
};

/** Between two settings the process hears of signals, so often. */
const heedMs = 50;

/** Null where someone asks to stop; that is told in one line. */
async function runPlan(context: Context, plan: SensitivityPlan): Promise<Sensitivity | null> {
  const stop = context.stopsWhenAsked?.();
  const progress = progressOn(context, "season");
  const steps = sensitivitySteps(plan);
  let heeded = Date.now();
  try {
    for (;;) {
      const next = steps.next();
      if (next.done === true) return next.value;
      const { done, total } = next.value;
      progress.report(done, total);
      if (Date.now() - heeded < heedMs) continue;
      await new Promise(setImmediate);
      heeded = Date.now();
      if (stop?.aborted !== true) continue;
      progress.end();
      context.stderr.write(`rootfront: stopped after ${done} of ${total} seasons; nothing is written\n`);
      return null;
    }
  } finally {
    progress.end();
  }
}

function asAsked(found: Sensitivity, scenario: Scenario, { json, csv, units }: GivenFlags): string {
  const { seed } = scenario.ensemble;
  const shown = unitsOf(scenario, units);
  if (json) return jsonText(sensitivityJson(found, scenario, seed, shown));
  if (csv) {
    const { head, rows } = sensitivityTable(found, scenario.name, shown);
    return `${csvText([head, ...rows])}\n`;
  }
  return sensitivityText(found, scenario, seed, shown);
}

function refuseOneCase({ cases }: Scenario): void {
  if (cases.length > 1) return;
  throw new InputError([
    {
      field: "cases",
      expected: "two cases or more, whose difference can be moved",
      found: "one",
      mend: 'add one, such as {"name": "two inches deeper", "rootingDepth": "+2 in"}',
    },
  ]);
}

function refuseNothing({ factors, leftOut }: SensitivityPlan): void {
  if (factors.length > 0) return;
  throw new InputError([
    {
      field: "ensemble",
      expected: "something that is not known exactly",
      found: `no spread in anything: ${leftOut.map(({ name }) => name).join(", ")}`,
      mend: "leave the spreads of ensemble out to take the usual ones",
    },
  ]);
}

function refuseSmall({ rows, leastSeasons, factors, cases, years }: SensitivityPlan, budget: number): void {
  if (rows > 0) return;
  throw new UsageError(
    `${flagWritten("budget")}: expected at least ${leastSeasons} seasons for ${factors.length} factors, ${cases} cases and ${years} weather years, found ${budget}; give more, or fewer years by ${flagWritten("years")}`,
  );
}
