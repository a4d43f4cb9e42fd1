import { jsonText } from "../report/roundForPrint.ts";
import { describeScenario } from "../scenario/index.ts";
import type { Act } from "./commands.ts";
import { loadScenario } from "./loadScenario.ts";
import { handOver, refuseUnwritable } from "./writeFile.ts";

/** `check FILE`: is it right, and what does it say, every default included. */
export const act: Act = async (context, file, flags) => {
  refuseUnwritable(context.cwd, flags.out);
  const scenario = await loadScenario(context, file ?? "", flags);
  const { name, invented, cases, defaults, notes } = scenario;
  const answer = {
    format: "rootfront-check/1",
    scenario: name,
    invented,
    cases: cases.map((one) => one.name),
    defaults,
    notes,
  };
  handOver(context, flags.json ? jsonText(answer) : describeScenario(scenario, flags.units), flags.out);
};
