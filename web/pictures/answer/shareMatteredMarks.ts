/** Marks in a row. */
const mostMarks = 20;
/** Rows are drawn for this many totals at most; the table has them all. */
const mostRows = 7;

/**
 * How many of the marks stand for seasons in which it mattered. One that is none or all only after rounding keeps a mark of
 * the other kind, so that "never" and "always" are true where they are drawn.
 */
export function marksThatMattered(share: number, marks: number): number {
  const nearest = Math.round(share * marks);
  if (share > 0 && nearest === 0) return 1;
  if (share < 1 && nearest === marks) return marks - 1;
  return nearest;
}

/** With few runs a mark is a run. */
export function marksFor(runs: number): number {
  return Math.min(mostMarks, runs);
}

/** The totals to draw: all, or some evenly apart with the first and the last. */
export function rowsDrawn<T>(all: readonly T[], most = mostRows): T[] {
  if (all.length <= most) return [...all];
  return Array.from({ length: most }, (_, i) => all[Math.round((i * (all.length - 1)) / (most - 1))]!);
}
