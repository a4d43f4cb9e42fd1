import { effect, signal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import { chosenRun } from "../../state/view.ts";
import { answer, busy, season } from "../../worker/client.ts";

/**
 * The season of the lesson stays while a slider is moved: which season is a typical one depends on the answer, and another
 * season's roots beside these would teach the opposite.
 */

/** The run that was held by the lesson itself and not chosen by anyone. */
const held = signal<number | null>(null);

export function holdSeason(): void {
  const now = season.peek();
  if (now === null || chosenRun.peek() !== null) return;
  held.value = now.run;
  chosenRun.value = now.run;
}

/** The next of all seasons, round and round. */
export function takeAnotherSeason(): void {
  const now = season.peek();
  if (now === null) return;
  held.value = null;
  chosenRun.value = (now.run + 1) % now.runs;
}

/** Back to one that is typical of the answer as it stands. */
export function takeTypicalSeason(): void {
  const typical = answer.peek()?.byRun.typicalRun;
  if (typical === undefined) return;
  held.value = typical;
  chosenRun.value = typical;
}

/** Whether the season on show was chosen, here or in another view. */
export function isSeasonChosen(): boolean {
  return chosenRun.value !== null && chosenRun.value !== held.value;
}

/** Holds the season on entering, once the answer stands; what was held and not chosen is let go on leaving. */
export function useHeldSeason(): void {
  useEffect(() => {
    const stop = effect(() => {
      const typical = answer.value?.whole ? answer.value.byRun.typicalRun : null;
      if (!busy.value && season.value?.run === typical) holdSeason();
    });
    return () => {
      stop();
      if (chosenRun.peek() === held.peek()) chosenRun.value = null;
      held.value = null;
    };
  }, []);
}
