import type { Json } from "../state/json.ts";
import { valueAt } from "../state/scenarioStore.ts";
import { defaultsByPath, problemsByPath } from "../worker/client.ts";
import type { DefaultUsed } from "../../src/scenario/scenario.ts";
import type { Problem } from "../../src/problem.ts";

/** What there is to know of one place of the scenario. */
export interface Place {
  /** As written; undefined where it is left out. */
  readonly value: Json | undefined;
  /** As text for a field. */
  readonly text: string;
  /** What stands in for it while it is left out. */
  readonly fallback: DefaultUsed | null;
  /** What is wrong there, or in what stands below it. */
  readonly problems: readonly Problem[];
}

/**
 * @param path as problems write it
 * @param defaultPath where the default is told, where that is another place
 * @param below problems of what stands below the place count as its own, as in a list shown as one text
 */
export function fieldState(path: string, defaultPath = path, below = false): Place {
  const value = valueAt(path);
  return {
    value,
    text: typeof value === "string" || typeof value === "number" ? String(value) : "",
    fallback: defaultsByPath.value.get(defaultPath) ?? null,
    problems: below ? problemsWithin(path) : (problemsByPath.value.get(path) ?? []),
  };
}

/** Problems of a place and of all that stands below it. */
export function problemsWithin(path: string): readonly Problem[] {
  return [...problemsByPath.value].flatMap(([at, list]) => (isWithin(at, path) ? list : []));
}

export function isWithin(at: string, path: string): boolean {
  return at === path || at.startsWith(`${path}.`) || at.startsWith(`${path}[`);
}
