import type { CropPlace } from "./cropSeason.ts";
import { isSod, sodTo } from "../../crop/crop.ts";
import { sayQuantity } from "../../quantity/index.ts";
import { fallowFields, modelFields, type CasePart, type ScenarioFile } from "../fields/file.ts";
import { soilFields } from "../fields/soilFields.ts";
import { mergeCase } from "./mergeCase.ts";
import type { MergedCase } from "./mergedCase.ts";
import { complain, orDefault, type Notebook } from "./notebook.ts";
import { resolveCrop } from "./resolveCrop.ts";
import { resolveGround } from "./ground/resolveGround.ts";
import { resolveLayers, type BaseLayers } from "./resolveSoil.ts";
import { samplesOf } from "./evidence/soilSamples.ts";
import { resolveStartingWater, type Sampled } from "./resolveStartingWater.ts";
import { type PlaceAndWeather } from "./resolveWeather.ts";
import type { Case, DefaultUsed } from "../scenario.ts";
import { statedDepthMm } from "../statedDepth.ts";

/** One case laid over the base and resolved; undefined where it cannot be, with the problems written down. */
export function resolveCase(
  file: ScenarioFile,
  base: BaseLayers,
  sampled: Sampled | null,
  place: PlaceAndWeather | undefined,
  part: CasePart,
  c: number,
  notebook: Notebook,
): Case | undefined {
  const merged = mergeCase(file, base.layers, base.paths, part, `cases[${c}]`, notebook);
  const own: Notebook = c === 0 ? notebook : { ...notebook, defaults: [] };
  const soil = resolveLayers(merged, base.restrictedAtMm, own);
  const crop = resolveCrop(merged.crop, file.crop, growsAt(place), merged.cropPath, own);
  const startingWater = soil && resolveStartingWater(merged, soil.layers, sampled, own);
  const below = soil && { ...soil, group: merged.soil.hydrologicGroup };
  const standing = {
    cropName: merged.crop.name,
    isSod: crop !== undefined && isSod(crop),
    hasFallow: (merged.fallowLength ?? 0) > 0,
  };
  const ground = below && resolveGround(merged.surface, standing, below, merged.surfacePath, own);
  const sliceThicknessMm = orDefault(
    own,
    merged.soil.sliceThickness,
    soilFields.shape.sliceThickness.byDefault,
    "soil.sliceThickness",
  );
  const fallow = orDefault(own, merged.fallowLength, fallowFields.shape.length.byDefault, "fallow.length");
  const rule = orDefault(own, merged.model.uptake, modelFields.shape.uptake.byDefault, "model.uptake");
  const evaporation = orDefault(
    own,
    merged.model.evaporation,
    modelFields.shape.evaporation.byDefault,
    "model.evaporation",
  );
  if (c > 0) tellOwnDefaults(own.defaults, merged, base.paths, notebook);
  if (soil === undefined || crop === undefined || startingWater === undefined || ground === undefined)
    return undefined;
  const bottomMm = soil.layers.at(-1)?.bottomMm ?? 0;
  const endsOn = soil.restrictedAtMm !== null && soil.restrictedAtMm <= bottomMm ? soil.restrictedBy : null;
  const firstDepth = file.cases?.[0]?.rootingDepth;
  const seedMm = isSod(crop) ? 0 : crop.sowingDepthMm;
  const rooting = rootingOf(merged, firstDepth, seedMm, bottomMm, endsOn, part, notebook);
  const statedMm = statedDepthMm(rooting, firstDepth ?? grown);
  return {
    name: merged.name,
    layers: soil.layers,
    endsOn,
    sliceThicknessMm,
    startingWater,
    ground,
    crop: statedMm !== null && isSod(crop) ? sodTo(statedMm, crop) : crop,
    fallowDays: Math.round(fallow),
    rooting,
    uptake: {
      rule,
      sharePerDay: crop.uptakeSharePerDay,
      denseRootsMm: crop.denseRootsMm,
      halvingMm: crop.uptakeHalvingMm,
      depletionFraction: crop.depletionFraction,
    },
    evaporation,
    samples: samplesOf(merged, soil.layers.length),
  };
}

/** Of a later case's defaults, those that are not the first's as well, each told at the case's own place. */
function tellOwnDefaults(
  defaults: readonly DefaultUsed[],
  merged: MergedCase,
  basePaths: readonly string[],
  notebook: Notebook,
): void {
  const told = new Set(notebook.defaults.map(({ field, value }) => `${field} ${value}`));
  const places = merged.layerPaths.map((here, l) => [`${here}.`, `${basePaths[l]}.`] as const);
  for (const one of defaults) {
    const [here, there] = places.find(([from]) => one.field.startsWith(from)) ?? [`${merged.path}.`, ""];
    const inBase = one.field.startsWith(here) ? there + one.field.slice(here.length) : one.field;
    if (told.has(`${inBase} ${one.value}`)) continue;
    // What follows from a case's own soil is noted at the base's place, where another value stands already.
    const isOfCase = one.field.startsWith(`${merged.path}.`);
    notebook.defaults.push(isOfCase ? one : { ...one, field: `${merged.path}.${one.field}` });
  }
}

const grown = { kind: "grown" } as const;

function rootingOf(
  { name, rootingDepth, path }: MergedCase,
  firstDepth: CasePart["rootingDepth"],
  sowingDepthMm: number,
  bottomMm: number,
  endsOn: Case["endsOn"],
  { soil }: CasePart,
  notebook: Notebook,
): Case["rooting"] {
  if (rootingDepth === undefined) return grown;
  const depthMm = statedDepthMm(rootingDepth, firstDepth ?? grown);
  if (depthMm === null) {
    const hindrances = (soil?.layers ?? []).some(
      (layer) =>
        (layer.bulkDensity ??
          layer.cores ??
          layer.penetrationResistance ??
          layer.origin ??
          layer.openShare) !== undefined,
    );
    if (hindrances) {
      notebook.notes.push(
        `${path} tells its rooting depth against the first case's roots, so its own dense layers let fewer roots through but do not slow them.`,
      );
    }
    return rootingDepth;
  }
  const found =
    sayQuantity(depthMm, "depth", "us") +
    (rootingDepth.kind === "absolute" ? "" : ", told against the depth of the first case");
  if (depthMm <= sowingDepthMm) {
    complain(
      notebook,
      `${path}.rootingDepth`,
      `a depth below the seed of "${name}", ${sayQuantity(sowingDepthMm, "depth", "us")}`,
      found,
      "give a depth that leaves it roots",
    );
  }
  if (depthMm > bottomMm + 0.1) {
    complain(
      notebook,
      `${path}.rootingDepth`,
      endsOn !== null
        ? `a depth above the ${endsOn} that soil.restriction states, ${sayQuantity(bottomMm, "depth", "us")}`
        : `a depth within the soil described, ${sayQuantity(bottomMm, "depth", "us")}`,
      found,
      endsOn !== null
        ? "roots end there: give a smaller depth, or mend soil.restriction"
        : "describe the soil deeper, or give a smaller depth",
    );
  }
  return rootingDepth;
}

/** The place of a crop, as its calendar takes it. */
export function growsAt(place: PlaceAndWeather | undefined): CropPlace {
  return { normals: place?.normals ?? null, latitudeDeg: place?.site.latitudeDeg ?? null };
}
