import type { CaseSeason } from "../../worker/protocol.ts";
import type { Window } from "../kit/box.ts";

export const defaults = {
  /** Rows over the depth shown: finer than the slices, so that layers begin where they do. */
  rows: 200,
} as const;

/** Colours of the scale, by share from 0 to 255 of 255, `[r, g, b]` each. */
export function colourTable(scale: readonly (readonly [number, string])[]): Uint8Array {
  const table = new Uint8Array(256 * 3);
  for (let i = 0; i < 256; i++) {
    const share = i / 255;
    const upper = Math.max(
      1,
      scale.findIndex(([at]) => at >= share),
    );
    const [from, to] = [scale[upper - 1]!, scale[upper]!];
    const part = (share - from[0]) / (to[0] - from[0]);
    for (let c = 0; c < 3; c++)
      table[3 * i + c] = Math.round(channel(from[1], c) * (1 - part) + channel(to[1], c) * part);
  }
  return table;
}

function channel(hex: string, c: number): number {
  return Number.parseInt(hex.slice(1 + 2 * c, 3 + 2 * c), 16);
}

/**
 * Share of its plant-available capacity that a slice holds at the end of one of the case's own days.
 *
 * @returns 0 to 1: water above field capacity, which drains away, counts as full; 0 where the slice can hold none
 */
export function shareAvailable(one: CaseSeason, ownDay: number, slice: number): number {
  const capacityMm = one.capacityMm[slice] ?? 0;
  if (capacityMm <= 0) return 0;
  const availableMm = one.availableMm[ownDay * one.capacityMm.length + slice] ?? 0;
  return Math.min(1, Math.max(0, availableMm / capacityMm));
}

/** The slice at a depth; null below the soil. */
export function sliceAt(
  { sliceTopMm, sliceThicknessMm }: Pick<CaseSeason, "sliceTopMm" | "sliceThicknessMm">,
  depthMm: number,
): number | null {
  const count = sliceTopMm.length;
  if (depthMm < 0 || count === 0 || depthMm >= sliceTopMm[count - 1]! + sliceThicknessMm[count - 1]!)
    return null;
  let [low, high] = [0, count - 1];
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (sliceTopMm[middle]! <= depthMm) low = middle;
    else high = middle - 1;
  }
  return low;
}

export interface Pixels {
  readonly width: number;
  readonly height: number;
  readonly rgba: Uint8ClampedArray<ArrayBuffer>;
}

/** A column a day, a row a depth; days before and after the case's own run, and what lies below its soil, are left clear. */
export function waterPixels(
  one: CaseSeason,
  { fromDay, toDay, depthMm }: Window,
  scale: readonly (readonly [number, string])[],
  rows: number = defaults.rows,
): Pixels {
  const width = toDay - fromDay;
  const rgba = new Uint8ClampedArray(width * rows * 4);
  const table = colourTable(scale);
  for (let row = 0; row < rows; row++) {
    const slice = sliceAt(one, ((row + 0.5) / rows) * depthMm);
    if (slice === null) break;
    for (let column = 0; column < width; column++) {
      const ownDay = fromDay + column - one.startsAt;
      if (ownDay < 0 || ownDay >= one.days) continue;
      const colour = 3 * Math.round(shareAvailable(one, ownDay, slice) * 255);
      const at = 4 * (row * width + column);
      rgba[at] = table[colour]!;
      rgba[at + 1] = table[colour + 1]!;
      rgba[at + 2] = table[colour + 2]!;
      rgba[at + 3] = 255;
    }
  }
  return { width, height: rows, rgba };
}

/** As an address of a PNG, for an SVG to hold. */
export function pixelsUrl({ width, height, rgba }: Pixels): string {
  const canvas = document.createElement("canvas");
  canvas.width = width;
  canvas.height = height;
  canvas.getContext("2d")?.putImageData(new ImageData(rgba, width, height), 0, 0);
  return canvas.toDataURL("image/png");
}
