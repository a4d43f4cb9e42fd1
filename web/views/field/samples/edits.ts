import { isGroup, isList, type Json, type JsonGroup } from "../../../state/json.ts";
import { getAt } from "../../../state/path.ts";
import { withoutHead } from "../../../forms/edits/pasted.ts";
import { cellWithUnit } from "../../../forms/withUnit.ts";

/** Changes to cores and penetrometer readings: what to write where. A list emptied to the last takes its key along. */

export type Changes = readonly (readonly [path: string, value: Json | undefined])[];

/** A column of a table: the key it writes and what a bare number in it counts in. */
export interface Column {
  readonly key: string;
  readonly word: string;
  readonly unit: string;
  /** Has to be there: emptied, it stays as a blank. */
  readonly needed?: boolean;
}

export const startPath = "soil.startingWater";
export const logPath = "soil.penetrometer";
export const readingsPath = `${logPath}.readings`;

export function coresPath(layer: number): string {
  return `soil.layers[${layer}].cores`;
}

/** Rows of a list of groups, as written. */
export function rowsAt(scenario: Json, path: string): readonly JsonGroup[] {
  const rows = getAt(scenario, path);
  return isList(rows) ? rows.map((one) => (isGroup(one) ? one : {})) : [];
}

/** One more core, in the ring of the last one of its layer or, failing that, of any layer. */
export function addCore(scenario: Json, layer: number, layers: number): Changes {
  const own = rowsAt(scenario, coresPath(layer));
  const all = Array.from({ length: layers }, (_, l) => rowsAt(scenario, coresPath(l))).flat();
  const { volume, diameter, length } = own.at(-1) ?? all.at(-1) ?? {};
  const ring = Object.entries({ volume, diameter, length }).filter(([, value]) => value !== undefined);
  return [[coresPath(layer), [...own, { ...(Object.fromEntries(ring) as JsonGroup), dryMass: "" }]]];
}

/** The last core of all takes the water "from cores" along: there would be nothing to take it from. */
export function removeCore(scenario: Json, layer: number, core: number, layers: number): Changes {
  const path = coresPath(layer);
  const left = rowsAt(scenario, path).toSpliced(core, 1);
  if (left.length > 0) return [[path, left]];
  const isLast = Array.from({ length: layers }, (_, l) => l).every(
    (l) => l === layer || rowsAt(scenario, coresPath(l)).length === 0,
  );
  const startsThere = isLast && getAt(scenario, `${startPath}.from`) === "cores";
  return [[path, undefined], ...(startsThere ? ([[startPath, undefined]] as const) : [])];
}

export function addReading(scenario: Json): Changes {
  return [[readingsPath, [...rowsAt(scenario, readingsPath), { depth: "", resistance: "" }]]];
}

export function removeReading(scenario: Json, index: number): Changes {
  const left = rowsAt(scenario, readingsPath).toSpliced(index, 1);
  return left.length > 0 ? [[readingsPath, left]] : [[logPath, undefined]];
}

/** One cell typed. */
export function writeCell(path: string, { key, unit, needed }: Column, text: string): Changes {
  const value = text.trim() === "" ? (needed === true ? "" : undefined) : cellWithUnit(text, unit);
  return [[`${path}.${key}`, value]];
}

/**
 * Rows with cells of a spreadsheet written over them, from a row and a column on; rows that are not there yet are added.
 * A head without numbers is left out.
 */
export function pasteRows(
  rows: readonly JsonGroup[],
  cells: readonly (readonly string[])[],
  from: { readonly row: number; readonly column: number },
  columns: readonly Column[],
): JsonGroup[] {
  const next = rows.map((row) => ({ ...row }));
  withoutHead(cells).forEach((line, r) => {
    const row = (next[from.row + r] ??= Object.fromEntries(
      columns.flatMap(({ key, needed }) => (needed === true ? [[key, ""]] : [])),
    ));
    line.forEach((text, c) => {
      const column = columns[from.column + c];
      if (column === undefined) return;
      const [[, value] = ["", undefined]] = writeCell("row", column, text);
      if (value === undefined) delete row[column.key];
      else row[column.key] = value;
    });
  });
  return next;
}
