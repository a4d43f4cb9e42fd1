import {
  curveNumberFor,
  fallowCurveNumber,
  type GroundCover,
  type HydrologicGroup,
} from "../../season/curveNumber.ts";
import type { Ground } from "../../season/season.ts";
import {
  columnReadilyEvaporableMm,
  secondStageMmPerRootDay,
  totalEvaporableMm,
} from "../../soil/equations/evaporableWater.ts";
import { hydrologicGroup } from "../../soil/equations/hydrologicGroup.ts";
import type { SoilLayer } from "../../soil/layers/layer.ts";
import { sayQuantity } from "../../quantity/index.ts";
import type { SurfacePart } from "../fields/file.ts";
import { bareGround, byTexture, snowCatchAtFullCover, surfaceFields } from "../fields/surfaceFields.ts";
import { complain, orDefault, type Notebook } from "./notebook.ts";

/** Residue below this leaves the handbook's residue rows out; from the second on its condition is good. TR-55 Table 2-2b (read). */
const residueCounts = 0.05;
const residueGood = 0.2;

interface Below {
  readonly layers: readonly SoilLayer[];
  readonly restrictedAtMm: number | null;
  readonly group: HydrologicGroup | undefined;
}

/** The surface of one case; undefined where it cannot be, with the problems written down. */
export function resolveGround(
  part: SurfacePart,
  cropName: string,
  below: Below,
  path: string,
  notebook: Notebook,
): Ground | undefined {
  const field = (key: keyof SurfacePart) => `${path}.${key}`;
  const { residueCover } = part;
  const usual = surfaceFields.shape;
  const residueCoverFallow = orDefault(
    notebook,
    part.residueCoverFallow ?? residueCover,
    bareGround,
    field("residueCoverFallow"),
  );
  const residueCoverCrop = orDefault(
    notebook,
    part.residueCoverCrop ?? residueCover,
    bareGround,
    field("residueCoverCrop"),
  );
  const evaporatingDepthMm = orDefault(
    notebook,
    part.evaporatingDepth,
    usual.evaporatingDepth.byDefault,
    field("evaporatingDepth"),
  );
  const { layers } = below;
  const soilDepthMm = layers.at(-1)?.bottomMm ?? 0;
  if (soilDepthMm < evaporatingDepthMm) {
    complain(
      notebook,
      "soil.layers",
      `soil at least as deep as evaporation dries it, ${sayQuantity(evaporatingDepthMm, "depth", "us")}`,
      sayQuantity(soilDepthMm, "depth", "us"),
      "describe the soil deeper",
    );
    return undefined;
  }
  const readilyEvaporableMm = orDefault(
    notebook,
    part.readilyEvaporable,
    {
      value: columnReadilyEvaporableMm(layers, evaporatingDepthMm),
      kind: "rain",
      why: `${byTexture} (Ritchie et al. 1989, memory)`,
    },
    field("readilyEvaporable"),
  );
  const [top] = layers;
  const mostMm =
    top === undefined ? 0 : totalEvaporableMm(top.fieldCapacity, top.wiltingPoint, evaporatingDepthMm);
  if (part.readilyEvaporable !== undefined && readilyEvaporableMm > mostMm) {
    complain(
      notebook,
      field("readilyEvaporable"),
      `less than all the water that evaporation can take, ${sayQuantity(mostMm, "rain", "us")}`,
      sayQuantity(readilyEvaporableMm, "rain", "us"),
      "leave it out to take it from the texture",
    );
    return undefined;
  }
  const curves = curveNumbers(
    part,
    cropName,
    below,
    { fallow: residueCoverFallow, crop: residueCoverCrop },
    path,
    notebook,
  );
  // Field by field: the daily loop is compiled for one layout of this object.
  return {
    curveNumberFallow: curves.curveNumberFallow,
    curveNumberCrop: curves.curveNumberCrop,
    residueCoverFallow,
    residueCoverCrop,
    snowCatchShare: orDefault(
      notebook,
      part.snowCatch,
      {
        value: snowCatchAtFullCover * residueCoverFallow,
        kind: "share",
        why: `${sayQuantity(snowCatchAtFullCover, "share", "us")} of the snowfall under full residue, stubble 40 cm tall (Pomeroy et al. 1990, read in part); less in proportion`,
      },
      field("snowCatch"),
    ),
    snowBelowC: orDefault(notebook, part.snowBelow, usual.snowBelow.byDefault, field("snowBelow")),
    meltMmPerCDay: orDefault(notebook, part.melt, usual.melt.byDefault, field("melt")),
    evaporatingDepthMm,
    readilyEvaporableMm,
    secondStageMmPerRootDay: secondStageMmPerRootDay(top?.clayFraction ?? 0),
  };
}

function curveNumbers(
  part: SurfacePart,
  cropName: string,
  { layers, restrictedAtMm, group }: Below,
  residue: { fallow: number; crop: number },
  path: string,
  notebook: Notebook,
): Pick<Ground, "curveNumberFallow" | "curveNumberCrop"> {
  const fallowGiven = part.curveNumberFallow ?? part.curveNumber;
  const cropGiven = part.curveNumberCrop ?? part.curveNumber;
  if (fallowGiven !== undefined && cropGiven !== undefined)
    return { curveNumberFallow: fallowGiven, curveNumberCrop: cropGiven };

  const found = group === undefined ? hydrologicGroup(layers, restrictedAtMm) : { group, why: "stated" };
  if (group === undefined)
    notebook.defaults.push({ field: "soil.hydrologicGroup", value: found.group, why: found.why });
  const cover = orDefault(
    notebook,
    part.cover,
    { value: coverOf(cropName), why: `by the crop, ${cropName}` },
    `${path}.cover`,
  );
  const treatment = orDefault(
    notebook,
    part.treatment,
    surfaceFields.shape.treatment.byDefault,
    `${path}.treatment`,
  );
  const inCrop = rowFor(cover, treatment, residue.crop, part.condition, found.group);
  const bareFallow = curveNumberFor("fallow", "bare", "poor", found.group)!;
  const table = "TR-55 Table 2-2b (read)";
  const inGroup = `hydrologic group ${found.group}`;
  return {
    curveNumberFallow: orDefault(
      notebook,
      fallowGiven,
      {
        value: Math.round(10 * fallowCurveNumber(bareFallow, residue.fallow)) / 10,
        why: `${table}: fallow, bare, ${inGroup}; up to 10 % lower with residue (Steichen 1983, read)`,
      },
      `${path}.curveNumberFallow`,
    ),
    curveNumberCrop: orDefault(
      notebook,
      cropGiven,
      { value: inCrop.curveNumber, why: `${table}: ${inCrop.words}, ${inGroup}` },
      `${path}.curveNumberCrop`,
    ),
  };
}

interface Row {
  readonly curveNumber: number;
  readonly words: string;
}

/** The crop's row of the table; the residue row where residue counts and the table has one. */
function rowFor(
  cover: GroundCover,
  treatment: string,
  residue: number,
  stated: "poor" | "good" | undefined,
  group: HydrologicGroup,
): Row {
  const counts = residue >= residueCounts;
  const condition = stated ?? (residue >= residueGood ? "good" : "poor");
  for (const row of counts ? [`${treatment} + residue`, treatment] : [treatment]) {
    const curveNumber = curveNumberFor(cover, row, condition, group);
    if (curveNumber !== undefined) return { curveNumber, words: `${cover}, ${row}, ${condition} condition` };
  }
  throw new Error(`no curve number for ${cover}, ${treatment}`);
}

/** Ours: crops in wide rows, legumes sown close, all others as small grain. */
function coverOf(cropName: string): GroundCover & SurfacePart["cover"] {
  if (/corn|maize|sorghum|milo|sunflower|cotton|bean/i.test(cropName)) return "row crops";
  return /pea\b|peas\b|lentil/i.test(cropName) ? "close-seeded legumes" : "small grain";
}
