import type { Draws } from "../randomness.ts";

/**
 * A Latin hypercube: in every column each of `rows` equal parts of 0 to 1 is met exactly once, at a place drawn within it.
 *
 * @param drawsOfColumn a stream of its own for each column, so that one more column leaves the others as they were
 * @returns by column, then row; above 0 and below 1
 * Source: McKay, Beckman & Conover 1979, Technometrics 21:239-245 (memory).
 */
export function latinHypercube(
  rows: number,
  columns: number,
  drawsOfColumn: (column: number) => Draws,
): Float64Array[] {
  return Array.from({ length: columns }, (_, column) => {
    const draws = drawsOfColumn(column);
    const parts = shuffled(rows, draws);
    return Float64Array.from(parts, (part) => (part + inside(draws.uniform())) / rows);
  });
}

/** A normal quantile at 0 or 1 has no end. */
function inside(share: number): number {
  return Math.min(1 - 1e-9, Math.max(1e-9, share));
}

/** 0 to `count` - 1 in a drawn order: Fisher & Yates. */
function shuffled(count: number, draws: Draws): number[] {
  const order = Array.from({ length: count }, (_, i) => i);
  for (let last = count - 1; last > 0; last--) {
    const other = Math.floor(draws.uniform() * (last + 1));
    [order[last], order[other]] = [order[other]!, order[last]!];
  }
  return order;
}
