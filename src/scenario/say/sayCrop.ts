import { isSod, type CropPlan } from "../../crop/crop.ts";
import { maturityOf, type CropDefaults, type CropField, type Sourced } from "../../crop/crops.ts";
import { endStageOf } from "../../crop/rootDescent.ts";
import type { StageLengths } from "../../crop/stages.ts";
import { sayBoth, sayMonthDay } from "../../quantity/index.ts";
import type { CropPart } from "../fields/file.ts";
import type { Notebook } from "../resolve/notebook.ts";

/** The file's key of each number of a plan. */
const fileKeys: Readonly<Record<CropField, keyof CropPart>> = {
  sowing: "sowing",
  clock: "clock",
  stageLengths: "stageLengths",
  stageDaysFallback: "stageDays",
  baseC: "baseTemperature",
  springFrom: "springGrowth",
  kcbInitial: "kcbInitial",
  kcbMid: "kcbMid",
  kcbEnd: "kcbEnd",
  heightMm: "height",
  dormantBelowC: "dormantBelow",
  kcbDormant: "kcbDormant",
  standShare: "stand",
  sowingDepthMm: "sowingDepth",
  maxRootDepthMm: "maxRootDepth",
  descent: "rootsEnd",
  frontVelocityMmPerDay: "frontVelocity",
  uptakeSharePerDay: "uptakeShare",
  denseRootsMm: "denseRoots",
  uptakeHalvingMm: "uptakeHalving",
  depletionFraction: "depletionFraction",
};

/** What sod has not: its roots are there, as deep as they go. */
const ofSeed: readonly CropField[] = ["sowingDepthMm", "descent", "frontVelocityMmPerDay"];

/**
 * Writes down every number of the crop that the file leaves out.
 *
 * @param seasonWhy why its stages are not the table's; null where they are
 */
export function sayCropDefaults(
  part: CropPart,
  { values, maturity }: CropDefaults,
  plan: CropPlan,
  seasonWhy: string | null,
  path: string,
  notebook: Notebook,
): void {
  const isLengthSaid = (["maturity", "ripe", "harvest", "stageLengths", "stageDays"] as const).some(
    (key) => part[key] !== undefined,
  );
  const sod = isSod(plan);
  if (!isLengthSaid && !sod) {
    const { why, mark } = maturity;
    notebook.defaults.push({
      field: `${path}.maturity`,
      value: maturityOf(plan),
      why: `${why} (${mark})`,
    });
  }
  for (const field of Object.keys(fileKeys) as CropField[]) {
    const key = fileKeys[field];
    const isStand = field === "standShare" && part.population !== undefined;
    if (part[key] !== undefined || isStand) continue;
    if (plan.dormantBelowC === null && (field === "dormantBelowC" || field === "kcbDormant")) continue;
    if (plan.springFrom === null && field === "springFrom") continue;
    if (sod && ofSeed.includes(field)) continue;
    const { mark, why }: Sourced<unknown> = values[field];
    const tableWhy = why.includes(mark) ? why : `${why} (${mark})`;
    notebook.defaults.push({
      field: `${path}.${key}`,
      value: sayPlanValue(field, plan),
      why: whyOfStages(field, plan, values, seasonWhy) ?? tableWhy,
    });
  }
}

/** Null for other fields, and for stages as they stand in the table. */
function whyOfStages(
  field: CropField,
  plan: CropPlan,
  values: CropDefaults["values"],
  seasonWhy: string | null,
): string | null {
  if (field !== "stageLengths" && field !== "stageDaysFallback") return null;
  if (String(plan[field]) === String(values[field].value)) return null;
  return field === "stageLengths" && plan.clock === "days" ? "the stages in calendar days" : seasonWhy;
}

function sayPlanValue(field: CropField, plan: CropPlan): string {
  const lengths = (stages: StageLengths, unit: string) =>
    `${stages.map((length) => Math.round(length)).join(", ")} ${unit}`;
  switch (field) {
    case "sowing":
      return sayMonthDay(plan.sowing);
    case "springFrom":
      return plan.springFrom === null ? "none" : sayMonthDay(plan.springFrom);
    case "descent":
      return sayStage(endStageOf(plan.descent));
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
        ? "by the crop's stages"
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

const stageNames = ["the initial stage", "development", "mid-season", "the late season"];

/** `39 % into mid-season`. */
function sayStage(stage: number): string {
  if (stage >= stageNames.length) return "maturity";
  const whole = Math.floor(stage);
  if (stage > whole) return `${Math.round(100 * (stage - whole))} % into ${stageNames[whole]}`;
  return whole === 0 ? "sowing" : `the end of ${stageNames[whole - 1]}`;
}
