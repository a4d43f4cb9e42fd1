import type { LayerShown } from "../../worker/protocol.ts";
import type { Box } from "./box.ts";

/** How a layer is drawn by hand: grains where there is sand, short strokes for silt, long ones for clay, and its stones. */
export interface Earth {
  readonly grains: string;
  readonly strokes: string;
  readonly waves: string;
  readonly stones: string;
}

export const defaults = {
  /** Marks on 1000 px² of a layer that is all sand, all silt or all clay. */
  grainsPer1000: 22,
  strokesPer1000: 13,
  wavesPer1000: 8,
  /** px, across. */
  stonePx: 13,
  mostMarks: 900,
} as const;

/** The same layer in the same box is always drawn alike. */
export function earthOf(layer: LayerShown, box: Box, seed: number): Earth {
  const { sandFraction: sand, clayFraction: clay, gravelVolumeFraction: gravel } = layer;
  const thousands = (box.width * box.height) / 1000;
  const count = (per: number, share: number) =>
    Math.min(defaults.mostMarks, Math.round(thousands * per * share));
  const at = (n: number, salt: number) => spread(box, n, seed * 17 + salt);
  const marks = (n: number, salt: number, mark: (x: number, y: number, turn: number) => string) =>
    Array.from({ length: n }, (_, i) => {
      const [x, y] = at(i, salt);
      return mark(x, y, fraction(i * 0.3819 + salt));
    }).join("");
  const stones = Math.round((box.width * box.height * gravel) / (0.7 * defaults.stonePx ** 2));
  return {
    grains: marks(count(defaults.grainsPer1000, sand), 1, (x, y) => `M${px(x)} ${px(y)}h.01`),
    strokes: marks(count(defaults.strokesPer1000, Math.max(0, 1 - sand - clay)), 2, (x, y, turn) => {
      return `M${px(x)} ${px(y)}l${px(3 + turn)} ${px(turn - 0.5)}`;
    }),
    waves: marks(count(defaults.wavesPer1000, clay), 3, (x, y, turn) => {
      return `M${px(x)} ${px(y)}q3 ${px(-1.5 - turn)} 6 0t6 0`;
    }),
    stones: marks(Math.min(stones, 160), 4, (x, y, turn) =>
      stone(x, y, defaults.stonePx * (0.35 + 0.3 * turn), turn),
    ),
  };
}

/** An edge as a hand draws it: nearly straight. */
export function handLine(x: number, y: number, width: number, seed: number): string {
  const steps = Math.max(4, Math.round(width / 22));
  return Array.from({ length: steps + 1 }, (_, i) => {
    const off = Math.sin(i * 1.9 + seed * 2.3) * 0.9 + Math.sin(i * 0.7 + seed) * 0.6;
    return `${i === 0 ? "M" : "L"}${px(x + (i / steps) * width)} ${px(y + off)}`;
  }).join("");
}

/** A young plant at 0, a full one at 1, standing on the ground at its crown. */
export function plantOf(crown: number, ground: number, heightPx: number): string {
  let path = `M${px(crown)} ${px(ground)}v${px(-heightPx)}`;
  const leaves = Math.max(2, Math.round(heightPx / 9));
  for (let i = 0; i < leaves; i++) {
    const way = i % 2 === 0 ? 1 : -1;
    const up = ground - (heightPx * (i + 1)) / (leaves + 1);
    const length = 5 + heightPx * 0.22;
    path += `M${px(crown)} ${px(up)}q${px(way * length * 0.5)} ${px(-length * 0.75)} ${px(way * length)} ${px(-length * 0.1)}`;
  }
  return path;
}

/** Points that lie evenly yet without rows (the additive R2 sequence of Roberts 2018). */
function spread({ x, y, width, height }: Box, n: number, salt: number): [number, number] {
  return [
    x + width * fraction(0.5 + salt * 0.137 + (n + 1) * 0.7548776662466927),
    y + height * fraction(0.5 + salt * 0.291 + (n + 1) * 0.5698402909980532),
  ];
}

function stone(x: number, y: number, radius: number, turn: number): string {
  const corners = 7;
  const points = Array.from({ length: corners }, (_, i) => {
    const angle = (i / corners) * 2 * Math.PI + turn * 6;
    const r = radius * (0.78 + 0.3 * fraction(i * 0.618 + turn * 7));
    return `${px(x + Math.cos(angle) * r * 1.25)} ${px(y + Math.sin(angle) * r * 0.85)}`;
  });
  return `M${points.join("L")}z`;
}

/** What is left above the whole number below. */
export function fraction(value: number): number {
  return value - Math.floor(value);
}

/** A coordinate as it is written into a path. */
export function px(value: number): string {
  return value.toFixed(1);
}
