import { printable } from "../../printable.ts";
import { jsonText } from "../../report/tables/roundForPrint.ts";
import { starterScenario } from "../../scenario/index.ts";
import type { RunCommand } from "../context.ts";
import { handOver, refuseExisting, refuseUnwritable } from "../writeFile.ts";

/**
 * `new [FILE]`: a starter scenario, commented by example. Never writes over a file. What stdout gets with `--json` is
 * JSON: the scenario, or the name of the file that holds it.
 */
export const run: RunCommand = async (context, file, flags) => {
  if (file === undefined || file === "-") return handOver(context, starterScenario(), undefined);
  refuseUnwritable(context.cwd, file, file);
  refuseExisting(context.cwd, file, file);
  handOver(context, starterScenario(), file, file);
  if (flags.json) return handOver(context, jsonText({ format: "rootfront-new/1", file }), undefined);
  const said = printable(file);
  context.stderr.write(`wrote ${said}; look at it with: rootfront check ${said}\n`);
};
