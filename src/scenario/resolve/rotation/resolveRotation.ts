import { strawLeftBy } from "../../../crop/strawAfterHarvest.ts";
import { sayMonthDay, sayQuantity } from "../../../quantity/index.ts";
import { coverOfMass } from "../../../season/residue/mulch.ts";
import type { CasePart, ScenarioFile } from "../../fields/file.ts";
import { chainFields } from "../../fields/rotationFields.ts";
import type { Case, RotationEntry, RotationPlan } from "../../scenario.ts";
import { daysToSowing, tellFallow } from "../measuredDay.ts";
import { complain, openNotebook, orDefault, type Notebook } from "../notebook.ts";
import { resolveYield } from "../resolveYield.ts";
import { statesWater, type RotationYear } from "./rotationYears.ts";

/** What is wrong beside a rotation, or lacks one. */
export function refuseBeside(file: ScenarioFile, notebook: Notebook): void {
  if (file.rotation === undefined) {
    if (file.chain !== undefined)
      complain(notebook, "chain", "a rotation beside it", undefined, "name the rotation, or leave chain out");
    return;
  }
  const refuse = (path: string) =>
    complain(
      notebook,
      path,
      "no length beside rotation, which tells how long each fallow is",
      "one",
      "leave one of the two out",
    );
  if (file.fallow?.length !== undefined) refuse("fallow.length");
  (file.cases ?? []).forEach(({ fallow }, c) => {
    if (fallow?.length !== undefined) refuse(`cases[${c}].fallow.length`);
  });
}

/** The year of the crop in question that answers for it wherever one season is meant: its first in the rotation. */
export function askedYear(years: readonly (RotationYear | null)[]): RotationYear {
  return years.find((year) => year?.isAsked === true)!;
}

/** The file as one season of a year of its rotation: its crop, the usual fallow before it, the straw of the crop before. */
export function seasonOfYear(file: ScenarioFile, year: RotationYear): ScenarioFile {
  const cases = year.isAsked ? file.cases : file.cases?.map(withoutCrop);
  return {
    ...file,
    ...(cases === undefined ? {} : { cases }),
    crop: year.part,
    fallow: { length: seasonFallow(file, year) },
    surface: strawFollows(file.surface)
      ? { ...file.surface, residueCoverFallow: coverOfMass(strawLeftBy(year.before).tPerHa) }
      : file.surface,
  };
}

/** One season begins on the day its water was measured, where that is told. */
function seasonFallow({ soil }: ScenarioFile, { plan, fallowDays, isAsked }: RotationYear): number {
  if (soil.waterMeasured === undefined || !isAsked) return fallowDays;
  return Math.min(fallowDays, daysToSowing(soil.waterMeasured, plan.sowing));
}

/** What a case says of its crop and its roots is said of the crop in question. */
function withoutCrop({ crop: _crop, rootingDepth: _depth, ...others }: CasePart): CasePart {
  return others;
}

function strawFollows(surface: ScenarioFile["surface"] = {}): boolean {
  return surface.residueCover === undefined && surface.residueCoverFallow === undefined;
}

/** Tells what the rotation decides of the season in question. */
export function tellSeason(file: ScenarioFile, year: RotationYear, notebook: Notebook): void {
  const { waterMeasured } = file.soil;
  if (waterMeasured !== undefined) tellFallow(seasonFallow(file, year), waterMeasured, notebook);
  else
    notebook.defaults.push({
      field: "fallow.length",
      value: `${year.fallowDays} days`,
      why: `from the usual harvest of ${year.before} to sowing; each year has its own`,
    });
  if (!strawFollows(file.surface)) return;
  const straw = strawLeftBy(year.before);
  notebook.defaults.push({
    field: "surface.residueCoverFallow",
    value: sayQuantity(coverOfMass(straw.tPerHa), "share", "us"),
    why: `straw of ${year.before}, cut as usual and not tilled: ${straw.why}; older straw that has not rotted adds to it`,
  });
}

/**
 * The rotation with its crops resolved in every case.
 *
 * @param season the cases of the season in question, as resolved
 * @param casesOf resolves all cases of a file
 */
export function resolveRotation(
  file: ScenarioFile,
  years: readonly (RotationYear | null)[],
  season: readonly Case[],
  casesOf: (file: ScenarioFile, notebook: Notebook) => readonly (Case | undefined)[],
  latitudeDeg: number | null,
  yieldLine: RotationEntry["yieldLine"],
  notebook: Notebook,
): RotationPlan | undefined {
  const startsAsStated = statesWater(file);
  const usual = chainFields.shape;
  const warmUp = startsAsStated
    ? 0
    : orDefault(notebook, file.chain?.warmUp, usual.warmUp.byDefault, "chain.warmUp");
  const pathYears = orDefault(notebook, file.chain?.length, usual.length.byDefault, "chain.length");
  if (!startsAsStated) tellStart(warmUp, notebook);
  const first = askedYear(years);
  const scratch = openNotebook();
  const entries = years.map((year, i): RotationEntry | null => {
    if (year === null) return null;
    const cases = year === first ? season : casesOf(seasonOfYear(file, year), scratch);
    const line = year.isAsked ? yieldLine : resolveYield({}, year.part.name, latitudeDeg, scratch);
    if (cases.includes(undefined) || line === undefined) return null;
    if (!year.isAsked && typeof file.rotation !== "string") tellEntry(year, `rotation[${i}]`, notebook);
    else if (!year.isAsked) tellEntry(year, "rotation", notebook);
    return {
      crop: year.plan.name,
      isAsked: year.isAsked,
      sownYearBefore: year.sownYearBefore,
      yieldLine: line,
      cases: sharingCrops(cases as readonly Case[]),
      strawTPerHa: strawLeftBy(year.part.name).tPerHa,
      strawFollowsByCase: season.map(
        (_, c) => strawFollows(file.surface) && strawFollows(file.cases?.[c]?.surface),
      ),
    };
  });
  if (scratch.problems.length > 0) {
    notebook.problems.push(...scratch.problems);
    return undefined;
  }
  return {
    said:
      typeof file.rotation === "string"
        ? file.rotation
        : years.map((year) => year?.plan.name ?? "fallow").join("-"),
    entries,
    warmUpYears: warmUp,
    startsAsStated,
    startsOn: startsAsStated ? (file.soil.waterMeasured ?? null) : null,
    pathYears,
  };
}

/** Cases of one crop share one object, and so its courses. */
function sharingCrops(cases: readonly Case[]): Case[] {
  const crops = new Map<string, Case["crop"]>();
  return cases.map((one) => {
    const key = JSON.stringify(one.crop);
    const crop = crops.get(key) ?? one.crop;
    crops.set(key, crop);
    return { ...one, crop };
  });
}

function tellEntry({ plan, fallowDays, before }: RotationYear, field: string, notebook: Notebook): void {
  notebook.defaults.push({
    field,
    value: `${plan.name}, sown ${sayMonthDay(plan.sowing)}, ${fallowDays} days after ${before}`,
    why: "the numbers of our table where none are given; the same in every case",
  });
}

/** In place of the guess that one season by itself would take. */
function tellStart(warmUp: number, { defaults }: Notebook): void {
  const at = defaults.findIndex(({ field }) => field === "soil.startingWater.share");
  const told = {
    field: "soil.startingWater",
    value:
      warmUp === 0 ? "50 % of available" : `what ${warmUp} ${warmUp === 1 ? "year" : "years"} before left`,
    why:
      warmUp === 0
        ? "nothing measured is stated, and no year is run before: a guess"
        : "nothing measured is stated: the years before run under the first case's roots, from half of the available water on; seasons run by themselves begin with that half",
  };
  if (at >= 0) defaults[at] = told;
  else defaults.push(told);
}
