import { lookUp } from "../../src/lookUp.ts";
import { isGroup, isList, type Json } from "../state/json.ts";
import { getAt, parsePath } from "../state/path.ts";
import { label, words } from "./words.ts";

/** Groups of a scenario as the page calls them; those that only hold others are not said. */
const groups: Readonly<Record<string, string>> = {
  site: "Site",
  soil: "Soil",
  startingWater: "water at the start",
  restriction: "what ends the soil",
  weather: "Weather",
  monthlyNormals: "monthly normals",
  crop: "Crop",
  fallow: "Fallow",
  surface: "Surface",
  yield: "Yield line",
  ensemble: "Runs",
  model: "Method",
  money: "Money",
  evidence: "In the field",
  rowPositions: "Rows of the field",
};
const silent = new Set(["layers", "cases", "evidence"]);

/**
 * A place of the scenario in words, as a person looks for it on the page.
 *
 * @param scenario tells what layers and cases are called
 * @returns the text itself where it is no place in a scenario, such as `weather.csv line 12`
 * @example placeInWords("soil.layers[1].bulkDensity", scenario) // "Soil, plough pan: bulk density"
 */
export function placeInWords(field: string, scenario: Json): string {
  const path = parsePath(field);
  const [root] = path ?? [];
  if (path === null || root === undefined || !isPlace(String(root), scenario)) return field;
  if (path.length === 1) return lookUp(groups, String(root)) ?? label(String(root));
  const said: string[] = [];
  path.forEach((step, i) => {
    const isLast = i === path.length - 1;
    if (typeof step === "number") return void said.push(itemInWords(path, i, field, scenario));
    if (silent.has(step) && !isLast) {
      if (step === "evidence") said.push(groups[step]!);
      return;
    }
    const isGroupHere = !isLast && Object.hasOwn(groups, step);
    const word = isGroupHere ? groups[step]! : (lookUp(words, step) ?? lookUp(groups, step) ?? apart(step));
    said.push(said.length === 0 ? word : word.charAt(0).toLowerCase() + word.slice(1));
  });
  const last = said.pop() ?? field;
  return said.length === 0 ? last : `${said.join(", ")}: ${last}`;
}

/** Texts made for file and command line alike, without what only a file or the command line has. */
export function forThePage(text: string): string {
  return text
    .replace(/write (?:it|each) between quotes/, "write it in words")
    .replace(/ or \["[^\]]*\]/g, "")
    .replace(
      /rainfall totals such as "13 in", "12\.\.14 in"/,
      'rainfall totals such as "13 in" or "12..14 in"',
    )
    .replace(/,? or --[a-z]+(?:-[a-z]+)*,?/g, "")
    .replace(/\bweather\.units(?: in the scenario)?/g, "“Units of the record”")
    .replace(/\bweather\.station(?: in the scenario)?/g, "“Station”")
    .replace(
      /--([a-z]+)(?:-([a-z]+))?/g,
      (_, one: string, two?: string) => `the ${one}${two ? ` ${two}` : ""}`,
    );
}

function itemInWords(path: readonly (string | number)[], i: number, field: string, scenario: Json): string {
  const [list, index] = [String(path[i - 1]), path[i] as number];
  if (path[i - 2] === "monthlyNormals") return `month ${index + 1}`;
  const here = field.split("").reduce<string[]>((found, _, end) => {
    const start = field.slice(0, end + 1);
    return start.endsWith("]") ? [...found, start] : found;
  }, []);
  const nth = path.slice(0, i + 1).filter((step) => typeof step === "number").length - 1;
  const item = getAt(scenario, here[nth] ?? field);
  const name = isGroup(item) ? item["name"] : undefined;
  if (typeof name === "string" && name.trim() !== "") return list === "cases" ? `case “${name}”` : name;
  const one = list === "cases" ? "case" : list === "layers" ? "layer" : apart(list).replace(/s$/, "");
  return `${one} ${index + 1}`;
}

function isPlace(root: string, scenario: Json): boolean {
  return (
    Object.hasOwn(groups, root) ||
    ["cases", "name", "notes", "invented", "format", "scenario"].includes(root) ||
    (isGroup(scenario) && !isList(scenario) && Object.hasOwn(scenario, root))
  );
}

/** @example apart("rowLength") // "row length" */
function apart(key: string): string {
  return key.replace(/(?<=[a-z])(?=[A-Z])/g, " ").toLowerCase();
}
