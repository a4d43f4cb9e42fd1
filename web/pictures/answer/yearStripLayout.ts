import { axisOver, roundUp, type Axis } from "../../../src/drawing/axis.ts";
import { widthOf } from "../../../src/drawing/text.ts";

/** A year of the strip, in the units shown. */
export interface YearOfStrip {
  /** Short, for the axis: the strip says beside it that years are generated. */
  readonly label: string;
  /** What the later case had more; with one case only, what it had. */
  readonly more: number;
  /** The year's own rain. */
  readonly rain: number;
}

export interface StripRoom {
  readonly width: number;
  /** Pixels of the writing. */
  readonly sizePx: number;
  /** Years lie in their own order: then a few of many can be named. */
  readonly byYear: boolean;
}

export interface YearLabel {
  readonly x: number;
  readonly text: string;
}

export interface StripLayout {
  readonly left: number;
  readonly right: number;
  /** Width of a year's place, and of its bar. */
  readonly slotPx: number;
  readonly barPx: number;
  readonly more: Axis;
  readonly rain: Axis;
  /** Between the differences and the rain below them: room for the years' names. */
  readonly names: { readonly top: number; readonly upright: boolean; readonly labels: readonly YearLabel[] };
  readonly rainTop: number;
  readonly rainBottom: number;
  readonly height: number;
  readonly xOf: (i: number) => number;
}

const topPx = 26;
const differencesPx = 210;
const rainPx = 64;
/** Upright names need so much of a place. */
const uprightPx = 12;

/** Differences above, the rain of the same years below, the years' names between them. */
export function stripLayout(years: readonly YearOfStrip[], room: StripRoom): StripLayout {
  const { width, sizePx, byYear } = room;
  const [left, right] = [52, width - 8];
  const slotPx = (right - left) / Math.max(1, years.length);
  const xOf = (i: number) => left + (i + 0.5) * slotPx;
  const values = years.map(({ more }) => more);
  const bottom = topPx + differencesPx;
  const more = axisOver(Math.min(0, ...values), Math.max(0, ...values), bottom, topPx, 5);
  const longest = Math.max(0, ...years.map(({ label }) => widthOf(label, sizePx)));
  const flat = slotPx >= longest + 6;
  const upright = !flat && slotPx >= uprightPx;
  const named =
    flat || upright ? years.map((_, i) => i) : byYear ? someOf(years.length, slotPx, longest) : [];
  const namesPx = upright ? longest + 14 : named.length > 0 ? sizePx + 12 : 10;
  const rainTop = bottom + namesPx + sizePx + 12;
  const rainBottom = rainTop + rainPx;
  return {
    left,
    right,
    slotPx,
    barPx: Math.max(1, Math.min(18, slotPx * 0.62)),
    more,
    rain: axisOver(0, Math.max(0, ...years.map(({ rain }) => rain)), rainBottom, rainTop, 2),
    names: {
      top: bottom,
      upright,
      labels: named.map((i) => ({
        x: upright ? xOf(i) : inside(xOf(i), widthOf(years[i]!.label, sizePx) / 2, left, width),
        text: years[i]!.label,
      })),
    },
    rainTop,
    rainBottom,
    height: rainBottom + 10,
    xOf,
  };
}

function inside(x: number, half: number, from: number, to: number): number {
  return Math.max(from + half - 20, Math.min(to - half, x));
}

/** Every second, fifth, tenth … place, from the first, as many as there is room for. */
function someOf(count: number, slotPx: number, longest: number): number[] {
  const step = Math.max(1, roundUp((longest + 14) / slotPx));
  return Array.from({ length: Math.ceil(count / step) }, (_, i) => i * step);
}

/** The year whose place holds a point, px; the nearest one outside of them. */
export function yearAt({ left, slotPx }: StripLayout, count: number, x: number): number {
  return Math.max(0, Math.min(count - 1, Math.floor((x - left) / slotPx)));
}
