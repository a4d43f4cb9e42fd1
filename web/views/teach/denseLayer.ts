import { densityThresholds, familyClass } from "../../../src/soil/equations/densityFactor.ts";
import type { DigFitAnswer } from "../../../src/answer/dig/digAnswer.ts";
import type { Units } from "../../../src/quantity/kinds.ts";
import { passageOf } from "../../../src/soil/layers/slices.ts";
import { layersOf, patchesOf } from "../../forms/edits/layerEdits.ts";
import type { Json } from "../../state/json.ts";
import type { Changes } from "../../state/path.ts";
import type { LayerShown, ResolvedCase } from "../../worker/protocol.ts";
import { boundaryChanges, boundaryStepMm } from "../pit/boundaryEdit.ts";

/** The layer that the lesson is about: which it is, and how it is changed in the scenario as written. */

/** A layer, in the case whose soil holds it so. */
export interface DenseLayer {
  readonly caseIndex: number;
  /** Among that case's layers. */
  readonly index: number;
}

type Soil = Pick<ResolvedCase, "layers">;

/** Share of the pace that the root front keeps in a layer at field capacity by the usual reading, cracks included. */
export function paceIn(layer: LayerShown): number {
  return passageOf(layer, 0);
}

/** What a dig tells of a layer's passage, by case, and goes before what its density says. */
export interface FittedPassage {
  readonly layer: string;
  /** Share of the pace, by place of the case; missing for a case that density or a reading decides. */
  readonly byCase: ReadonlyMap<number, number>;
}

/** The fitted passage where a dig decides; null where density or a reading does. */
export function fittedPassage(
  fit: DigFitAnswer | null | undefined,
  cases: readonly Pick<ResolvedCase, "name">[],
): FittedPassage | null {
  if (!fit || !fit.decides || fit.layer === null) return null;
  const meets = fit.cases.filter(({ verdict }) => verdict === "meets");
  const valueOf = (name: string | null) => meets.find((one) => one.case === name)?.value;
  const byCase = new Map<number, number>();
  cases.forEach(({ name }, c) => {
    // A case that was not dug shares the fit of the very same layer.
    const value = valueOf(fit.undug.find((one) => one.case === name)?.as ?? name);
    if (value !== undefined) byCase.set(c, value);
  });
  return { layer: fit.layer, byCase };
}

/**
 * The layer that slows roots most: in the cases looked at, else in any case, what was dug before what density says. Where none
 * slows them, the one nearest to doing so, as its density stands to where roots begin to slow in earth of its kind; then one
 * with soil above and below goes first, for it can be moved. The first case goes first among equals.
 *
 * @param among places of the cases that are looked at
 * @returns null without layers
 */
export function slowestLayer(
  cases: readonly Soil[],
  among: readonly number[],
  fitted: FittedPassage | null = null,
): DenseLayer | null {
  const slows = (places: readonly number[]) =>
    first(placesIn(cases, places), (place) => {
      const pace = paceOf(cases, place, fitted);
      return pace < 1 - 1e-9 ? -pace : null;
    });
  const here = slows(among);
  if (here !== null) return here;
  const elsewhere = slows(cases.map((_, c) => c));
  const alike = elsewhere === null ? null : layerNamed(cases, among, layerIn(cases, elsewhere).name, fitted);
  if (alike !== null) return alike;
  const packing = (mustMove: boolean) =>
    first(placesIn(cases, among), (place) => {
      const canMove = place.index > 0 && place.index < cases[place.caseIndex]!.layers.length - 1;
      return mustMove && !canMove ? null : packed(layerIn(cases, place));
    });
  return packing(true) ?? packing(false);
}

/** The first of those that stand highest; null leaves one out. */
function first(
  places: readonly DenseLayer[],
  standing: (place: DenseLayer) => number | null,
): DenseLayer | null {
  let [found, best]: [DenseLayer | null, number] = [null, -Infinity];
  for (const place of places) {
    const height = standing(place);
    if (height === null || height <= best + 1e-9) continue;
    [found, best] = [place, height];
  }
  return found;
}

function placesIn(cases: readonly Soil[], among: readonly number[]): DenseLayer[] {
  return among.flatMap((caseIndex) =>
    (cases[caseIndex]?.layers ?? []).map((_, index) => ({ caseIndex, index })),
  );
}

function layerIn(cases: readonly Soil[], { caseIndex, index }: DenseLayer): LayerShown {
  return cases[caseIndex]!.layers[index]!;
}

function paceOf(cases: readonly Soil[], place: DenseLayer, fitted: FittedPassage | null): number {
  const layer = layerIn(cases, place);
  const dug = fitted?.layer === layer.name ? fitted.byCase.get(place.caseIndex) : undefined;
  return dug ?? paceIn(layer);
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
  fitted: FittedPassage | null = null,
): DenseLayer | null {
  const named = placesIn(cases, among).filter((place) => layerIn(cases, place).name === name);
  return first(named, (place) => -paceOf(cases, place, fitted));
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
