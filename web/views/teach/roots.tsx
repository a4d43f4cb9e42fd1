import { useComputed } from "@preact/signals";
import { useEffect, useId, useMemo } from "preact/hooks";
import { shownIn, type Formatters } from "../../../src/report/tables/formatters.ts";
import { palette } from "../../pictures/kit/palette.ts";
import { clamp } from "../../pictures/kit/box.ts";
import { rootedDepthMm } from "../../pictures/pit/pitWallLayout.ts";
import { sayDay, stageOn } from "../../pictures/pit/pitWallReading.ts";
import { SvgPicture } from "../../pictures/kit/svgPicture.tsx";
import { defaults, TwoRoots } from "../../pictures/roots/twoRoots.tsx";
import { twoRootsLayout } from "../../pictures/roots/twoRootsLayout.ts";
import { stripOn } from "../../pictures/roots/twoRootsStrip.ts";
import { heldFront, twoRootsTable } from "../../pictures/roots/twoRootsTable.ts";
import { useScreenHeight } from "../screenHeight.ts";
import { wantsStill } from "../../state/theme.ts";
import { units } from "../../state/view.ts";
import { answer, season, stale, resolved } from "../../worker/client.ts";
import type { SeasonShown, ResolvedScenario } from "../../worker/protocol.ts";
import { differenceShown } from "../answer/chosenDifference.ts";
import { useRoom } from "../answer/room.ts";
import { answerClass } from "../parts.tsx";
import { Heard } from "../pit/heard.tsx";
import { followPlayDay, goTo, isPlaying, lastDay } from "../pit/playhead.ts";
import { shortAnswer } from "./guessWords.ts";
import { isSeasonChosen, takeAnotherSeason, takeTypicalSeason } from "./heldSeason.ts";
import { difference, isGuessing, pair } from "./lesson.ts";
import { isProjected, leastTextShare, toggleProjector } from "./projector.ts";
import { worthSaid } from "./stripWorth.ts";
import { endDay, shownDay, startDay, stepBy, togglePlaying, usePlaying } from "./playing.ts";

/** Both root systems, and what moves them through the season. */
export function Roots() {
  useEffect(followPlayDay, []);
  const now = season.value;
  const soil = resolved.value;
  if (now === null || soil === null) return null;
  return (
    <section class="teach-roots" aria-label="Root systems through the season">
      <DayLine season={now} />
      <PlayBar season={now} />
      <Drawn season={now} soil={soil} />
      <UnderPicture season={now} />
    </section>
  );
}

function Drawn({ season: now, soil }: { readonly season: SeasonShown; readonly soil: ResolvedScenario }) {
  const id = useId();
  const [room, width] = useRoom<HTMLDivElement>();
  const screenPx = useScreenHeight();
  const both = pair.value;
  const shown = shownIn(units.value);
  const colours = palette();
  const textPx = isProjected.value ? leastTextShare * screenPx : 0;
  const height = isProjected.value
    ? Math.max(300, screenPx - linesAround * textPx)
    : width < 520
      ? clamp(screenPx * 0.55, 360, 520)
      : clamp(screenPx - 345, 360, 900);
  const namesNow = both.map((c) => now.cases[c]?.name ?? "");
  const layout = useMemo(
    () => twoRootsLayout(width, Math.round(height), namesNow, textPx),
    [width, height, textPx, namesNow.join("\n")],
  );
  const layers = useMemo(() => both.map((c) => soil.cases[c]?.layers ?? []), [soil, both]);
  const depthMm = useMemo(() => {
    const bottomMm = Math.max(...layers.map((some) => some.at(-1)?.bottomMm ?? 0));
    const cases = now.cases.filter((_, c) => both.includes(c));
    return rootedDepthMm({ ...now, cases }, bottomMm);
  }, [now, layers, both]);
  // Read here, it is drawn again at the last day and not with every one.
  const isRipe = useComputed(() => shownDay.value >= lastDay.value).value;
  const table = useMemo(
    () => twoRootsTable(now, both, startDay.value, endDay.value, shown),
    [now, both, startDay.value, endDay.value, units.value],
  );
  const names = namesNow.map((name) => `“${name}”`).join(" and ");
  return (
    <div ref={room} class="teach-picture">
      <SvgPicture
        name={`${both.length > 1 ? defaults.name : "A root system in the soil's available water"}: ${names}`}
        width={layout.width}
        height={layout.height}
        table={table}
        fileName={defaults.fileName}
        faint={stale.value}
      >
        <TwoRoots
          season={now}
          pair={both}
          day={shownDay}
          id={`teach${id}`}
          sayWorth={isGuessing.value ? null : worthSaid(shown, isRipe)}
          {...{ layers, layout, depthMm, colours, shown }}
        />
      </SvgPicture>
    </div>
  );
}

/** Lines of the projector's letters above and below the drawing: the day, the buttons, the answer. */
const linesAround = 7.2;

/** On a phone what the outline is; on a projector the answer. */
function UnderPicture({ season: now }: { readonly season: SeasonShown }) {
  const shown = shownIn(units.value);
  const isRipe = shownDay.value >= lastDay.value;
  const sayWorth = isGuessing.value ? null : worthSaid(shown, isRipe);
  const strip = stripOn(now, pair.value, shownDay.value);
  const told = difference.value;
  return (
    <>
      {strip !== null && (
        <p class="strip-under">
          Outlined: {shown.depth(strip.bottomMm - strip.topMm)} {shown.length} deeper
          {sayWorth !== null && `, ${sayWorth(strip)}`}
        </p>
      )}
      {isProjected.value && (
        <p class={`projected-answer ${answerClass()}`}>
          {told !== null &&
            !isGuessing.value &&
            shortAnswer(told, answer.value!.comparison, differenceShown.value, shown).map((line) => (
              <span key={line}>{line}</span>
            ))}
        </p>
      )}
    </>
  );
}

/** Date, stage and the day's water from the sky, to be read from the last row. */
function DayLine({ season: now }: { readonly season: SeasonShown }) {
  const shown = shownIn(units.value);
  const day = shownDay.value;
  const first = now.cases[0]!;
  const since = day - first.startsAt - first.sowingDay;
  const mm = now.rainMm[day] ?? 0;
  const covered = isGuessing.value && difference.value !== null && day >= endDay.value;
  return (
    <>
      <div class="day-line">
        <strong class="day-date">{sayDay(now.firstDay + day, now.isGenerated)}</strong>{" "}
        <span class="day-buttons no-print">
          <button type="button" class="small" onClick={takeAnotherSeason}>
            Another season
          </button>
          {isSeasonChosen() && (
            <button type="button" class="small" onClick={takeTypicalSeason}>
              A typical season
            </button>
          )}
        </span>{" "}
        <span class="day-stage">{since < 0 ? "before sowing" : `${stageOn(first, day)}, day ${since}`}</span>{" "}
        <span class="day-rain">
          rain{" "}
          <strong>
            {shown.fineWater(mm)} {shown.length}
          </strong>
        </span>{" "}
        {covered && <span class="day-covered">The rest is hidden until you guess.</span>}
      </div>
      <Heard said={inWords(now, day, shown)} />
    </>
  );
}

function inWords(now: SeasonShown, day: number, shown: Formatters): string {
  const fronts = pair.value.flatMap((c) => {
    const one = now.cases[c];
    const mm = one === undefined ? null : heldFront(one, day);
    return mm === null ? [] : [`${one!.name}: ${shown.depth(mm)} ${shown.length}`];
  });
  const roots = fronts.length === 0 ? "No roots yet" : `Roots down to, ${fronts.join("; ")}`;
  return `${sayDay(now.firstDay + day, now.isGenerated)}. ${roots}.`;
}

/** Who wants no motion goes by weeks, or to the end at once. */
function PlayBar({ season: now }: { readonly season: SeasonShown }) {
  usePlaying();
  const playing = isPlaying.value;
  const day = shownDay.value;
  return (
    <div class="teach-play no-print" role="group" aria-label="Move through the season">
      {!wantsStill.value && (
        <button type="button" class="play-button" onClick={togglePlaying}>
          <span aria-hidden="true">{playing ? "❚❚" : "▶"}</span> {playing ? "Pause" : "Play"}
        </button>
      )}
      <button type="button" disabled={day <= startDay.value} onClick={() => stepBy(-7)}>
        −7<span class="only-heard"> days</span>
      </button>
      <input
        type="range"
        class="play-day"
        aria-label="Day"
        min={startDay.value}
        max={endDay.value}
        step={1}
        value={day}
        aria-valuetext={sayDay(now.firstDay + day, now.isGenerated)}
        onInput={(event) => {
          isPlaying.value = false;
          goTo(event.currentTarget.valueAsNumber);
        }}
      />
      <button type="button" disabled={day >= endDay.value} onClick={() => stepBy(7)}>
        +7<span class="only-heard"> days</span>
      </button>
      <button type="button" disabled={day >= endDay.value} onClick={() => stepBy(Infinity)}>
        To the end
      </button>
      <button
        type="button"
        class="projector-button"
        title={isProjected.value ? "Leave full screen (Esc)" : undefined}
        onClick={toggleProjector}
      >
        {isProjected.value ? (
          <>
            <span aria-hidden="true">✕</span>
            <span class="only-heard">Leave full screen</span>
          </>
        ) : (
          "Full screen"
        )}
      </button>
    </div>
  );
}
