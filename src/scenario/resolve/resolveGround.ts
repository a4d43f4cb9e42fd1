import { coverUnderCrop } from "../../crop/coverUnderCrop.ts";
import {
  curveNumberFor,
  fallowCurveNumber,
  pastureCondition,
  pastureGroundCover,
  residueCounts,
  residueGood,
  usualPastureCondition,
  type Condition,
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
import { usualDecay } from "../fields/facts/usualDecay.ts";
import { complain, orDefault, type Notebook } from "./notebook.ts";

interface Below {
  readonly layers: readonly SoilLayer[];
  readonly restrictedAtMm: number | null;
  readonly group: HydrologicGroup | undefined;
}

/** What grows, and whether the run begins with a fallow. */
interface Standing {
  readonly cropName: string;
  readonly isSod: boolean;
  readonly hasFallow: boolean;
}

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
    standing.cropName,
    below,
    // The crop's table only asks for 5 and 20 %: what lies there on the first day answers for what a fallow leaves.
    { fallow: residue.fallow, crop: residue.crop ?? residue.fallow },
    path,
    notebook,
  );
  // Field by field: the daily loop is compiled for one layout of this object.
  return {
    curveNumberFallow: curves.curveNumberFallow,
    curveNumberCrop: curves.curveNumberCrop,
    curveNumberBareFallow: curves.curveNumberBareFallow,
    residueCoverFallow: residue.fallow,
    residueCoverCrop: residue.crop,
    residueDecays: residue.decays,
    snowCatchShare: orDefault(
      notebook,
      part.snowCatch,
      {
        value: snowCatchAtFullCover * residue.first,
        kind: "share",
        why: `${sayQuantity(snowCatchAtFullCover, "share", "us")} of the snowfall under full residue, stubble 40 cm tall (Pomeroy et al. 1990, read in part); less in proportion, and as it rots`,
      },
      field("snowCatch"),
    ),
    snowCatchBareShare: part.snowCatch ?? 0,
    snowBelowC: orDefault(notebook, part.snowBelow, usual.snowBelow.byDefault, field("snowBelow")),
    meltMmPerCDay: orDefault(notebook, part.melt, usual.melt.byDefault, field("melt")),
    evaporatingDepthMm,
    readilyEvaporableMm,
    secondStageMmPerRootDay: secondStageMmPerRootDay(top?.clayFraction ?? 0),
  };
}

interface StatedResidue {
  readonly fallow: number;
  /** Null: what the fallow leaves. */
  readonly crop: number | null;
  /** On the first day of the run. */
  readonly first: number;
  readonly decays: boolean;
}

function residueOf(
  { residueCover, ...part }: SurfacePart,
  { isSod, hasFallow }: Standing,
  cover: GroundCover,
  field: (key: keyof SurfacePart) => string,
  notebook: Notebook,
): StatedResidue {
  const usual =
    cover === "pasture or range"
      ? {
          value: pastureGroundCover(part.condition ?? usualPastureCondition),
          kind: "share" as const,
          why: sodCoverWhy(part.condition),
        }
      : bareGround;
  const inFallow = part.residueCoverFallow ?? residueCover;
  // Beside a cover of its own for fallow, the one for both is the crop's.
  const ownCrop = hasFallow && part.residueCoverFallow === undefined ? undefined : residueCover;
  const inCrop = part.residueCoverCrop ?? ownCrop;
  const fallow = orDefault(notebook, inFallow, usual, field("residueCoverFallow"));
  const leaves = hasFallow && inCrop === undefined && fallow > 0;
  const crop = leaves
    ? null
    : orDefault(notebook, inCrop ?? (hasFallow ? inFallow : undefined), usual, field("residueCoverCrop"));
  const first = hasFallow ? fallow : (crop ?? 0);
  return { fallow, crop, first, decays: decaysOf(part.residueDecay, first, crop, isSod, field, notebook) };
}

/** Told only where there is residue. */
function decaysOf(
  stated: SurfacePart["residueDecay"],
  first: number,
  crop: number | null,
  isSod: boolean,
  field: (key: keyof SurfacePart) => string,
  notebook: Notebook,
): boolean {
  if (stated !== undefined) return stated !== "none";
  if (first <= 0 && (crop ?? 0) <= 0) return false;
  const [value, why] = isSod
    ? ([usualDecay.underSod, "sod lays new litter every year"] as const)
    : ([
        usualDecay.value,
        "the stated cover is that of the first day; straw rots by rain and warmth (Renard et al. 1997, USDA Handbook 703 ch. 5, memory)",
      ] as const);
  return orDefault<string>(notebook, undefined, { value, why }, field("residueDecay")) !== "none";
}

function curveNumbers(
  part: SurfacePart,
  cropName: string,
  { layers, restrictedAtMm, group }: Below,
  residue: { fallow: number; crop: number },
  path: string,
  notebook: Notebook,
): Pick<Ground, "curveNumberFallow" | "curveNumberCrop" | "curveNumberBareFallow"> {
  const fallowGiven = part.curveNumberFallow ?? part.curveNumber;
  const cropGiven = part.curveNumberCrop ?? part.curveNumber;
  if (fallowGiven !== undefined && cropGiven !== undefined)
    return {
      curveNumberFallow: fallowGiven,
      curveNumberCrop: cropGiven,
      curveNumberBareFallow: fallowGiven,
    };

  const found = group === undefined ? hydrologicGroup(layers, restrictedAtMm) : { group, why: "stated" };
  if (group === undefined)
    notebook.defaults.push({ field: "soil.hydrologicGroup", value: found.group, why: found.why });
  const cover = orDefault(
    notebook,
    part.cover,
    { value: coverUnderCrop(cropName), why: `by the crop, ${cropName}` },
    `${path}.cover`,
  );
  const inGroup = `hydrologic group ${found.group}`;
  if (cover === "pasture or range") {
    const sod = pastureRow(part.condition, residue.crop, found.group);
    const number = (given: number | undefined, key: "curveNumberFallow" | "curveNumberCrop") =>
      orDefault(
        notebook,
        given,
        { value: sod.curveNumber, why: `${sod.words}, ${inGroup}` },
        `${path}.${key}`,
      );
    return {
      curveNumberBareFallow: fallowGiven ?? sod.curveNumber,
      curveNumberFallow: number(fallowGiven, "curveNumberFallow"),
      curveNumberCrop: number(cropGiven, "curveNumberCrop"),
    };
  }
  const treatment = orDefault(
    notebook,
    part.treatment,
    surfaceFields.shape.treatment.byDefault,
    `${path}.treatment`,
  );
  const inCrop = rowFor(cover, treatment, residue.crop, part.condition, found.group);
  const bareFallow = curveNumberFor("fallow", "bare", "poor", found.group)!;
  const table = "TR-55 Table 2-2b (read)";
  return {
    curveNumberBareFallow: fallowGiven ?? bareFallow,
    curveNumberFallow: orDefault(
      notebook,
      fallowGiven,
      {
        value: Math.round(10 * fallowCurveNumber(bareFallow, residue.fallow)) / 10,
        why: `${table}: fallow, bare, ${inGroup}; up to 10 % lower with residue, as long as it lies (Steichen 1983, read)`,
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
  stated: Condition | undefined,
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

/** Grass stands all year: the same row before the season as in it. */
function pastureRow(stated: Condition | undefined, groundCover: number, group: HydrologicGroup): Row {
  const condition = stated ?? pastureCondition(groundCover);
  const curveNumber = curveNumberFor("pasture or range", "none", condition, group)!;
  return { curveNumber, words: `TR-55 Table 2-2c (memory): pasture or range, ${condition} condition` };
}

function sodCoverWhy(stated: Condition | undefined): string {
  return `live and dead grass of a pasture or range in ${stated ?? usualPastureCondition} condition: class of TR-55 Table 2-2c (memory), its middle is ours`;
}

/** Whether treatment and condition are ones that the handbook's table has for that cover; otherwise a problem is written down. */
function isOfCover(part: SurfacePart, cover: GroundCover, path: string, notebook: Notebook): boolean {
  const isPasture = cover === "pasture or range";
  if (isPasture && part.treatment !== undefined) {
    complain(
      notebook,
      `${path}.treatment`,
      "none for pasture or range, which is not worked",
      `"${part.treatment}"`,
      "leave it out",
    );
    return false;
  }
  if (isPasture || part.condition !== "fair") return true;
  complain(
    notebook,
    `${path}.condition`,
    `poor or good for ${cover}`,
    '"fair"',
    "only pasture or range has a fair condition in the handbook's table",
  );
  return false;
}
