import { mmPerInch } from "../../../src/quantity/constants.ts";
import { useId, useRef } from "preact/hooks";
import { shownIn } from "../../../src/report/tables/formatters.ts";
import type { Window } from "../../pictures/kit/box.ts";
import { placeAtPoint, type PitWallLayout } from "../../pictures/pit/pitWallLayout.ts";
import { sayDay } from "../../pictures/pit/pitWallReading.ts";
import { wantsStill } from "../../state/theme.ts";
import { units } from "../../state/view.ts";
import type { SeasonShown } from "../../worker/protocol.ts";
import { percentOf, sharesOf } from "./overlay.ts";
import { togglePlaying } from "./playBar.tsx";
import { firstShownDay, goTo, headDay, hover, isPlaying, lastDay, probeMm, stepByKey } from "./playhead.ts";

interface GlassProps {
  readonly season: SeasonShown;
  readonly layout: PitWallLayout;
  readonly window: Window;
}

/** Lies over the water: the mouse reads, a click or a finger sets the day and the depth, arrow keys step through both. */
export function Glass({ season, layout, window }: GlassProps) {
  const hintId = useId();
  const isDown = useRef(false);
  const { water, width, height } = layout;
  const shown = shownIn(units.value);
  const placeOf = (event: PointerEvent & { currentTarget: HTMLElement }) => {
    const { left, top, width: across, height: down } = event.currentTarget.getBoundingClientRect();
    return placeAtPoint(
      { x: left, y: top, width: across, height: down },
      window,
      event.clientX,
      event.clientY,
    );
  };
  const set = ({ day, depthMm }: { day: number; depthMm: number }) => {
    isPlaying.value = false;
    probeMm.value = depthMm;
    goTo(day);
  };
  const deeper = (mm: number) => {
    const unit = units.peek() === "us" ? mmPerInch : 20;
    const stepped = Math.round((probeMm.peek() + mm * unit) / unit) * unit;
    probeMm.value = Math.min(window.depthMm - 0.001, Math.max(0, stepped));
  };
  return (
    <>
      <div
        class="glass"
        role="slider"
        tabIndex={0}
        aria-label="Day, and depth to read at"
        aria-describedby={hintId}
        aria-valuemin={firstShownDay.value}
        aria-valuemax={lastDay.value}
        aria-valuenow={headDay.value}
        aria-valuetext={`${sayDay(season.firstDay + headDay.value, season.isGenerated)}, at ${shown.depth(probeMm.value)} ${shown.length}`}
        style={sharesOf(water, width, height)}
        onPointerDown={(event) => {
          if (event.button !== 0) return;
          isDown.current = true;
          event.currentTarget.setPointerCapture(event.pointerId);
          hover.value = null;
          set(placeOf(event));
        }}
        onPointerMove={(event) => {
          if (isDown.current) set(placeOf(event));
          else if (event.pointerType === "mouse") hover.value = placeOf(event);
        }}
        onPointerUp={() => {
          isDown.current = false;
        }}
        onPointerCancel={() => {
          isDown.current = false;
        }}
        onPointerLeave={() => {
          hover.value = null;
        }}
        onKeyDown={(event) => {
          hover.value = null;
          const fast = event.shiftKey ? 6 : 1;
          if (stepByKey(event)) isPlaying.value = false;
          else if (event.key === "ArrowDown") deeper(fast);
          else if (event.key === "ArrowUp") deeper(-fast);
          else if (event.key === " " && !wantsStill.peek()) togglePlaying();
          else return;
          event.preventDefault();
        }}
      >
        <Mark window={window} />
      </div>
      <p id={hintId} class="only-heard">
        Left and right arrows go a day, with Shift a week; up and down change the depth; Home and End go to
        the ends; Space plays.
      </p>
    </>
  );
}

/** Cross hairs where the reading is taken. */
function Mark({ window }: { readonly window: Window }) {
  const { fromDay, toDay, depthMm } = window;
  const at = hover.value ?? { day: headDay.value, depthMm: probeMm.value };
  const left = percentOf((at.day + 0.5 - fromDay) / (toDay - fromDay));
  const top = percentOf(Math.min(1, at.depthMm / depthMm));
  return (
    <span class={hover.value === null ? "cross" : "cross is-hover"} aria-hidden="true">
      <span class="cross-day" style={{ left }} />
      <span class="cross-depth" style={{ top }} />
      <span class="cross-point" style={{ left, top }} />
    </span>
  );
}
