import { InputError, quoteFound, type Problem } from "../../problem.ts";

/** What is wrong with a file, line by line: the first dozen in words, the rest as a count. */
export interface Complaints {
  readonly fileName: string;
  readonly problems: Problem[];
  more: number;
}

const worded = 12;

export function noComplaints(fileName: string): Complaints {
  return { fileName, problems: [], more: 0 };
}

/** @param found is quoted unless `asIs`: then it is our own wording */
export function complain(
  complaints: Complaints,
  line: number,
  expected: string,
  found: string,
  mend: string,
  asIs = false,
): void {
  if (complaints.problems.length >= worded) {
    complaints.more++;
    return;
  }
  const field = line > 0 ? `${complaints.fileName} line ${line}` : complaints.fileName;
  complaints.problems.push({ field, expected, found: asIs ? found : quoteFound(found.slice(0, 200)), mend });
}

/** Throws all that was noted; does nothing where there was nothing. */
export function refuseIfAny({ fileName, problems, more }: Complaints): void {
  if (problems.length === 0) return;
  if (more === 0) throw new InputError(problems);
  const rest: Problem = {
    field: fileName,
    expected: "no other lines like these",
    found: `${more} more`,
    mend: "mend the lines above first",
  };
  throw new InputError([...problems, rest]);
}
