import { computed } from "@preact/signals";
import { useEffect } from "preact/hooks";
import { wantsStill } from "../../state/theme.ts";
import { season } from "../../worker/client.ts";
import type { SeasonShown } from "../../worker/protocol.ts";
import { firstShownDay, goTo, headDay, isPlaying, lastDay } from "../pit/playhead.ts";
import { playOn } from "../pit/playOn.ts";
import { difference, isGuessing } from "./lesson.ts";

/** The pit wall's playhead, held back while the class guesses. */

/** Share of the time from sowing to maturity that may be seen while guessing. */
const openShare = 0.45;
/** The soil before sowing, for the eye to rest on, days. */
const beforeSowing = 4;

/** First day of the lesson, counted from the season's first: shortly before sowing. */
export const startDay = computed(() => {
  const sown = (season.value?.cases ?? []).map(({ startsAt, sowingDay }) => startsAt + sowingDay);
  return sown.length === 0 ? 0 : Math.max(0, Math.min(...sown) - beforeSowing);
});

/** The last day that may be seen. */
export const endDay = computed(() => {
  if (!isGuessing.value || difference.value === null) return lastDay.value;
  return season.value === null ? 0 : Math.max(startDay.value, coveredFrom(season.value));
});

/** The day from which on a season is hidden while the class guesses. */
export function coveredFrom({ cases, days }: Pick<SeasonShown, "cases" | "days">): number {
  const opens = cases.map(
    ({ startsAt, sowingDay, maturityDay }) =>
      startsAt + sowingDay + Math.round(openShare * (maturityDay - sowingDay)),
  );
  return Math.min(days - 1, ...opens);
}

export const shownDay = computed(() => Math.max(startDay.value, Math.min(headDay.value, endDay.value)));

export function stepBy(days: number): void {
  isPlaying.value = false;
  goTo(Math.max(startDay.peek(), Math.min(endDay.peek(), shownDay.peek() + days)));
}

/** From the end it begins anew. */
export function togglePlaying(): void {
  if (!isPlaying.peek() && shownDay.peek() >= endDay.peek()) goTo(startDay.peek());
  isPlaying.value = !isPlaying.peek();
}

/** What was covered is played; who wants no motion sees the end at once. */
export function playTheRest(fromDay: number): void {
  if (wantsStill.peek()) {
    goTo(endDay.peek());
    return;
  }
  goTo(fromDay);
  isPlaying.value = true;
}

const daysPerSecond = 18;

export function usePlaying(): void {
  const playing = isPlaying.value;
  const still = wantsStill.value;
  const start = startDay.value;
  useEffect(() => {
    firstShownDay.value = start;
  }, [start]);
  useEffect(() => {
    if (still) isPlaying.value = false;
  }, [still]);
  useEffect(() => {
    return playing ? playOn(shownDay, endDay, daysPerSecond) : undefined;
  }, [playing]);
  useEffect(
    () => () => {
      isPlaying.value = false;
    },
    [],
  );
}
