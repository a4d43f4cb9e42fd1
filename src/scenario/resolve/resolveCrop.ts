import { isSod, writtenOut, type CropPlan } from "../../crop/crop.ts";
import { cropNamed, defaultPlan, findCrop } from "../../crop/crops.ts";
import { endedAt } from "../../crop/rootDescent.ts";
import { isSaidOnce, seasonOf, springOf, type CropPlace } from "./cropSeason.ts";
import { asStages, clockOf, lengthsOf, stagesOf, standOf } from "./cropStages.ts";
import { fullStand, ownCropDefaults, ownCropRootsEnd } from "../fields/cropFields.ts";
import type { CropPart } from "../fields/file.ts";
import { attempt, complain, orDefault, type Notebook } from "./notebook.ts";
import { sayCropDefaults } from "../say/sayCrop.ts";

/** What a crop that is not in our table cannot do without. */
const ownNumbers = [
  "sowing",
  "stageLengths",
  "kcbInitial",
  "kcbMid",
  "kcbEnd",
  "height",
  "maxRootDepth",
] as const;

/**
 * The crop with every number; undefined where it cannot be, with the problems written down.
 *
 * @param place to fit the stages of crops that growers choose by their season
 * @param base the file's crop: its sowing day chooses the type, so that cases sown on other days grow the same one
 * @param path where the crop's keys stand
 */
export function resolveCrop(
  part: CropPart,
  base: CropPart,
  place: CropPlace,
  path: string,
  notebook: Notebook,
): CropPlan | undefined {
  const known = cropNamed(part.name);
  if (known === null) return ownCrop(part, path, notebook);
  const usual = defaultPlan(known);
  if (isSod(usual) && !isOfSod(part, path, notebook)) return undefined;
  const isOnce = isSaidOnce(part, path, notebook);
  const stages = stagesOf(part, usual, path, notebook);
  const standShare = standOf(part, path, notebook);
  if (!isOnce || stages === undefined || standShare === undefined) return undefined;
  const plan: CropPlan = {
    ...usual,
    ...numbersGiven(part),
    springFrom: springOf(part, usual, place),
    stageDaysFallback: stages.days,
    standShare: standShare ?? usual.standShare,
    descent:
      part.rootsEnd === undefined ? usual.descent : endedAt(usual.descent, rootsEndStages[part.rootsEnd]),
  };
  const season =
    stages.lengths === undefined
      ? seasonOf(part, base, known, plan, place, path, notebook)
      : { stageLengths: stages.lengths, stageDaysFallback: stages.days, why: null };
  if (season === undefined) return undefined;
  const { stageDaysFallback } = season;
  const onDays = stages.clock === "days" && stages.lengths === undefined;
  const fitted = writtenOut({
    ...plan,
    clock: stages.clock,
    stageLengths: onDays ? stageDaysFallback : season.stageLengths,
    stageDaysFallback,
  });
  sayCropDefaults(part, known, fitted, season.why, path, notebook);
  return fitted;
}

/** Sod is not sown and does not ripen: a date or a type of ripeness says nothing of it, and is a problem written down. */
function isOfSod(part: CropPart, path: string, notebook: Notebook): boolean {
  const wrong = (["maturity", "ripe", "harvest"] as const).filter((key) => part[key] !== undefined);
  for (const key of wrong) {
    complain(
      notebook,
      `${path}.${key}`,
      `no ${key === "ripe" ? "day of ripeness" : key} for ${part.name}, which does not ripen`,
      "one",
      "leave it out; stageLengths says how long it grows",
    );
  }
  return wrong.length === 0;
}

/** On the scale of `RootDescent`. */
const rootsEndStages = { flowering: 2, "end of mid-season": 3, maturity: 4 } as const;

function ownCrop(part: CropPart, path: string, notebook: Notebook): CropPlan | undefined {
  const { sowing, kcbInitial, kcbMid, kcbEnd, height, maxRootDepth } = part;
  const lacking = ownNumbers.filter((key) => part[key] === undefined);
  const ofOurs = (["maturity", "ripe", "harvest"] as const).find((key) => part[key] !== undefined);
  const isMeant = lacking.length > 0 && isOpenName(part.name);
  if (isMeant || lacking.filter((key) => key !== "sowing").length === ownNumbers.length - 1) {
    attempt(notebook, () => findCrop(part.name, "crop.name"));
    return undefined;
  }
  if (
    sowing === undefined ||
    kcbInitial === undefined ||
    kcbMid === undefined ||
    kcbEnd === undefined ||
    height === undefined ||
    maxRootDepth === undefined ||
    part.stageLengths === undefined
  ) {
    complain(
      notebook,
      `${path}.${lacking[0]}`,
      `every number of "${part.name}", a crop of your own (lacking: ${lacking.join(", ")})`,
      undefined,
      "give them, or name a crop we have numbers of",
    );
    return undefined;
  }
  const clock = part.clock ?? clockOf(part) ?? "days";
  if (ofOurs !== undefined) {
    complain(
      notebook,
      `${path}.${ofOurs}`,
      `stageLengths alone, for "${part.name}", a crop of your own`,
      ofOurs,
      "leave it out",
    );
    return undefined;
  }
  if (part.clock === undefined)
    notebook.defaults.push({
      field: `${path}.clock`,
      value: clock,
      why: "what the stage lengths are written in",
    });
  const lengths = lengthsOf(part, clock, path, notebook);
  const days =
    part.stageDays === undefined ? (clock === "days" ? lengths : undefined) : asStages(part.stageDays);
  if (lengths !== undefined && days === undefined)
    complain(
      notebook,
      `${path}.stageDays`,
      "the stages in calendar days too, for a crop of your own on thermal time",
      undefined,
      "give four numbers of days",
    );
  const standShare = standOf(part, path, notebook);
  if (lengths === undefined || days === undefined || standShare === undefined) return undefined;
  const field = (key: string) => `${path}.${key}`;
  const number = (key: keyof typeof ownCropDefaults) =>
    orDefault(notebook, part[key], ownCropDefaults[key], field(key));
  return {
    name: part.name,
    sowing,
    clock,
    stageLengths: lengths,
    stageDaysFallback: days,
    baseC: clock === "days" && part.baseTemperature === undefined ? 0 : number("baseTemperature"),
    springFrom: part.springGrowth ?? null,
    kcbInitial,
    kcbMid,
    kcbEnd,
    heightMm: height,
    dormantBelowC: part.dormantBelow ?? null,
    kcbDormant:
      part.dormantBelow === undefined
        ? kcbInitial
        : orDefault(
            notebook,
            part.kcbDormant,
            { value: kcbInitial, why: "the crop's initial coefficient" },
            field("kcbDormant"),
          ),
    standShare: standShare ?? fullStand.value,
    sowingDepthMm: number("sowingDepth"),
    maxRootDepthMm: maxRootDepth,
    descent: { shape: "sine", endStage: rootsEndStages[part.rootsEnd ?? ownCropRootsEnd] },
    frontVelocityMmPerDay: part.frontVelocity ?? null,
    uptakeSharePerDay: number("uptakeShare"),
    denseRootsMm: number("denseRoots"),
    uptakeHalvingMm: number("uptakeHalving"),
    depletionFraction: number("depletionFraction"),
  };
}

/** Whether a crop has every number that one of your own cannot do without. */
export function isDescribed(part: CropPart): boolean {
  return ownNumbers.every((key) => part[key] !== undefined);
}

/** "wheat" may mean several of our crops: then ask which, whatever else is given. */
function isOpenName(name: string): boolean {
  return /^wheat\b/i.test(name.trim());
}

function numbersGiven(part: CropPart): Partial<CropPlan> {
  const given: { [F in keyof CropPlan]?: CropPlan[F] | undefined } = {
    sowing: part.sowing,
    baseC: part.baseTemperature,
    kcbInitial: part.kcbInitial,
    kcbMid: part.kcbMid,
    kcbEnd: part.kcbEnd,
    heightMm: part.height,
    dormantBelowC: part.dormantBelow,
    kcbDormant: part.kcbDormant,
    sowingDepthMm: part.sowingDepth,
    maxRootDepthMm: part.maxRootDepth,
    frontVelocityMmPerDay: part.frontVelocity,
    uptakeSharePerDay: part.uptakeShare,
    denseRootsMm: part.denseRoots,
    uptakeHalvingMm: part.uptakeHalving,
    depletionFraction: part.depletionFraction,
  };
  return Object.fromEntries(
    Object.entries(given).filter(([, value]) => value !== undefined),
  ) as Partial<CropPlan>;
}
