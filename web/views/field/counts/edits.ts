import type { Units } from "../../../../src/quantity/kinds.ts";
import { isList, type Json, type JsonGroup } from "../../../state/json.ts";
import { groupsAt, type Changes } from "../../../state/path.ts";

/** Changes to counts: what to write where. A list emptied to the last takes its key along. */

export const countsPath = "evidence.counts";

export function groupsIn(scenario: Json): readonly JsonGroup[] {
  return groupsAt(scenario, countsPath);
}

export function spotsIn(scenario: Json, index: number): readonly JsonGroup[] {
  return groupsAt(scenario, `${countsPath}[${index}].spots`);
}

/** A table for each of the first two cases, with a row to fill in. Counts say of which crop they are: another one cannot read them. */
export function firstCounts(caseNames: readonly string[], crop: string, units: Units): Changes {
  return [
    [
      countsPath,
      caseNames.slice(0, 2).map((name) => ({
        case: name,
        ...(crop === "" ? {} : { crop }),
        rowWidth: units === "us" ? "30 in" : "75 cm",
        spots: [{}],
      })),
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
    ["evidence.countsYear", undefined],
  ];
}

/** A spot as the last one was laid out: its own length of row goes along, its counts do not. */
export function addSpot(scenario: Json, index: number): Changes {
  const spots = spotsIn(scenario, index);
  const { rowLength, rows, area } = spots.at(-1) ?? {};
  const spot = Object.fromEntries(
    Object.entries({ rowLength, rows, area }).filter(([, value]) => value !== undefined),
  ) as JsonGroup;
  return [[`${countsPath}[${index}].spots`, [...spots, spot]]];
}

export function removeSpot(scenario: Json, index: number, spot: number): Changes {
  const spots = spotsIn(scenario, index);
  return spots.length > 1
    ? [[`${countsPath}[${index}].spots[${spot}]`, undefined]]
    : removeGroup(scenario, index);
}

/** Numbers of kernel rows that are odd, as written. */
export function oddRows(kernelRows: Json | undefined): number[] {
  return isList(kernelRows)
    ? kernelRows.filter((rows): rows is number => typeof rows === "number" && rows % 2 === 1)
    : [];
}
