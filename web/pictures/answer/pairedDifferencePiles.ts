import type { Formatters } from "../../../src/report/tables/formatters.ts";
import type { PictureTable } from "../kit/frame.tsx";

/** Values counted in bins of equal width along an axis. */
export interface Pile {
  readonly from: number;
  readonly to: number;
  readonly values: readonly number[];
}

/** Piles from the low end of the range to the high one; every value is in one of them. */
export function pilesOf(values: ArrayLike<number>, low: number, high: number, count: number): Pile[] {
  const width = (high - low) / count;
  const held: number[][] = Array.from({ length: count }, () => []);
  for (const value of Array.from(values)) {
    const place = Math.floor((value - low) / width + 1e-9);
    held[Math.min(count - 1, Math.max(0, place))]!.push(value);
  }
  return held.map((inside, i) => ({ from: low + i * width, to: low + (i + 1) * width, values: inside }));
}

/** In classes a fifth of an inch, or 5 mm, wide: the same step from which a season counts as one where the depth mattered. */
export function pairedTable(extraMm: Float64Array, stepMm: number, shown: Formatters): PictureTable {
  const low = Math.floor(Math.min(0, ...extraMm) / stepMm) * stepMm;
  const high = Math.max(low + stepMm, Math.ceil(Math.max(...extraMm) / stepMm + 1e-9) * stepMm);
  const classes = pilesOf(extraMm, low, high, Math.round((high - low) / stepMm));
  return {
    head: [`Extra water taken up, ${shown.length}`, "Seasons"],
    rows: classes.map(({ from, to, values }) => [
      `${shown.fineWater(from)} to ${shown.fineWater(to)}`,
      String(values.length),
    ]),
  };
}
