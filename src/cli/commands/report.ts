import { dirname, resolve } from "node:path";
import { runYears } from "../../answer/chain/answerOf.ts";
import { runEnsemble } from "../../answer/runs/ensemble.ts";
import { printable } from "../../printable.ts";
import { leftOutOf, type KeptScenario } from "../../report/page/embedded.ts";
import { reportInput } from "../../report/page/reportInput.ts";
import { reportHtml } from "../../report/page/reportPage.ts";
import { jsonText } from "../../report/tables/roundForPrint.ts";
import { readJson, resolveScenario } from "../../scenario/index.ts";
import type { RunCommand } from "../context.ts";
import { namingFlags, withFlags } from "../overrides.ts";
import { progressOn } from "../progress.ts";
import { readInput } from "../readFile.ts";
import { fileSaid } from "../standardInput.ts";
import { handOver, refuseUnwritable } from "../writeFile.ts";

/**
 * `report FILE`: the answer as one HTML page that prints on two sides, with the scenario in it. With `--json` the page
 * stands in a JSON text.
 */
export const run: RunCommand = async (context, file = "", flags) => {
  const { cwd, stderr } = context;
  refuseUnwritable(cwd, flags.out);
  const { raw, overrides } = withFlags(readJson(readInput(context, flags, cwd, file), fileSaid(file)), flags);
  const textByPath = new Map<string, string>();
  const folder = dirname(resolve(cwd, file));
  const scenario = await resolveScenario(raw, {
    fileName: fileSaid(file),
    readText: (path, field) => {
      const text = readInput(context, flags, folder, path, field);
      textByPath.set(path, text);
      return text;
    },
  }).catch((error: unknown) => {
    throw namingFlags(error, overrides);
  });
  const kept: KeptScenario = { scenario: raw, attachments: Object.fromEntries(textByPath) };
  const progress = progressOn(context, "run");
  try {
    const { rotation } = scenario;
    const answered =
      rotation === null
        ? runEnsemble(scenario, progress.report)
        : runYears(scenario, rotation, progress.report);
    const html = reportHtml(reportInput(answered, flags.units, kept));
    progress.end();
    handOver(context, flags.json ? jsonText({ format: "rootfront-report/1", html }) : html, flags.out);
  } finally {
    progress.end();
  }
  for (const name of leftOutOf(kept))
    stderr.write(`${printable(name)} is too large to go into the report: keep it beside it\n`);
  if (flags.out !== undefined && flags.out !== "-")
    stderr.write(`wrote ${printable(flags.out)}; open it in a browser to read or print it\n`);
};
