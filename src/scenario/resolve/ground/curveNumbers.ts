import { coverUnderCrop } from "../../../crop/coverUnderCrop.ts";
import {
  curveNumberFor,
  fallowCurveNumber,
  pastureCondition,
  residueCounts,
  residueGood,
  type Condition,
  type GroundCover,
  type HydrologicGroup,
} from "../../../season/curveNumber.ts";
import type { Ground } from "../../../season/season.ts";
import { hydrologicGroup } from "../../../soil/equations/hydrologicGroup.ts";
import type { SoilLayer } from "../../../soil/layers/layer.ts";
import type { SurfacePart } from "../../fields/file.ts";
import { surfaceFields } from "../../fields/surfaceFields.ts";
import { complain, orDefault, type Notebook } from "../notebook.ts";

/** The soil beneath the surface. */
export interface Below {
  readonly layers: readonly SoilLayer[];
  readonly restrictedAtMm: number | null;
  readonly group: HydrologicGroup | undefined;
}

/** Curve numbers at average wetness: stated, or by the handbook's table. */
export function curveNumbers(
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

/** Whether treatment and condition are ones that the handbook's table has for that cover; otherwise a problem is written down. */
export function isOfCover(part: SurfacePart, cover: GroundCover, path: string, notebook: Notebook): boolean {
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
