import { setRootsLeft } from "../../soil/equations/rootsLeft.ts";
import { openShareAt, passageOf, passageWith } from "../../soil/layers/slices.ts";
import { psiToMPa } from "../../soil/equations/penetrationFactor.ts";
import type { Slices, SoilLayer } from "../../soil/layers/layer.ts";
import type { Fitted } from "./dig.ts";

/** Reading up to which roots keep their whole pace, MPa: the usual one of `penetrationHindrance`. */
const freeUpToMPa = psiToMPa(150);

/**
 * Lays a value of what is fitted over the slices' passage; all other slices stay as they are. Where it is a penetrometer's limit,
 * the layers keep the run's own open share.
 */
export function hinderBy(
  slices: Slices,
  layers: readonly SoilLayer[],
  fitted: Fitted,
  value: number,
  openness: number,
): void {
  const { count, layer: layerOf, passage } = slices;
  for (let j = 0; j < count; j++) {
    const layer = layers[layerOf[j]!]!;
    if (fitted.kind === "passage") {
      if (layer.name === fitted.layer) passage[j] = value;
      continue;
    }
    const { resistanceMPa } = layer.hindrance;
    if (resistanceMPa !== undefined)
      passage[j] = passageWith(openShareAt(layer.openShare, openness), keptAtLimit(resistanceMPa, value));
  }
  setRootsLeft(slices);
}

/** What a reading leaves of the front's pace where roots stop at `limitMPa`, 0 to 1. */
function keptAtLimit(resistanceMPa: number, limitMPa: number): number {
  return Math.min(1, Math.max(0, (limitMPa - resistanceMPa) / (limitMPa - freeUpToMPa)));
}

/** The passage of one layer under a fitted value, in the usual reading; what is not fitted keeps its own. */
export function passageFitted(layer: SoilLayer, fitted: Fitted, value: number): number {
  if (fitted.kind === "passage") return layer.name === fitted.layer ? value : passageOf(layer, 0);
  const { resistanceMPa } = layer.hindrance;
  return resistanceMPa === undefined
    ? passageOf(layer, 0)
    : passageWith(openShareAt(layer.openShare, 0), keptAtLimit(resistanceMPa, value));
}

/**
 * Roots that stop came to where they stop by the day of the dig, and no slower than the soil's own passage lets them: the fitted
 * value alone would have them crawl there.
 *
 * @param own slices that a value was laid over
 * @param undug the same slices without it
 */
export function noSlowerThan(own: Slices, undug: Slices): void {
  for (let j = 0; j < own.count; j++) own.passage[j] = Math.max(own.passage[j]!, undug.passage[j]!);
  setRootsLeft(own);
}

/** Values at which the front is worked out first; between those where much happens others are put, see `gridFor`. */
export function firstGrid(fitted: Fitted): readonly number[] {
  return fitted.kind === "passage" ? [0, 0.04, 0.1, 0.2, 0.4, 0.7, 1] : [1.1, 1.4, 1.8, 2.4, 3.2, 5, 12];
}

/**
 * The first grid, halved again and again where the front jumps by more than `jumpMm` within the depths asked after.
 *
 * @param frontsAt fronts at one value, mm, one for each day asked; deeper with the value
 * @param within least and most depth that matter, mm
 */
export function gridFor(
  fitted: Fitted,
  frontsAt: (value: number) => readonly number[],
  within: readonly [number, number],
  jumpMm: number,
  most: number,
): number[] {
  const known = firstGrid(fitted).map((value) => ({ value, fronts: frontsAt(value) }));
  while (known.length < most) {
    let widest = -1;
    let jump = jumpMm;
    for (let i = 0; i + 1 < known.length; i++) {
      const here = Math.max(
        ...known[i]!.fronts.map(
          (from, g) => insideOf(known[i + 1]!.fronts[g]!, within) - insideOf(from, within),
        ),
      );
      if (here > jump) [widest, jump] = [i, here];
    }
    if (widest < 0) break;
    const value = (known[widest]!.value + known[widest + 1]!.value) / 2;
    known.splice(widest + 1, 0, { value, fronts: frontsAt(value) });
  }
  return known.map(({ value }) => value);
}

function insideOf(depth: number, [least, most]: readonly [number, number]): number {
  return Math.min(most, Math.max(least, depth));
}
