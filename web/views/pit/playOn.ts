import type { ReadonlySignal } from "@preact/signals";
import { goTo, isPlaying } from "./playhead.ts";

/** Moves the playhead on, frame by frame, until the last day or until playing is stopped; returns what ends it. */
export function playOn(
  shownDay: ReadonlySignal<number>,
  lastDay: ReadonlySignal<number>,
  daysPerSecond: number,
): () => void {
  let day = shownDay.peek();
  let shown = day;
  let before = performance.now();
  let frame = requestAnimationFrame(function step(now) {
    // Stopped since the last frame: not a day further.
    if (!isPlaying.peek()) return;
    // Moved by hand meanwhile: go on from there.
    if (shownDay.peek() !== shown) day = shownDay.peek();
    // A page that was hidden does not leap.
    day += (Math.min(100, Math.max(0, now - before)) / 1000) * daysPerSecond;
    before = now;
    shown = Math.min(lastDay.peek(), Math.floor(day));
    if (shown !== shownDay.peek()) goTo(shown);
    if (shown >= lastDay.peek()) isPlaying.value = false;
    else frame = requestAnimationFrame(step);
  });
  return () => cancelAnimationFrame(frame);
}
