import { chosenRun } from "../../state/view.ts";
import type { Palette } from "../../pictures/kit/palette.ts";
import {
  defaults,
  SeasonLines,
  type SeasonScale,
  type SeasonTold,
} from "../../pictures/answer/seasonMultiples.tsx";
import type { Traces } from "../../worker/protocol.ts";
import { addressOfRun, openSeason } from "./openSeason.ts";

interface SeasonCardProps {
  readonly told: SeasonTold;
  readonly traces: Traces;
  readonly places: readonly number[];
  readonly scale: SeasonScale;
  readonly colours: Palette;
}

/** A season to look at and to open. */
export function SeasonCard({ told, traces, places, scale, colours }: SeasonCardProps) {
  const { run, title, lines } = told;
  const { widthPx, abovePx, belowPx } = defaults;
  const isOnWall = chosenRun.value === run;
  return (
    <li>
      <a
        class="season-card"
        href={addressOfRun(run)}
        aria-current={isOnWall ? "true" : undefined}
        onClick={(event) => openSeason(event, run)}
      >
        <svg viewBox={`0 0 ${widthPx} ${abovePx + belowPx}`} aria-hidden="true">
          <SeasonLines
            {...{ traces, run, places, scale, colours }}
            width={widthPx}
            above={abovePx}
            below={belowPx}
          />
        </svg>
        <strong>{title}</strong>
        {lines.map((line) => (
          <span key={line}>{line}</span>
        ))}
        <span class="only-heard">opens on the pit wall{isOnWall ? ", where it is now" : ""}</span>
      </a>
    </li>
  );
}
