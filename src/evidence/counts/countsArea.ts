import { m2PerAcre } from "../../quantity/constants.ts";

/**
 * Row to walk for a thousandth of an acre.
 *
 * @param rowWidthMm from row to row, above 0
 * @param rows counted side by side
 * @returns mm
 * @example thousandthLengthMm(762) / 304.8 // 17.42 ft: 17 ft 5 in of 30-in rows
 * Source: extension corn, sorghum and wheat pages (read): see `data-reference/counts-checks.json`.
 */
export function thousandthLengthMm(rowWidthMm: number, rows = 1): number {
  return (m2PerAcre * 1000) / (rowWidthMm * rows);
}

export function countedAreaM2(rowLengthMm: number, rowWidthMm: number, rows: number): number {
  return (rowLengthMm * rowWidthMm * rows) / 1e6;
}
