import type { CropPlan } from "../crop/crop.ts";
import type { CropDefaults, CropField, Sourced } from "../crop/crops.ts";
import type { StageLengths } from "../crop/stages.ts";
import { sayBoth, sayMonthDay } from "../quantity/index.ts";
import type { CropPart } from "./file.ts";
import type { Notebook } from "./notebook.ts";

/** The file's key of each number of a plan. */
const fileKeys: Readonly<Record<CropField, keyof CropPart>> = {
  sowing: "sowing",
  clock: "clock",
  stageLengths: "stageLengths",
  stageDaysFallback: "stageDays",
  baseC: "baseTemperature",
  kcbInitial: "kcbInitial",
  kcbMid: "kcbMid",
  kcbEnd: "kcbEnd",
  heightMm: "height",
  dormantBelowC: "dormantBelow",
  kcbDormant: "kcbDormant",
  standShare: "stand",
  sowingDepthMm: "sowingDepth",
  maxRootDepthMm: "maxRootDepth",
  frontVelocityMmPerDay: "frontVelocity",
  uptakeSharePerDay: "uptakeShare",
  denseRootsMm: "denseRoots",
  uptakeHalvingMm: "uptakeHalving",
  depletionFraction: "depletionFraction",
};

/** Writes down every number of the crop that the file leaves out. */
export function sayCropDefaults(
  part: CropPart,
  { values }: CropDefaults,
  plan: CropPlan,
  path: string,
  notebook: Notebook,
): void {
  for (const field of Object.keys(fileKeys) as CropField[]) {
    const key = fileKeys[field];
    const isStand = field === "standShare" && part.population !== undefined;
    if (part[key] !== undefined || isStand) continue;
    if (plan.dormantBelowC === null && (field === "dormantBelowC" || field === "kcbDormant")) continue;
    const { mark, why }: Sourced<unknown> = values[field];
    const isFitted =
      field === "stageLengths" && String(plan.stageLengths) !== String(values.stageLengths.value);
    const reason = isFitted
      ? plan.clock === "days"
        ? "the stages in calendar days"
        : "a type that fills the season here: what its calendar days are worth in degree days in a normal year; our choice"
      : why.includes(mark)
        ? why
        : `${why} (${mark})`;
    notebook.defaults.push({ field: `${path}.${key}`, value: sayPlanValue(field, plan), why: reason });
  }
}

function sayPlanValue(field: CropField, plan: CropPlan): string {
  const lengths = (stages: StageLengths, unit: string) =>
    `${stages.map((length) => Math.round(length)).join(", ")} ${unit}`;
  switch (field) {
    case "sowing":
      return sayMonthDay(plan.sowing);
    case "stageLengths":
      return lengths(plan.stageLengths, plan.clock === "days" ? "days" : "C day");
    case "stageDaysFallback":
      return lengths(plan.stageDaysFallback, "days");
    case "baseC":
      return sayBoth(plan.baseC, "temperature");
    case "dormantBelowC":
      return plan.dormantBelowC === null ? "never" : sayBoth(plan.dormantBelowC, "temperature");
    case "heightMm":
      return sayBoth(plan.heightMm, "height");
    case "sowingDepthMm":
    case "maxRootDepthMm":
    case "denseRootsMm":
    case "uptakeHalvingMm":
      return sayBoth(plan[field], "depth");
    case "frontVelocityMmPerDay":
      return plan.frontVelocityMmPerDay === null
        ? "Borg & Grimes (1986)"
        : sayBoth(plan.frontVelocityMmPerDay, "rate");
    case "standShare":
    case "depletionFraction":
      return sayBoth(plan[field], "share");
    case "uptakeSharePerDay":
      return sayBoth(plan.uptakeSharePerDay, "sharePerDay");
    default:
      return String(plan[field]);
  }
}
