import { isGroup, isList, type Json, type JsonGroup } from "./json.ts";

/** A place in a scenario, written as problems and defaults write it: `soil.layers[1].bulkDensity`. */
export type Path = readonly (string | number)[];

const step = /^(?:\.?([\w$]{1,60})|\[(\d{1,4})\])/;

/** Null for what is no place in a scenario, such as `weather.csv line 12`. The empty path is the scenario itself. */
export function parsePath(text: string): Path | null {
  const path: (string | number)[] = [];
  for (let rest = text; rest !== "";) {
    const found = step.exec(rest);
    if (found === null || (path.length === 0 && /^[.[]/.test(rest))) return null;
    path.push(found[1] ?? Number(found[2]));
    rest = rest.slice(found[0].length);
    if (rest !== "" && !/^[.[]/.test(rest)) return null;
  }
  return path;
}

/** What to write where; undefined takes away what stands there. */
export type Changes = readonly (readonly [path: string, value: Json | undefined])[];

export function changed(scenario: Json, changes: Changes): Json {
  return changes.reduce<Json>(
    (now, [path, value]) => (value === undefined ? removeAt(now, path) : setAt(now, path, value)),
    scenario,
  );
}

export function getAt(scenario: Json, text: string): Json | undefined {
  let here: Json | undefined = scenario;
  for (const key of must(text)) {
    if (typeof key === "number") here = isList(here) ? here[key] : undefined;
    else here = isGroup(here) && Object.hasOwn(here, key) ? here[key] : undefined;
  }
  return here;
}

/** A list of groups as written; what is no group is an empty one. */
export function groupsAt(scenario: Json, text: string): readonly JsonGroup[] {
  const list = getAt(scenario, text);
  return isList(list) ? list.map((one) => (isGroup(one) ? one : {})) : [];
}

/** The scenario with a value at a place; groups on the way that are not there are made. */
export function setAt(scenario: Json, text: string, value: Json): Json {
  return put(scenario, must(text), value);
}

/** The scenario without what stands at a place, and without groups that are empty then. Items of lists close up. */
export function removeAt(scenario: Json, text: string): Json {
  return take(scenario, must(text)) ?? {};
}

function put(here: Json | undefined, [key, ...rest]: Path, value: Json): Json {
  if (key === undefined) return value;
  if (typeof key === "number") {
    const list = isList(here) ? [...here] : [];
    if (key > list.length) throw new Error(`a list of ${list.length} has no place ${key}`);
    list[key] = put(list[key], rest, value);
    return list;
  }
  const group: JsonGroup = isGroup(here) ? here : {};
  return { ...group, [key]: put(Object.hasOwn(group, key) ? group[key] : undefined, rest, value) };
}

function take(here: Json, [key, ...rest]: Path): Json | undefined {
  if (key === undefined) return undefined;
  if (typeof key === "number") {
    if (!isList(here) || key >= here.length) return here;
    const left = take(here[key]!, rest);
    if (left !== undefined) return here.with(key, left);
    // An item emptied from within stays: its neighbours keep their places.
    return rest.length > 0 ? here.with(key, {}) : here.toSpliced(key, 1);
  }
  if (!isGroup(here) || !Object.hasOwn(here, key)) return here;
  const left = take(here[key]!, rest);
  const others = Object.fromEntries(Object.entries(here).filter(([name]) => name !== key));
  if (left !== undefined) return { ...here, [key]: left };
  return Object.keys(others).length > 0 ? others : undefined;
}

function must(text: string): Path {
  const path = parsePath(text);
  if (path === null) throw new Error(`${text} is no place in a scenario`);
  return path;
}
