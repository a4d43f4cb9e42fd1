import type { SoilLayer } from "../../soil/layers/layer.ts";
import { volumeFromGravimetric } from "../../soil/layers/startingWater.ts";
import {
  coreDensityKgPerM3,
  coreGravimetricPercent,
  coreVolumeFraction,
  stoneVolumeFraction,
  type SoilCore,
} from "./soilCores.ts";
import { meanInterval } from "../../statistics/meanInterval.ts";
import { spreadOf } from "../../statistics/spread.ts";

/** What the cores of a soil tell, layer by layer: density, water by weight and volume, depth of water. */

/** Of the values of several cores. */
export interface CoreMean {
  readonly cores: number;
  readonly mean: number;
  /** Null for a single core. */
  readonly sd: number | null;
  /** Of the mean, cut off at nothing; null for a single core, or where all are alike. */
  readonly interval: { readonly low: number; readonly high: number } | null;
}

export interface LayerSampled {
  readonly name: string;
  readonly topMm: number;
  readonly bottomMm: number;
  readonly cores: number;
  /** Of the fine earth. */
  readonly densityKgPerM3: CoreMean | null;
  readonly gravimetricPercent: CoreMean | null;
  /** Of the whole soil, stones included. */
  readonly volumeFraction: CoreMean | null;
  readonly stoneVolumeFraction: CoreMean | null;
  /** All water in the layer. */
  readonly storedMm: CoreMean | null;
  /** Water above wilting point in the layer; below it a core counts as none. */
  readonly availableMm: CoreMean | null;
}

export interface SoilSampled {
  readonly layers: readonly LayerSampled[];
  /** Sums of the layer means, over `waterOverMm` of soil. */
  readonly storedMm: number;
  readonly availableMm: number;
  /** How much of the column was sampled for water, mm. */
  readonly waterOverMm: number;
}

/**
 * Cores of each layer, summed up; layers without cores are left out.
 *
 * A core of no known volume tells water by weight; its water by volume is that at the density and with the stones of the layer.
 *
 * @param coresByLayer as long as `layers`
 * @param confidence of the intervals, above 0 and below 1
 */
export function soilSampled(
  layers: readonly SoilLayer[],
  coresByLayer: readonly (readonly SoilCore[])[],
  confidence: number,
): SoilSampled {
  const sampled = layers.flatMap((layer, l): LayerSampled[] => {
    const cores = coresByLayer[l] ?? [];
    if (cores.length === 0) return [];
    const { name, topMm, bottomMm } = layer;
    const thicknessMm = bottomMm - topMm;
    const mean = (tells: (core: SoilCore) => number | null) =>
      coreMean(
        cores.flatMap((core) => tells(core) ?? []),
        confidence,
      );
    const scaled = (tells: (volume: number) => number) =>
      mean((core) => {
        const volume = coreVolumeIn(core, layer);
        return volume === null ? null : tells(volume) * thicknessMm;
      });
    return [
      {
        name,
        topMm,
        bottomMm,
        cores: cores.length,
        densityKgPerM3: mean(coreDensityKgPerM3),
        gravimetricPercent: mean(coreGravimetricPercent),
        volumeFraction: mean((core) => coreVolumeIn(core, layer)),
        stoneVolumeFraction: mean(stoneVolumeFraction),
        storedMm: scaled((volume) => volume),
        availableMm: scaled((volume) => Math.max(0, volume - layer.wiltingPoint)),
      },
    ];
  });
  const wet = sampled.filter(({ storedMm }) => storedMm !== null);
  const sum = (of: (layer: LayerSampled) => number) => wet.reduce((total, layer) => total + of(layer), 0);
  return {
    layers: sampled,
    storedMm: sum(({ storedMm }) => storedMm!.mean),
    availableMm: sum(({ availableMm }) => availableMm!.mean),
    waterOverMm: sum(({ topMm, bottomMm }) => bottomMm - topMm),
  };
}

/** Water by volume that a core tells of a layer, 0 to 1; null where it was not weighed wet. */
export function coreVolumeIn(core: SoilCore, layer: SoilLayer): number | null {
  const direct = coreVolumeFraction(core);
  if (direct !== null) return direct;
  const weightPercent = coreGravimetricPercent(core);
  if (weightPercent === null) return null;
  return volumeFromGravimetric(weightPercent, layer.bulkDensityKgPerM3, layer.gravelVolumeFraction);
}

function coreMean(values: readonly number[], confidence: number): CoreMean | null {
  const { n, mean, sd } = spreadOf(values);
  if (mean === null) return null;
  const { interval } = meanInterval(values, confidence);
  // Few cores make wide intervals, but no soil holds less than nothing.
  const cut = interval && { low: Math.max(0, interval.low), high: interval.high };
  return { cores: n, mean, sd, interval: cut };
}
