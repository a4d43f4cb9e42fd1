import type { Json } from "../../state/json.ts";
import type { Changes } from "../../state/path.ts";
import { editMany, valueAt } from "../../state/scenarioStore.ts";

/** What was written in a way that another way has replaced: it is there again when one goes back, as long as the page is open. */
const kept = new Map<string, Json>();

/** Puts away what is about to be written over, to be there again when one goes back to it. */
export function keep(path: string, value: Json | undefined): void {
  if (value !== undefined) kept.set(path, value);
}

/**
 * From one way of saying something to another, in one step of undo: puts away what stands at `away`, brings back what stood at
 * `back`, or begins with its start value.
 */
export function changeWay(away: readonly string[], back: Changes, said: string): void {
  for (const path of away) {
    keep(path, valueAt(path));
  }
  editMany(
    [
      ...away.map((path) => [path, undefined] as const),
      ...back.map(([path, start]) => [path, valueAt(path) ?? kept.get(path) ?? start] as const),
    ],
    "chosen",
    said,
  );
}

/**
 * Of two ways to say the same, what to write to the other when one is typed or emptied: typed, the other is put away; emptied, it
 * is there again.
 */
export function otherWay(other: string, value: Json | undefined): Changes {
  const there = valueAt(other);
  if (value !== undefined) {
    if (there !== undefined) kept.set(other, there);
    return [[other, undefined]];
  }
  const before = kept.get(other);
  return there === undefined && before !== undefined ? [[other, before]] : [];
}
