import { demos, type Demo } from "../../state/demos.ts";
import type { Json } from "../../state/json.ts";
import { getAt } from "../../state/path.ts";
import { listsOfCases } from "./caseEdits.ts";
import { withoutParts, type Part } from "./partsInTheWay.ts";

const [dug, counted] = listsOfCases;
/** What was invented for an example and tells of no other field. */
const telling: readonly Part[] = [
  { keys: dug!, said: "the plants dug" },
  { keys: counted!, said: "the counts" },
  { keys: ["evidence.strips"], said: "the strips" },
  { keys: ["money"], said: "costs and prices" },
  { keys: ["rowPositions"], said: "the rows of the field" },
  { keys: ["notes"], said: "its notes" },
];
/** What goes along, and is then as usual. */
const settings: readonly Part[] = [
  { keys: ["soil.startingWater"], said: "the water at the start" },
  { keys: ["fallow"], said: "the fallow" },
];

/** A sowing date is one crop's. */
const sown: Part = { keys: ["crop.sowing"], said: "the sowing date" };

/** Parts of an example that stand in another field. */
export interface Leftovers {
  readonly example: string;
  readonly parts: readonly Part[];
  /** What the example had that this one has not: "the crop". */
  readonly differs: readonly string[];
}

/**
 * What of an example, as it was written for it, stands in a scenario that is the example no more: its crop or soil is another,
 * or it is no longer called invented. Null where nothing is left, or it is still the example.
 */
export function leftoversIn(scenario: Json, examples: readonly Demo[] = demos): Leftovers | null {
  for (const example of examples) {
    const left = (part: Part) => isSame(scenario, example.scenario, part.keys[0]!);
    const told = telling.filter(left);
    const differs = differing.filter(([, path]) => !isSame(scenario, example.scenario, path, true));
    if (told.length > 0 && differs.length > 0)
      return {
        example: example.name,
        parts: [
          ...told,
          ...settings.filter(left),
          ...(differs.some(([, path]) => path === "crop.name") && left(sown) ? [sown] : []),
        ],
        differs: differs.map(([what]) => what),
      };
  }
  return null;
}

/** What is said of data that are no longer called invented. */
const mark = "the mark “invented”";
const differing = [
  ["the crop", "crop.name"],
  ["the soil", "soil.layers"],
  [mark, "invented"],
] as const;

/** @param alsoNothing whether nothing on both sides counts as the same */
function isSame(scenario: Json, example: Json, path: string, alsoNothing = false): boolean {
  const [here, there] = [getAt(scenario, path), getAt(example, path)];
  if (here === undefined || there === undefined) return alsoNothing && here === there;
  return JSON.stringify(here) === JSON.stringify(there);
}

export function withoutLeftovers(scenario: Json, { parts }: Leftovers): Json {
  return withoutParts(scenario, parts);
}
