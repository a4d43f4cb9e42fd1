import { isGroup, type Json } from "../state/json.ts";
import { getAt, parsePath } from "../state/path.ts";
import { label, words } from "./words.ts";

/**
 * A place of the scenario as people know it: `Bulk density, plough pan`. As it is written where no word is known for it, and
 * for what is no place in the scenario, such as a line of a file.
 *
 * @param path as problems write it: `soil.layers[1].bulkDensity`
 */
export function placeInWords(path: string, scenario: Json): string {
  const steps = parsePath(path);
  const key = steps?.findLast((step) => typeof step === "string");
  if (steps === null || typeof key !== "string" || words[key] === undefined) return path;
  return [label(key), ...ownersOf(path, scenario)].join(", ");
}

/** Names of the layer and the case that a place belongs to, the nearer first. */
function ownersOf(path: string, scenario: Json): string[] {
  const found: string[] = [];
  for (let end = path.lastIndexOf("]"); end > 0; end = path.lastIndexOf("]", end - 1)) {
    const item = getAt(scenario, path.slice(0, end + 1));
    const name = isGroup(item) ? item["name"] : undefined;
    if (typeof name === "string" && name.trim() !== "") found.push(name);
  }
  return found;
}
