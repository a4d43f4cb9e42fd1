import { coverUnderCrop } from "../../../crop/coverUnderCrop.ts";
import type { Ground } from "../../../season/season.ts";
import {
  columnReadilyEvaporableMm,
  columnTotalEvaporableMm,
  secondStageMmPerRootDay,
} from "../../../soil/equations/evaporableWater.ts";
import type { SoilLayer } from "../../../soil/layers/layer.ts";
import { sayQuantity } from "../../../quantity/index.ts";
import type { SurfacePart } from "../../fields/file.ts";
import { byTexture, snowCatchAtFullCover, surfaceFields } from "../../fields/surfaceFields.ts";
import { complain, orDefault, type Notebook } from "../notebook.ts";
import { curveNumbers, isOfCover, type Below } from "./curveNumbers.ts";
import { residueOf, type Standing } from "./residueOf.ts";

/** The surface of one case; undefined where it cannot be, with the problems written down. */
export function resolveGround(
  part: SurfacePart,
  standing: Standing,
  below: Below,
  path: string,
  notebook: Notebook,
): Ground | undefined {
  const field = (key: keyof SurfacePart) => `${path}.${key}`;
  const usual = surfaceFields.shape;
  const cover = part.cover ?? coverUnderCrop(standing.cropName);
  if (!isOfCover(part, cover, path, notebook)) return undefined;
  const residue = residueOf(part, standing, cover, field, notebook);
  const evaporable = evaporableOf(part, below.layers, field, notebook);
  if (evaporable === undefined) return undefined;
  const curves = curveNumbers(
    part,
    standing.cropName,
    below,
    // The crop's table only asks for 5 and 20 %: what lies there on the first day answers for what a fallow leaves.
    { fallow: residue.fallow, crop: residue.crop ?? residue.fallow },
    path,
    notebook,
  );
  tellSnowCatch(part, residue.first, field("snowCatch"), notebook);
  // Field by field: the daily loop is compiled for one layout of this object.
  return {
    curveNumberFallow: curves.curveNumberFallow,
    curveNumberCrop: curves.curveNumberCrop,
    curveNumberBareFallow: curves.curveNumberBareFallow,
    residueCoverFallow: residue.fallow,
    residueCoverCrop: residue.crop,
    residueDecays: residue.decays,
    snowCatchBareShare: part.snowCatch ?? 0,
    snowCatchByCover: part.snowCatch === undefined ? snowCatchAtFullCover : 0,
    snowBelowC: orDefault(notebook, part.snowBelow, usual.snowBelow.byDefault, field("snowBelow")),
    meltMmPerCDay: orDefault(notebook, part.melt, usual.melt.byDefault, field("melt")),
    evaporatingDepthMm: evaporable.depthMm,
    readilyEvaporableMm: evaporable.readilyMm,
    secondStageMmPerRootDay: secondStageMmPerRootDay(below.layers[0]?.clayFraction ?? 0),
  };
}

interface Evaporable {
  readonly depthMm: number;
  readonly readilyMm: number;
}

/** How deep evaporation dries the soil and what leaves freely; undefined where the soil has not that much. */
function evaporableOf(
  part: SurfacePart,
  layers: readonly SoilLayer[],
  field: (key: keyof SurfacePart) => string,
  notebook: Notebook,
): Evaporable | undefined {
  const depthMm = orDefault(
    notebook,
    part.evaporatingDepth,
    surfaceFields.shape.evaporatingDepth.byDefault,
    field("evaporatingDepth"),
  );
  const soilDepthMm = layers.at(-1)?.bottomMm ?? 0;
  if (soilDepthMm < depthMm) {
    const expected = `soil at least as deep as evaporation dries it, ${sayQuantity(depthMm, "depth", "us")}`;
    const found = sayQuantity(soilDepthMm, "depth", "us");
    complain(notebook, "soil.layers", expected, found, "describe the soil deeper");
    return undefined;
  }
  const readilyMm = orDefault(
    notebook,
    part.readilyEvaporable,
    {
      value: columnReadilyEvaporableMm(layers, depthMm),
      kind: "rain",
      why: `${byTexture} (Ritchie et al. 1989, memory)`,
    },
    field("readilyEvaporable"),
  );
  const mostMm = columnTotalEvaporableMm(layers, depthMm);
  if (readilyMm <= mostMm) return { depthMm, readilyMm };
  const expected = `less than all the water that evaporation can take, ${sayQuantity(mostMm, "rain", "us")}`;
  const found = sayQuantity(readilyMm, "rain", "us");
  complain(notebook, field("readilyEvaporable"), expected, found, "leave it out to take it from the texture");
  return undefined;
}

/** Tells what stubble catches on the first day, where nothing is said of it. */
function tellSnowCatch(
  { snowCatch }: SurfacePart,
  firstCover: number,
  path: string,
  notebook: Notebook,
): void {
  const most = sayQuantity(snowCatchAtFullCover, "share", "us");
  orDefault(
    notebook,
    snowCatch,
    {
      value: snowCatchAtFullCover * firstCover,
      kind: "share",
      why: `${most} of the snowfall under full residue, stubble 40 cm tall (Pomeroy et al. 1990, read in part); less in proportion, and as it rots`,
    },
    path,
  );
}
