import { InputError, quoteFound, type Problem } from "../../../problem.ts";

/** What is wrong with a file: a dozen faults in words, in the order of their first lines, the others as a count. */
export interface Complaints {
  readonly fileName: string;
  /** Sorted by line. */
  readonly worded: Worded[];
  /** Faults beyond those in words. */
  more: number;
}

/** A fault, told by the first line that has it. */
interface Worded {
  readonly line: number;
  readonly problem: Problem;
  /** Of other lines with the very same, some, and how many there are. */
  readonly alike: number[];
  alikes: number;
}

const mostWorded = 12;
const mostAlike = 5;

export function noComplaints(fileName: string): Complaints {
  return { fileName, worded: [], more: 0 };
}

/**
 * @param line 0 = the file as a whole
 * @param found is quoted unless `asIs`: then it is our own wording
 */
export function complain(
  complaints: Complaints,
  line: number,
  expected: string,
  found: string,
  mend: string,
  asIs = false,
): void {
  const { fileName, worded } = complaints;
  const field = line > 0 ? `${fileName} line ${line}` : fileName;
  const problem = { field, expected, found: asIs ? found : quoteFound(found.slice(0, 200)), mend };
  const alike = worded.findIndex((one) => one.problem.expected === expected && one.problem.mend === mend);
  let before: Worded | null = null;
  if (alike >= 0) {
    const same = worded[alike]!;
    if (line >= same.line) {
      same.alikes++;
      if (same.alike.length < mostAlike) same.alike.push(line);
      return;
    }
    // Found in a later pass, further up: it is told by this line now.
    before = same;
    worded.splice(alike, 1);
  } else if (worded.length === mostWorded) {
    complaints.more++;
    if (line >= worded.at(-1)!.line) return;
    complaints.more += worded.pop()!.alikes;
  }
  let at = worded.length;
  while (at > 0 && worded[at - 1]!.line > line) at--;
  worded.splice(at, 0, {
    line,
    problem,
    alike: before === null ? [] : [before.line, ...before.alike].slice(0, mostAlike),
    alikes: before === null ? 0 : before.alikes + 1,
  });
}

/** Throws all that was noted; does nothing where there was nothing. */
export function refuseIfAny({ fileName, worded, more }: Complaints): void {
  if (worded.length === 0) return;
  const problems = worded.map((one) => ({ ...one.problem, found: one.problem.found + alikeSaid(one) }));
  if (more === 0) throw new InputError(problems);
  const rest: Problem = {
    field: fileName,
    expected: "no other lines like these",
    found: `${more} more`,
    mend: "mend the lines above first",
  };
  throw new InputError([...problems, rest]);
}

/** ` (and 29 more like it, in lines 3, 4, 5, 6, 7 ...)` */
function alikeSaid({ alike, alikes }: Worded): string {
  if (alikes === 0) return "";
  const rest = alikes > alike.length ? " ..." : "";
  return ` (and ${alikes} more like it, in ${alikes === 1 ? "line" : "lines"} ${alike.join(", ")}${rest})`;
}

/** `1 line`, `2 lines`. */
export function counted(count: number, thing: string): string {
  return `${count} ${thing}${count === 1 ? "" : "s"}`;
}
