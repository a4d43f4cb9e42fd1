import type { LayerShown } from "../worker/protocol.ts";
import { clamp, type Box } from "./pitWallLayout.ts";

/** Where the parts of the two root systems stand, px of the drawing. */
export interface TwoRootsLayout {
  readonly width: number;
  readonly height: number;
  readonly wide: boolean;
  /** Of the numbers on the axis, and of names. */
  readonly sizePx: number;
  /** One for each root system: the soil, with the ground as its top. */
  readonly panels: readonly Box[];
  /** Above the ground. */
  readonly skyPx: number;
  readonly legendY: number;
  readonly axisX: number;
}

/** Narrower than this, everything stands closer. */
const wideFromPx = 520;

export function twoRootsLayout(width: number, height: number, count: number): TwoRootsLayout {
  const wide = width >= wideFromPx;
  const axis = wide ? 52 : 30;
  const gap = wide ? 22 : 8;
  const skyPx = wide ? clamp(height * 0.17, 84, 120) : 92;
  const foot = wide ? 34 : 30;
  const panelWidth = (width - axis - gap * (count - 1) - 2) / count;
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
    sizePx: wide ? 17 : 13,
    panels: Array.from({ length: count }, (_, n) => box(n)),
    skyPx,
    legendY: height - foot + 12,
    axisX: axis - 6,
  };
}

/** Left of it stand the names of the layers. */
export function crownIn({ width }: Box): number {
  return width * 0.62;
}

/** What is written on a layer: what it is, how dense, and whether roots are slow in it. */
export function layerSaid(
  { name, bulkDensityKgPerM3 }: LayerShown,
  isSlow: boolean,
  letters: number,
): string[] {
  const density = (bulkDensityKgPerM3 / 1000).toFixed(2);
  const whole = `${name}, ${density}`;
  const first = whole.length <= letters ? [whole] : [shortened(name, letters), density];
  return isSlow ? [...first, shortened("slows roots", letters)] : [first[0]!];
}

function shortened(text: string, most: number): string {
  return text.length <= most ? text : `${text.slice(0, Math.max(1, most - 1)).trimEnd()}…`;
}
