import { marksBetween, scaleTo, type Scale } from "./axis.ts";

/** A range of years with its mean, in the unit on show. */
export interface YearsRange {
  readonly mean: number;
  readonly p10: number;
  readonly p90: number;
}

export interface PathColumn {
  /** Since the change, from 1; null = the years after the path. */
  readonly year: number | null;
  readonly x: number;
  /** Null in a year without harvest of the crop. */
  readonly range: YearsRange | null;
}

/** Where the columns of a path stand: a column a year, then, set off, one for the years after. */
export interface PathColumns {
  readonly columns: readonly PathColumn[];
  readonly columnPx: number;
  /** Middle of the gap before the years after. */
  readonly gapX: number;
  readonly y: Scale;
  readonly marks: readonly number[];
}

export interface PathRoom {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** Left free beyond the longest range, of the span. */
const room = 0.04;
/** The gap before the years after, and their column, in columns. */
const gap = 0.7;
const later = 1.3;

/**
 * @param path by year since the change, ascending; years may be missing
 * @param after the years after the path
 */
export function pathColumns(
  path: readonly (YearsRange & { readonly year: number })[],
  after: YearsRange,
  { left, right, top, bottom }: PathRoom,
): PathColumns {
  const last = path.at(-1)?.year ?? 0;
  const columnPx = (right - left) / (last + gap + later);
  const values = [...path, after].flatMap(({ mean, p10, p90 }) => [mean, p10, p90]);
  const least = Math.min(0, ...values);
  const most = Math.max(0, ...values);
  const span = most > least ? most - least : 1;
  const low = least < 0 ? least - room * span : 0;
  const to = most > 0 || least === 0 ? least + (1 + room) * span : 0;
  return {
    columnPx,
    columns: [
      ...Array.from({ length: last }, (_, i) => ({
        year: i + 1,
        x: left + (i + 0.5) * columnPx,
        range: path.find(({ year }) => year === i + 1) ?? null,
      })),
      { year: null, x: left + (last + gap + later / 2) * columnPx, range: after },
    ],
    gapX: left + (last + gap / 2) * columnPx,
    y: scaleTo(low, to, bottom, top),
    marks: marksBetween(low, to, 6),
  };
}
