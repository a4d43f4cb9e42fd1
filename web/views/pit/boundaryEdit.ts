import { mmPerInch } from "../../../src/quantity/constants.ts";
import { layersOf, patchesOf } from "../../forms/edits/layerEdits.ts";
import { isGroup, type Json, type JsonGroup } from "../../state/json.ts";
import { getAt, type Changes } from "../../state/path.ts";
import type { Units } from "../../../src/quantity/kinds.ts";

/** A boundary dragged on the pit wall, as changes to the scenario as it is written. */

interface Layer {
  readonly name: string;
  readonly topMm: number;
  readonly bottomMm: number;
}

/** Steps that a boundary is put at: half an inch, a centimetre. */
export function boundaryStepMm(units: Units): number {
  return units === "us" ? 12.7 : 10;
}

/** A depth on a step, with at least a step of soil above and below it. */
export function boundaryAt(layers: readonly Layer[], index: number, wantedMm: number, units: Units): number {
  const step = boundaryStepMm(units);
  const layer = layers[index]!;
  const next = layers[index + 1];
  const least = Math.floor(layer.topMm / step + 1e-6) + 1;
  const most =
    next === undefined ? Math.round((layer.topMm + 3000) / step) : Math.ceil(next.bottomMm / step - 1e-6) - 1;
  return Math.min(Math.max(Math.round(wantedMm / step), least), Math.max(least, most)) * step;
}

/**
 * What to write so that the layer ends at a depth and everything below stays where it is.
 *
 * @param caseIndex the case whose soil is on show: its own depth of a layer, where it has one, goes before the base soil's
 * @param layers that case's layers as the engine read them
 * @returns null where depths do not stand in the scenario, as with a file of horizons
 */
export function boundaryChanges(
  scenario: Json,
  caseIndex: number,
  layers: readonly Layer[],
  index: number,
  bottomMm: number,
  units: Units,
): Changes | null {
  const layer = layers[index];
  if (layer === undefined) return null;
  const own = placeOf(scenario, caseIndex, layer.name, index);
  if (own === null) return null;
  const changes = depthChanges(own, layer.topMm, bottomMm, units);
  const next = layers[index + 1];
  const below = next === undefined ? null : placeOf(scenario, caseIndex, next.name, index + 1);
  // A layer told by its thickness would be pushed down.
  if (next === undefined || below === null || below.written["thickness"] === undefined) return changes;
  return [...changes, ...depthChanges(below, bottomMm, next.bottomMm, units)];
}

/** Whether the boundary can be moved here; the end of the soil cannot where something else says it. */
export function canMove(scenario: Json, caseIndex: number, layers: readonly Layer[], index: number): boolean {
  const isLast = index === layers.length - 1;
  const ends = ["soil.restriction", `cases[${caseIndex}].soil.restriction`];
  if (isLast && ends.some((path) => getAt(scenario, path) !== undefined)) return false;
  return boundaryChanges(scenario, caseIndex, layers, index, layers[index]!.bottomMm, "us") !== null;
}

interface Place {
  readonly path: string;
  readonly written: JsonGroup;
}

function placeOf(scenario: Json, caseIndex: number, name: string, index: number): Place | null {
  const patches = patchesOf(scenario, caseIndex);
  const at = patches.findIndex((patch) => patch["name"] === name && tellsDepth(patch));
  if (at >= 0) return { path: `cases[${caseIndex}].soil.layers[${at}]`, written: patches[at]! };
  const written = layersOf(scenario)[index];
  return isGroup(written) && tellsDepth(written) ? { path: `soil.layers[${index}]`, written } : null;
}

function tellsDepth(written: JsonGroup): boolean {
  return written["bottom"] !== undefined || written["thickness"] !== undefined;
}

/** In the way it was told: as the bottom, as the thickness, or as both. */
function depthChanges({ path, written }: Place, topMm: number, bottomMm: number, units: Units): Changes {
  const changes: (readonly [string, Json])[] = [];
  if (written["bottom"] !== undefined) changes.push([`${path}.bottom`, say(bottomMm, units)]);
  if (written["thickness"] !== undefined) changes.push([`${path}.thickness`, say(bottomMm - topMm, units)]);
  return changes;
}

/** `10.5 in`, `270 mm` */
function say(mm: number, units: Units): string {
  return units === "us" ? `${Number((mm / mmPerInch).toFixed(2))} in` : `${Number(mm.toFixed(1))} mm`;
}
