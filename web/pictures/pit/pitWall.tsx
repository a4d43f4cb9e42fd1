import type { ReadonlySignal } from "@preact/signals";
import { useMemo } from "preact/hooks";
import type { Ref } from "preact";
import type { Formatters } from "../../../src/report/tables/formatters.ts";
import type { LayerShown, SeasonShown } from "../../worker/protocol.ts";
import { Fronts } from "./pitWallFronts.tsx";
import { Dates, RainBars, Stages } from "./pitWallTime.tsx";
import { PlantOnDay, Playhead, WaterOnDay } from "./pitWallDay.tsx";
import type { Window } from "../kit/box.ts";
import type { PitWallLayout } from "./pitWallLayout.ts";
import { SoilProfile } from "./soilProfile.tsx";
import { pixelsUrl, waterPixels } from "./waterHeatmap.ts";
import { handLine } from "../kit/handDrawn.ts";
import { fontFamily, words, type Palette } from "../kit/palette.ts";
import { DepthAxis } from "../kit/depthAxis.tsx";

export const defaults = {
  name: "The pit wall: soil, plant-available water and root fronts by depth and date",
  fileName: "pit-wall",
} as const;

export interface PitWallProps {
  readonly layers: readonly LayerShown[];
  /** Null until the first season is there: the soil is drawn without it. */
  readonly season: SeasonShown | null;
  readonly caseIndex: number;
  readonly layout: PitWallLayout;
  readonly window: Window;
  readonly colours: Palette;
  readonly shown: Formatters;
  readonly day: ReadonlySignal<number>;
  /** Part of the name of everything in the drawing that is referred to. */
  readonly id: string;
  readonly svg: Ref<SVGSVGElement>;
}

/** Soil, water, fronts, rain and dates in one drawing, all on one depth axis. */
export function PitWall(props: PitWallProps) {
  const { layers, season, caseIndex, layout, window, colours, shown, day, id, svg } = props;
  const one = season?.cases[caseIndex] ?? null;
  const parts = { layout, window, colours };
  return (
    <svg
      ref={svg}
      viewBox={`0 0 ${layout.width} ${layout.height}`}
      role="img"
      aria-label={defaults.name}
      class="svg-picture"
      font-family={fontFamily}
    >
      <Depths {...{ layout, window, colours, shown }} />
      <SoilProfile
        {...{ layers, window, colours, shown, id, season: one }}
        box={layout.soil}
        wide={layout.wide}
      >
        {season !== null && <PlantOnDay {...{ season, caseIndex, day, id, ...parts }} />}
      </SoilProfile>
      <Ground {...parts} layers={layers} />
      {season === null || one === null ? (
        <Waiting {...parts} />
      ) : (
        <>
          <Water {...{ season, caseIndex, ...parts }} />
          <RainBars {...{ season, one, shown, ...parts }} />
          <Stages {...{ season, one, ...parts }} />
          <Fronts {...{ season, shown, ...parts }} />
          <Dates {...{ season, ...parts }} />
          <Playhead {...{ season, day, ...parts }} />
          <WaterOnDay {...{ season, caseIndex, day, ...parts }} />
          <Scale {...{ layout, colours, id, name: one.name }} />
        </>
      )}
    </svg>
  );
}

type PartProps = Pick<PitWallProps, "layout" | "window" | "colours">;

function Depths({ layout, window, colours, shown }: PartProps & { readonly shown: Formatters }) {
  const { soil, wide } = layout;
  const left = { x: wide ? 6 : 2, "text-anchor": "start", fill: colours.ink } as const;
  return (
    <DepthAxis
      {...{ shown, colours }}
      box={soil}
      depthMm={window.depthMm}
      x={soil.x - 9}
      sizePx={wide ? 12.5 : 10.5}
      stroke={{ from: soil.x - 6, to: soil.x, color: colours.pencil }}
      unitY={soil.y - 8}
    >
      <text {...left} y={soil.y - 22}>
        {wide ? "Depth," : "Depth"}
      </text>
      <text {...left} y={soil.y - 8}>
        {shown.length}
      </text>
    </DepthAxis>
  );
}

/** The surface, and where the drawing stops before the soil does. */
function Ground({ layout, window, colours, layers }: PartProps & { readonly layers: readonly LayerShown[] }) {
  const { soil, wide } = layout;
  const bottomMm = layers.at(-1)?.bottomMm ?? 0;
  const bottom = soil.y + soil.height;
  return (
    <g font-size={wide ? 12 : 10.5}>
      <path
        d={handLine(soil.x - 4, soil.y, soil.width + 8, 9)}
        fill="none"
        stroke={colours.ink}
        stroke-width="2.6"
      />
      <text x={soil.x} y={bottom + 17} fill={colours.pencil}>
        {bottomMm > window.depthMm + 1 ? (wide ? "the soil goes on below" : "goes on …") : ""}
      </text>
    </g>
  );
}

function Waiting({ layout, colours }: PartProps) {
  const { water, rain } = layout;
  return (
    <g>
      <rect {...rain} fill={colours.rule} fill-opacity="0.35" />
      <rect {...water} fill={colours.rule} fill-opacity="0.45" />
      <text
        x={water.x + water.width / 2}
        y={water.y + water.height / 2}
        text-anchor="middle"
        fill={colours.pencil}
        font-style="italic"
      >
        Growing the roots …
      </text>
    </g>
  );
}

function Water({
  season,
  caseIndex,
  layout,
  window,
  colours,
}: PartProps & { season: SeasonShown; caseIndex: number }) {
  const { water, wide } = layout;
  const { fromDay, toDay, depthMm } = window;
  const url = useMemo(
    () => pixelsUrl(waterPixels(season.cases[caseIndex]!, window, colours.water)),
    [season, caseIndex, fromDay, toDay, depthMm, colours],
  );
  return (
    <g>
      <rect {...water} fill={colours.rule} fill-opacity="0.35" />
      <image {...water} href={url} preserveAspectRatio="none" image-rendering="pixelated" />
      <rect {...water} fill="none" stroke={colours.pencil} stroke-width={wide ? 1 : 0.8} />
    </g>
  );
}

/** What the colours mean, and whose water it is. */
function Scale({
  layout,
  colours,
  id,
  name,
}: Pick<PitWallProps, "layout" | "colours" | "id"> & { readonly name: string }) {
  const { legendY: y, water, wide, width } = layout;
  const barWidth = wide ? 220 : Math.min(120, width * 0.3);
  const x = wide ? water.x + 44 : 34;
  const full = `of what the soil can hold, “${name}”`;
  return (
    <g font-size={wide ? 12.5 : 10.5} fill={colours.ink}>
      <linearGradient id={`${id}-scale`}>
        {colours.water.map(([at, color]) => (
          <stop key={at} offset={at} stop-color={color} />
        ))}
      </linearGradient>
      <rect
        x={x}
        y={y + 4}
        width={barWidth}
        height="13"
        fill={`url(#${id}-scale)`}
        stroke={colours.pencil}
        stroke-width="0.7"
      />
      <text x={x - 6} y={y + 15} text-anchor="end">
        0 %
      </text>
      <text x={x + barWidth + 6} y={y + 15}>
        100 % {wide ? `${words.available.toLowerCase()}, share ${full}` : "of available water"}
      </text>
    </g>
  );
}
