import { isGroup, isList, type Json, type JsonGroup } from "../../state/json.ts";

/**
 * What is there now, with the step from `before` to `after` taken in it: what was entered by hand since then stays, all else
 * becomes as after. Layers and cases are found by their names; where the names have changed by hand, the list becomes as after.
 */
export function merged(
  before: Json | undefined,
  after: Json | undefined,
  now: Json | undefined,
): Json | undefined {
  if (same(before, after)) return now;
  if (same(before, now)) return after;
  if (isGroup(after) && isGroup(now)) return mergedGroups(isGroup(before) ? before : {}, after, now);
  const [b, a, n] = [namedGroups(before), namedGroups(after), namedGroups(now)];
  if (b !== null && a !== null && n !== null && same([...b.keys()], [...n.keys()]))
    return [...a].map(([name, one]) => {
      const [was, is] = [b.get(name), n.get(name)];
      return was === undefined || is === undefined ? one : mergedGroups(was, one, is);
    });
  // A place that the step takes away or writes anew: what was typed there by hand goes before.
  return b !== null || after === undefined || isList(after) || isGroup(after) ? after : now;
}

function mergedGroups(before: JsonGroup, after: JsonGroup, now: JsonGroup): JsonGroup {
  const keys = new Set([...Object.keys(now), ...Object.keys(after)]);
  const pairs = [...keys].flatMap((key) => {
    const value = merged(before[key], after[key], now[key]);
    return value === undefined ? [] : [[key, value] as const];
  });
  return Object.fromEntries(pairs);
}

/** By their names; null where it is no list of groups that each have their own. */
function namedGroups(list: Json | undefined): ReadonlyMap<string, JsonGroup> | null {
  if (!isList(list)) return null;
  const pairs = list.flatMap((one) =>
    isGroup(one) && typeof one["name"] === "string" ? [[one["name"], one] as const] : [],
  );
  const found = new Map(pairs);
  return found.size === list.length ? found : null;
}

function same(a: Json | undefined, b: Json | undefined): boolean {
  return a === b || JSON.stringify(a) === JSON.stringify(b);
}
