import type { ReadonlySignal } from "@preact/signals";
import { useMemo } from "preact/hooks";
import type { Formatters } from "../../../src/report/tables/formatters.ts";
import type { CaseSeason, SeasonShown } from "../../worker/protocol.ts";
import { caseStyle, type Palette } from "../kit/palette.ts";
import { plantOf } from "../kit/handDrawn.ts";
import { clamp, depthY, type Box, type Window } from "../kit/box.ts";
import { strokesTo, type RootSystem } from "./rootSystem.ts";
import { crownIn, numberTop, type TwoRootsLayout } from "./twoRootsLayout.ts";
import type { Strip } from "./twoRootsStrip.ts";
import { heldFront } from "./twoRootsTable.ts";
import { colourTable, shareAvailable } from "../pit/waterHeatmap.ts";
import { strokeDashes } from "../kit/caseLooks.ts";

/** What moves with the day: each part looks at it by itself, so that nothing else is drawn again. */

interface OfDay {
  readonly box: Box;
  readonly day: ReadonlySignal<number>;
  readonly colours: Palette;
}

interface WaterProps extends OfDay {
  readonly one: CaseSeason;
  readonly window: Window;
}

/** Plant-available water by slice, from dry to full. */
export function WaterBehind({ one, box, window, day, colours }: WaterProps) {
  const table = useMemo(() => wordsOf(colours), [colours]);
  const ownDay = clamp(day.value - one.startsAt, 0, one.days - 1);
  const count = one.sliceTopMm.findIndex((top) => top >= window.depthMm);
  const slices = count < 0 ? one.sliceTopMm.length : count;
  return (
    <g class="roots-water">
      {Array.from({ length: slices }, (_, s) => {
        const y = depthY(box, window, one.sliceTopMm[s]!);
        return (
          <rect
            key={s}
            x={box.x}
            y={y.toFixed(2)}
            width={box.width}
            // A little more, so that no seam shows between two.
            height={((one.sliceThicknessMm[s]! / window.depthMm) * box.height + 0.6).toFixed(2)}
            fill={table[Math.round(shareAvailable(one, ownDay, s) * 63)]}
          />
        );
      })}
    </g>
  );
}

function wordsOf({ water }: Palette): string[] {
  const table = colourTable(water);
  return Array.from({ length: 64 }, (_, i) => {
    const at = 3 * Math.round((i / 63) * 255);
    return `rgb(${table[at]} ${table[at + 1]} ${table[at + 2]})`;
  });
}

interface GrownProps extends WaterProps {
  readonly roots: RootSystem;
}

const widths = [3.4, 2.1, 1.15, 0.7] as const;

/** As much of the system as the front has reached; a pale edge keeps the pencil apart from the water. */
export function GrownRoots({ one, roots, box, window, day, colours }: GrownProps) {
  const mm = heldFront(one, day.value);
  // Days on which the front stands still make nothing anew.
  const frontPx = mm === null ? -1 : (mm / window.depthMm) * box.height;
  const paths = useMemo(() => roots.map((strokes) => strokesTo(strokes, frontPx)), [roots, frontPx]);
  const [thick = "", main = "", side = "", fine = ""] = paths;
  const pencil = { fill: "none", "stroke-linecap": "round", stroke: colours.ink } as const;
  return (
    <g class="roots-grown" transform={`translate(${box.x} ${box.y})`}>
      <path d={thick + main} {...pencil} stroke={colours.paper} stroke-width="5.5" stroke-opacity="0.55" />
      <path d={side} {...pencil} stroke={colours.paper} stroke-width="3.2" stroke-opacity="0.45" />
      <path d={fine} {...pencil} stroke-width={widths[3]} stroke-opacity="0.8" />
      <path d={side} {...pencil} stroke-width={widths[2]} stroke-opacity="0.9" />
      <path class="roots-main" d={main} {...pencil} stroke-width={widths[1]} />
      <path d={thick} {...pencil} stroke-width={widths[0]} />
      {/* A second, lighter stroke beside the first, as a hand draws. */}
      <path
        d={thick + main}
        {...pencil}
        transform="translate(1.1 .7)"
        stroke-width="0.7"
        stroke-opacity="0.5"
      />
    </g>
  );
}

interface PlantProps extends OfDay {
  readonly one: CaseSeason;
  readonly layout: TwoRootsLayout;
}

/** Above the ground: how far the season has come, drawn alike for both. */
export function Plant({ one, box, layout, day, colours }: PlantProps) {
  const { startsAt, sowingDay, floweringDay } = one;
  const grown = clamp((day.value - startsAt - sowingDay) / Math.max(1, floweringDay - sowingDay), 0, 1);
  if (day.value < startsAt + sowingDay) return null;
  const heightPx = 5 + (layout.skyPx - layout.namesPx - 14) * grown;
  return (
    <path
      d={plantOf(box.x + crownIn(box), box.y, heightPx)}
      fill="none"
      stroke={colours.ink}
      stroke-width="2"
      stroke-linecap="round"
    />
  );
}

interface RainProps extends OfDay {
  readonly season: SeasonShown;
  readonly layout: TwoRootsLayout;
}

/** From under the names down to the ground; a stroke for each so much of the day's rain, mm. */
const mmPerStroke = 0.6;

export function RainFalling({ season, box, layout, day, colours }: RainProps) {
  const mm = season.rainMm[day.value] ?? 0;
  const count = Math.min(60, Math.round(mm / mmPerStroke));
  if (count === 0) return null;
  let path = "";
  for (let i = 0; i < count; i++) {
    // Evenly, yet without rows (the additive R2 sequence of Roberts 2018).
    const x = box.x + 6 + ((0.5 + i * 0.7548776662466927) % 1) * (box.width - 12);
    const y = layout.namesPx + ((0.5 + i * 0.5698402909980532) % 1) * (layout.skyPx - layout.namesPx - 12);
    path += `M${x.toFixed(1)} ${y.toFixed(1)}l-3 10`;
  }
  return (
    <path
      class="roots-rain"
      d={path}
      fill="none"
      stroke={colours.rain}
      stroke-width="1.8"
      stroke-linecap="round"
      stroke-opacity="0.75"
    />
  );
}

interface FrontsProps extends OfDay {
  readonly c: number;
  readonly others: readonly number[];
  readonly season: SeasonShown;
  readonly layout: TwoRootsLayout;
  readonly window: Window;
  readonly shown: Formatters;
}

/** How deep these roots are; thin, how deep the others are. Names of layers lie over it. */
export function FrontLines({ c, others, season, box, window, day, colours }: FrontsProps) {
  const mm = heldFront(season.cases[c]!, day.value);
  const line = (mmDeep: number) => `M${box.x} ${depthY(box, window, mmDeep).toFixed(1)}h${box.width}`;
  if (mm === null) return null;
  const { color, dash } = caseStyle(c, colours);
  return (
    <g class="roots-front" data-front-mm={mm.toFixed(2)}>
      {others.map((other) => {
        const deep = heldFront(season.cases[other]!, day.value);
        if (deep === null) return null;
        const style = caseStyle(other, colours);
        return (
          <path
            key={other}
            d={line(deep)}
            stroke={style.color}
            stroke-width="1.6"
            stroke-dasharray={strokeDashes[style.dash] ?? "1 0"}
            stroke-opacity="0.8"
          />
        );
      })}
      <path d={line(mm)} stroke={colours.paper} stroke-width="6" stroke-opacity="0.8" />
      <path d={line(mm)} stroke={color} stroke-width="3.2" stroke-dasharray={strokeDashes[dash]} />
    </g>
  );
}

interface StripProps extends OfDay {
  readonly c: number;
  readonly window: Window;
  readonly strip: ReadonlySignal<Strip | null>;
}

/** The soil between both fronts, outlined in the soil of the deeper roots. */
export function StripOutline({ c, box, window, strip, colours }: StripProps) {
  const now = strip.value;
  if (now === null || now.deeper !== c) return null;
  const y = depthY(box, window, now.topMm);
  const height = Math.max(3, depthY(box, window, now.bottomMm) - y);
  const inside = { x: box.x + 2, y: y.toFixed(1), width: box.width - 4, height: height.toFixed(1) };
  return (
    <g class="roots-strip" data-strip-mm={(now.bottomMm - now.topMm).toFixed(2)}>
      <rect {...inside} fill={caseStyle(c, colours).color} fill-opacity="0.28" />
      <rect {...inside} fill="none" stroke={colours.paper} stroke-width="6" stroke-opacity="0.7" />
      <rect {...inside} fill="none" stroke={caseStyle(c, colours).color} stroke-width="3.4" />
    </g>
  );
}

/** The depth of these roots, in figures. */
export function FrontNumber({
  c,
  season,
  box,
  layout,
  window,
  day,
  colours,
  shown,
}: Omit<FrontsProps, "others">) {
  const mm = heldFront(season.cases[c]!, day.value);
  if (mm === null) return null;
  const size = layout.numberSizePx;
  const text = `${shown.depth(mm)} ${shown.length}`;
  const [width, height] = [text.length * size * 0.6 + 10, size * 1.2];
  const x = box.x + box.width - width - 6;
  const top = numberTop(depthY(box, window, mm), height, box);
  return (
    <g class="roots-front-number">
      <rect {...{ x, width, height }} y={top} rx="3" fill={colours.paper} fill-opacity="0.94" />
      <text
        x={x + width - 5}
        y={top + size * 0.95}
        text-anchor="end"
        font-size={size}
        font-weight="700"
        fill={caseStyle(c, colours).color}
      >
        {text}
      </text>
    </g>
  );
}
