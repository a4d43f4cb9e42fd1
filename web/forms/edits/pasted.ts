/** Cells copied from a spreadsheet: rows by line, columns by tab. */

/** Rows of cells, trimmed; an empty last line is no row. Null for a text of one cell, which is pasted as any text. */
export function pastedCells(text: string): string[][] | null {
  const lines = text.replace(/\r\n?/g, "\n").split("\n");
  while (lines.length > 1 && lines.at(-1) === "") lines.pop();
  const rows = lines.map((line) => line.split("\t").map((cell) => cell.trim()));
  return rows.length === 1 && rows[0]!.length === 1 ? null : rows;
}

/**
 * Columns of twelve months from what was pasted: months may run down or across, with or without a head and the months' names.
 * A cell that is not a number is left out at the edges; within, it is kept as it is.
 */
export function monthColumns(rows: readonly (readonly string[])[]): string[][] {
  const body = withoutNames(withoutHead(rows));
  const across = body.length < 12 && (body[0]?.length ?? 0) >= 12;
  const turned = across ? body : transposed(body);
  return turned.map((column) => column.slice(0, 12));
}

const isNumber = (cell: string) => /\d/.test(cell);

/** A first row of words above rows with numbers is the spreadsheet's own head. Where no row has a number, none is a head. */
export function withoutHead(rows: readonly (readonly string[])[]): readonly (readonly string[])[] {
  const [head, ...rest] = rows;
  const isHead =
    head !== undefined &&
    head.some((cell) => /\p{L}/u.test(cell)) &&
    !head.some(isNumber) &&
    rest.some((row) => row.some(isNumber));
  return isHead ? rest : rows;
}

function withoutNames(rows: readonly (readonly string[])[]): readonly (readonly string[])[] {
  const named = rows.length > 0 && rows.every((row) => row.length > 1 && !isNumber(row[0] ?? ""));
  return named ? rows.map((row) => row.slice(1)) : rows;
}

function transposed(rows: readonly (readonly string[])[]): string[][] {
  const width = Math.max(0, ...rows.map((row) => row.length));
  return Array.from({ length: width }, (_, column) => rows.map((row) => row[column] ?? ""));
}
