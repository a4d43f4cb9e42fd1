import { computed, signal } from "@preact/signals";
import { answer } from "../../worker/client.ts";

/** The case that is looked at against the first, by its place among the differences. Shared by the views that show one. */
const chosen = signal(0);

/** Kept within what the present answer has; 0 where there is no difference at all. */
export const differenceShown = computed(() => {
  const count = answer.value?.comparison.differences.length ?? 0;
  return Math.max(0, Math.min(chosen.value, count - 1));
});

export function showDifference(d: number): void {
  chosen.value = d;
}
