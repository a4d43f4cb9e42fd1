import { dayInYear, isoDate, type MonthDay } from "../../../../src/quantity/calendar.ts";
import { tableOfLists, type Table } from "../../../forms/edits/cells.ts";
import { isList, type Json, type JsonGroup } from "../../../state/json.ts";
import { getAt, groupsAt, type Changes } from "../../../state/path.ts";

/** Changes to the plants dug: what to write where. A list emptied to the last takes its key along. */

export const dugPath = "evidence.rootDepths";

/** Keys that mean nothing without plants. */
const withPlants = ["plantsPaired", "denseLayer", "fit", "digDecides"] as const;

export function dugGroupsIn(scenario: Json): readonly JsonGroup[] {
  return groupsAt(scenario, dugPath);
}

/** Depths as written, a text each. */
export function depthsOf({ depths }: JsonGroup): readonly string[] {
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
  const added = { case: name, date: groups.at(-1)?.["date"] ?? date, depths: [""] };
  return [[dugPath, [...groups, added]], ...ownDigDecides(scenario)];
}

/** Plants of one's own decide as they usually do: an invented dig's choice of being shown only is not passed on to them. */
function ownDigDecides(scenario: Json): Changes {
  const isShownOnly =
    getAt(scenario, "invented") === true && getAt(scenario, "evidence.digDecides") === false;
  return isShownOnly ? [["evidence.digDecides", undefined]] : [];
}

/** How the roots of all plants of a column went on; null where each has its own word, undefined where none is told. */
export function wayOf({ roots }: JsonGroup): string | null | undefined {
  if (!isList(roots) || roots.length === 0) return undefined;
  return roots.every((one) => one === roots[0]) ? String(roots[0]) : null;
}

export function removeDug(scenario: Json, index: number): Changes {
  const left = dugGroupsIn(scenario).toSpliced(index, 1);
  return left.length > 0 ? [[dugPath, left]] : nothingDug();
}

function nothingDug(): Changes {
  return [[dugPath, undefined], ...withPlants.map((key) => [`evidence.${key}`, undefined] as const)];
}

/** The n-th plant of every column, as neighbours go together. */
export function removePlant(scenario: Json, plant: number): Changes {
  const groups = dugGroupsIn(scenario);
  const left = groups.map((group) => ({
    ...group,
    depths: trimmed(depthsOf(group).toSpliced(plant, 1)),
    ...rootsWithout(group, plant),
  }));
  const empty = left.every(({ depths }) => depths.every((depth) => depth === ""));
  return empty ? nothingDug() : [[dugPath, left]];
}

/** A word for each plant goes with its plant; one word for all stays. */
function rootsWithout(group: JsonGroup, plant: number): JsonGroup {
  const { roots } = group;
  const isEach = isList(roots) && roots.length > 1 && roots.length === depthsOf(group).length;
  return isEach ? { roots: roots.toSpliced(plant, 1) } : {};
}

/** A list for each column, with a cell more to go on in; blanks at its end go. */
export function plantsTable(groups: readonly JsonGroup[], unit: string): Table {
  const table = tableOfLists(
    groups.map((_, g) => `${dugPath}[${g}].depths`),
    groups.map((group, g) => ({ key: String(g), word: nameOf(group, g), unit, empty: "" })),
    (depths) => trimmed(depthsOf({ depths })),
  );
  return {
    ...table,
    write: (scenario, cells) => [...table.write(scenario, cells), ...ownDigDecides(scenario)],
  };
}

export function nameOf({ case: name }: JsonGroup, g: number): string {
  return typeof name === "string" && name !== "" ? name : `column ${g + 1}`;
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
