import type { LayerShown } from "../../worker/protocol.ts";
import { apart } from "../../../src/drawing/labels.ts";
import { clamp, type Box } from "../kit/box.ts";
import { shortened, widthOf, wrapped } from "../../../src/drawing/text.ts";

/** Where the parts of the two root systems stand, px of the drawing. */
export interface TwoRootsLayout {
  readonly width: number;
  readonly height: number;
  readonly wide: boolean;
  /** Of the numbers on the axis, and of names. */
  readonly sizePx: number;
  /** How much larger than usual everything is written: on a projector the drawing is large, and so are its words. */
  readonly scale: number;
  /** One for each root system: the soil, with the ground as its top. */
  readonly panels: readonly Box[];
  /** The name over each, in the lines that it takes. */
  readonly names: readonly (readonly string[])[];
  readonly nameSizePx: number;
  /** Where the names end and the sky begins, in which rain falls. */
  readonly namesPx: number;
  /** Above the ground. */
  readonly skyPx: number;
  readonly legendY: number;
  readonly axisX: number;
}

/** Narrower than this, everything stands closer. */
const wideFromPx = 520;
/** As large a drawing as this is written in the usual size, px. */
const usual = { width: 830, height: 440 } as const;
/** A bold letter's width against the `wrapped` one's. */
const bold = 1.18;

/** @param names of the cases, left to right */
export function twoRootsLayout(width: number, height: number, names: readonly string[]): TwoRootsLayout {
  const wide = width >= wideFromPx;
  const scale = wide ? clamp(Math.min(width / usual.width, height / usual.height), 1, 1.6) : 1;
  const axis = wide ? 52 * scale : 30;
  const gap = wide ? 22 * scale : 8;
  const foot = wide ? 34 * scale : 30;
  const panelWidth = (width - axis - gap * (names.length - 1) - 2) / names.length;
  const nameSizePx = wide ? 20 * scale : 14;
  const nameRoomPx = panelWidth - (wide ? 50 * scale : 4);
  const lines = names.map((name) => linesOf(name, nameRoomPx, nameSizePx, wide ? 4 : 6));
  const namesPx = 6 + Math.max(1, ...lines.map(({ length }) => length)) * nameSizePx * 1.15;
  const skyPx = Math.round(namesPx + (wide ? clamp(height * 0.12, 50, 100) : 54));
  const box = (n: number): Box => ({
    x: axis + n * (panelWidth + gap),
    y: skyPx,
    width: panelWidth,
    height: height - skyPx - foot,
  });
  return {
    width,
    height,
    wide,
    sizePx: wide ? 17 * scale : 13,
    scale,
    panels: names.map((_, n) => box(n)),
    names: lines,
    nameSizePx,
    namesPx,
    skyPx,
    legendY: height - foot + 12,
    axisX: axis - 6,
  };
}

function linesOf(name: string, roomPx: number, sizePx: number, most: number): string[] {
  const lines = wrapped(name, roomPx, sizePx * bold);
  if (lines.length <= most) return lines;
  return [...lines.slice(0, most - 1), `${lines[most - 1]!}…`];
}

/** Left of it stand the names of the layers. */
export function crownIn({ width }: Box): number {
  return width * 0.62;
}

/** A slip of paper on a layer, with what is written on it. */
export interface Slip {
  readonly box: Box;
  readonly sizePx: number;
  readonly lines: readonly string[];
}

/** A letter's width on a slip against the size of its type. */
const slipLetter = { plain: 0.6, bold: 0.68 } as const;

/** A dense layer's words are bold where there is room. */
export function slipWeight(isSlow: boolean, { wide }: TwoRootsLayout): 400 | 600 {
  return isSlow && wide ? 600 : 400;
}

/** One slip for each layer, clear of one another, left of the plant. */
export function slipsOf(
  bands: readonly { readonly layer: LayerShown; readonly isSlow: boolean; readonly band: Box }[],
  box: Box,
  layout: TwoRootsLayout,
): readonly Slip[] {
  const sizePx = layout.sizePx - (layout.wide ? 2 : 2.5) * layout.scale;
  const linePx = sizePx * 1.2;
  const letterPx = (isSlow: boolean) =>
    sizePx * slipLetter[slipWeight(isSlow, layout) === 600 ? "bold" : "plain"];
  const saidIn = (isWhole: boolean) =>
    bands.map(({ layer, isSlow }) =>
      layerSaid(layer, isSlow, Math.floor((crownIn(box) - 20) / letterPx(isSlow)), {
        isWhole,
        wide: layout.wide,
      }),
    );
  const heightOf = (lines: readonly string[]) => lines.length * linePx + 4;
  const whole = saidIn(true);
  const hasRoom = whole.reduce((sum, lines) => sum + heightOf(lines) + 1, 0) < box.height * 0.85;
  const said = hasRoom ? whole : saidIn(false);
  const heights = said.map(heightOf);
  const centres = apart(
    bands.map(({ band }, i) => band.y + Math.min(band.height / 2, heights[i]! / 2 + 5)),
    heights.map((height) => height + 1),
    box.y + 2,
    box.y + box.height,
  );
  return said.map((lines, i) => ({
    lines,
    sizePx,
    box: {
      x: box.x + 8,
      y: centres[i]! - heights[i]! / 2,
      width: Math.max(...lines.map(({ length }) => length)) * letterPx(bands[i]!.isSlow) + 10,
      height: heights[i]!,
    },
  }));
}

/** Where the number of a front stands: under its line, or over it where it would lie on a slip or on the line; never out of the soil. */
export function numberTop(frontY: number, room: Box, soil: Box, slips: readonly Slip[]): number {
  const within = (top: number) => clamp(top, soil.y, soil.y + soil.height - room.height);
  const tops = [within(frontY + 4), within(frontY - room.height - 4)] as const;
  const isClear = (top: number) =>
    (top >= frontY || top + room.height <= frontY) &&
    slips.every(
      ({ box }) => box.x + box.width < room.x || box.y + box.height < top || box.y > top + room.height,
    );
  return tops.find(isClear) ?? tops[0];
}

/** What is written on a layer: what it is, how dense, and whether roots are slow in it. */
export function layerSaid(
  { name, bulkDensityKgPerM3 }: Pick<LayerShown, "name" | "bulkDensityKgPerM3">,
  isSlow: boolean,
  letters: number,
  how: { readonly isWhole: boolean; readonly wide: boolean },
): string[] {
  const density = (bulkDensityKgPerM3 / 1000).toFixed(2);
  const all = `${name}, ${density}`;
  const does = isSlow ? ["slows roots"] : [];
  if (how.isWhole) {
    // On a phone the roots go before a density that slows nothing.
    const told = all.length <= letters || isSlow || how.wide ? all : name;
    return [told, ...does].flatMap((text) => wrapped(text, letters + 0.5, oneLetter));
  }
  const first = all.length <= letters ? [all] : [shortened(name, letters), density];
  return isSlow ? [...first, shortened("slows roots", letters)] : [first[0]!];
}

/** The size of type in which a letter takes one px of room. */
const oneLetter = 1 / widthOf("a", 1);
