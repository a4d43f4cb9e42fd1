import { lookUp } from "../../../../src/lookUp.ts";
import { thousandthLengthMm } from "../../../../src/evidence/counts/countsArea.ts";
import { mmPerInch } from "../../../../src/quantity/constants.ts";
import type { Units } from "../../../../src/quantity/kinds.ts";

/** How far to walk along the row for a thousandth of an acre, said at once, before the engine has answered. */

const mmPer: Readonly<Record<string, number>> = {
  in: mmPerInch,
  inch: mmPerInch,
  inches: mmPerInch,
  '"': mmPerInch,
  ft: 12 * mmPerInch,
  feet: 12 * mmPerInch,
  foot: 12 * mmPerInch,
  "'": 12 * mmPerInch,
  mm: 1,
  cm: 10,
  m: 1000,
};

/** Of a plain text such as "30 in"; null for anything else, which is left to the engine. */
export function rowWidthMm(text: string): number | null {
  const [, number, unit] = /^\s*(\d+(?:\.\d+)?|\.\d+)\s*([a-z]+|['"])\s*$/i.exec(text) ?? [];
  const factor = unit === undefined ? undefined : lookUp(mmPer, unit.toLowerCase());
  const mm = factor === undefined ? 0 : Number(number) * factor;
  return mm > 0 ? mm : null;
}

/** @example rowToWalk("30 in", 1, "us") // "17 ft 5 in" */
export function rowToWalk(rowWidth: string, rows: number, units: Units): string | null {
  const widthMm = rowWidthMm(rowWidth);
  return widthMm === null ? null : lengthSaid(thousandthLengthMm(widthMm, rows), units);
}

/** To the inch or the centimetre, as on a tape. */
export function lengthSaid(mm: number, units: Units): string {
  if (units === "metric") return `${(mm / 1000).toFixed(2)} m`;
  const inches = Math.round(mm / mmPerInch);
  const [feet, over] = [Math.floor(inches / 12), inches % 12];
  if (feet === 0) return `${over} in`;
  return over === 0 ? `${feet} ft` : `${feet} ft ${over} in`;
}
