import { answerOf } from "../../answer/chain/answerOf.ts";
import type { Comparison } from "../../answer/comparison/comparison.ts";
import { UsageError } from "../../problem.ts";
import { briefText } from "../../report/sentences/briefText.ts";
import { comparisonText } from "../../report/sentences/comparisonText.ts";
import { fieldParts } from "../../report/sentences/field/fieldText.ts";
import { tableOfOne } from "../../report/tables/comparisonTable.ts";
import { csvText } from "../../report/tables/csvText.ts";
import { jsonText } from "../../report/tables/roundForPrint.ts";
import { unitsBeside, unitsOf } from "../../report/tables/unitsBeside.ts";
import type { Scenario } from "../../scenario/index.ts";
import type { RunCommand } from "../context.ts";
import { flagWritten, type GivenFlags } from "../flags.ts";
import { loadScenario } from "../loadScenario.ts";
import { progressOn } from "../progress.ts";
import { askQuickly, quickFlagsGiven } from "../quickQuestion.ts";
import { handOver, refuseUnwritable } from "../writeFile.ts";

/** `compare [FILE]`: the main job, on a scenario file or on a quick question. */
export const run: RunCommand = async (context, file, flags) => {
  refuseMixed(file, flags);
  refuseTwoForms(flags);
  refuseUnwritable(context.cwd, flags.out);
  const scenario =
    file === undefined ? await askQuickly(context, flags) : await loadScenario(context, file, flags);
  const progress = progressOn(context, "run");
  try {
    const comparison = answerOf(scenario, flags.units, progress.report);
    progress.end();
    handOver(context, asAsked(comparison, scenario, flags), flags.out);
  } finally {
    progress.end();
  }
};

function asAsked(comparison: Comparison, scenario: Scenario, flags: GivenFlags): string {
  const { units } = flags;
  if (flags.json) return jsonText(unitsBeside(comparison, unitsOf(scenario, units)));
  if (flags.brief) return briefText(comparison, scenario, units);
  if (flags.csv) {
    const { head, rows } = tableOfOne(comparison, units);
    return `${csvText([head, ...rows])}\n`;
  }
  const told = flags.defaults ? "all" : "deciding";
  return comparisonText(comparison, units, told, fieldParts(comparison, scenario, units));
}

/** One answer has one form; a table and JSON list no defaults beside it, or list them all. */
function refuseTwoForms(flags: GivenFlags): void {
  const [first, second] = (["json", "csv", "brief", "defaults"] as const).filter((name) => flags[name]);
  if (first !== undefined && second !== undefined)
    throw new UsageError(`${flagWritten(first)} and ${flagWritten(second)} do not go together: give one`);
}

/** A file or a quick question: one of the two, not both, not neither. */
function refuseMixed(file: string | undefined, flags: GivenFlags): void {
  const [quick] = quickFlagsGiven(flags);
  if (file !== undefined && quick !== undefined) {
    throw new UsageError(
      `${flagWritten(quick)} belongs to the quick question, which has no file; change the file instead`,
    );
  }
  if (file === undefined && quick === undefined) {
    throw new UsageError(
      'compare needs a scenario file, or a quick question: --texture "silt loam" --rain "12..14 in" --crop "grain sorghum" --deeper "2 in"',
    );
  }
}
