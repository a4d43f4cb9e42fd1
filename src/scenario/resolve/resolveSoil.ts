import { sayBoth, sayQuantity } from "../../quantity/index.ts";
import { restrictAt, type RestrictionKind } from "../../soil/layers/column.ts";
import { readHorizons } from "../../soil/horizons/horizons.ts";
import type { SoilLayer } from "../../soil/layers/layer.ts";
import type { LayerDescription } from "../../soil/layers/layerDescription.ts";
import { originOfHorizon } from "../../soil/layers/layerOrigin.ts";
import { resolveLayer } from "../../soil/layers/resolveLayer.ts";
import type { LayerPart, ScenarioFile } from "../fields/file.ts";
import type { MergedCase } from "./mergedCase.ts";
import { attempt, complain, type Notebook } from "./notebook.ts";
import type { DefaultUsed } from "../scenario.ts";
import { deepestSoilSaid } from "../fields/facts/limits.ts";
import { deepestSoil } from "../../soil/layers/soilLimits.ts";
import { withSamples } from "./evidence/soilSamples.ts";
import type { ReadText } from "../read/readText.ts";

/** Layers as the file or its horizons describe them, before any case. */
export interface BaseLayers {
  readonly layers: readonly LayerPart[];
  readonly paths: readonly string[];
  /** Rock that the horizons show, mm. */
  readonly restrictedAtMm: number | null;
}

export function readBaseLayers(
  { soil }: ScenarioFile,
  readText: ReadText,
  notebook: Notebook,
): BaseLayers | undefined {
  const { layers, horizons } = soil;
  if ((layers === undefined) === (horizons === undefined)) {
    complain(
      notebook,
      "soil",
      "either layers or horizons",
      layers === undefined ? "neither" : "both",
      "describe the layers, or name a file of horizons",
    );
    return undefined;
  }
  if (layers !== undefined) {
    layers.forEach(({ name }, l) => {
      const before = layers.findIndex((other) => other.name === name);
      if (before < l)
        complain(
          notebook,
          `soil.layers[${l}].name`,
          "a name of its own for each layer",
          `"${name}" again`,
          "give the layers different names",
        );
    });
    return { layers, paths: layers.map((_, l) => `soil.layers[${l}]`), restrictedAtMm: null };
  }
  const { file = "", component, pedon } = horizons ?? {};
  if (component !== undefined && pedon !== undefined) {
    complain(notebook, "soil.horizons.pedon", "a component or a pedon", "both", "leave one out");
    return undefined;
  }
  return attempt(notebook, () => {
    const reading = readHorizons(readText(file, "soil.horizons.file"), file, { component, pedon });
    notebook.notes.push(`Soil layers are those of ${reading.name} in ${file}.`, ...reading.notes);
    notebook.doubts.push(...reading.doubts);
    return {
      layers: reading.layers.map(asPart),
      paths: reading.layers.map(({ name }) => `soil.horizons.${name}`),
      restrictedAtMm: reading.restrictedAtMm,
    };
  });
}

/** The layers of one case, cut off where rock begins; undefined where they cannot be, with the problems written down. */
export function resolveLayers(
  { soil, layerPaths, coresPlaces, path }: MergedCase,
  rockAtMm: number | null,
  notebook: Notebook,
):
  | { layers: readonly SoilLayer[]; restrictedAtMm: number | null; restrictedBy: RestrictionKind }
  | undefined {
  const layers: SoilLayer[] = [];
  let topMm = 0;
  let sound = true;
  (soil.layers ?? []).forEach((written, l) => {
    const here = layerPaths[l] ?? path;
    const before = notebook.problems.length;
    const part = withSamples(written, coresPlaces[l]?.path ?? here, notebook);
    if (notebook.problems.length > before) sound = false;
    const bottomMm = bottomOf(part, topMm, here, notebook);
    if (bottomMm === undefined) return void (sound = false);
    const read = attempt(notebook, () => resolveLayer(asDescription(part, topMm, bottomMm), here));
    topMm = bottomMm;
    if (read === undefined) return void (sound = false);
    layers.push(read.layer);
    notebook.defaults.push(...read.defaults, ...estimates(part, read.layer, here));
    notebook.notes.push(...read.notes);
  });
  if (!sound) return undefined;
  const restrictedAtMm = soil.restriction?.depth ?? rockAtMm;
  const restrictedBy = soil.restriction?.kind ?? "rock";
  if (restrictedAtMm === null) return { layers, restrictedAtMm, restrictedBy };
  const cut = restrictAt(layers, restrictedAtMm, "soil.restriction.depth", restrictedBy);
  if (cut.note !== null) notebook.notes.push(cut.note);
  return { layers: cut.layers, restrictedAtMm, restrictedBy };
}

/** What of the water limits is estimated; a stated available water tells one of the two that belong to it. */
function estimates(part: LayerPart, layer: SoilLayer, path: string): DefaultUsed[] {
  const why = "from texture, organic matter and density (Saxton & Rawls 2006)";
  const told = (["fieldCapacity", "wiltingPoint", "saturation"] as const)
    .filter((key) => part[key] === undefined)
    .map((key) => ({ field: `${path}.${key}`, value: sayBoth(layer[key], "share"), why }));
  if (part.saturatedConductivity !== undefined) return told;
  const value = sayBoth(layer.saturatedConductivityMmPerDay, "conductivity");
  return [...told, { field: `${path}.saturatedConductivity`, value, why }];
}

function bottomOf(
  { thickness, bottom }: LayerPart,
  topMm: number,
  path: string,
  notebook: Notebook,
): number | undefined {
  if (thickness === undefined && bottom === undefined) {
    complain(
      notebook,
      `${path}.thickness`,
      'the layer\'s thickness such as "6 in", or its bottom',
      undefined,
      "give one of the two",
    );
    return undefined;
  }
  if (bottom !== undefined && bottom <= topMm) {
    complain(
      notebook,
      `${path}.bottom`,
      `a depth below the layer's top, ${sayQuantity(topMm, "depth", "us")}`,
      sayQuantity(bottom, "depth", "us"),
      "depths are measured downward from the surface, top layer first",
    );
    return undefined;
  }
  if (thickness !== undefined && bottom !== undefined && Math.abs(topMm + thickness - bottom) > 1) {
    complain(
      notebook,
      `${path}.bottom`,
      `the layer's top and thickness together, ${sayQuantity(topMm + thickness, "depth", "us")}`,
      sayQuantity(bottom, "depth", "us"),
      "leave one of the two out",
    );
    return undefined;
  }
  const bottomMm = bottom ?? topMm + (thickness ?? 0);
  if (bottomMm <= deepestSoil.mm + 0.1) return bottomMm;
  complain(
    notebook,
    `${path}.thickness`,
    `layers of at most ${deepestSoilSaid} together`,
    sayQuantity(bottomMm, "depth", "us"),
    "leave out what roots never reach",
  );
  return undefined;
}

function asDescription(part: LayerPart, topMm: number, bottomMm: number): LayerDescription {
  return {
    name: part.name,
    topMm,
    bottomMm,
    texture: part.texture,
    sandFraction: part.sand,
    clayFraction: part.clay,
    organicMatterPercent: part.organicMatter === undefined ? undefined : part.organicMatter * 100,
    bulkDensityKgPerM3: part.bulkDensity,
    gravelVolumeFraction: part.gravelVolume,
    gravelMassFraction: part.gravelMass,
    fieldCapacity: part.fieldCapacity,
    wiltingPoint: part.wiltingPoint,
    availableWater: part.availableWater,
    saturation: part.saturation,
    saturatedConductivityMmPerDay: part.saturatedConductivity,
    penetrationResistanceMPa: part.penetrationResistance,
    structure: part.structure,
    origin: part.origin,
    openShare: part.openShare,
  };
}

function asPart(layer: LayerDescription): LayerPart {
  return {
    name: layer.name,
    bottom: layer.bottomMm,
    texture: layer.texture,
    sand: layer.sandFraction,
    clay: layer.clayFraction,
    organicMatter: layer.organicMatterPercent === undefined ? undefined : layer.organicMatterPercent / 100,
    bulkDensity: layer.bulkDensityKgPerM3,
    gravelVolume: layer.gravelVolumeFraction,
    gravelMass: layer.gravelMassFraction,
    fieldCapacity: layer.fieldCapacity,
    wiltingPoint: layer.wiltingPoint,
    availableWater: layer.availableWater,
    saturation: layer.saturation,
    saturatedConductivity: layer.saturatedConductivityMmPerDay,
    penetrationResistance: layer.penetrationResistanceMPa,
    structure: layer.structure,
    origin: layer.origin ?? originOfHorizon(layer.name),
    openShare: layer.openShare,
  };
}
