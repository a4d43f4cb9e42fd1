import { dayInYear, isoDate, type MonthDay } from "../../../../src/quantity/calendar.ts";
import { isGroup, isList, type Json, type JsonGroup } from "../../../state/json.ts";
import { getAt } from "../../../state/path.ts";
import { withoutHead } from "../../../forms/edits/pasted.ts";
import { cellWithUnit } from "../../../forms/withUnit.ts";

/** Changes to the plants dug: what to write where. A list emptied to the last takes its key along. */

export type Changes = readonly (readonly [path: string, value: Json | undefined])[];

export const dugPath = "evidence.rootDepths";

/** Keys that mean nothing without plants. */
const withPlants = ["plantsPaired", "denseLayer", "fit", "digDecides"] as const;

export function dugGroupsIn(scenario: Json): readonly JsonGroup[] {
  const groups = getAt(scenario, dugPath);
  return isList(groups) ? groups.map((one) => (isGroup(one) ? one : {})) : [];
}

/** Depths as written, a text each. */
export function depthsOf(group: JsonGroup | undefined): readonly string[] {
  const depths = group?.["depths"];
  return isList(depths) ? depths.map((one) => (typeof one === "object" ? "" : String(one))) : [];
}

/** How many rows the table has: the longest list, and one more to go on in. */
export function rowsOf(groups: readonly JsonGroup[]): number {
  return Math.max(0, ...groups.map((group) => depthsOf(group).length)) + 1;
}

/** The first two cases, with a plant each to fill in. */
export function firstPlants(caseNames: readonly string[], date: string): Changes {
  return [[dugPath, caseNames.slice(0, 2).map((name) => ({ case: name, date, depths: [""] }))]];
}

/** One more column: dug the same day, of the first case that has none. */
export function addDug(scenario: Json, caseNames: readonly string[], date: string): Changes {
  const groups = dugGroupsIn(scenario);
  const dug = new Set(groups.map((one) => one["case"]));
  const name = caseNames.find((one) => !dug.has(one)) ?? caseNames.at(-1) ?? "";
  return [[dugPath, [...groups, { case: name, date: groups.at(-1)?.["date"] ?? date, depths: [""] }]]];
}

export function removeDug(scenario: Json, index: number): Changes {
  const left = dugGroupsIn(scenario).toSpliced(index, 1);
  return left.length > 0 ? [[dugPath, left]] : nothingDug();
}

function nothingDug(): Changes {
  return [[dugPath, undefined], ...withPlants.map((key) => [`evidence.${key}`, undefined] as const)];
}

/** A plant typed or emptied; one past the last is added, and blanks at the end go. */
export function writeDepth(
  scenario: Json,
  group: number,
  plant: number,
  text: string,
  unit: string,
): Changes {
  const depths = [...depthsOf(dugGroupsIn(scenario)[group])];
  while (depths.length < plant) depths.push("");
  depths[plant] = cellWithUnit(text, unit);
  return [[`${dugPath}[${group}].depths`, trimmed(depths)]];
}

/** The n-th plant of every column, as neighbours go together. */
export function removePlant(scenario: Json, plant: number): Changes {
  const groups = dugGroupsIn(scenario);
  const left = groups.map((group) => ({
    ...group,
    depths: trimmed(depthsOf(group).toSpliced(plant, 1)),
  }));
  const empty = left.every(({ depths }) => depths.every((depth) => depth === ""));
  return empty ? nothingDug() : [[dugPath, left]];
}

/**
 * Cells from a spreadsheet written over the table, from a plant and a column on. A head without numbers is left out; cells
 * beyond the columns there are, too.
 */
export function pastePlants(
  scenario: Json,
  cells: readonly (readonly string[])[],
  from: { readonly group: number; readonly plant: number },
  unit: string,
): Changes {
  const rows = withoutHead(cells);
  return dugGroupsIn(scenario).flatMap((group, g) => {
    const column = g - from.group;
    if (column < 0 || rows.every((row) => row[column] === undefined)) return [];
    const depths = [...depthsOf(group)];
    while (depths.length < from.plant) depths.push("");
    rows.forEach((row, r) => {
      const text = row[column];
      if (text !== undefined) depths[from.plant + r] = cellWithUnit(text, unit);
    });
    return [[`${dugPath}[${g}].depths`, trimmed(Array.from(depths, (one) => one ?? ""))] as const];
  });
}

/** Without the blanks at its end; a list has one item at least. */
function trimmed(depths: readonly string[]): string[] {
  const last = depths.findLastIndex((depth) => depth.trim() !== "");
  return last < 0 ? [""] : depths.slice(0, last + 1);
}

/** Blanks between plants closed up. */
export function closeUp(scenario: Json): Changes {
  return dugGroupsIn(scenario).map((group, g) => [
    `${dugPath}[${g}].depths`,
    trimmed(depthsOf(group).filter((depth) => depth.trim() !== "")),
  ]);
}

/** Plants that stand between others and have no depth. */
export function hasGaps(groups: readonly JsonGroup[]): boolean {
  return groups.some(
    (group) => depthsOf(group).some((depth) => depth.trim() === "") && depthsOf(group).length > 1,
  );
}

/** Days after sowing on which roots are often looked at: a guess to begin with, to be written over. */
const daysAfterSowing = 45;

/**
 * A day in a season to begin with: today, where it lies in one; else some weeks after the last sowing before it.
 *
 * @param today days since 1970-01-01
 * @param lastDay of the record; null without one
 * @param seasonDays from sowing to about maturity
 */
export function likelyDate(
  sowing: MonthDay,
  today: number,
  lastDay: number | null,
  seasonDays = 120,
): string {
  const latest = lastDay === null ? today : Math.min(today, lastDay);
  const year = Number(isoDate(latest).slice(0, 4));
  const sown = [year, year - 1]
    .map((one) => dayInYear(one, sowing))
    .find((day) => day + daysAfterSowing <= latest);
  const since = latest - (sown ?? latest);
  if (sown === undefined) return isoDate(latest);
  return isoDate(since <= seasonDays ? latest : sown + daysAfterSowing);
}
