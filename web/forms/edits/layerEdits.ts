import { sayQuantity } from "../../../src/quantity/sayQuantity.ts";
import type { Units } from "../../../src/quantity/kinds.ts";
import { isList, type Json, type JsonGroup } from "../../state/json.ts";
import { getAt, groupsAt, removeAt, setAt } from "../../state/path.ts";

/**
 * Changes to the list of layers: scenario in, scenario out. Cases refer to layers by name, so what they say of a layer goes
 * along. Depths that have to be worked out come from the engine's reading of the scenario.
 */

/** Where a layer lies, mm below the surface. */
export interface LayerDepths {
  readonly topMm: number;
  readonly bottomMm: number;
}

export function layersOf(scenario: Json): readonly JsonGroup[] {
  return groupsAt(scenario, "soil.layers");
}

/** One more layer below the last, of its texture. */
export function addLayer(scenario: Json, units: Units): Json {
  const layers = layersOf(scenario);
  const { texture = "silt loam", sand, clay } = layers.at(-1) ?? {};
  const earth: JsonGroup = sand !== undefined && clay !== undefined ? { sand, clay } : { texture };
  const name = newName(`layer ${layers.length + 1}`, layers);
  return withLayers(scenario, [
    ...layers,
    { name, thickness: units === "us" ? "12 in" : "300 mm", ...earth },
  ]);
}

/** Two layers of half the thickness in place of one. */
export function splitLayer(
  scenario: Json,
  index: number,
  { topMm, bottomMm }: LayerDepths,
  units: Units,
): Json {
  const layers = layersOf(scenario);
  const layer = layers[index];
  if (layer === undefined) return scenario;
  const name = nameOf(layer, index);
  const halfMm = (bottomMm - topMm) / 2;
  const middle: JsonGroup =
    layer["bottom"] === undefined
      ? { thickness: halved(layer["thickness"]) ?? sayQuantity(halfMm, "depth", units) }
      : { bottom: sayQuantity(topMm + halfMm, "depth", units) };
  const { bottom, thickness: _, ...rest } = layer;
  const ends: JsonGroup = bottom === undefined ? middle : { bottom };
  const water = halvedAmount(layer["water"]);
  const halves = [
    { ...rest, ...water, name: newName(`${name}, upper`, layers), ...middle },
    { ...rest, ...water, name: newName(`${name}, lower`, layers), ...ends },
  ];
  const names = halves.map((half) => half.name);
  return patchesMapped(withLayers(scenario, layers.toSpliced(index, 1, ...halves)), name, (patch) => {
    // A case's own depth of the whole layer is no depth of a half.
    const { bottom: own, thickness: _own, ...differs } = patch;
    const [upper = "", lower = ""] = names;
    return [
      { ...differs, ...halvedAmount(patch["water"]), name: upper },
      {
        ...differs,
        ...halvedAmount(patch["water"]),
        name: lower,
        ...(own === undefined ? {} : { bottom: own }),
      },
    ];
  });
}

/** A layer and the next one as one: what the thicker is made of, from the top of the upper to the bottom of the lower. */
export function joinLayers(
  scenario: Json,
  index: number,
  upperAt: LayerDepths,
  lowerAt: LayerDepths,
  units: Units,
): Json {
  const layers = layersOf(scenario);
  const [upper, lower] = [layers[index], layers[index + 1]];
  if (upper === undefined || lower === undefined) return scenario;
  // Halves of one layer differ by what rounding leaves.
  const upperIsThicker = upperAt.bottomMm - upperAt.topMm > lowerAt.bottomMm - lowerAt.topMm - 0.5;
  const [thicker, thinner] = upperIsThicker ? [upper, lower] : [lower, upper];
  const { bottom: _bottom, thickness: _thickness, ...rest } = thicker;
  const depth: JsonGroup =
    lower["bottom"] === undefined
      ? { thickness: sayQuantity(lowerAt.bottomMm - upperAt.topMm, "depth", units) }
      : { bottom: lower["bottom"] };
  const keptName = nameOf(thicker, upperIsThicker ? index : index + 1);
  const goneName = nameOf(thinner, upperIsThicker ? index + 1 : index);
  const name = wholeName(nameOf(upper, index), nameOf(lower, index + 1)) ?? keptName;
  const joined = {
    ...rest,
    ...addedAmounts(upper["water"], lower["water"], thicker["water"]),
    name,
    ...depth,
  };
  const next = withLayers(scenario, layers.toSpliced(index, 2, joined));
  const withoutGone = patchesMapped(next, goneName, () => []);
  return patchesMapped(withoutGone, keptName, (patch) => [{ ...patch, name }]);
}

/** What was split gets its name back. */
function wholeName(upper: string, lower: string): string | null {
  const whole = upper.replace(/, upper$/, "");
  return upper === `${whole}, upper` && lower === `${whole}, lower` ? whole : null;
}

/** What lies below and is told by its thickness moves up. */
export function removeLayer(scenario: Json, index: number): Json {
  const layers = layersOf(scenario);
  const layer = layers[index];
  if (layer === undefined) return scenario;
  return patchesMapped(withLayers(scenario, layers.toSpliced(index, 1)), nameOf(layer, index), () => []);
}

/** Places in the cases that refer to a layer by its name; none while two layers share it, as then it means neither. */
export function namedIn(scenario: Json, name: string): string[] {
  if (layersOf(scenario).filter((layer) => layer["name"] === name).length !== 1) return [];
  return casesOf(scenario).flatMap((_, c) =>
    patchesOf(scenario, c).flatMap((patch, p) =>
      patch["name"] === name ? [`cases[${c}].soil.layers[${p}].name`] : [],
    ),
  );
}

export function patchesOf(scenario: Json, caseIndex: number): readonly JsonGroup[] {
  return groupsAt(scenario, `cases[${caseIndex}].soil.layers`);
}

function casesOf(scenario: Json): readonly Json[] {
  const cases = getAt(scenario, "cases");
  return isList(cases) ? cases : [];
}

/** Every case's differences of the layer of a name, replaced. */
function patchesMapped(scenario: Json, name: string, to: (patch: JsonGroup) => readonly JsonGroup[]): Json {
  let next = scenario;
  casesOf(scenario).forEach((_, c) => {
    const before = patchesOf(next, c);
    if (!before.some((patch) => patch["name"] === name)) return;
    const after = before.flatMap((patch) => (patch["name"] === name ? to(patch) : [patch]));
    const path = `cases[${c}].soil.layers`;
    next = after.length === 0 ? removeAt(next, path) : setAt(next, path, after);
  });
  return next;
}

function withLayers(scenario: Json, layers: readonly Json[]): Json {
  return setAt(scenario, "soil.layers", layers);
}

function nameOf(layer: JsonGroup, index: number): string {
  return typeof layer["name"] === "string" ? layer["name"] : `layer ${index + 1}`;
}

/** @example newName("pan", [{ name: "pan" }]) // "pan 2" */
export function newName(wanted: string, among: readonly JsonGroup[]): string {
  const taken = new Set(among.map((one) => one["name"]));
  for (let n = 1; ; n++) {
    const name = n === 1 ? wanted : `${wanted} ${n}`;
    if (!taken.has(name)) return name;
  }
}

/** Half of a plain number with a unit, as "6 in"; null for any other writing. */
function halved(text: Json | undefined): string | null {
  const found = /^\s*(\d+(?:\.\d+)?)\s*([a-z]+)\s*$/i.exec(typeof text === "string" ? text : "");
  return found === null ? null : `${Number(found[1]) / 2} ${found[2]}`;
}

const amount = /^\s*(\d+(?:\.\d+)?)\s*([a-z]+)\s+available\s*$/i;

/** Water told as an amount is shared out; as a share it holds for both halves. */
function halvedAmount(water: Json | undefined): JsonGroup {
  const found = amount.exec(typeof water === "string" ? water : "");
  return found === null ? {} : { water: `${Number(found[1]) / 2} ${found[2]} available` };
}

function addedAmounts(
  upper: Json | undefined,
  lower: Json | undefined,
  otherwise: Json | undefined,
): JsonGroup {
  const [a, b] = [upper, lower].map((water) => amount.exec(typeof water === "string" ? water : ""));
  if (a && b && a[2] === b[2]) {
    return { water: `${Number((Number(a[1]) + Number(b[1])).toPrecision(6))} ${a[2]} available` };
  }
  return otherwise === undefined ? {} : { water: otherwise };
}
