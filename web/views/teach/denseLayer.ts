import { densityThresholds, familyClass } from "../../../src/soil/densityFactor.ts";
import type { Units } from "../../../src/quantity/kinds.ts";
import { layersOf, patchesOf } from "../../inputs/layerEdits.ts";
import type { Json } from "../../state/json.ts";
import type { LayerShown, UnderstoodCase } from "../../worker/protocol.ts";
import { boundaryChanges, boundaryStepMm, type Changes } from "../pit/boundaryEdit.ts";

/** The layer that the lesson is about: which it is, and how it is changed in the scenario as written. */

/** A layer, in the case whose soil holds it so. */
export interface DenseLayer {
  readonly caseIndex: number;
  /** Among that case's layers. */
  readonly index: number;
}

type Soil = Pick<UnderstoodCase, "layers">;

/** Share of the pace that the root front keeps in a layer at field capacity by the usual reading, cracks included. */
export function paceIn({ hindrance, openShare }: LayerShown): number {
  return openShare + (1 - openShare) * hindrance.usual;
}

/**
 * The layer that slows roots most, of all the cases looked at; where none slows them, the one nearest to doing so, as its
 * density stands to where roots begin to slow in earth of its kind. The first case goes first among equals.
 *
 * @param among places of the cases that are looked at
 * @returns null without layers
 */
export function slowestLayer(cases: readonly Soil[], among: readonly number[]): DenseLayer | null {
  let found: DenseLayer | null = null;
  for (const caseIndex of among) {
    (cases[caseIndex]?.layers ?? []).forEach((layer, index) => {
      const best = found === null ? null : cases[found.caseIndex]!.layers[found.index]!;
      if (best === null || slowsMore(layer, best)) found = { caseIndex, index };
    });
  }
  return found;
}

function slowsMore(one: LayerShown, other: LayerShown): boolean {
  const [pace, best] = [paceIn(one), paceIn(other)];
  if (Math.abs(pace - best) > 1e-9) return pace < best;
  return packed(one) > packed(other) + 1e-9;
}

/** Density as a share of that at which roots begin to slow. */
function packed({ sandFraction, clayFraction, bulkDensityKgPerM3 }: LayerShown): number {
  return bulkDensityKgPerM3 / densityThresholds(familyClass(sandFraction, clayFraction)).unhinderedKgPerM3;
}

/** The case in which a layer of that name slows roots most. */
export function layerNamed(
  cases: readonly Soil[],
  among: readonly number[],
  name: string,
): DenseLayer | null {
  const alike = cases.map(({ layers }) => ({ layers: layers.filter((layer) => layer.name === name) }));
  const found = slowestLayer(alike, among);
  if (found === null) return null;
  const index = cases[found.caseIndex]!.layers.findIndex((layer) => layer.name === name);
  return { ...found, index };
}

/**
 * Where the layer's density is written, or would be: the case's own word goes before the base soil's.
 *
 * @returns null where layers do not stand in the scenario, as with a file of horizons
 */
export function densityPath(scenario: Json, { caseIndex, index }: DenseLayer, name: string): string | null {
  const own = patchesOf(scenario, caseIndex).findIndex(
    (patch) => patch["name"] === name && patch["bulkDensity"] !== undefined,
  );
  if (own >= 0) return `cases[${caseIndex}].soil.layers[${own}].bulkDensity`;
  return layersOf(scenario)[index] === undefined ? null : `soil.layers[${index}].bulkDensity`;
}

/** From where to where the top of a layer can go, mm, at least a step of soil left above and below; null where it cannot. */
export function topRange(
  layers: readonly LayerShown[],
  index: number,
  units: Units,
): { readonly fromMm: number; readonly toMm: number } | null {
  const [above, layer, below] = [layers[index - 1], layers[index], layers[index + 1]];
  if (above === undefined || layer === undefined || below === undefined) return null;
  const step = boundaryStepMm(units);
  const fromMm = (Math.floor(above.topMm / step + 1e-6) + 1) * step;
  const thicknessMm = layer.bottomMm - layer.topMm;
  const toMm = Math.floor((below.bottomMm - thicknessMm - step) / step + 1e-6) * step;
  return toMm > fromMm ? { fromMm, toMm } : null;
}

/**
 * What to write so that a layer begins at a depth and is as thick as before: its neighbours give way.
 *
 * @returns null where depths do not stand in the scenario
 */
export function movedTo(
  scenario: Json,
  layers: readonly LayerShown[],
  { caseIndex, index }: DenseLayer,
  topMm: number,
  units: Units,
): Changes | null {
  const [above, layer] = [layers[index - 1], layers[index]];
  if (above === undefined || layer === undefined) return null;
  const bottomMm = topMm + layer.bottomMm - layer.topMm;
  const upper = boundaryChanges(scenario, caseIndex, layers, index - 1, topMm, units);
  const moved = layers.map((one, i) => {
    if (i === index - 1) return { ...one, bottomMm: topMm };
    return i === index ? { ...one, topMm } : one;
  });
  const lower = boundaryChanges(scenario, caseIndex, moved, index, bottomMm, units);
  if (upper === null || lower === null) return null;
  // A thickness is written by both; the second knows both ends.
  return [...new Map([...upper, ...lower])];
}
