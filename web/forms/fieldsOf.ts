import type { Voids } from "../../src/scenario/fields/facts/alternatives.ts";
import { lookUp } from "../../src/lookUp.ts";
import type { Json } from "../state/json.ts";
import { label } from "./words.ts";

export interface GroupProps {
  /** Where the group stands: `surface`, or a case's `cases[1].surface`. */
  readonly path: string;
  /** What the base says of a key, for a case's own group. */
  readonly inherited?: ((key: string) => string | undefined) | undefined;
}

/** What every field of a group has: its place, its label, what holds while it is left out, what it makes void. */
export function fieldsOf({ path, inherited }: GroupProps, voids: Voids) {
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
