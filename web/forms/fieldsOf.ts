import type { Json } from "../state/json.ts";
import { label } from "./words.ts";

/**
 * What every field of a group has: its place, its label, what holds while it is left out.
 *
 * @param inherited what the base says of a key, for a case's own group
 * @returns for a key, and the keys that it makes void when it is filled in
 */
export function fieldsOf(path: string, inherited?: (key: string) => string | undefined) {
  return (key: string, ...voids: string[]) => ({
    path: `${path}.${key}`,
    label: label(key),
    otherwise: inherited?.(key),
    also: (value: Json | undefined) =>
      value === undefined ? [] : voids.map((other) => [`${path}.${other}`, undefined] as const),
  });
}
