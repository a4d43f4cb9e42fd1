import type { Problem } from "../../../src/problem.ts";
import type { Json } from "../../state/json.ts";
import { getAt, removeAt } from "../../state/path.ts";
import { listsOfCases } from "./caseEdits.ts";

/** A part of the scenario that the water's answer does not need: what was measured, money, the field's rows. */
export interface Part {
  /** Its first key is where problems are looked for; the others are said beside it and go with it. */
  readonly keys: readonly string[];
  readonly said: string;
}

const [dug, counted] = listsOfCases;
const parts: readonly Part[] = [
  { keys: dug!, said: "what was dug" },
  { keys: counted!, said: "what was counted" },
  { keys: ["evidence.strips"], said: "the strips" },
  { keys: ["money"], said: "the money" },
  { keys: ["rowPositions"], said: "the rows of the field" },
];

/** Parts that are there and that a problem is about; empty where some problem is about anything else. */
export function partsInTheWay(problems: readonly Problem[], scenario: Json): readonly Part[] {
  const about = problems.map(({ field }) =>
    parts.find(({ keys }) => keys.some((key) => isWithin(field, key))),
  );
  if (about.some((part) => part === undefined)) return [];
  return parts.filter(
    (part) => about.includes(part) && part.keys.some((key) => getAt(scenario, key) !== undefined),
  );
}

function isWithin(field: string, key: string): boolean {
  return field.startsWith(key) && /^(?:$|[.[])/.test(field.slice(key.length));
}

export function withoutParts(scenario: Json, left: readonly Part[]): Json {
  return left.flatMap(({ keys }) => keys).reduce(removeAt, scenario);
}
