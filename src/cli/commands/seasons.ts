import { seasonsOf, type Seasons } from "../../answer/chain/seasonsOf.ts";
import { nearestName } from "../../nearestName.ts";
import { InputError, UsageError } from "../../problem.ts";
import { csvText } from "../../report/tables/csvText.ts";
import { ledgerObjects } from "../../report/tables/ledgerCsv.ts";
import { jsonText } from "../../report/tables/roundForPrint.ts";
import {
  columnNamed,
  onlyColumns,
  seasonsTable,
  sortedBy,
  type SeasonsTable,
} from "../../report/tables/seasonsTable.ts";
import { wrap } from "../../wrap.ts";
import type { Context, RunCommand } from "../context.ts";
import { loadScenario } from "../loadScenario.ts";
import { progressOn } from "../progress.ts";
import { handOver, refuseUnwritable } from "../writeFile.ts";

/** `seasons FILE`: a row a year and case. What was left out stands on stderr, as a CSV has no place for it. */
export const run: RunCommand = async (context, file, flags) => {
  refuseUnwritable(context.cwd, flags.out);
  const scenario = await loadScenario(context, file ?? "", flags);
  const { sort, only } = flags;
  // As in every JSON, water and depth are in mm.
  const lengthsIn = flags.json ? "metric" : flags.units;
  // A column that is not there is told before a long run.
  const none = seasonsTable([], scenario, flags.units, lengthsIn);
  const by = sort === undefined ? null : columnOf(none, sort.replace(/^-/, ""), "--sort");
  const columns = only?.split(",").map((name) => columnOf(none, name, "--only")) ?? null;
  const progress = progressOn(context, "run");
  let found: Seasons;
  try {
    found = seasonsOf(scenario, progress.report);
  } finally {
    progress.end();
  }
  tellLeftOut(found, context);
  const whole = seasonsTable(found.seasons, scenario, flags.units, lengthsIn);
  const sorted = by === null ? whole : sortedBy(whole, by, sort!.startsWith("-"));
  const table = columns === null ? sorted : onlyColumns(sorted, columns);
  const text = flags.json
    ? jsonText({
        format: "rootfront-seasons/1",
        scenario: scenario.name,
        rows: ledgerObjects(table),
        leftOut: found.leftOut,
      })
    : `${csvText([table.head, ...table.rows])}\n`;
  handOver(context, text, flags.out);
};

function columnOf(table: SeasonsTable, name: string, flag: string): number {
  const column = columnNamed(table, name);
  if (column >= 0) return column;
  const near = nearestName(name.trim(), table.head);
  throw new UsageError(
    `${flag}: no column "${name.trim()}"; ${near === null ? `one of ${table.head.join(", ")}` : `did you mean "${near}"?`}`,
  );
}

function tellLeftOut({ seasons, leftOut: { count, years, gaps } }: Seasons, { stderr }: Context): void {
  if (count === 0) return;
  if (seasons.length === 0)
    throw new InputError([
      {
        field: "weather",
        expected: "a season that touches no gap of the record",
        found: `none; gaps: ${gaps.slice(0, 8).join("; ")}`,
        mend: "give another station, or part of the record by weather.from and weather.to",
      },
    ]);
  const said = `Left out: ${count} ${count === 1 ? "season" : "seasons"} that touch a gap of the record or come after one in their chain, sown in ${years.join(", ")}. Gaps: ${gaps.join("; ")}.`;
  stderr.write(`${wrap(said).join("\n")}\n`);
}
