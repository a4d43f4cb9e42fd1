import type { LayerShown } from "../../worker/protocol.ts";
import { apart } from "../../../src/drawing/labels.ts";
import { clamp, type Box } from "../kit/box.ts";
import { shortened, widthOf, wrapped } from "../../../src/drawing/text.ts";

/** Where the parts of the two root systems stand, px of the drawing. */
export interface TwoRootsLayout {
  readonly width: number;
  readonly height: number;
  readonly wide: boolean;
  /** Of the numbers on the axis. */
  readonly sizePx: number;
  /** How much larger than usual everything is drawn: on a projector the drawing is large, and so are its words. */
  readonly scale: number;
  /** One for each root system: the soil, with the ground as its top. */
  readonly panels: readonly Box[];
  /** Beside each soil, where the names of its layers stand; null where they stand beside the other. */
  readonly gutters: readonly (Gutter | null)[];
  /** The name over each, in the lines that it takes. */
  readonly names: readonly (readonly string[])[];
  readonly nameSizePx: number;
  /** Of the names of layers. */
  readonly slipSizePx: number;
  /** Of a front's depth. */
  readonly numberSizePx: number;
  /** Where the names end and the sky begins, in which rain falls. */
  readonly namesPx: number;
  /** Above the ground. */
  readonly skyPx: number;
  readonly legendY: number;
  readonly axisX: number;
}

export interface Gutter {
  readonly side: "left" | "right";
  readonly x: number;
  readonly width: number;
}

/** Narrower than this, everything stands closer. */
const wideFromPx = 520;
/** As large a drawing as this is written in the usual size, px. */
const usual = { width: 830, height: 440 } as const;
/** A bold letter's width against the `wrapped` one's. */
const bold = 1.18;

/**
 * @param names of the cases, left to right
 * @param leastTextPx nothing is written smaller, where there is room at all: on a projector
 */
export function twoRootsLayout(
  width: number,
  height: number,
  names: readonly string[],
  leastTextPx = 0,
): TwoRootsLayout {
  const wide = width >= wideFromPx;
  const scale = wide ? clamp(Math.min(width / usual.width, height / usual.height), 1, 1.6) : 1;
  const least = wide ? leastTextPx : 0;
  const sizePx = Math.max(least, wide ? 17 * scale : 13);
  const slipSizePx = Math.max(least, wide ? 15 * scale : 10.5);
  const numberSizePx = Math.max(least * 1.1, wide ? 22 * scale : 15);
  const nameSizePx = Math.max(least, wide ? 20 * scale : 14);
  const axis = wide ? 2.9 * sizePx : 30;
  const gap = wide ? 18 * scale : 8;
  const foot = wide ? 2 * sizePx : 30;
  // Where letters are large for the drawing, names are broken into more lines rather than the soil made a ribbon.
  const leastGutterPx = slipSizePx * (width > 32 * slipSizePx ? 7.3 : 5.2);
  const gutterPx = wide ? clamp(width * 0.145, leastGutterPx, slipSizePx * 9) : clamp(width * 0.2, 62, 80);
  const gutterCount = wide ? names.length : 1;
  const panelWidth = (width - axis - gutterPx * gutterCount - gap * (names.length - 1) - 2) / names.length;
  const isLast = (n: number) => n > 0 && n === names.length - 1;
  // A name may reach over its gutter.
  const nameRoomPx = panelWidth + (wide ? gutterPx - 50 * scale : 0) - 4;
  const lines = names.map((name) => linesOf(name, nameRoomPx, nameSizePx, wide ? 4 : 6));
  const namesPx = 6 + Math.max(1, ...lines.map(({ length }) => length)) * nameSizePx * 1.15;
  const skyPx = Math.round(namesPx + (wide ? clamp(height * 0.12, 50, 100) : 54));
  const first = axis + gutterPx;
  const box = (n: number): Box => ({
    x: first + n * (panelWidth + gap),
    y: skyPx,
    width: panelWidth,
    height: height - skyPx - foot,
  });
  const gutter = (n: number): Gutter | null => {
    if (n === 0) return { side: "left", x: axis, width: gutterPx };
    return wide && isLast(n) ? { side: "right", x: box(n).x + panelWidth, width: gutterPx } : null;
  };
  return {
    width,
    height,
    wide,
    sizePx,
    scale,
    panels: names.map((_, n) => box(n)),
    gutters: names.map((_, n) => gutter(n)),
    names: lines,
    nameSizePx,
    slipSizePx,
    numberSizePx,
    namesPx,
    skyPx,
    legendY: height - foot + 0.7 * sizePx,
    axisX: axis - 6,
  };
}

function linesOf(name: string, roomPx: number, sizePx: number, most: number): string[] {
  const lines = wrapped(name, roomPx, sizePx * bold);
  if (lines.length <= most) return lines;
  return [...lines.slice(0, most - 1), `${lines[most - 1]!}…`];
}

/** Where the plant stands, from the left of its soil. */
export function crownIn({ width }: Box): number {
  return width * 0.5;
}

/** What is written beside the soil, and the place in the soil that it is about. */
export interface Slip {
  readonly box: Box;
  readonly lines: readonly string[];
  /** Middle of what it names, px down the drawing. */
  readonly aboutY: number;
}

/** To be written beside the soil. */
export interface SlipWords {
  readonly lines: readonly string[];
  readonly aboutY: number;
}

export const slipLine = 1.15;

/** Each as near to what it names as the others let it, beside the soil and never on it; the first may stand above the ground. */
export function slipsIn(
  said: readonly SlipWords[],
  gutter: Gutter,
  soil: Box,
  { slipSizePx: sizePx, skyPx, namesPx }: TwoRootsLayout,
): readonly Slip[] {
  const heights = said.map(({ lines }) => lines.length * sizePx * slipLine + 4);
  const centres = apart(
    said.map(({ aboutY }) => aboutY),
    heights.map((height) => height + 3),
    Math.max(namesPx, skyPx - 2.2 * sizePx),
    soil.y + soil.height,
  );
  return said.map(({ lines, aboutY }, i) => ({
    lines,
    aboutY,
    box: { x: gutter.x, y: centres[i]! - heights[i]! / 2, width: gutter.width, height: heights[i]! },
  }));
}

/** Where the number of a front stands: under its line, or over it at the end of the soil. */
export function numberTop(frontY: number, heightPx: number, soil: Box): number {
  const under = frontY + 5;
  return under + heightPx <= soil.y + soil.height ? under : frontY - heightPx - 5;
}

/** What is written of a layer: its name, how dense it is where that is to be seen, and whether roots are slow in it. */
export function layerSaid(
  { name, bulkDensityKgPerM3 }: Pick<LayerShown, "name" | "bulkDensityKgPerM3">,
  how: { readonly isSlow: boolean; readonly showsDensity: boolean },
  roomPx: number,
  sizePx: number,
): string[] {
  const named = wrapped(name, roomPx, sizePx);
  const most = Math.max(1, Math.floor(roomPx / widthOf("a", sizePx)));
  const kept = named.length <= 2 ? named : [named[0]!, `${named[1]!} …`];
  return [
    ...kept.map((line) => shortened(line, most)),
    ...(how.showsDensity ? wrapped(`${(bulkDensityKgPerM3 / 1000).toFixed(2)} g/cm³`, roomPx, sizePx) : []),
    ...(how.isSlow ? wrapped("slows roots", roomPx, sizePx) : []),
  ];
}
