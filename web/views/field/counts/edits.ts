import type { Units } from "../../../../src/quantity/kinds.ts";
import { withoutHead } from "../../../forms/edits/pasted.ts";
import { isGroup, isList, type Json, type JsonGroup } from "../../../state/json.ts";
import { getAt } from "../../../state/path.ts";
import { cellValue } from "./cellText.ts";
import type { Column } from "./columns.ts";

/** Changes to counts: what to write where. A list emptied to the last takes its key along. */

export type Changes = readonly (readonly [path: string, value: Json | undefined])[];

export const countsPath = "evidence.counts";

export function groupsIn(scenario: Json): readonly JsonGroup[] {
  return groups(getAt(scenario, countsPath));
}

export function spotsOf(group: JsonGroup | undefined): readonly JsonGroup[] {
  return groups(group?.["spots"]);
}

function groups(value: Json | undefined): readonly JsonGroup[] {
  return isList(value) ? value.map((one) => (isGroup(one) ? one : {})) : [];
}

/** A table for each of the first two cases, with a row to fill in. */
export function firstCounts(caseNames: readonly string[], units: Units): Changes {
  return [
    [
      countsPath,
      caseNames
        .slice(0, 2)
        .map((name) => ({ case: name, rowWidth: units === "us" ? "30 in" : "75 cm", spots: [{}] })),
    ],
  ];
}

/** One more table: rows as wide and kernels as heavy as in the last, of the first case not counted yet. */
export function addGroup(scenario: Json, caseNames: readonly string[]): Changes {
  const before = groupsIn(scenario);
  const { rowPosition: _, ...last } = before.at(-1) ?? {};
  const counted = new Set(before.map((one) => one["case"]));
  const name = caseNames.find((one) => !counted.has(one)) ?? caseNames.at(-1) ?? "";
  return [[countsPath, [...before, { ...last, case: name, spots: [{}] }]]];
}

export function removeGroup(scenario: Json, index: number): Changes {
  if (groupsIn(scenario).length > 1) return [[`${countsPath}[${index}]`, undefined]];
  return [
    [countsPath, undefined],
    ["evidence.spotsPaired", undefined],
  ];
}

/** A spot as the last one was laid out: its own length of row goes along, its counts do not. */
export function addSpot(scenario: Json, index: number): Changes {
  const spots = spotsOf(groupsIn(scenario)[index]);
  const { rowLength, rows, area } = spots.at(-1) ?? {};
  const spot = Object.fromEntries(
    Object.entries({ rowLength, rows, area }).filter(([, value]) => value !== undefined),
  ) as JsonGroup;
  return [[`${countsPath}[${index}].spots`, [...spots, spot]]];
}

export function removeSpot(scenario: Json, index: number, spot: number): Changes {
  const spots = spotsOf(groupsIn(scenario)[index]);
  return spots.length > 1
    ? [[`${countsPath}[${index}].spots[${spot}]`, undefined]]
    : removeGroup(scenario, index);
}

/**
 * Spots with cells from a spreadsheet written over them, from a row and a column on; spots that are not there yet are added.
 *
 * @param unitOf what a bare number of a column counts in
 */
export function pastedSpots(
  spots: readonly JsonGroup[],
  cells: readonly (readonly string[])[],
  from: { readonly row: number; readonly column: number },
  columns: readonly Column[],
  unitOf: (column: Column) => string,
): JsonGroup[] {
  const next: Record<string, Json>[] = spots.map((spot) => ({ ...spot }));
  withoutHead(cells).forEach((row, r) => {
    const spot = (next[from.row + r] ??= {});
    row.forEach((text, c) => {
      const column = columns[from.column + c];
      if (column === undefined) return;
      const value = cellValue(text, column.kind, unitOf(column));
      if (value === undefined) delete spot[column.key];
      else spot[column.key] = value;
    });
  });
  return next;
}

/** Numbers of kernel rows that are odd, as written. */
export function oddRows(kernelRows: Json | undefined): number[] {
  return isList(kernelRows)
    ? kernelRows.filter((rows): rows is number => typeof rows === "number" && rows % 2 === 1)
    : [];
}
