import { InputError, quoteFound, type Problem } from "../../problem.ts";

/** What is wrong with a file, in the order of its lines: the first dozen in words, the rest as a count. */
export interface Complaints {
  readonly fileName: string;
  /** Sorted by line; what is found in a later pass goes to its place. */
  readonly worded: { readonly line: number; readonly problem: Problem }[];
  more: number;
}

const mostWorded = 12;

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
  if (worded.length === mostWorded) {
    complaints.more++;
    if (line >= worded.at(-1)!.line) return;
    worded.pop();
  }
  const field = line > 0 ? `${fileName} line ${line}` : fileName;
  const problem = { field, expected, found: asIs ? found : quoteFound(found.slice(0, 200)), mend };
  let at = worded.length;
  while (at > 0 && worded[at - 1]!.line > line) at--;
  worded.splice(at, 0, { line, problem });
}

/** Throws all that was noted; does nothing where there was nothing. */
export function refuseIfAny({ fileName, worded, more }: Complaints): void {
  if (worded.length === 0) return;
  const problems = worded.map(({ problem }) => problem);
  if (more === 0) throw new InputError(problems);
  const rest: Problem = {
    field: fileName,
    expected: "no other lines like these",
    found: `${more} more`,
    mend: "mend the lines above first",
  };
  throw new InputError([...problems, rest]);
}
