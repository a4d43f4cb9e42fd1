import { mmPerInch } from "../../../src/quantity/constants.ts";
import type { SeasonShown } from "../../worker/protocol.ts";

/** A part of the picture, in its own pixels. */
export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

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

/** What stands above the drawing on a buffers's screen, and the drawing's own parts besides its depth, px. */
const aroundPx = 420;

/** @param screenPx height of the window: on a buffers the drawing is to be seen whole */
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

/** Which days and depths are shown. */
export interface Window {
  /** From the season's first day; `toDay` is the first one left out. */
  readonly fromDay: number;
  readonly toDay: number;
  readonly depthMm: number;
}

export function dayX({ x, width }: Box, { fromDay, toDay }: Window, day: number): number {
  return x + ((day - fromDay) / (toDay - fromDay)) * width;
}

export function depthY({ y, height }: Box, { depthMm }: Window, mm: number): number {
  return y + (mm / depthMm) * height;
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

/** Depth that shows the deepest front with some soil below it, in whole steps so that it seldom moves. */
export function rootedDepthMm({ cases }: SeasonShown, soilBottomMm: number): number {
  const deepest = Math.max(0, ...cases.map(({ frontMm }) => frontMm.at(-1) ?? 0));
  const stepMm = 304.8;
  return Math.min(soilBottomMm, Math.max(3, Math.ceil((deepest * 1.15) / stepMm)) * stepMm);
}

export interface Tick {
  readonly mm: number;
  readonly text: string;
}

/** Round depths at least `leastPx` apart, in the unit on show. */
export function depthTicks(depthMm: number, heightPx: number, us: boolean, leastPx = 34): Tick[] {
  const mmPerUnit = us ? mmPerInch : 1;
  const steps = us ? [2, 3, 6, 12, 24, 36] : [50, 100, 200, 250, 500, 1000];
  const pxPerUnit = (heightPx / depthMm) * mmPerUnit;
  const step = steps.find((one) => one * pxPerUnit >= leastPx) ?? steps.at(-1)!;
  const count = Math.floor(depthMm / (step * mmPerUnit) + 1e-9);
  return Array.from({ length: count + 1 }, (_, i) => ({
    mm: i * step * mmPerUnit,
    text: String(i * step),
  }));
}

/** Centres moved apart so that none comes nearer than half of both heights, and all stay between the ends. */
export function apart(
  wanted: readonly number[],
  heights: readonly number[],
  from: number,
  to: number,
): number[] {
  const order = wanted.map((_, i) => i).sort((a, b) => wanted[a]! - wanted[b]! || a - b);
  const centres = [...wanted];
  let edge = from;
  for (const i of order) {
    centres[i] = Math.max(wanted[i]!, edge + heights[i]! / 2);
    edge = centres[i]! + heights[i]! / 2;
  }
  edge = to;
  for (const i of order.toReversed()) {
    centres[i] = Math.min(centres[i]!, edge - heights[i]! / 2);
    edge = centres[i]! - heights[i]! / 2;
  }
  return centres;
}

export function clamp(value: number, least: number, most: number): number {
  return Math.min(Math.max(value, least), most);
}
