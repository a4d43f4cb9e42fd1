import { comparisonOf } from "../../answer/comparison/compare.ts";
import { runEnsemble } from "../../answer/runs/ensemble.ts";
import { InputError } from "../../problem.ts";
import { evidenceText } from "../../report/sentences/field/evidenceText.ts";
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
    const { evidence, invented, doubts, cautions } = comparisonOf(
      runEnsemble(scenario, progress.report),
      flags.units,
    );
    progress.end();
    if (evidence === null) refuseNothing();
    const text = flags.json
      ? jsonText({
          format: "rootfront-evidence/1",
          scenario: scenario.name,
          invented,
          ...(unitsBeside(evidence, unitsOf(scenario, flags.units)) as object),
          doubts,
          notes: scenario.notes,
          cautions,
        })
      : evidenceText(evidence, scenario, flags.units, cautions, doubts);
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
