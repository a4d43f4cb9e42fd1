import Papa from "papaparse";
import { refuse, refuseSaying } from "../../problem.ts";

/** A CSV of soil horizons as text cells, each row with the line it stands on. */
export interface HorizonTable {
  readonly fileName: string;
  /** Lower case, trimmed. */
  readonly columns: readonly string[];
  readonly rows: readonly HorizonRow[];
}

export interface HorizonRow {
  /** Of the file, the header being 1 (a cell that runs over lines counts as one). */
  readonly line: number;
  readonly cells: ReadonlyMap<string, string>;
}

/** Laboratory files have some hundred columns. Ours. */
const mostColumns = 1000;

/** Reads the text; a comma, semicolon or tab between cells is found out. Empty file or ragged row: InputError. */
export function readHorizonTable(csvText: string, fileName: string): HorizonTable {
  const text = csvText.replace(/^\uFEFF/, "");
  if (text.trim() === "")
    refuseSaying(fileName, "a CSV of soil horizons with a header row", "an empty file", "export it again");
  const { data } = Papa.parse<string[]>(text, { header: false, skipEmptyLines: false });
  const isBlank = (cells: readonly string[]): boolean => cells.every((cell) => cell.trim() === "");
  const headerIndex = data.findIndex((cells) => !isBlank(cells));
  const columns = (data[headerIndex] ?? []).map((cell) => cell.trim().toLowerCase());
  if (columns.length > mostColumns)
    refuseSaying(
      `${fileName} header`,
      `at most ${mostColumns} columns`,
      `${columns.length}`,
      "export fewer, or put each horizon on a line of its own",
    );
  const seen = new Set<string>();
  const twice = columns.find((column) => column !== "" && seen.size === seen.add(column).size);
  if (twice !== undefined)
    refuse(`${fileName} header`, "each column once", twice, "rename or drop one of them");

  const rows: HorizonRow[] = [];
  for (const [i, cells] of data.entries()) {
    if (i <= headerIndex || isBlank(cells)) continue;
    if (cells.length > columns.length) {
      refuseSaying(
        `${fileName} line ${i + 1}`,
        `${columns.length} cells as in the header`,
        `${cells.length} cells`,
        "put texts with commas in quotes and write decimals with a point",
      );
    }
    rows.push({ line: i + 1, cells: new Map(columns.map((column, j) => [column, (cells[j] ?? "").trim()])) });
  }
  if (rows.length === 0)
    refuseSaying(fileName, "rows of horizons below the header", "none", "export it again");
  return { fileName, columns, rows };
}

const missing = new Set(["", "na", "n/a", "null", "nan", ".", "-"]);

/** Text of a cell; empty where the column or the value is missing. */
export function textIn(row: HorizonRow, column: string): string {
  const text = row.cells.get(column) ?? "";
  return missing.has(text.toLowerCase()) ? "" : text;
}

/** Number of a cell, null where missing. No number, or one outside what the property can be: InputError with the line. */
export function numberIn(
  table: HorizonTable,
  row: HorizonRow,
  column: string,
  [low, high]: readonly [number, number],
): number | null {
  const text = textIn(row, column);
  if (text === "") return null;
  const at = `${table.fileName} line ${row.line} column ${column}`;
  const plain = /^[+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:e[+-]?\d+)?$/i.test(text);
  const value = Number(text);
  if (!plain) {
    const comma = /^[+-]?\d+,\d+$/.test(text);
    const mend = comma
      ? `write ${text.replace(",", ".")} if the comma is a decimal one`
      : "correct it or leave it empty";
    refuse(at, "a number with a decimal point", text, mend);
  }
  if (value < low || value > high)
    refuse(at, `a number from ${low} to ${high}`, text, "correct it or leave it empty");
  return value;
}
