import { dayInYear, dayOfMonth, dayOfYear, daysInMonth, monthOf, yearOf } from "../quantity/calendar.ts";
import { yearCourse } from "../weather/generate/normals.ts";
import type { MonthlyAir } from "../weather/records/record.ts";
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
  return heatByStage(stageDays, sowing, (day) => degreeDays(normalMeanC(day, normals), baseC));
}

/**
 * The same as years bring it on the whole: months keep their means, and warm days count in cool weather. What a stated day of
 * ripeness is worth.
 */
export function stageHeatOfYears(
  stageDays: StageLengths,
  sowing: CropPlan["sowing"],
  baseC: number,
  { tMaxC, tMinC }: MonthlyAir,
): StageLengths {
  const { ordinary } = yearCourse(tMaxC.map((c, month) => (c + (tMinC[month] ?? c)) / 2));
  return heatByStage(stageDays, sowing, (day) => usualDegreeDays(ordinary[dayOfYear(day) - 1]! - baseC));
}

function heatByStage(
  stageDays: StageLengths,
  from: CropPlan["sowing"],
  heatOn: (day: number) => number,
): StageLengths {
  let day = dayInYear(someYear, from);
  const heatOf = (days: number): number => {
    let heat = 0;
    for (let i = 0; i < Math.round(days); i++) heat += heatOn(day++);
    return Math.round(heat);
  };
  return [heatOf(stageDays[0]), heatOf(stageDays[1]), heatOf(stageDays[2]), heatOf(stageDays[3])];
}

/** How far a day's mean lies from the usual one, C: a logistic spread of this scale has a standard deviation of 4. Ours. */
const swingScaleC = 4 / 1.814;

/** Mean degree days of days that swing about a usual mean. */
function usualDegreeDays(aboveBaseC: number): number {
  return swingScaleC * Math.log1p(Math.exp(aboveBaseC / swingScaleC));
}

/** The first killing freeze usually falls about when the mean daily minimum comes down to this. Ours. */
const freezeMinimumC = 2;

/** Day number of the usual first killing freeze after a day on which none is to be feared; null where there is none in a year. */
export function firstFreezeDay(fromDay: number, normals: MonthlyAir): number | null {
  let wasWarm = false;
  for (let day = fromDay; day < fromDay + 365; day++) {
    const isCold = normalC(day, (month) => monthOfYear(normals.tMinC, month)) < freezeMinimumC;
    if (isCold && wasWarm) return day;
    wasWarm ||= !isCold;
  }
  return null;
}

/** Mean temperature of a day in a normal year, C. */
export function normalMeanC(day: number, { tMaxC, tMinC }: MonthlyAir): number {
  return normalC(day, (month) => (monthOfYear(tMaxC, month) + monthOfYear(tMinC, month)) / 2);
}

/** Months' means stand in mid-month, with straight lines between. */
function normalC(day: number, monthC: (month: number) => number): number {
  const month = monthOf(day);
  const days = daysInMonth(yearOf(day), month);
  const pastMiddle = (dayOfMonth(day) - 0.5) / days - 0.5; // -0.5 to 0.5 of a month
  const here = monthC(month);
  const there = monthC(pastMiddle < 0 ? month - 1 : month + 1);
  return here + Math.abs(pastMiddle) * (there - here);
}

/** Months 0 and 13 are last and next year's. */
function monthOfYear(monthly: readonly number[], month: number): number {
  return monthly[(month + 11) % 12] ?? 0;
}
