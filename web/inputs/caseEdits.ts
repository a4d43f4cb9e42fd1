import { isGroup, isList, type Json, type JsonGroup } from "../state/json.ts";
import { getAt, removeAt, setAt } from "../state/path.ts";
import { newName } from "./layerEdits.ts";

/** Changes to the list of cases: scenario in, scenario out. */

export function casesIn(scenario: Json): readonly JsonGroup[] {
  const cases = getAt(scenario, "cases");
  return isList(cases) ? cases.map((one) => (isGroup(one) ? one : {})) : [];
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

export function removeCase(scenario: Json, index: number): Json {
  const left = casesIn(scenario).toSpliced(index, 1);
  return left.length === 0 ? removeAt(scenario, "cases") : setAt(scenario, "cases", left);
}

/** Places outside the cases that refer to one by its name; none while two share it. */
export function caseNamedIn(scenario: Json, name: string): string[] {
  if (casesIn(scenario).filter((one) => one["name"] === name).length !== 1) return [];
  const places = [
    ...each(scenario, "rowPositions", "case"),
    ...["inTrack", "besideTrack", "other"].map((key) => `rowPositions.${key}`),
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
