import {
  readingUse,
  readingsByLayer,
  stretchesAbove,
  type PenetrometerReading,
  type StretchAbove,
} from "../../../evidence/samples/penetrometer.ts";
import {
  coreDensityKgPerM3,
  cylinderCm3,
  meanOfCores,
  stoneVolumeFraction,
  type SoilCore,
} from "../../../evidence/samples/soilCores.ts";
import { sayBoth } from "../../../quantity/index.ts";
import type { LayerPart, SoilPart } from "../../fields/file.ts";
import type { MergedCase } from "../mergedCase.ts";
import { complain, type Notebook } from "../notebook.ts";

/** What was sampled in the soil of a case: cores by layer and the penetrometer log, as plain values. */
export interface SoilSamples {
  /** As many as the case has layers; empty where a layer was not cored. */
  readonly coresByLayer: readonly (readonly SoilCore[])[];
  readonly log: PenetrometerLog | null;
}

export interface PenetrometerLog {
  readonly readings: readonly PenetrometerReading[];
  /** Share of the available water when it was pushed; null = not stated, taken as near field capacity. */
  readonly wetnessShare: number | null;
  readonly above: readonly StretchAbove[];
}

type LogPart = NonNullable<SoilPart["penetrometer"]>;

/** @param layers how many of the case's layers there are, those above a rock */
export function samplesOf({ soil }: MergedCase, layers: number): SoilSamples {
  const { penetrometer } = soil;
  const readings = penetrometer === undefined ? [] : readingsOf(penetrometer);
  return {
    coresByLayer: (soil.layers ?? []).slice(0, layers).map(coresOf),
    log:
      penetrometer === undefined
        ? null
        : { readings, wetnessShare: penetrometer.wetness ?? null, above: stretchesAbove(readings) },
  };
}

export function coresOf({ cores = [] }: LayerPart): SoilCore[] {
  return cores.map(({ wetMass, dryMass, volume, diameter, length, stoneMass }) => ({
    wetMassG: wetMass ?? null,
    dryMassG: dryMass,
    volumeCm3:
      volume ?? (diameter === undefined || length === undefined ? null : cylinderCm3(diameter, length)),
    stoneMassG: stoneMass ?? 0,
  }));
}

/**
 * A layer with what its samples tell put where nothing is typed: density and stones from cores; a reading in dry soil is
 * taken out, so that density decides. What is done is noted.
 *
 * @param coresPath where the layer's cores stand
 */
export function withSamples(part: LayerPart, coresPath: string, notebook: Notebook): LayerPart {
  return withoutDryReading(withCores(part, coresPath, notebook), notebook);
}

const lightest = 500;
const heaviest = 2200;

function withCores(part: LayerPart, path: string, notebook: Notebook): LayerPart {
  const cores = coresOf(part);
  cores.forEach((core, c) => {
    if (core.volumeCm3 === null) return;
    const density = coreDensityKgPerM3(core);
    if (density !== null && density >= lightest && density <= heaviest) return;
    complain(
      notebook,
      `${path}[${c}]`,
      "a core of 0.5 to 2.2 g/cm^3, dry and without its stones",
      density === null ? "stones that fill the core" : sayBoth(density, "density"),
      "check its weights and its volume",
    );
  });
  const density = meanOfCores(cores, coreDensityKgPerM3);
  if (density === null || part.bulkDensity !== undefined) return part;
  const told = cores.filter(({ volumeCm3 }) => volumeCm3 !== null).length;
  const cored = told === 1 ? "one core" : `${told} cores`;
  const stones = meanOfCores(cores, stoneVolumeFraction) ?? 0;
  const givesStones =
    stones > 0 && part.gravelVolume === undefined && part.gravelMass === undefined && stones <= 0.9;
  notebook.notes.push(
    `${part.name}: bulk density ${sayBoth(density, "density")}${givesStones ? ` and stones of ${sayBoth(stones, "share")} by volume` : ""} from ${cored}.`,
  );
  return { ...part, bulkDensity: density, ...(givesStones ? { gravelVolume: stones } : {}) };
}

function withoutDryReading(part: LayerPart, notebook: Notebook): LayerPart {
  const { name, penetrationResistance: reading, penetrationWetness: share, bulkDensity } = part;
  if (reading === undefined) {
    if (share !== undefined)
      notebook.notes.push(
        `${name}: penetrationWetness counts only beside a penetrometer reading; none is given.`,
      );
    return part;
  }
  if (share === undefined) return part;
  const use = readingUse(share);
  if (use === "as read") return part;
  const said = `${name}: the penetrometer read ${sayBoth(reading, "resistance")} in soil that held about ${sayBoth(share, "share")} of its available water`;
  if (use === "with a warning") {
    notebook.notes.push(
      `${said}. Readings rise as soil dries, so it may overstate what holds roots back; push again a day or two after a soaking.`,
    );
    return part;
  }
  notebook.notes.push(
    `${said}: too dry to tell a dense layer from a dry one, so the reading is not used. ${
      bulkDensity === undefined
        ? "No density is given either, so nothing is taken to hold roots back there"
        : "Its bulk density decides"
    }; push again a day or two after a soaking.`,
  );
  const { penetrationResistance: _, penetrationWetness: __, structure: ___, ...rest } = part;
  return rest;
}

function readingsOf({ readings }: LogPart): PenetrometerReading[] {
  return readings.map(({ depth, resistance }) => ({ depthMm: depth, resistanceMPa: resistance }));
}

/**
 * Layers with the means of a log where they lie. A layer that has a reading keeps it unless `over` says that the log is the
 * case's own and the reading is not.
 */
export function withLog(
  layers: readonly LayerPart[],
  log: LogPart | undefined,
  over: (layer: LayerPart, index: number) => boolean,
  notebook: Notebook,
): LayerPart[] {
  if (log === undefined) return [...layers];
  const edges = edgesOf(layers);
  const readings = readingsOf(log);
  return readingsByLayer(readings, edges).map(({ meanMPa, readings: count }, l) => {
    const layer = layers[l]!;
    if (meanMPa === null || !over(layer, l)) return layer;
    notebook.notes.push(
      `${layer.name}: penetrometer ${sayBoth(meanMPa, "resistance")}, ${count === 1 ? "one reading" : `the mean of ${count} readings`} of the log.`,
    );
    const { penetrationWetness: _, ...rest } = layer;
    return {
      ...rest,
      penetrationResistance: meanMPa,
      ...(log.wetness === undefined ? {} : { penetrationWetness: log.wetness }),
    };
  });
}

/** Upper and lower edges; a layer that tells neither ends where it begins, and is told of elsewhere. */
function edgesOf(layers: readonly LayerPart[]): { topMm: number; bottomMm: number }[] {
  let topMm = 0;
  return layers.map(({ thickness, bottom }) => {
    const bottomMm = bottom ?? topMm + (thickness ?? 0);
    const edges = { topMm, bottomMm };
    topMm = bottomMm;
    return edges;
  });
}
