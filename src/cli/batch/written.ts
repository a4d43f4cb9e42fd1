import type { Comparison } from "../../answer/comparison/comparison.ts";
import { nearestName } from "../../nearestName.ts";
import { UsageError } from "../../problem.ts";
import { comparisonColumn, comparisonHead, comparisonTable } from "../../report/tables/comparisonTable.ts";
import { csvText } from "../../report/tables/csvText.ts";
import { fieldTree, pickFields } from "../../report/tables/pickFields.ts";
import { jsonLine } from "../../report/tables/roundForPrint.ts";
import { unitsBeside } from "../../report/tables/unitsBeside.ts";
import type { GivenFlags } from "../flags.ts";
import { problemsSaid, type LineAnswer } from "./lineAnswer.ts";
import type { Line } from "./lines.ts";

/** How answers are written: as JSON, or as a table. */
export interface Writing {
  /** Of a table; null of JSON. */
  readonly head: readonly string[] | null;
  /** What stands first of all. */
  readonly begin: () => string;
  readonly write: (line: Line, answer: LineAnswer) => string;
}

export function writingFor({ csv, only, units }: GivenFlags): Writing {
  const names = only?.split(",") ?? null;
  return csv === true ? table(units, names) : json(names);
}

/** Fields that not every answer has. */
const mayBeMissing: readonly string[] = ["chain", "chanceItPays"] satisfies (
  | keyof Comparison
  | keyof Comparison["differences"][number]
)[];

function json(names: readonly string[] | null): Writing {
  const tree = names === null ? null : fieldTree(names);
  const refuseMissing = (key: string, there: readonly string[]): void => {
    if (!mayBeMissing.includes(key)) throw unknownName("field", key, there);
  };
  return {
    head: null,
    begin: () => "",
    write: ({ number }, result) => {
      if (result.kind === "answer") {
        const answer = unitsBeside(result.answer, result.units);
        return `${jsonLine(tree === null ? answer : pickFields(answer, tree, refuseMissing))}\n`;
      }
      const { name, problems } = result;
      return `${jsonLine({ format: "rootfront-batch-error/1", line: number, name, problems })}\n`;
    },
  };
}

/** A row for each line, rainfall total and case; a wrong line has one, with what is wrong at its end. */
function table(units: GivenFlags["units"], names: readonly string[] | null): Writing {
  const all = ["line", ...comparisonHead(units), "error"];
  const chosen =
    names?.map((name) => {
      const column = comparisonColumn(all, name);
      if (column < 0) throw unknownName("column", name.trim(), all);
      return column;
    }) ?? all.map((_, column) => column);
  const head = chosen.map((column) => all[column]!);
  const rowsOf = ({ number }: Line, result: LineAnswer) => {
    if (result.kind === "answer")
      return comparisonTable(result.answer, units).rows.map((row) => [number, ...row, null]);
    const empty = all.slice(3).map(() => null);
    return [[number, result.name, ...empty, problemsSaid(result.problems)]];
  };
  const say = (rows: readonly (readonly (string | number | null)[])[]) => `${csvText(rows)}\n`;
  return {
    head,
    begin: () => say([head]),
    write: (line, result) =>
      say(rowsOf(line, result).map((row) => chosen.map((column) => row[column] ?? null))),
  };
}

function unknownName(what: string, name: string, known: readonly string[]): UsageError {
  const near = nearestName(name, known);
  return new UsageError(
    `--only: no ${what} "${name}"; ${near === null ? `one of ${known.join(", ")}` : `did you mean "${near}"?`}`,
  );
}
