import { alternatives, isSaidTwice } from "../fields/facts/alternatives.ts";
import { stagesOfType, type StagesOfType } from "../../crop/cropCalendar.ts";
import type { CropPlan } from "../../crop/crop.ts";
import type { CropDefaults } from "../../crop/crops.ts";
import { sayMonthDay } from "../../quantity/index.ts";
import { dayInYear, dayOfMonth, monthOf, type MonthDay } from "../../quantity/calendar.ts";
import type { MonthlyAir } from "../../weather/records/record.ts";
import type { CropPart } from "../fields/file.ts";
import { complain, type Notebook } from "./notebook.ts";

/** Where the crop grows, as far as it is known: its stages depend on it. */
export interface CropPlace {
  /** Usual temperatures. */
  readonly normals: MonthlyAir | null;
  readonly latitudeDeg: number | null;
}

const waysToSay = Object.keys(alternatives.cropLength) as (keyof typeof alternatives.cropLength)[];

/** Whether one way of saying how long the crop takes is given at most; two are written down as a problem. */
export function isSaidOnce(part: CropPart, path: string, notebook: Notebook): boolean {
  const given = waysToSay.filter((key) => part[key] !== undefined);
  const first = given.find((key) => isSaidTwice(part, key, alternatives.cropLength));
  if (first === undefined) return true;
  const second = given.find((key) => alternatives.cropLength[first].includes(key));
  complain(notebook, `${path}.${second}`, `${first} or ${second}`, "both", "leave one way out");
  return false;
}

/** Day from which a winter crop grows on; south of the equator half a year later. Own stage lengths are taken as they are. */
export function springOf(part: CropPart, usual: CropPlan, { latitudeDeg }: CropPlace): MonthDay | null {
  if (part.springGrowth !== undefined) return part.springGrowth;
  if (part.stageLengths !== undefined || usual.springFrom === null) return null;
  const { month, day } = usual.springFrom;
  return (latitudeDeg ?? 0) < 0 ? { month: ((month + 5) % 12) + 1, day } : usual.springFrom;
}

export interface CropSeason extends StagesOfType {
  /** Why the degree days and the calendar days are what they are; null where the table says it. */
  readonly why: string | null;
}

/**
 * Stages of a crop of ours whose stage lengths are left out.
 *
 * @param plan with its calendar days and its base temperature, on thermal time
 * @param base the file's crop: its sowing day chooses the type, so that cases sown on other days grow the same one
 * @returns undefined where they cannot be, with the problem written down
 */
export function seasonOf(
  part: CropPart,
  base: CropPart,
  { values, heatNeedFitsSite, maturity, harvestAfterDays }: CropDefaults,
  plan: CropPlan,
  { normals, latitudeDeg }: CropPlace,
  path: string,
  notebook: Notebook,
): CropSeason | undefined {
  const { harvest } = part;
  const ripe = harvest === undefined ? (part.ripe ?? null) : daysBefore(harvest, harvestAfterDays);
  const isOwn = part.ripe !== base.ripe || harvest !== base.harvest;
  const sowing = (isOwn ? part.sowing : base.sowing) ?? plan.sowing;
  const factor = part.maturity === undefined || part.maturity === "medium" ? 1 : maturity[part.maturity];
  const isGiven = part.stageDays !== undefined;
  const stages = stagesOfType(plan, {
    sowing,
    factor,
    ripe,
    fitsSite: heatNeedFitsSite,
    ripeByFreeze: heatNeedFitsSite && !isGiven && part.maturity === undefined,
    normals,
    latitudeDeg: isGiven ? null : latitudeDeg,
  });
  if (stages === null) {
    const key = harvest === undefined ? "ripe" : "harvest";
    complain(
      notebook,
      `${path}.${key}`,
      `a day that leaves ${plan.name} sown ${sayMonthDay(sowing)} at least 40 days in spring or summer, within a year`,
      sayMonthDay(harvest ?? ripe ?? sowing),
      "check the day, and the day of sowing",
    );
    return undefined;
  }
  if (ripe !== null) {
    const from =
      harvest === undefined ? "" : `, ${harvestAfterDays} days before harvest (common practice, no source)`;
    return { ...stages, why: `ripe on ${sayMonthDay(ripe)} in a normal year${from}` };
  }
  const days = stages.stageDaysFallback.reduce((sum, one) => sum + one, 0);
  const usualDays = values.stageDaysFallback.value.reduce((sum, one) => sum + one, 0);
  if (factor !== 1) return { ...stages, why: `${part.maturity} type: ${maturity.why} (${maturity.mark})` };
  if (String(stages.stageLengths) === String(values.stageLengths.value)) return { ...stages, why: null };
  const shortened =
    days < usualDays && !isGiven ? ", shorter than usual so that it is ripe before frost" : "";
  return {
    ...stages,
    why: `a type that fills the season here${shortened}: what its calendar days are worth in degree days in a normal year; our choice`,
  };
}

function daysBefore(day: MonthDay, days: number): MonthDay {
  const then = dayInYear(2001, day) - days;
  return { month: monthOf(then), day: dayOfMonth(then) };
}
