import { isGroup, isList, type Json, type JsonGroup } from "../../state/json.ts";
import { getAt, groupsAt, removeAt, setAt } from "../../state/path.ts";
import { newName } from "./layerEdits.ts";

/** Changes to the list of cases: scenario in, scenario out. */

export function casesIn(scenario: Json): readonly JsonGroup[] {
  return groupsAt(scenario, "cases");
}

/** One more case, two inches deeper than the first; where nothing was compared so far, the field as described comes first. */
export function addCase(scenario: Json): Json {
  const cases = casesIn(scenario);
  const before = cases.length === 0 ? [{ name: "as described" }] : cases;
  return setAt(scenario, "cases", [
    ...before,
    { name: newName("two inches deeper", before), rootingDepth: "+2 in" },
  ]);
}

export function duplicateCase(scenario: Json, index: number): Json {
  const cases = casesIn(scenario);
  const one = cases[index];
  if (one === undefined) return scenario;
  const name = newName(`${typeof one["name"] === "string" ? one["name"] : "case"}, again`, cases);
  return setAt(scenario, "cases", cases.toSpliced(index + 1, 0, { ...one, name }));
}

/** Without the case, what was measured of it (strips compare two cases: with one gone they go), and rows that name it. */
export function removeCase(scenario: Json, index: number): Json {
  const cases = casesIn(scenario);
  const name = cases[index]?.["name"];
  const left = cases.toSpliced(index, 1);
  const rest = left.length === 0 ? removeAt(scenario, "cases") : setAt(scenario, "cases", left);
  return typeof name === "string" ? forget(rest, name, caseNamedIn(scenario, name)) : rest;
}

/** What goes with a case of this name when it is removed, in words; null where nothing does. */
export function goesWithCase(scenario: Json, name: string): string | null {
  const places = caseNamedIn(scenario, name);
  const said = [
    ...(places.some((path) => path.startsWith("evidence.")) ? ["what was measured of it"] : []),
    ...(places.some((path) => path.startsWith("rowPositions")) ? ["the rows of the field"] : []),
  ];
  return said.length === 0 ? null : said.join(" and ");
}

function forget(scenario: Json, name: string, places: readonly string[]): Json {
  const touches = (place: string) => places.some((path) => path.startsWith(place));
  let left = scenario;
  // Shares of the field's rows stand for the whole field: without one of them none is right.
  if (touches("rowPositions")) left = removeAt(left, "rowPositions");
  if (touches("evidence.strips")) left = removeAt(left, "evidence.strips");
  for (const [list, ...keysOfIt] of listsOfCases) {
    const groups = getAt(left, list);
    if (!touches(list) || !isList(groups)) continue;
    const kept = groups.filter((one) => !isGroup(one) || one["case"] !== name);
    left = kept.length > 0 ? setAt(left, list, kept) : [list, ...keysOfIt].reduce(removeAt, left);
  }
  return left;
}

/** Lists of groups that each belong to a case, then what is said of such a list beside it. */
export const listsOfCases: readonly (readonly [list: string, ...keysOfIt: string[]])[] = [
  [
    "evidence.rootDepths",
    "evidence.plantsPaired",
    "evidence.denseLayer",
    "evidence.fit",
    "evidence.digDecides",
  ],
  ["evidence.counts", "evidence.spotsPaired", "evidence.countsYear"],
];

/** Places outside the cases that refer to one by its name; none while two share it. */
export function caseNamedIn(scenario: Json, name: string): string[] {
  if (casesIn(scenario).filter((one) => one["name"] === name).length !== 1) return [];
  const places = [
    ...each(scenario, "rowPositions", "case"),
    ...each(scenario, "rowPositions", "after"),
    ...["inTrack", "besideTrack", "other"].flatMap((key) => [
      `rowPositions.${key}`,
      `rowPositions.${key}After`,
    ]),
    ...each(scenario, "evidence.rootDepths", "case"),
    ...each(scenario, "evidence.counts", "case"),
    "evidence.strips.cases[0]",
    "evidence.strips.cases[1]",
  ];
  return places.filter((path) => getAt(scenario, path) === name);
}

function each(scenario: Json, list: string, key: string): string[] {
  const found = getAt(scenario, list);
  return isList(found) ? found.map((_, i) => `${list}[${i}].${key}`) : [];
}
