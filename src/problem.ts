import { printable } from "./printable.ts";

/**
 * What is wrong with an input, as data: worded once here, for an agronomist.
 * A user's mistake is an InputError or a UsageError; anything else thrown is our own fault.
 */
export interface Problem {
  /** Where: a path such as `soil.layers[1].bulkDensity`, a flag such as `--rain`, or `weather.csv line 12`. */
  readonly field: string;
  /** What would be right there, in words, with an example. */
  readonly expected: string;
  /** What was found, quoted and cut short. */
  readonly found: string;
  /** How to mend it; a short imperative. */
  readonly mend: string;
}

/** The one line a person reads. */
export function sayProblem({ field, expected, found, mend }: Problem): string {
  return printable(`${field}: expected ${expected}, found ${found}; ${mend}`);
}

/** Quotes what was found so that no text, however long or odd, breaks the line it stands in. */
export function quoteFound(found: unknown): string {
  if (found === undefined) return "nothing";
  let text: string;
  if (typeof found === "string") text = found;
  else if (typeof found === "number" && !Number.isFinite(found)) return "a number too large";
  else if (typeof found === "number" || typeof found === "boolean" || found === null) return String(found);
  else if (Array.isArray(found)) return found.length === 0 ? "an empty list" : `a list of ${found.length}`;
  else return "a group of keys";
  const plain = Array.from(printable(text.slice(0, 200)));
  return plain.length > 60 ? `"${plain.slice(0, 57).join("")}..."` : `"${plain.join("")}"`;
}

/** A flag is in no file, a place in a file names its own, and `file` is the path itself. */
function inFile({ field }: Problem, file: string | undefined): string {
  const isTold = file === undefined || field === "file" || field.startsWith("--") || field.startsWith(file);
  return isTold ? "" : `${printable(file)}: `;
}

/** The input is wrong (exit 1). Carries every problem found, first first. */
export class InputError extends Error {
  readonly problems: readonly Problem[];
  /** @param file where they are found, said in front of each line that does not name it: several files may be run in a row */
  constructor(problems: readonly Problem[], file?: string) {
    super(problems.map((problem) => inFile(problem, file) + sayProblem(problem)).join("\n"));
    this.name = "InputError";
    this.problems = problems;
  }
}

/** The command was not called as it can be (exit 2). */
export class UsageError extends Error {
  constructor(message: string) {
    super(message);
    this.name = "UsageError";
  }
}

/** Throws an InputError with one problem. */
export function refuse(field: string, expected: string, found: unknown, mend: string): never {
  throw new InputError([{ field, expected, found: quoteFound(found), mend }]);
}

/** As `refuse`, for what was found put in our words: neither quoted nor cut. */
export function refuseSaying(field: string, expected: string, found: string, mend: string): never {
  throw new InputError([{ field, expected, found, mend }]);
}
