import { isList, type Json } from "../../state/json.ts";
import { changed, getAt, type Changes } from "../../state/path.ts";
import { withPoint, withUnit } from "../withUnit.ts";

/** Tables to type into or paste into: what stands in a cell, as text and as the scenario writes it. */

export interface Column {
  /** What it writes in its row: a key, or the place in a list, `[0]`. */
  readonly key: string;
  readonly word: string;
  /** A quantity where nothing is said. */
  readonly kind?: "quantity" | "quantities" | "number" | "numbers" | "word";
  /** What a bare number counts in. */
  readonly unit?: string;
  /** What a bare number counts in that is pasted, where a typed one has to say it. */
  readonly pastedUnit?: string;
  readonly choices?: readonly string[];
  /** Word for choosing nothing. */
  readonly none?: string;
  /** Seen in an empty cell, in place of the unit. */
  readonly hint?: string;
  /** What an emptied cell holds: a blank to be filled in, or null for what is missing; else it is taken out. */
  readonly empty?: "" | null;
  /** Key at which the engine asks for it, where that is another. */
  readonly askedAs?: string;
}

export interface Filled {
  readonly row: number;
  readonly column: number;
  readonly value: Json | undefined;
}

export interface Table {
  readonly columns: readonly Column[];
  /** Place of a cell in the scenario. */
  readonly at: (row: number, column: number) => string;
  /** Places that make up a row. */
  readonly placesOf: (row: number) => readonly string[];
  readonly write: (scenario: Json, cells: readonly Filled[]) => Changes;
  /** What was pasted, without its head, as this table stands. */
  readonly turned?: (cells: Cells) => Cells;
  /** An empty cell that is pasted changes nothing. */
  readonly keepsEmpty?: boolean;
}

type Cells = readonly (readonly string[])[];

/** A list of groups, or of lists, one for each row; rows that are not there yet are added. */
export function tableOfRows(
  path: string,
  columns: readonly Column[],
  newRow: (row: number) => Json = () => ({}),
): Table {
  const place = (column: number) => columns[column]!.key.replace(/^\w/, ".$&");
  return {
    columns,
    at: (row, column) => `${path}[${row}]${place(column)}`,
    placesOf: (row) => [`${path}[${row}]`],
    write(scenario, cells) {
      const before = getAt(scenario, path);
      const rows: Json[] = isList(before) ? [...before] : [];
      for (const { row, column, value } of cells) {
        while (rows.length <= row) rows.push(newRow(rows.length));
        rows[row] = getAt(changed({ row: rows[row]! }, [[`row${place(column)}`, value]]), "row") ?? {};
      }
      return [[path, rows]];
    },
  };
}

/**
 * A list for each column.
 *
 * @param finished a list as it is to be written; undefined takes it out
 */
export function tableOfLists(
  paths: readonly string[],
  columns: readonly Column[],
  finished: (list: readonly Json[]) => Json | undefined,
): Table {
  const at = (row: number, column: number) => `${paths[column]}[${row}]`;
  return {
    columns,
    at,
    placesOf: (row) => paths.map((_, column) => at(row, column)),
    write: (scenario, cells) =>
      paths.flatMap((path, c) => {
        const own = cells.filter(({ column }) => column === c);
        if (own.length === 0) return [];
        const before = getAt(scenario, path);
        const list: Json[] = isList(before) ? [...before] : [];
        for (const { row, value = "" } of own) {
          while (list.length < row) list.push("");
          list[row] = value;
        }
        return [[path, finished(list)] as const];
      }),
  };
}

/** What a block writes that is pasted into a cell, without its own head: down and to the right, within the columns there are. */
export function pasted(
  table: Table,
  scenario: Json,
  cells: Cells,
  from: { readonly row: number; readonly column: number },
): Changes {
  const { columns, turned, keepsEmpty } = table;
  const block = turned?.(withoutHead(cells)) ?? withoutHead(cells);
  const filled = block.flatMap((texts, r) =>
    texts.flatMap((text, c) => {
      const [row, column] = [from.row + r, from.column + c];
      const into = columns[column];
      if (into === undefined || (keepsEmpty && text === "")) return [];
      return { row, column, value: cellValue(text, { ...into, unit: into.pastedUnit ?? into.unit ?? "" }) };
    }),
  );
  return table.write(scenario, filled);
}

type Reading = Pick<Column, "kind" | "unit" | "choices" | "empty">;

/** Nothing typed is nothing written. Text that is no number stays as it was typed, to be told what is wrong with it. */
export function cellValue(text: string, { kind, unit = "", choices, empty }: Reading): Json | undefined {
  const plain = text.trim();
  if (plain === "" || (empty === null && /^(missing|lost|null|-|–)$/i.test(plain))) return empty;
  switch (kind) {
    case "word":
      return choices?.find((one) => one.toLowerCase() === plain.toLowerCase()) ?? text;
    case "number":
      return asNumber(plain);
    case "numbers":
      return itemsOf(plain).map(asNumber);
    case "quantities":
      return quantitiesOf(plain).map((one) => withUnit(withPoint(one), unit));
    default:
      return withUnit(withPoint(plain), unit);
  }
}

/**
 * Numbers in a row, parted by blanks, semicolons or commas; "1,110" may be a thousand and stays one.
 * @example itemsOf("14, 16 16") // ["14", "16", "16"]
 */
export function itemsOf(text: string): string[] {
  return text
    .split(/[;\s]+|,\s+/)
    .flatMap((item) => (/^\d{1,3}(,\d{3})+$/.test(item) ? [item] : item.split(",")))
    .filter((item) => item !== "");
}

/** Quantities are parted by a comma and a blank, or a semicolon; bare numbers by blanks as well. */
function quantitiesOf(text: string): string[] {
  const parts = text
    .split(/;|,\s/)
    .map((part) => part.trim())
    .filter((part) => part !== "");
  return parts.flatMap((part) => (/^[\d.,]+(\s+[\d.,]+)+$/.test(part) ? part.split(/\s+/) : [part]));
}

function asNumber(text: string): Json {
  const plain = withPoint(text);
  return /^-?\d+(\.\d+)?$/.test(plain) ? Number(plain) : text;
}

/** Rows of cells copied from a spreadsheet, trimmed; an empty last line is no row. Null for a text of one cell, which is pasted as any text. */
export function pastedCells(text: string): string[][] | null {
  const lines = text.replace(/\r\n?/g, "\n").split("\n");
  while (lines.length > 1 && lines.at(-1) === "") lines.pop();
  const rows = lines.map((line) => line.split("\t").map((cell) => cell.trim()));
  return rows.length === 1 && rows[0]!.length === 1 ? null : rows;
}

const isNumber = (cell: string) => /\d/.test(cell);

/** A first row of words above rows with numbers is the spreadsheet's own head. Where no row has a number, none is a head. */
function withoutHead(rows: Cells): Cells {
  const [head, ...rest] = rows;
  const isHead =
    head !== undefined &&
    head.some((cell) => /\p{L}/u.test(cell)) &&
    !head.some(isNumber) &&
    rest.some((row) => row.some(isNumber));
  return isHead ? rest : rows;
}

/** Rows of months from what was pasted: months may run down or across, with or without their names. */
export function monthsDown(rows: Cells): Cells {
  const named = rows.length > 0 && rows.every((row) => row.length > 1 && !isNumber(row[0] ?? ""));
  const body = named ? rows.map((row) => row.slice(1)) : rows;
  if (body.length >= 12 || (body[0]?.length ?? 0) < 12) return body;
  return body[0]!.map((_, month) => body.map((row) => row[month] ?? ""));
}
