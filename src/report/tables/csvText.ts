import papa from "papaparse";
import { printable } from "../../printable.ts";

/** How a text begins that a spreadsheet takes for a formula. */
const beginsFormula = /^[=+\-@\t\r]/;
const disarm = "'";

/**
 * Rows as CSV for a spreadsheet; null is an empty cell. A text that a spreadsheet would take for a formula gets an apostrophe in
 * front, so that nothing a file says is run when the table is opened; numbers stay numbers.
 * @example csvText([["=1+1", -2]]) // `"'=1+1",-2`
 */
export function csvText(rows: readonly (readonly (string | number | null)[])[]): string {
  return papa.unparse(
    rows.map((row) => row.map((cell) => (typeof cell === "string" ? disarmed(cell) : cell))),
    { newline: "\n", quotes: (cell) => typeof cell === "string" && cell.startsWith(disarm) },
  );
}

function disarmed(text: string): string {
  return `${beginsFormula.test(text) ? disarm : ""}${printable(text)}`;
}
