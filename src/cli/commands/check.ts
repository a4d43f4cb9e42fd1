import { InputError } from "../../problem.ts";
import { jsonText } from "../../report/tables/roundForPrint.ts";
import { describeScenario, type Scenario } from "../../scenario/index.ts";
import type { RunCommand } from "../context.ts";
import { loadScenario } from "../loadScenario.ts";
import { handOver, refuseUnwritable } from "../writeFile.ts";

const format = "rootfront-check/1";

/**
 * `check FILE`: is it right, and what does it say, every default included. With `--json` stdout gets what is wrong
 * too, beside the lines on stderr; a file named with `--out` is left alone then.
 */
export const run: RunCommand = async (context, file, flags) => {
  refuseUnwritable(context.cwd, flags.out);
  let scenario: Scenario;
  try {
    scenario = await loadScenario(context, file ?? "", flags);
  } catch (error) {
    if (flags.json && error instanceof InputError)
      handOver(context, jsonText({ format, problems: error.problems }), undefined);
    throw error;
  }
  const { name, invented, cases, defaults, notes } = scenario;
  const answer = {
    format,
    problems: [],
    scenario: name,
    invented,
    cases: cases.map((one) => one.name),
    defaults,
    notes,
  };
  handOver(context, flags.json ? jsonText(answer) : describeScenario(scenario, flags.units), flags.out);
};
