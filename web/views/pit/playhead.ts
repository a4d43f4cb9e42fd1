import { computed, effect, signal } from "@preact/signals";
import { playDay } from "../../state/view.ts";
import { season } from "../../worker/client.ts";

/**
 * The day looked at. It runs ahead of the address, which is only told of it when it has come to rest: browsers refuse an
 * address that changes with every frame.
 */

const restMs = 400;

/** From the season's first day; null = the last. */
const held = signal<number | null>(playDay.peek());
export const isPlaying = signal(false);
/** Depth that the keyboard reads at, mm. */
export const probeMm = signal(304.8);
/** Under the mouse; null while it is elsewhere. */
export const hover = signal<{ readonly day: number; readonly depthMm: number } | null>(null);
/** First day shown; days before it are out of the picture. */
export const firstShownDay = signal(0);

export const lastDay = computed(() => Math.max(0, (season.value?.days ?? 1) - 1));
export const headDay = computed(() =>
  Math.min(lastDay.value, Math.max(firstShownDay.value, held.value ?? lastDay.value)),
);

let timer: ReturnType<typeof setTimeout> | undefined;
let told: number | null = playDay.peek();

/** @param day the last day counts as no choice: the whole season is seen */
export function goTo(day: number): void {
  const wanted = Math.min(lastDay.peek(), Math.max(firstShownDay.peek(), Math.round(day)));
  held.value = wanted >= lastDay.peek() ? null : wanted;
  clearTimeout(timer);
  timer = setTimeout(tell, restMs);
}

function tell(): void {
  if (isPlaying.peek()) {
    timer = setTimeout(tell, restMs);
    return;
  }
  told = held.peek();
  playDay.value = told;
}

/** Follows the address when it is changed from elsewhere. */
export function followPlayDay(): () => void {
  return effect(() => {
    const wanted = playDay.value;
    if (wanted !== told) held.value = wanted;
    told = wanted;
  });
}

/** Keys that all pieces of the playhead understand alike; true when it was one of them. */
export function stepByKey({ key, shiftKey, ctrlKey, metaKey, altKey }: KeyboardEvent): boolean {
  if (ctrlKey || metaKey || altKey) return false;
  const days = shiftKey ? 7 : 1;
  switch (key) {
    case "ArrowLeft":
      goTo(headDay.peek() - days);
      return true;
    case "ArrowRight":
      goTo(headDay.peek() + days);
      return true;
    case "PageUp":
      goTo(headDay.peek() - 7);
      return true;
    case "PageDown":
      goTo(headDay.peek() + 7);
      return true;
    case "Home":
      goTo(firstShownDay.peek());
      return true;
    case "End":
      goTo(lastDay.peek());
      return true;
    default:
      return false;
  }
}
