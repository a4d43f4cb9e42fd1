import type { Hindrance, Slices, SoilLayer } from "./layer.ts";
import type { ShareRange } from "./layerOrigin.ts";
import { setRootsLeft } from "../equations/rootsLeft.ts";

/** One run's draw of what is uncertain in a soil: the same for all its layers. */
export interface SoilDraw {
  /** Moves each layer's available water by so many of its own standard deviations. */
  readonly capacity: number;
  /** Reading of the hindrance: -1 strict, 0 usual, 1 lenient, straight between; held within. */
  readonly lenience: number;
  /** Open share of a layer: -1 the low, 0 the middle, 1 the high of its range, straight between; held within. */
  readonly openness: number;
}

/** The soil as resolved. */
export const asResolved: SoilDraw = { capacity: 0, lenience: 0, openness: 0 };

/** Share of its available water that a draw leaves a layer at least: a soil still holds some. Ours. */
const leastCapacityShare = 0.2;

/** Share of the pore space above field capacity that a moved field capacity leaves to drain. */
const leastDrainableShare = 0.1;

/**
 * Rain wets the topsoil from above and stops anywhere in it; the slices are thinner there, or where it stops would depend
 * on them. Ours: with these, halving all slices moves the demos' extra water by less than 1 %.
 */
const topsoilMm = 600;
const topsoilShare = 0.4;

/**
 * Cuts layers into slices: at every layer boundary, equal between cuts, none thicker than asked; for a season also at the
 * depth that evaporation dries, and those of the uppermost 600 mm at most 0.4 as thick as asked.
 *
 * A draw of available water moves field capacity alone, the worse known of the two limits: wilting point and saturation stay,
 * at least a fifth of the available water is left, and a tenth of the space that lay between field capacity and saturation.
 *
 * @param layers from the surface down without gaps, any number and thickness
 * @param maxThicknessMm above 0; 25 by default in a scenario
 * @param evaporatingDepthMm of a season's ground; left out, only layers are cut
 */
export function cutSlices(
  layers: readonly SoilLayer[],
  maxThicknessMm: number,
  draw: SoilDraw,
  evaporatingDepthMm?: number,
): Slices {
  if (!(maxThicknessMm > 0))
    throw new RangeError(`slices need a thickness above 0 mm, got ${maxThicknessMm}`);
  const forSeason = evaporatingDepthMm !== undefined;
  const alsoAtMm = forSeason ? [evaporatingDepthMm, topsoilMm] : [];
  const pieces = layers.flatMap((layer, index) =>
    edgesOf(layer, alsoAtMm).map(([topMm, bottomMm]) => {
      const cut = slicesIn(
        bottomMm - topMm,
        forSeason && topMm < topsoilMm ? topsoilShare * maxThicknessMm : maxThicknessMm,
      );
      return { layer, index, topMm, cut, thicknessMm: (bottomMm - topMm) / cut };
    }),
  );
  const count = pieces.reduce((sum, { cut }) => sum + cut, 0);
  const slices: Slices = {
    count,
    topMm: new Float64Array(count),
    thicknessMm: new Float64Array(count),
    layer: new Int32Array(count),
    wiltingPointMm: new Float64Array(count),
    fieldCapacityMm: new Float64Array(count),
    saturationMm: new Float64Array(count),
    saturatedConductivityMmPerDay: new Float64Array(count),
    drainExponent: new Float64Array(count),
    passage: new Float64Array(count),
    rootsLeft: new Float64Array(count),
  };
  let slice = 0;
  for (const { layer, index, topMm, cut, thicknessMm } of pieces) {
    const fieldCapacity = movedFieldCapacity(layer, draw.capacity);
    const exponent = movedDrainExponent(layer, fieldCapacity);
    const passage = passageOf(layer, draw.lenience, draw.openness);
    for (let i = 0; i < cut; i++, slice++) {
      slices.topMm[slice] = topMm + i * thicknessMm;
      slices.thicknessMm[slice] = thicknessMm;
      slices.layer[slice] = index;
      slices.wiltingPointMm[slice] = layer.wiltingPoint * thicknessMm;
      slices.fieldCapacityMm[slice] = fieldCapacity * thicknessMm;
      slices.saturationMm[slice] = layer.saturation * thicknessMm;
      slices.saturatedConductivityMmPerDay[slice] = layer.saturatedConductivityMmPerDay;
      slices.drainExponent[slice] = exponent;
      slices.passage[slice] = passage;
    }
  }
  setRootsLeft(slices);
  return slices;
}

/** The layer in parts, cut at those depths that lie well within it. */
function edgesOf({ topMm, bottomMm }: SoilLayer, depthsMm: readonly number[]): (readonly [number, number])[] {
  const hair = 1e-6;
  const inside = depthsMm
    .filter((depth) => depth > topMm + hair && depth < bottomMm - hair)
    .sort((a, b) => a - b);
  const edges = [topMm, ...inside, bottomMm];
  return edges.slice(1).map((bottom, i) => [edges[i]!, bottom] as const);
}

/** At least one; a hair of rounding does not make another slice. */
function slicesIn(thicknessMm: number, maxThicknessMm: number): number {
  return Math.max(1, Math.ceil(thicknessMm / maxThicknessMm - 1e-9));
}

function movedFieldCapacity(
  { wiltingPoint, fieldCapacity, saturation, availableWaterSd }: SoilLayer,
  capacity: number,
): number {
  const available = fieldCapacity - wiltingPoint;
  const moved = capacity * availableWaterSd;
  if (moved === 0) return fieldCapacity;
  const held = wiltingPoint + Math.max(leastCapacityShare * available, available + moved);
  return Math.min(held, saturation - leastDrainableShare * (saturation - fieldCapacity));
}

/** Field capacity is where drainage has become slow: the conductivity there stays what it was. Ours. */
function movedDrainExponent(
  { fieldCapacity, saturation, drainExponent }: SoilLayer,
  movedFieldCapacity: number,
): number {
  if (movedFieldCapacity === fieldCapacity) return drainExponent;
  return (drainExponent * Math.log(fieldCapacity / saturation)) / Math.log(movedFieldCapacity / saturation);
}

/** Pace factor at field capacity, cracks included, 0 to 1. */
export function passageOf(layer: SoilLayer, lenience: number, openness = 0): number {
  return passageWith(openShareAt(layer.openShare, openness), hindranceAt(layer.hindrance, lenience));
}

/** Roots in cracks keep their pace, the others what density or a reading leaves of it. */
export function passageWith(openShare: number, hindrance: number): number {
  return openShare + (1 - openShare) * hindrance;
}

/** Between the low (-1), the middle (0) and the high (1) open share, straight; held at the ends. */
export function openShareAt({ low, middle, high }: ShareRange, openness: number): number {
  const place = Math.min(1, Math.max(-1, openness));
  return place < 0 ? middle - place * (low - middle) : middle + place * (high - middle);
}

/** Between the strict (-1), the usual (0) and the lenient (1) reading, straight; held at the ends. */
export function hindranceAt({ strict, usual, lenient }: Hindrance, lenience: number): number {
  const reading = Math.min(1, Math.max(-1, lenience));
  return reading < 0 ? usual - reading * (strict - usual) : usual + reading * (lenient - usual);
}
