import type { Spread } from "../../../src/statistics/quantiles.ts";
import { whereOfRow, type RowPositions, type TrackCount } from "../../../src/scenario/rowPositions.ts";

/** The rows of one pass as they are drawn, from the left. */
export interface RowDrawn {
  /** Place of its case among all; null where the case named is none. */
  readonly caseIndex: number | null;
}

export type Where = keyof TrackCount;

/** Rows where the places of the tyres are told. */
export function rowsByTyre(
  rows: number,
  tyreRows: readonly number[],
  caseOf: Readonly<Record<Where, number | null>>,
): RowDrawn[] {
  return Array.from({ length: rows }, (_, r) => ({ caseIndex: caseOf[whereOfRow(r + 1, tyreRows)] }));
}

/** Rows where only their numbers are told: kind by kind. */
export function rowsSorted({ positions }: RowPositions, rows: number): RowDrawn[] {
  const counts = wholeShares(
    positions.map(({ share }) => share),
    rows,
  );
  return positions.flatMap(({ caseIndex }, p) => Array.from({ length: counts[p]! }, () => ({ caseIndex })));
}

/**
 * Whole rows for shares, by largest remainder.
 * @example wholeShares([0.125, 0.875], 50) // [6, 44]
 */
export function wholeShares(shares: readonly number[], rows: number): number[] {
  const exact = shares.map((share) => share * rows);
  const whole = exact.map((one) => Math.floor(one + 1e-9));
  const missing = rows - whole.reduce((sum, one) => sum + one, 0);
  const order = exact
    .map((one, i) => ({ i, rest: one - whole[i]! }))
    .sort((a, b) => b.rest - a.rest || b.i - a.i);
  for (const { i } of order.slice(0, Math.max(0, missing))) whole[i]! += 1;
  return whole;
}

/** Where the field lies in the drawing, px. */
export interface PassLayout {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  /** From row to row. */
  readonly gap: number;
  readonly x: (place: number) => number;
}

export function passLayout(rows: number, widthPx: number): PassLayout {
  const left = 4;
  const right = widthPx - 4;
  const gap = (right - left) / Math.max(1, rows);
  return { left, right, top: 24, bottom: 158, gap, x: (place) => left + (place - 0.5) * gap };
}

/**
 * The place for a tyre nearest to a point: on a row, or between two.
 * @param share of the field's width, 0 at its left edge
 * @example placeAtShare(0.5, 16) // 8.5, between rows 8 and 9
 */
export function placeAtShare(share: number, rows: number): number {
  return clampedPlace(0.5 + share * rows, rows);
}

export function clampedPlace(place: number, rows: number): number {
  return Math.min(rows + 0.5, Math.max(0.5, Math.round(2 * place) / 2));
}

/** @example sayPlace(6.5, 16) // "between rows 6 and 7" */
export function sayPlace(place: number, rows: number): string {
  if (Number.isInteger(place)) return `row ${place}`;
  if (place < 1) return "left of row 1";
  return place > rows ? `right of row ${rows}` : `between rows ${place - 0.5} and ${place + 0.5}`;
}

/** Numbers written over the rows: as many as have room. */
export function numberEvery(gap: number): number {
  return [1, 2, 5, 10].find((every) => every * gap >= 22) ?? 20;
}

/** From the lowest to the highest of all ranges, with a little room. */
export function rangeScale(ranges: readonly Spread[], width: number): (value: number) => number {
  const all = ranges.flatMap(({ p10, p50, p90 }) => [p10, p50, p90]);
  const low = Math.min(...all);
  const span = Math.max(...all) - low;
  return (value) => (span > 0 ? 6 + ((value - low) / span) * (width - 12) : width / 2);
}
