import { refuse } from "../../problem.ts";
import type { Slices, SoilLayer } from "./layer.ts";

/** Water in the soil on the first morning of a run, as the user knows it, resolved. */
export type StartingWater =
  /** The same share of available water everywhere, 0 (wilting point) to 1 (field capacity). */
  | { readonly kind: "share"; readonly share: number }
  /** By layer, in the order of the layers: volume fraction of water. */
  | { readonly kind: "by layer"; readonly volumeFraction: readonly number[] }
  /** Push probe: at field capacity down to `moistDepthMm`, below it at `shareBelow` of available water. */
  | { readonly kind: "moist depth"; readonly moistDepthMm: number; readonly shareBelow: number };

/** One run's draw of the deep water nobody measured; 0 is the start as stated. */
export interface StartDraw {
  /** Added below `deepBelowMm`, as a share of available capacity; negative = drier. */
  readonly deepShift: number;
  readonly deepBelowMm: number;
}

/**
 * Water in each slice on the first morning, mm.
 *
 * Shares and moist depths stay between wilting point and field capacity. Water stated by layer may lie anywhere from half the
 * wilting point (a surface that evaporation dried) to saturation and is held there. The shift moves water towards wilting
 * point or field capacity and no further.
 */
export function startingWaterMm(
  slices: Slices,
  layers: readonly SoilLayer[],
  start: StartingWater,
  draw: StartDraw,
): Float64Array {
  if (start.kind === "by layer" && start.volumeFraction.length < layers.length) {
    refuse(
      "startingWater",
      `water for each of the ${layers.length} layers`,
      start.volumeFraction,
      "give one value a layer, top first",
    );
  }
  const water = new Float64Array(slices.count);
  for (let i = 0; i < slices.count; i++) {
    const wiltingPoint = slices.wiltingPointMm[i]!;
    const fieldCapacity = slices.fieldCapacityMm[i]!;
    const capacity = fieldCapacity - wiltingPoint;
    const topMm = slices.topMm[i]!;
    const thicknessMm = slices.thicknessMm[i]!;
    let stated: number;
    if (start.kind === "by layer") {
      const fraction = start.volumeFraction[slices.layer[i]!] ?? 0;
      stated = clamp(fraction * thicknessMm, 0.5 * wiltingPoint, slices.saturationMm[i]!);
    } else if (start.kind === "share") {
      stated = wiltingPoint + clamp(start.share, 0, 1) * capacity;
    } else {
      const moist = 1 - shareBelow(topMm, thicknessMm, start.moistDepthMm);
      stated = wiltingPoint + (moist + (1 - moist) * clamp(start.shareBelow, 0, 1)) * capacity;
    }
    const shift = draw.deepShift * capacity * shareBelow(topMm, thicknessMm, draw.deepBelowMm);
    water[i] = clamp(stated + shift, Math.min(stated, wiltingPoint), Math.max(stated, fieldCapacity));
  }
  return water;
}

/** Part of a slice that lies below a depth, 0 to 1. */
function shareBelow(topMm: number, thicknessMm: number, depthMm: number): number {
  return clamp((topMm + thicknessMm - depthMm) / thicknessMm, 0, 1);
}

/** Weight percent of water from a moist and an oven-dry (105 C) sample: water over dry soil. */
export function gravimetricPercent(moistMass: number, dryMass: number): number {
  return (100 * (moistMass - dryMass)) / dryMass;
}

/**
 * Water by volume of the whole soil from weight percent.
 *
 * @param gravimetricPercent of the fine earth
 * @param bulkDensityKgPerM3 of the fine earth
 * @param gravelVolumeFraction stones hold none
 * @example volumeFromGravimetric(20, 1200) // 0.24
 * Source: [NSSH 618] section 618.6, read, there for available water.
 */
export function volumeFromGravimetric(
  gravimetricPercent: number,
  bulkDensityKgPerM3: number,
  gravelVolumeFraction = 0,
): number {
  return (gravimetricPercent / 100) * (bulkDensityKgPerM3 / 1000) * (1 - gravelVolumeFraction);
}

/** Volume fraction from the water above wilting point in a layer, mm. */
export function volumeFromAvailableWater(waterMm: number, thicknessMm: number, wiltingPoint: number): number {
  return wiltingPoint + waterMm / thicknessMm;
}

const clamp = (value: number, low: number, high: number): number => Math.min(Math.max(value, low), high);
