import { dayInYear, dayOfMonth, daysInMonth, monthOf, yearOf } from "../weather/calendar.ts";
import type { MonthlyAir } from "../weather/record.ts";
import type { CropPlan } from "./crop.ts";
import { degreeDays, type StageLengths } from "./stages.ts";

/** Any year will do: normals have none. Not a leap year, and the next is not either. */
const someYear = 2001;

/**
 * Degree days that a crop's calendar days are worth at a site in a normal year, stage by stage.
 *
 * @param stageDays whole days of each stage, from the day of sowing on
 * @returns degree days above `baseC`, rounded to 1; 0 in a stage that is never warmer than the base
 * Monthly means stand in mid-month, with straight lines between. Ours.
 */
export function stageHeat(
  stageDays: StageLengths,
  sowing: CropPlan["sowing"],
  baseC: number,
  normals: MonthlyAir,
): StageLengths {
  let day = dayInYear(someYear, sowing);
  const heatOf = (days: number): number => {
    let heat = 0;
    for (let i = 0; i < Math.round(days); i++) heat += degreeDays(normalMeanC(day++, normals), baseC);
    return Math.round(heat);
  };
  return [heatOf(stageDays[0]), heatOf(stageDays[1]), heatOf(stageDays[2]), heatOf(stageDays[3])];
}

/**
 * The plan with a type that fills the site's season: its degree days are what its calendar days are worth there.
 * For crops with `heatNeedFitsSite`; a plan on calendar days, or a site too cold for it, is handed back as it is.
 */
export function suitedToSite(plan: CropPlan, normals: MonthlyAir): CropPlan {
  if (plan.clock === "days") return plan;
  const stageLengths = stageHeat(plan.stageDaysFallback, plan.sowing, plan.baseC, normals);
  return stageLengths.some((heat) => heat <= 0) ? plan : { ...plan, stageLengths };
}

/** Mean temperature of a day in a normal year, C. */
export function normalMeanC(day: number, normals: MonthlyAir): number {
  const month = monthOf(day);
  const days = daysInMonth(yearOf(day), month);
  const pastMiddle = (dayOfMonth(day) - 0.5) / days - 0.5; // -0.5 to 0.5 of a month
  const here = monthMeanC(month, normals);
  const there = monthMeanC(pastMiddle < 0 ? month - 1 : month + 1, normals);
  return here + Math.abs(pastMiddle) * (there - here);
}

/** Months 0 and 13 are last and next year's. */
function monthMeanC(month: number, { tMaxC, tMinC }: MonthlyAir): number {
  const m = (month + 11) % 12;
  return ((tMaxC[m] ?? 0) + (tMinC[m] ?? 0)) / 2;
}
