import { comparisonOf } from "../../answer/comparison/compare.ts";
import { runEnsemble } from "../../answer/runs/ensemble.ts";
import { InputError } from "../../problem.ts";
import { evidenceText } from "../../report/sentences/field/evidenceText.ts";
import { readingsSaid } from "../../report/sentences/firstLine.ts";
import { shownIn } from "../../report/tables/formatters.ts";
import { jsonText } from "../../report/tables/roundForPrint.ts";
import { unitsBeside, unitsOf } from "../../report/tables/unitsBeside.ts";
import type { RunCommand } from "../context.ts";
import { loadScenario } from "../loadScenario.ts";
import { progressOn } from "../progress.ts";
import { handOver, refuseUnwritable } from "../writeFile.ts";

/** `evidence FILE`: what was measured in the field, how sure it is, and how much of it can be water. */
export const run: RunCommand = async (context, file, flags) => {
  refuseUnwritable(context.cwd, flags.out);
  const scenario = await loadScenario(context, file ?? "", flags);
  const progress = progressOn(context, "run");
  try {
    const comparison = comparisonOf(runEnsemble(scenario, progress.report), flags.units);
    const { evidence, invented, doubts, cautions, digReadings } = comparison;
    progress.end();
    if (evidence === null) refuseNothing();
    const text = flags.json
      ? jsonText({
          format: "rootfront-evidence/1",
          scenario: scenario.name,
          invented,
          ...(unitsBeside(
            { ...evidence, ...(digReadings === undefined ? {} : { digReadings }) },
            unitsOf(scenario, flags.units),
          ) as object),
          doubts,
          notes: scenario.notes,
          cautions,
        })
      : evidenceText(
          evidence,
          scenario,
          flags.units,
          cautions,
          doubts,
          readingsSaid(comparison, shownIn(flags.units)),
        );
    handOver(context, text, flags.out);
  } finally {
    progress.end();
  }
};

function refuseNothing(): never {
  throw new InputError([
    {
      field: "evidence",
      expected: "plants dug (rootDepths), counts or strips, or cores and probes with the soil",
      found: "none of them",
      mend: 'write what was measured, such as "evidence": { "rootDepths": [{ "case": "...", "date": "2021-07-25", "depths": ["31 in", "28 in"] }] }',
    },
  ]);
}
