import { InputError, quoteFound, type Problem } from "../../problem.ts";
import { sayDefault, type Default } from "../fields/facts/withDefault.ts";
import type { DefaultUsed } from "../defaultUsed.ts";

/** What is written down while a file is resolved: defaults used, things noticed, problems. */
export interface Notebook {
  readonly defaults: DefaultUsed[];
  /** What is hard to believe: told before the answer. */
  readonly doubts: string[];
  readonly notes: string[];
  readonly problems: Problem[];
}

export function openNotebook(): Notebook {
  return { defaults: [], doubts: [], notes: [], problems: [] };
}

/** Does it and keeps its problems, so that those of other parts are told as well. */
export function attempt<T>(notebook: Notebook, act: () => T): T | undefined {
  try {
    return act();
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    notebook.problems.push(...error.problems);
    return undefined;
  }
}

export function complain(
  { problems }: Notebook,
  field: string,
  expected: string,
  found: unknown,
  mend: string,
): void {
  problems.push({ field, expected, found: typeof found === "string" ? found : quoteFound(found), mend });
}

/** The value given, or the default, written down with its reason. */
export function orDefault<T extends string | number | boolean>(
  { defaults }: Notebook,
  given: T | undefined,
  byDefault: Default<T>,
  field: string,
): T {
  if (given !== undefined) return given;
  defaults.push({ field, value: sayDefault(byDefault), why: byDefault.why });
  return byDefault.value;
}
