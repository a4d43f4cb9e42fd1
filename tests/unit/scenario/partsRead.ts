import type * as z from "zod";
import { sayProblem } from "../../../src/problem.ts";
import { loadUnits } from "../../../src/quantity/index.ts";
import { openNotebook, type Notebook } from "../../../src/scenario/resolve/notebook.ts";
import { problemsOf } from "../../../src/scenario/read/problems.ts";

export interface PartRead<Resolved> {
  readonly value: Resolved | undefined;
  readonly lines: readonly string[];
  readonly notebook: Notebook;
}

/** One part of a scenario file read and resolved, and the lines a person sees where it is wrong. */
export async function readPart<Part, Resolved>(
  name: string,
  fields: z.ZodType<Part>,
  raw: unknown,
  resolve: (part: Part, notebook: Notebook) => Resolved | undefined,
): Promise<PartRead<Resolved>> {
  await loadUnits();
  const notebook = openNotebook();
  const read = fields.safeParse(raw);
  if (!read.success) {
    const issues = read.error.issues.map((issue) => ({ ...issue, path: [name, ...issue.path] }));
    return { value: undefined, lines: problemsOf(issues, { [name]: raw }).map(sayProblem), notebook };
  }
  const value = resolve(read.data, notebook);
  return { value, lines: notebook.problems.map(sayProblem), notebook };
}
