import type { ReadonlySignal } from "@preact/signals";
import { useMemo } from "preact/hooks";
import type { CaseSeason, SeasonShown } from "../../worker/protocol.ts";
import { crownX, rootsOf } from "./pitWallRoots.ts";
import { plantOf } from "../kit/handDrawn.ts";
import { clamp, dayX, depthY, type Box, type Window } from "../kit/box.ts";
import type { PitWallLayout } from "./pitWallLayout.ts";
import { frontOn, sayMonthDay } from "./pitWallReading.ts";
import { caseStyle, type Palette } from "../kit/palette.ts";
import { shareAvailable } from "./waterHeatmap.ts";

interface OnDayProps {
  readonly season: SeasonShown;
  readonly caseIndex: number;
  readonly layout: PitWallLayout;
  readonly window: Window;
  readonly colours: Palette;
  /** Day on the axis that all cases share. */
  readonly day: ReadonlySignal<number>;
}

/** The chosen case's plant over the pit, its roots as deep as the front is that day. Drawn to be seen, not measured, but for the depth. */
export function PlantOnDay({
  season,
  caseIndex,
  layout,
  window,
  colours,
  day,
  id,
}: OnDayProps & { readonly id: string }) {
  const { soil } = layout;
  const one = season.cases[caseIndex]!;
  const roots = useMemo(() => rootsOf(soil, soil.y, soil.y + soil.height), [soil.x, soil.width, soil.height]);
  const frontMm = frontOn(one, Math.min(day.value, one.startsAt + one.days - 1));
  if (frontMm === null) return null;
  const front = depthY(soil, window, Math.min(frontMm, window.depthMm));
  const grown = clamp(
    (day.value - one.startsAt - one.sowingDay) / Math.max(1, one.floweringDay - one.sowingDay),
    0,
    1,
  );
  const { color } = caseStyle(caseIndex, colours);
  const path = (isMain: boolean) =>
    roots
      .filter((root) => root.isMain === isMain)
      .map((root) => root.path)
      .join("");
  return (
    <g fill="none" stroke-linecap="round" stroke-linejoin="round">
      <clipPath id={`${id}-roots`}>
        <rect x={soil.x} y={soil.y} width={soil.width} height={Math.max(0, front - soil.y)} />
      </clipPath>
      <g clip-path={`url(#${id}-roots)`}>
        <path d={path(true) + path(false)} stroke={colours.paper} stroke-width="3.4" stroke-opacity="0.55" />
        <path d={path(true)} stroke={colours.ink} stroke-width="1.5" />
        <path d={path(false)} stroke={colours.ink} stroke-width="0.9" />
      </g>
      <path
        d={`M${soil.x} ${front.toFixed(1)}h${soil.width}`}
        stroke={colours.paper}
        stroke-width="4.5"
        stroke-opacity="0.8"
      />
      <path d={`M${soil.x} ${front.toFixed(1)}h${soil.width}`} stroke={color} stroke-width="2.5" />
      <path
        d={plantOf(crownX(soil), soil.y, 8 + grown * (soil.y - 26))}
        stroke={colours.ink}
        stroke-width="1.8"
      />
    </g>
  );
}

/** The playhead: what comes after it is veiled. */
export function Playhead({ season, layout, window, colours, day }: Omit<OnDayProps, "caseIndex">) {
  const { water, rain } = layout;
  const now = day.value;
  if (now < window.fromDay || now >= season.days - 1) return null;
  const x = dayX(water, window, now + 0.5);
  const bottom = water.y + water.height;
  return (
    <g>
      <rect
        x={x}
        y={rain.y}
        width={Math.max(0, water.x + water.width - x)}
        height={bottom - rain.y}
        fill={colours.paper}
        fill-opacity="0.62"
      />
      <path d={`M${x.toFixed(1)} ${rain.y}V${bottom + 8}`} stroke={colours.ink} stroke-width="2" />
      <path d={`M${x.toFixed(1)} ${bottom}l-6 10h12z`} fill={colours.ink} />
    </g>
  );
}

/** Water by depth on the day of the playhead: the chosen case filled, the others as lines, each front as a tick. */
export function WaterOnDay({ season, caseIndex, layout, window, colours, day }: OnDayProps) {
  const box = layout.day;
  if (box === null) return null;
  const bottom = box.y + box.height;
  return (
    <g fill="none" font-size="12">
      <rect {...box} fill={colours.rule} fill-opacity="0.35" stroke={colours.pencil} stroke-width="0.8" />
      {season.cases.map((one, c) => {
        const path = sharePath(one, day.value - one.startsAt, box, window);
        if (path === "") return null;
        const { color } = caseStyle(c, colours);
        return c === caseIndex ? (
          <path
            key={c}
            d={`${path}H${box.x}z`}
            fill={colours.rain}
            fill-opacity="0.5"
            stroke={color}
            stroke-width="1.8"
          />
        ) : (
          <path key={c} d={path} stroke={color} stroke-width="1.4" stroke-dasharray="3 3" />
        );
      })}
      {season.cases.map((one, c) => {
        const mm = frontOn(one, day.value);
        if (mm === null || mm > window.depthMm) return null;
        const y = depthY(box, window, mm).toFixed(1);
        return (
          <path
            key={c}
            d={`M${box.x} ${y}h${box.width}`}
            stroke={caseStyle(c, colours).color}
            stroke-width={c === caseIndex ? 2.5 : 1.5}
          />
        );
      })}
      <path d={`M${box.x} ${bottom}v5m${box.width / 2} 0v-5m${box.width / 2} 0v5`} stroke={colours.pencil} />
      <g fill={colours.pencil}>
        <text x={box.x} y={bottom + 18}>
          0
        </text>
        <text x={box.x + box.width} y={bottom + 18} text-anchor="end">
          100 %
        </text>
        <text x={box.x + box.width / 2} y={box.y - 22} text-anchor="middle" fill={colours.ink}>
          water on
        </text>
        <text
          x={box.x + box.width / 2}
          y={box.y - 7}
          text-anchor="middle"
          fill={colours.ink}
          font-weight="600"
        >
          {sayMonthDay(season.firstDay + day.value)}
        </text>
      </g>
    </g>
  );
}

/** From the surface down, a step a slice; empty on days outside the case's run. */
function sharePath(one: CaseSeason, ownDay: number, box: Box, window: Window): string {
  if (ownDay < 0 || ownDay >= one.days) return "";
  let path = `M${box.x} ${box.y}`;
  for (let slice = 0; slice < one.sliceTopMm.length; slice++) {
    const bottomMm = Math.min(window.depthMm, one.sliceTopMm[slice]! + one.sliceThicknessMm[slice]!);
    const x = box.x + shareAvailable(one, ownDay, slice) * box.width;
    path += `H${x.toFixed(1)}V${depthY(box, window, bottomMm).toFixed(1)}`;
    if (bottomMm >= window.depthMm) break;
  }
  return path;
}
