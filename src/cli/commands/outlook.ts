import { outlookOf } from "../../answer/outlook/outlookOf.ts";
import { runOutlook } from "../../answer/outlook/outlookRuns.ts";
import { outlookText } from "../../report/sentences/outlookText.ts";
import { jsonText } from "../../report/tables/roundForPrint.ts";
import { unitsBeside, unitsOf } from "../../report/tables/unitsBeside.ts";
import type { RunCommand } from "../context.ts";
import { flagWritten } from "../flags.ts";
import { loadScenario } from "../loadScenario.ts";
import { progressOn } from "../progress.ts";
import { handOver, refuseUnwritable } from "../writeFile.ts";

/** `outlook FILE`: the season under way, as far as the record goes or up to `--date`, and how it may end. */
export const run: RunCommand = async (context, file, flags) => {
  refuseUnwritable(context.cwd, flags.out);
  const scenario = await loadScenario(context, file ?? "", flags);
  const asked = flags.date === undefined ? null : { day: flags.date, field: flagWritten("date") };
  const progress = progressOn(context, "run");
  try {
    const outlook = outlookOf(runOutlook(scenario, asked, progress.report), scenario, flags.units);
    progress.end();
    handOver(
      context,
      flags.json
        ? jsonText(unitsBeside(outlook, unitsOf(scenario, flags.units)))
        : outlookText(outlook, flags.units),
      flags.out,
    );
  } finally {
    progress.end();
  }
};
