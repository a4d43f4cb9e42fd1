import { coreVolumeIn } from "../../evidence/samples/soilSampled.ts";
import { meanOfCores } from "../../evidence/samples/soilCores.ts";
import { sayQuantity, tryQuantity } from "../../quantity/index.ts";
import type { SoilLayer } from "../../soil/layers/layer.ts";
import {
  volumeFromAvailableWater,
  volumeFromGravimetric,
  type StartingWater,
} from "../../soil/layers/startingWater.ts";
import type { MergedCase } from "./mergedCase.ts";
import { alternatives, isSaidTwice } from "../fields/facts/alternatives.ts";
import { usualStart } from "../fields/soilFields.ts";
import { complain, orDefault, type Notebook } from "./notebook.ts";
import { coresOf } from "./evidence/soilSamples.ts";

const forms = '"22 % by weight", "27 % by volume", "1.2 in available" or "40 % of available"';

/** The soil that the samples were taken in: the file's own layers, before any case differs. */
export interface Sampled {
  readonly layers: readonly SoilLayer[];
  readonly waters: readonly (string | undefined)[];
}

/**
 * Water in the soil when the run begins; undefined where it cannot be told, with the problems written down.
 *
 * @param sampled null for the file's own soil. A case with another density or more stones keeps the water that was sampled:
 * loosening a pan makes no water vanish
 */
export function resolveStartingWater(
  merged: MergedCase,
  layers: readonly SoilLayer[],
  sampled: Sampled | null,
  notebook: Notebook,
): StartingWater | undefined {
  const { soil, startingWaterPath: path, layerPaths } = merged;
  const start = soil.startingWater;
  const waters = (soil.layers ?? []).slice(0, layers.length).map(({ water }) => water);
  const hasWater = waters.some((water) => water !== undefined);
  if (hasWater && start !== undefined) {
    complain(notebook, path, "starting water here or in the layers", "both", "leave one out");
    return undefined;
  }
  if (hasWater) return waterByLayer(waters, layers, layerPaths, sampled, notebook);
  if (start === undefined) {
    const share = orDefault(notebook, undefined, usualStart, "soil.startingWater.share");
    return { kind: "share", share };
  }
  if (start.from !== undefined) {
    if (!isSaidTwice(start, "from", alternatives.startingWater))
      return fromCores(merged, layers, sampled, notebook);
    complain(notebook, path, "from cores, or share, or moistDepth", "more than one", "leave out the others");
    return undefined;
  }
  const { share, moistDepth, shareBelow } = start;
  if (share !== undefined) {
    if (!isSaidTwice(start, "share", alternatives.startingWater)) return { kind: "share", share };
    complain(notebook, path, "share, or moistDepth and shareBelow", "all of them", "leave out one way");
    return undefined;
  }
  if (moistDepth !== undefined && shareBelow !== undefined) {
    refuseBelowSoil(moistDepth, layers, `${path}.moistDepth`, notebook);
    return { kind: "moist depth", moistDepthMm: moistDepth, shareBelow };
  }
  if (moistDepth === undefined && shareBelow === undefined)
    complain(
      notebook,
      path,
      "share, or moistDepth and shareBelow",
      "none of them",
      'write { "share": "50 %" } or leave startingWater out',
    );
  else {
    const lacking = moistDepth === undefined ? "moistDepth" : "shareBelow";
    complain(
      notebook,
      `${path}.${lacking}`,
      "moistDepth and shareBelow together",
      undefined,
      lacking === "shareBelow"
        ? "say how moist the soil is below the probe's depth"
        : "say how deep the probe went",
    );
  }
  return undefined;
}

/** A probe goes no deeper than the soil: water below its end would be lost without a word. */
export function refuseBelowSoil(
  moistDepthMm: number,
  layers: readonly SoilLayer[],
  field: string,
  notebook: Notebook,
): void {
  const endMm = layers.at(-1)?.bottomMm ?? 0;
  if (moistDepthMm <= endMm + 1) return;
  complain(
    notebook,
    field,
    `a depth within the soil, which ends at ${sayQuantity(endMm, "depth", "us")}`,
    sayQuantity(moistDepthMm, "depth", "us"),
    "give the depth at which the probe stopped, or describe the soil deeper",
  );
}

/** Water told layer by layer; undefined where a layer lacks it or its text cannot be read, with the problems written down. */
export function waterByLayer(
  waters: readonly (string | undefined)[],
  layers: readonly SoilLayer[],
  paths: readonly string[],
  sampled: Sampled | null,
  notebook: Notebook,
): StartingWater | undefined {
  const before = notebook.problems.length;
  const volumeFraction = layers.map((layer, l) => {
    const field = `${paths[l]}.water`;
    const water = waters[l];
    if (water === undefined) {
      complain(
        notebook,
        field,
        `water in every layer, such as ${forms}`,
        undefined,
        "give it, or take water out of the other layers",
      );
      return 0;
    }
    const sample = sampled?.layers[l];
    if (sample !== undefined && sampled?.waters[l] === water && differsFrom(layer, sample)) {
      const kept = /of available$/i.test(water.trim()) ? undefined : volumeOf(water, sample);
      if (kept !== undefined) return heldBy(layer, kept);
    }
    const volume = volumeOf(water, layer);
    if (volume === undefined) {
      complain(
        notebook,
        field,
        `water as ${forms}`,
        `"${water}"`,
        "say by weight, by volume, available or of available",
      );
      return 0;
    }
    refuseImpossible(volume, layer, field, `"${water}"`, notebook);
    return volume;
  });
  return notebook.problems.length === before ? { kind: "by layer", volumeFraction } : undefined;
}

function refuseImpossible(
  volume: number,
  { wiltingPoint, saturation }: SoilLayer,
  field: string,
  found: string,
  notebook: Notebook,
): void {
  if (volume <= saturation + 1e-9 && volume >= 0.5 * wiltingPoint - 1e-9) return;
  const percent = (fraction: number) => sayQuantity(fraction, "share", "us");
  complain(
    notebook,
    field,
    `${percent(0.5 * wiltingPoint)} to ${percent(saturation)} by volume, half of wilting point to saturation`,
    `${found}, which is ${percent(volume)} by volume`,
    "check the sample, and the layer's density and texture",
  );
}

/** The mean of each layer's cores; layers below the deepest weighed core get `shareBelow` of their available water. */
function fromCores(
  { soil, startingWaterPath, coresPlaces }: MergedCase,
  layers: readonly SoilLayer[],
  sampled: Sampled | null,
  notebook: Notebook,
): StartingWater | undefined {
  const before = notebook.problems.length;
  const { shareBelow } = soil.startingWater ?? {};
  const told = layers.map((layer, l) => {
    const { path, ofCase } = coresPlaces[l]!;
    // Cores of the file's own soil keep its density where the case has another.
    const sample = ofCase ? layer : (sampled?.layers[l] ?? layer);
    const cores = coresOf(soil.layers?.[l] ?? { name: layer.name });
    const volume = meanOfCores(cores, (core) => coreVolumeIn(core, sample));
    if (volume === null) return null;
    if (sample !== layer && differsFrom(layer, sample)) return heldBy(layer, volume);
    refuseImpossible(volume, layer, path, cores.length === 1 ? "a core" : `${cores.length} cores`, notebook);
    return volume;
  });
  const deepest = told.findLastIndex((volume) => volume !== null);
  if (deepest < 0) {
    complain(
      notebook,
      `${startingWaterPath}.from`,
      "cores with their wet weight in the layers",
      "none",
      "give the layers their cores, or say the starting water another way",
    );
    return undefined;
  }
  if (deepest + 1 < layers.length && shareBelow === undefined)
    complain(
      notebook,
      `${startingWaterPath}.shareBelow`,
      `the share of the available water below the deepest core, which is in "${layers[deepest]!.name}"`,
      undefined,
      "say how moist the soil is there",
    );
  const volumeFraction = layers.map((layer, l) => {
    const volume = told[l] ?? null;
    if (volume !== null) return volume;
    if (l > deepest)
      return layer.wiltingPoint + (shareBelow ?? 0) * (layer.fieldCapacity - layer.wiltingPoint);
    complain(
      notebook,
      coresPlaces[l]!.path,
      "a core with its wet weight in every layer down to the deepest cored one",
      undefined,
      "give one, or leave out startingWater.from",
    );
    return 0;
  });
  return notebook.problems.length === before ? { kind: "by layer", volumeFraction } : undefined;
}

/** Whether a case changes what turns a sample into water by volume, or how much the layer can hold. */
function differsFrom(layer: SoilLayer, sample: SoilLayer): boolean {
  return (
    layer.bulkDensityKgPerM3 !== sample.bulkDensityKgPerM3 ||
    layer.gravelVolumeFraction !== sample.gravelVolumeFraction ||
    layer.wiltingPoint !== sample.wiltingPoint
  );
}

/** What was sampled, as far as the layer of a case can hold it: half of wilting point to saturation. */
function heldBy({ wiltingPoint, saturation }: SoilLayer, volumeFraction: number): number {
  return Math.min(saturation, Math.max(0.5 * wiltingPoint, volumeFraction));
}

/** Volume fraction of water meant by a text; undefined where it is none of the forms. */
function volumeOf(text: string, layer: SoilLayer): number | undefined {
  const plain = text.trim();
  const match = /\s(by weight|by volume|of available|available)$/i.exec(plain);
  if (match === null) return undefined;
  const amount = plain.slice(0, match.index).trimEnd();
  const form = match[1]!.toLowerCase();
  const { wiltingPoint, fieldCapacity, bottomMm, topMm } = layer;
  if (form === "available") {
    const mm = tryQuantity(amount, "rain");
    return typeof mm === "number" ? volumeFromAvailableWater(mm, bottomMm - topMm, wiltingPoint) : undefined;
  }
  const share = tryQuantity(amount, "share");
  if (typeof share !== "number") return undefined;
  if (form === "by volume") return share;
  if (form === "of available") return wiltingPoint + share * (fieldCapacity - wiltingPoint);
  return volumeFromGravimetric(share * 100, layer.bulkDensityKgPerM3, layer.gravelVolumeFraction);
}
