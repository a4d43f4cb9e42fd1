import { dirname, resolve } from "node:path";
import { answerOf } from "../../answer/chain/answerOf.ts";
import type { Comparison } from "../../answer/comparison/comparison.ts";
import { InputError, refuseSaying, sayProblem, type Problem } from "../../problem.ts";
import { printable } from "../../printable.ts";
import { unitsOf, type JsonUnits } from "../../report/tables/unitsBeside.ts";
import { readJson } from "../../scenario/index.ts";
import type { Context } from "../context.ts";
import type { GivenFlags } from "../flags.ts";
import { resolveWith } from "../loadScenario.ts";
import { readInput } from "../readFile.ts";
import { longestLineBytes, type Line } from "./lines.ts";
import type { SharedReading } from "./sharedReading.ts";

/** What became of a line. */
export type LineAnswer =
  | { readonly kind: "answer"; readonly answer: Comparison; readonly units: JsonUnits }
  | {
      /** `fault`: ours. */
      readonly kind: "wrong" | "fault";
      /** Of the scenario, or of the file listed; null where it cannot be read. */
      readonly name: string | null;
      readonly problems: readonly Problem[];
    };

/** A scenario as a line holds it, or as the file holds it that the line names. */
interface Written {
  readonly raw: unknown;
  /** Of where it stands, for messages. */
  readonly fileName: string;
  readonly folder: string;
}

/** The answer of a line, the same as `compare` gives of it as a file in that folder. Throws nothing. */
export async function answerLine(
  line: Line,
  context: Context,
  flags: GivenFlags,
  folder: string,
  shared: SharedReading,
): Promise<LineAnswer> {
  let name: string | null = flags.list === true ? (line.text?.trim() ?? null) : null;
  try {
    const written = writtenIn(line, context, flags, folder);
    name = nameIn(written.raw) ?? name;
    const scenario = await resolveWith(context, written.raw, flags, written.fileName, written.folder, {
      recordCache: shared.recordCache,
      readText: (path, field) =>
        shared.textOf(written.folder, path, () => readInput(context, flags, written.folder, path, field)),
    });
    const answer = answerOf(scenario, flags.units, undefined, shared.answerCacheFor(scenario));
    return { kind: "answer", answer, units: unitsOf(scenario, flags.units) };
  } catch (error) {
    if (error instanceof InputError) return { kind: "wrong", name, problems: error.problems.map(ofOneLine) };
    const what = printable((error instanceof Error ? error.message : String(error)).split("\n")[0] ?? "");
    const problem = {
      field: `line ${line.number}`,
      expected: "an answer",
      found: `a fault of ours (${what})`,
      mend: "please report it with this line",
    };
    return { kind: "fault", name, problems: [problem] };
  }
}

function writtenIn(line: Line, context: Context, flags: GivenFlags, folder: string): Written {
  const place = `line ${line.number}`;
  if (line.text === null && line.bytes > longestLineBytes) {
    const most = `at most ${longestLineBytes / 2 ** 20} MB`;
    refuseSaying(
      place,
      most,
      `${Math.round(line.bytes / 2 ** 20)} MB`,
      "put long tables into files of their own",
    );
  }
  if (line.text === null) refuseSaying(place, "text in UTF-8", "other bytes", "save it as UTF-8 text");
  if (flags.list !== true) return { raw: readJson(line.text, place), fileName: place, folder };
  const file = line.text.trim();
  const raw = readJson(readInput(context, flags, folder, file), file);
  return { raw, fileName: file, folder: dirname(resolve(folder, file)) };
}

/** Of a line there is no second line to name. */
function ofOneLine(problem: Problem): Problem {
  return { ...problem, field: problem.field.replace(/^(line \d+) line 1, /, "$1, ") };
}

function nameIn(raw: unknown): string | null {
  const name = typeof raw === "object" && raw !== null ? (raw as Record<string, unknown>)["name"] : null;
  return typeof name === "string" ? name : null;
}

/** The name a line's scenario has, without an answer; null where it cannot be read. */
export function nameOfLine(line: Line, context: Context, flags: GivenFlags, folder: string): string | null {
  try {
    return nameIn(writtenIn(line, context, flags, folder).raw);
  } catch {
    return null;
  }
}

export function problemsSaid(problems: readonly Problem[]): string {
  return problems.map(sayProblem).join("; ");
}
