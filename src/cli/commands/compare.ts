import { answerOf } from "../../answer/chain/answerOf.ts";
import { UsageError } from "../../problem.ts";
import { comparisonText } from "../../report/sentences/comparisonText.ts";
import { fieldParts } from "../../report/sentences/field/fieldText.ts";
import { jsonText } from "../../report/tables/roundForPrint.ts";
import { unitsBeside, unitsOf } from "../../report/tables/unitsBeside.ts";
import type { RunCommand } from "../context.ts";
import { flagWritten, type GivenFlags } from "../flags.ts";
import { loadScenario } from "../loadScenario.ts";
import { progressOn } from "../progress.ts";
import { askQuickly, quickFlagsGiven } from "../quickQuestion.ts";
import { handOver, refuseUnwritable } from "../writeFile.ts";

/** `compare [FILE]`: the main job, on a scenario file or on a quick question. */
export const run: RunCommand = async (context, file, flags) => {
  refuseMixed(file, flags);
  refuseUnwritable(context.cwd, flags.out);
  const scenario =
    file === undefined ? await askQuickly(context, flags) : await loadScenario(context, file, flags);
  const progress = progressOn(context, "run");
  try {
    const comparison = answerOf(scenario, flags.units, progress.report);
    progress.end();
    const text = flags.json
      ? jsonText(unitsBeside(comparison, unitsOf(scenario, flags.units)))
      : comparisonText(
          comparison,
          flags.units,
          file === undefined ? "each" : "short",
          fieldParts(comparison, scenario, flags.units),
        );
    handOver(context, text, flags.out);
  } finally {
    progress.end();
  }
};

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
