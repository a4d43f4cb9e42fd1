import type { Formatters } from "../../../src/report/tables/formatters.ts";
import { fontFamily, palette } from "../../pictures/kit/palette.ts";
import { CaseLine, SeasonLines, seasonScale } from "../../pictures/answer/seasonMultiples.tsx";
import type { Traces } from "../../worker/protocol.ts";

interface SeasonPictureProps {
  readonly traces: Traces;
  readonly run: number;
  readonly places: readonly number[];
  readonly names: readonly string[];
  readonly shown: Formatters;
}

/** The course of a season, its scales written on: all seasons are drawn to the same ones. */
export function SeasonPicture({ traces, run, places, names, shown }: SeasonPictureProps) {
  const colours = palette();
  const scale = seasonScale(traces, places);
  const [width, above, below] = [300, 84, 116];
  return (
    <figure class="season-picture">
      <svg
        viewBox={`0 0 ${width} ${above + below + 22}`}
        role="img"
        aria-label={`The season's course: above the ground water used since sowing, to ${shown.water(scale.waterMm)} ${shown.length}; below it the root front, to ${shown.depth(scale.depthMm)} ${shown.length}; from sowing to day ${Math.round(scale.days)}`}
      >
        <SeasonLines {...{ traces, run, places, scale, colours }} width={width} above={above} below={below} />
        <g
          font-family={fontFamily}
          font-size="12.5"
          fill={colours.ink}
          stroke={colours.paper}
          stroke-width="3.5"
          paint-order="stroke"
        >
          <text x="5" y="15">
            {shown.water(scale.waterMm)} {shown.length} used
          </text>
          <text x="5" y={above + below - 7}>
            {shown.depth(scale.depthMm)} {shown.length} deep
          </text>
          <text x={width - 5} y={above - 6} text-anchor="end">
            the ground
          </text>
          <text x="0" y={above + below + 16} fill={colours.pencil} stroke="none">
            sowing
          </text>
          <text x={width} y={above + below + 16} text-anchor="end" fill={colours.pencil} stroke="none">
            day {Math.round(scale.days)}
          </text>
        </g>
      </svg>
      <figcaption>
        <ul class="season-names">
          {names.map((name, i) => (
            <li key={name}>
              <svg viewBox="0 -6 30 12" width="30" height="12" aria-hidden="true">
                <CaseLine c={places[i]!} />
              </svg>
              {name}
            </li>
          ))}
        </ul>
        Upward: water that crop and soil surface used since sowing. Downward: the root front.
      </figcaption>
    </figure>
  );
}
