import type { Voids } from "../../src/scenario/fields/facts/alternatives.ts";
import { lookUp } from "../../src/lookUp.ts";
import type { Json } from "../state/json.ts";
import { label } from "./words.ts";

/**
 * What every field of a group has: its place, its label, what holds while it is left out, what it makes void.
 *
 * @param inherited what the base says of a key, for a case's own group
 */
export function fieldsOf(path: string, voids: Voids, inherited?: (key: string) => string | undefined) {
  return (key: string) => ({
    path: `${path}.${key}`,
    label: label(key),
    otherwise: inherited?.(key),
    also: takesOut(path, key, voids),
  });
}

/** The changes that go with writing a key of a group: what it makes void is taken out. */
export function takesOut(path: string, key: string, voids: Voids) {
  return (value: Json | undefined) =>
    value === undefined
      ? []
      : (lookUp(voids, key) ?? []).map((other) => [`${path}.${other}`, undefined] as const);
}
