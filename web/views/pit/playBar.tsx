import { useSignal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import { sayDay, sayMonthDay } from "../../pictures/pit/pitWallReading.ts";
import { wantsStill } from "../../state/theme.ts";
import { season } from "../../worker/client.ts";
import { firstShownDay, goTo, headDay, isPlaying, lastDay, stepByKey } from "./playhead.ts";
import { playOn } from "./playOn.ts";

const speeds = [
  [14, "two weeks a second"],
  [30, "a month a second"],
  [90, "a quarter a second"],
] as const;

/** Moves through the season; who wants no motion goes a week at a time. */
export function PlayBar() {
  const speed = useSignal<number>(30);
  const still = wantsStill.value;
  usePlaying(speed.value);
  const now = season.value;
  const date = now === null ? "" : sayDay(now.firstDay + headDay.value, now.isGenerated);
  return (
    <div class="play-bar no-print" role="group" aria-label="Move through the season">
      {still ? (
        <button type="button" onClick={() => goTo(isAtEnd() ? firstShownDay.peek() : headDay.peek() + 7)}>
          A week on
        </button>
      ) : (
        <button type="button" class="play-button" onClick={togglePlaying}>
          <span aria-hidden="true">{isPlaying.value ? "❚❚" : "▶"}</span> {isPlaying.value ? "Pause" : "Play"}
        </button>
      )}
      <input
        type="range"
        class="play-day"
        aria-label="Day"
        min={firstShownDay.value}
        max={lastDay.value}
        step={1}
        value={headDay.value}
        aria-valuetext={date}
        onInput={(event) => {
          isPlaying.value = false;
          goTo(event.currentTarget.valueAsNumber);
        }}
        onKeyDown={(event) => {
          if (stepByKey(event)) event.preventDefault();
        }}
      />
      <span class="play-date" aria-hidden="true">
        {now === null || !now.isGenerated ? date : sayMonthDay(now.firstDay + headDay.value)}
      </span>
      {!still && (
        <label class="play-speed">
          <span class="only-heard">Speed</span>
          <select
            value={String(speed.value)}
            onChange={(event) => {
              speed.value = Number(event.currentTarget.value);
            }}
          >
            {speeds.map(([days, word]) => (
              <option key={days} value={String(days)}>
                {word}
              </option>
            ))}
          </select>
        </label>
      )}
    </div>
  );
}

function isAtEnd(): boolean {
  return headDay.peek() >= lastDay.peek();
}

/** From the end it begins anew. */
export function togglePlaying(): void {
  if (!isPlaying.peek() && isAtEnd()) goTo(firstShownDay.peek());
  isPlaying.value = !isPlaying.peek();
}

function usePlaying(daysPerSecond: number): void {
  const playing = isPlaying.value;
  const still = wantsStill.value;
  useEffect(() => {
    if (still) isPlaying.value = false;
  }, [still]);
  useEffect(() => {
    return playing ? playOn(headDay, lastDay, daysPerSecond) : undefined;
  }, [playing, daysPerSecond]);
  useEffect(
    () => () => {
      isPlaying.value = false;
    },
    [],
  );
}
