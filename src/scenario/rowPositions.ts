/** Where the rows of a field stand, and which case each kind of row is. */

export interface RowPosition {
  readonly name: string;
  readonly caseIndex: number;
  /** The case that these rows are after the change, where the scenario says so; null where it does not. */
  readonly afterIndex: number | null;
  /** Of all rows, 0 to 1; all positions together make 1. */
  readonly share: number;
  /** Rows of one pass of the implement; null where only shares are known. */
  readonly rows: number | null;
}

export interface RowPositions {
  readonly positions: readonly RowPosition[];
  /** Rows of one pass; null where only shares are known. */
  readonly rowsInAll: number | null;
  /** The position that a row goes to when it is no longer tracked: the one called other, or else the largest. */
  readonly plainIndex: number;
}

export interface TrackCount {
  readonly inTrack: number;
  readonly besideTrack: number;
  readonly other: number;
}

/**
 * Rows in a wheel track, beside one, and neither.
 *
 * @param tyreRows where the tyres run, in rows from the left: 6 is on row 6, which is then in the track; 6.5 is between rows 6
 * and 7, which are then beside it. A row next to a tracked row is beside it, and a row counts once
 * @example countTracks(16, [6, 11]) // { inTrack: 2, besideTrack: 4, other: 10 }
 */
export function countTracks(rows: number, tyreRows: readonly number[]): TrackCount {
  let inTrack = 0;
  let besideTrack = 0;
  for (let row = 1; row <= rows; row++) {
    const where = whereOfRow(row, tyreRows);
    if (where === "inTrack") inTrack++;
    else if (where === "besideTrack") besideTrack++;
  }
  return { inTrack, besideTrack, other: rows - inTrack - besideTrack };
}

/** Where one row stands, counted from the left as the tyres are. */
export function whereOfRow(row: number, tyreRows: readonly number[]): keyof TrackCount {
  const nearest = Math.min(...tyreRows.map((tyre) => Math.abs(tyre - row)));
  if (nearest < 0.5) return "inTrack";
  return nearest <= 1 ? "besideTrack" : "other";
}

/** Rows of an implement by its width; not a whole number where the width is none of whole rows. */
export function rowsAcross(implementWidthMm: number, rowSpacingMm: number): number {
  return implementWidthMm / rowSpacingMm;
}
