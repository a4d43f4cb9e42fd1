import { inWholeSteps } from "../../../src/drawing/depths.ts";
import type { SeasonShown } from "../../worker/protocol.ts";
import { clamp, type Box, type Window } from "../kit/box.ts";

/** Where each part of the pit wall stands; everything from `soil` on shares the depth axis. */
export interface PitWallLayout {
  readonly width: number;
  readonly height: number;
  readonly wide: boolean;
  readonly rain: Box;
  /** Sowing, flowering, maturity by name; then the stages. */
  readonly events: Box;
  readonly stages: Box;
  readonly soil: Box;
  readonly water: Box;
  /** Room for the fronts' names right of the water; none on a narrow screen. */
  readonly names: Box | null;
  /** Water by depth on the day of the playhead. */
  readonly day: Box | null;
  readonly legendY: number;
}

/** Narrower than this the parts stand closer and the last two are left out. */
const wideFromPx = 760;

const sizes = {
  wide: { axis: 50, gap: 14, rain: 78, events: 22, stages: 22, dates: 42, legend: 34, right: 4 },
  narrow: { axis: 34, gap: 8, rain: 58, events: 20, stages: 16, depth: 400, dates: 40, legend: 30, right: 6 },
} as const;

/** What stands above the drawing on a desktop screen, and the drawing's own parts besides its depth, px. */
const aroundPx = 420;

/** @param screenPx height of the window: on a desktop screen the drawing is to be seen whole */
export function pitWallLayout(width: number, screenPx = 920): PitWallLayout {
  const wide = width >= wideFromPx;
  const size = wide
    ? { ...sizes.wide, depth: Math.round(clamp(screenPx - aroundPx, 340, 640)) }
    : sizes.narrow;
  const soilWidth = wide ? clamp(width * 0.2, 190, 260) : clamp(width * 0.24, 64, 150);
  const namesWidth = wide ? 132 : 0;
  const dayWidth = wide ? clamp(width * 0.08, 72, 110) : 0;
  const top = size.rain + size.events + size.stages + 4;
  const waterX = size.axis + soilWidth + size.gap;
  const after = wide ? namesWidth + dayWidth + size.gap : 0;
  const waterWidth = Math.max(60, width - waterX - after - size.right);
  const across = { x: waterX, width: waterWidth };
  const down = { y: top, height: size.depth };
  const dayX = waterX + waterWidth + namesWidth + size.gap;
  return {
    width,
    height: top + size.depth + size.dates + size.legend,
    wide,
    rain: { ...across, y: 8, height: size.rain - 8 },
    events: { ...across, y: size.rain, height: size.events },
    stages: { ...across, y: size.rain + size.events, height: size.stages },
    soil: { x: size.axis, width: soilWidth, ...down },
    water: { ...across, ...down },
    names: wide ? { x: waterX + waterWidth, width: namesWidth, ...down } : null,
    day: wide ? { x: dayX, width: dayWidth, ...down } : null,
    legendY: top + size.depth + size.dates,
  };
}

/** The whole day and the depth under a point; held within the window. */
export function placeAtPoint(
  { x, y, width, height }: Box,
  window: Window,
  px: number,
  py: number,
): { day: number; depthMm: number } {
  const { fromDay, toDay, depthMm } = window;
  const day = fromDay + Math.floor(((px - x) / width) * (toDay - fromDay));
  return {
    day: clamp(day, fromDay, toDay - 1),
    depthMm: clamp(((py - y) / height) * depthMm, 0, depthMm - 0.001),
  };
}

/** Depth that shows the deepest front with some soil below it, in whole feet. */
export function rootedDepthMm({ cases }: SeasonShown, soilBottomMm: number): number {
  const deepest = Math.max(0, ...cases.map(({ frontMm }) => frontMm.at(-1) ?? 0));
  return Math.min(soilBottomMm, inWholeSteps(deepest * 1.15, 304.8, 3));
}
