import type { Box } from "../../pictures/pitWallLayout.ts";

/** A box of the drawing as shares of it, for what lies over the drawing however large it is shown. */
export function sharesOf(
  box: Box,
  width: number,
  height: number,
): { left: string; top: string; width: string; height: string } {
  return {
    left: percentOf(box.x / width),
    top: percentOf(box.y / height),
    width: percentOf(box.width / width),
    height: percentOf(box.height / height),
  };
}

export function percentOf(share: number): string {
  return `${(100 * share).toFixed(3)}%`;
}

/** A target that a finger can hit, CSS pixels (WCAG 2.2, success criterion 2.5.8; read). */
export const targetPx = 24;
/** More handles than this beside each other would be too narrow on a phone. */
const mostBeside = 3;

/** Which part of the width a handle takes. */
export interface Column {
  readonly column: number;
  readonly columns: number;
}

/** Handles that lie too close above each other stand side by side: their parts of the width, in the order of `ys`, which grow. */
export function columnsFor(ys: readonly number[]): Column[] {
  const found: Column[] = [];
  for (let from = 0; from < ys.length; from = found.length) {
    let to = from + 1;
    while (to < ys.length && ys[to]! - ys[to - 1]! < targetPx) to++;
    const columns = Math.min(to - from, mostBeside);
    for (let i = from; i < to; i++) found.push({ column: (i - from) % columns, columns });
  }
  return found;
}
