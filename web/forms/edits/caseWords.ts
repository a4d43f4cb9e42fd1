import { lookUp } from "../../../src/lookUp.ts";
import { isGroup, isList, type Json, type JsonGroup } from "../../state/json.ts";
import { listText } from "../listText.ts";
import { words } from "../words.ts";

const groups: readonly (readonly [key: string, said: string])[] = [
  ["surface", "surface"],
  ["crop", "crop"],
  ["fallow", "fallow"],
  ["model", "model"],
];

/**
 * What a case changes, a phrase for each difference; empty where it changes nothing.
 *
 * @param first name of the first case, which a depth with a sign is told against
 */
export function caseInWords(one: JsonGroup, first: string): string[] {
  const { rootingDepth, soil } = one;
  const said: string[] = [];
  if (typeof rootingDepth === "string" || typeof rootingDepth === "number")
    said.push(rootsInWords(String(rootingDepth), first));
  if (isGroup(soil)) said.push(...soilInWords(soil));
  for (const [key, word] of groups) said.push(...groupInWords(one[key], word));
  return said;
}

function rootsInWords(depth: string, first: string): string {
  const relative = /^\s*([+\u2212-])\s*(\S.*)$/.exec(depth);
  if (relative === null) return `roots to ${depth.trim()} at most`;
  return `roots ${relative[2]} ${relative[1] === "+" ? "deeper" : "shallower"} than in “${first}”`;
}

function soilInWords({ layers, startingWater, restriction, hydrologicGroup }: JsonGroup): string[] {
  const ofLayers = isList(layers)
    ? layers.flatMap((layer) => {
        if (!isGroup(layer)) return [];
        const { name, ...differs } = layer;
        return groupInWords(differs, typeof name === "string" ? name : "a layer");
      })
    : [];
  return [
    ...ofLayers,
    ...groupInWords(startingWater, "starting water"),
    ...groupInWords(restriction, "soil ends"),
    ...(hydrologicGroup === undefined ? [] : [`hydrologic group ${plain(hydrologicGroup)}`]),
  ];
}

/** `plough pan: bulk density 1.36 g/cm^3, clay 20 %` */
function groupInWords(group: Json | undefined, said: string): string[] {
  if (!isGroup(group)) return [];
  const parts = Object.entries(group).map(([key, value]) => `${lookUp(words, key) ?? key} ${plain(value)}`);
  return parts.length === 0 ? [] : [`${said}: ${parts.join(", ")}`];
}

function plain(value: Json): string {
  if (typeof value === "boolean") return value ? "yes" : "no";
  return listText(value);
}
