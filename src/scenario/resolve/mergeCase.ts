import { lookUp } from "../../lookUp.ts";
import { alternatives, coredLayerOverBase, layerOverBase, type Voids } from "../fields/facts/alternatives.ts";
import type { CasePart, CropPart, LayerPart, LayerPatch, ScenarioFile } from "../fields/file.ts";
import { nearestName } from "../../nearestName.ts";
import type { MergedCase } from "./mergedCase.ts";
import { complain, type Notebook } from "./notebook.ts";
import { withLog } from "./evidence/soilSamples.ts";

/**
 * A case laid over the rest of the file. Layers are matched by name; starting water is replaced as a whole; a case without
 * any cases in the file is the file itself.
 *
 * @param layers the base's layers, from the file or from its horizons
 */
export function mergeCase(
  file: ScenarioFile,
  layers: readonly LayerPart[],
  layerPaths: readonly string[],
  part: CasePart,
  path: string,
  notebook: Notebook,
): MergedCase {
  const { soil: patch, surface, crop, fallow, model } = part;
  const read = withLog(
    layers,
    file.soil.penetrometer,
    ({ penetrationResistance }) => penetrationResistance === undefined,
    notebook,
  );
  const patched = mergeLayers(read, layerPaths, patch?.layers ?? [], `${path}.soil.layers`, notebook);
  const typed = new Set(
    (patch?.layers ?? []).flatMap((one) => (one.penetrationResistance === undefined ? [] : one.name)),
  );
  const merged = withLog(patched.layers, patch?.penetrometer, ({ name }) => !typed.has(name), notebook);
  const ownStart = patch?.startingWater;
  return {
    name: part.name,
    path,
    soil: {
      ...file.soil,
      ...patch,
      layers: ownStart === undefined ? merged : merged.map((layer) => ({ ...layer, water: undefined })),
      // A case that gives water layer by layer does not keep the base's share as well.
      startingWater: ownStart ?? (patched.hasWater ? undefined : file.soil.startingWater),
    },
    layerPaths: patched.paths,
    coresPlaces: merged.map(({ cores }, l) => {
      const ofCase = cores !== layers[l]?.cores;
      return { path: `${(ofCase ? patched.paths : layerPaths)[l]}.cores`, ofCase };
    }),
    startingWaterPath: ownStart === undefined ? "soil.startingWater" : `${path}.soil.startingWater`,
    surface: lay(file.surface ?? {}, surface ?? {}, alternatives.surface),
    surfacePath: surface === undefined ? "surface" : `${path}.surface`,
    crop: lay(file.crop, crop ?? {}, alternatives.crop) as CropPart,
    cropPath: crop === undefined ? "crop" : `${path}.crop`,
    fallowLength: fallow?.length ?? file.fallow?.length,
    model: { ...file.model, ...model },
    rootingDepth: part.rootingDepth,
  };
}

function mergeLayers(
  base: readonly LayerPart[],
  basePaths: readonly string[],
  patches: readonly LayerPatch[],
  path: string,
  notebook: Notebook,
): { layers: LayerPart[]; paths: string[]; hasWater: boolean } {
  const layers = [...base];
  const paths = [...basePaths];
  const names = base.map(({ name }) => name);
  patches.forEach((patch, p) => {
    const here = `${path}[${p}]`;
    const matches = names.filter((name) => name === patch.name);
    if (matches.length === 1) {
      const index = names.indexOf(patch.name);
      layers[index] = lay(
        base[index] ?? patch,
        patch,
        hasDensity(patch) ? coredLayerOverBase : layerOverBase,
      );
      if (
        base[index]?.penetrationResistance !== undefined &&
        layers[index]?.penetrationResistance === undefined
      ) {
        notebook.notes.push(
          `${here}: the penetrometer reading belongs to the base's density; here the density given decides.`,
        );
      }
      if (paths[index] !== basePaths[index])
        complain(
          notebook,
          `${here}.name`,
          "each layer once",
          `"${patch.name}" again`,
          "put its differences together",
        );
      paths[index] = here;
      return;
    }
    const near = nearestName(patch.name, names);
    const list = names.map((name) => `"${name}"`).join(", ");
    if (matches.length > 1)
      complain(
        notebook,
        `${here}.name`,
        "the name of one layer",
        `"${patch.name}", which ${matches.length} layers have`,
        "give the layers different names",
      );
    else
      complain(
        notebook,
        `${here}.name`,
        `a layer of the base soil: ${list}`,
        `"${patch.name}"`,
        near === null ? "use one of these names" : `did you mean "${near}"?`,
      );
  });
  return { layers, paths, hasWater: patches.some(({ water }) => water !== undefined) };
}

/** Whether cores of a case tell its density. */
function hasDensity({ cores = [] }: LayerPatch): boolean {
  return cores.some(({ volume, diameter }) => (volume ?? diameter) !== undefined);
}

/** The patch over the base, without what the patch makes void. */
function lay<T extends object>(base: T, patch: Partial<T>, voids: Voids): T {
  const dropped = new Set(Object.keys(patch).flatMap((key) => lookUp(voids, key) ?? []));
  const kept = Object.fromEntries(Object.entries(base).filter(([key]) => !dropped.has(key)));
  return { ...kept, ...patch } as T;
}
