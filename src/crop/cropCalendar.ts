import { dayInYear, type MonthDay } from "../quantity/calendar.ts";
import type { MonthlyAir } from "../weather/records/record.ts";
import type { CropPlan } from "./crop.ts";
import { firstFreezeDay, stageHeat, stageHeatOfYears } from "./siteHeat.ts";
import { waitDays, type StageLengths } from "./stages.ts";

/** How long a type takes in the trade's words; medium is the type of the crop table. */
export const maturityNames = ["early", "medium", "full"] as const;
export type Maturity = (typeof maturityNames)[number];

export interface CalendarWishes {
  /** Of the type, which is the same in cases sown on other days. */
  readonly sowing: MonthDay;
  /** Days to maturity against the medium type. */
  readonly factor: number;
  /** Day on which it is ripe in a normal year; null = as the type takes. */
  readonly ripe: MonthDay | null;
  /** Growers choose a type that fills the season of their place. */
  readonly fitsSite: boolean;
  /** Sown late, they choose one that is ripe before the usual first freeze. */
  readonly ripeByFreeze: boolean;
  readonly normals: MonthlyAir | null;
  /** Null where the place is not known. */
  readonly latitudeDeg: number | null;
}

export type StagesOfType = Pick<CropPlan, "stageLengths" | "stageDaysFallback">;

/** Any year will do that is no leap year and is followed by none. */
const someYear = 2001;
/** Less is left of no crop's season between spring or sowing and ripeness. Ours. */
const shortestDays = 40;
const longestDays = 345;

/**
 * Stages of a type in degree days and in calendar days: of the usual length, of an early or a full type, or such that a normal
 * year ripens it on a given day. Null where that day leaves no season.
 *
 * @param usual the crop as it stands in the table, on thermal time
 */
export function stagesOfType(usual: CropPlan, wishes: CalendarWishes): StagesOfType | null {
  const { sowing, ripe, normals, fitsSite, ripeByFreeze, factor } = wishes;
  const sowingDay = dayInYear(someYear, sowing);
  const wait = waitDays(usual, sowingDay);
  const table = atLatitude(usual, wishes.latitudeDeg);
  // The stages that the type shortens or lengthens: a winter crop's first lasts to spring whatever the type.
  const from = wait > 0 ? 1 : 0;
  const usualDays = total(table, from);
  let days = usualDays * factor;
  if (ripe !== null) {
    const ripeDay = dayInYear(someYear, ripe);
    const length = (ripeDay > sowingDay ? ripeDay : dayInYear(someYear + 1, ripe)) - sowingDay + 1;
    days = length - wait;
    if (days < shortestDays || length > longestDays) return null;
  } else if (ripeByFreeze && normals !== null) {
    days = Math.min(days, daysBeforeFreeze(sowing, normals, usualDays));
  }
  const stageDaysFallback = scaled(table, days / usualDays, from);
  const byDays = total(stageDaysFallback, from) / total(usual.stageDaysFallback, from);
  const without = ripe === null && !fitsSite ? factor : byDays;
  const inProportion = scaled(usual.stageLengths, without, from);
  if (normals === null || (ripe === null && !fitsSite))
    return { stageDaysFallback, stageLengths: inProportion };
  const heat = (ripe === null ? stageHeat : stageHeatOfYears)(
    wait > 0 ? [0, stageDaysFallback[1], stageDaysFallback[2], stageDaysFallback[3]] : stageDaysFallback,
    wait > 0 && usual.springFrom !== null ? usual.springFrom : sowing,
    usual.baseC,
    normals,
  );
  if (heat.slice(from).some((one) => one <= 0)) return { stageDaysFallback, stageLengths: inProportion };
  return {
    stageDaysFallback,
    stageLengths: wait > 0 ? [usual.stageLengths[0], heat[1], heat[2], heat[3]] : heat,
  };
}

/**
 * Days from sowing to the usual first killing freeze, but not below three quarters of the usual season: shorter types are not
 * sold. Both ours.
 */
function daysBeforeFreeze(sowing: MonthDay, normals: MonthlyAir, usualDays: number): number {
  const from = dayInYear(someYear, sowing);
  const freeze = firstFreezeDay(from, normals);
  return freeze === null ? Infinity : Math.max(freeze - from, 0.75 * usualDays);
}

/** The calendar days of winter crops in the table hold at about this latitude, that of Lindon, Colorado. */
const tableLatitudeDeg = 39.75;
/** Spring comes 4 days later for each degree poleward. Source: [Hopkins 1938] USDA Misc. Publ. 280 (memory). */
const daysPerDegree = 4;

/** Without temperatures nothing tells how early spring is but the latitude. */
function atLatitude({ springFrom, stageDaysFallback }: CropPlan, latitudeDeg: number | null): StageLengths {
  if (springFrom === null || latitudeDeg === null) return stageDaysFallback;
  const [initial, development, mid, late] = stageDaysFallback;
  const later = Math.round(daysPerDegree * (Math.abs(latitudeDeg) - tableLatitudeDeg));
  return [initial, Math.max(shortestDays - mid, development + later), mid, late];
}

function total(lengths: StageLengths, from: number): number {
  return lengths.slice(from).reduce((sum, length) => sum + length, 0);
}

/** Whole numbers that add up to the whole number nearest the scaled sum. */
function scaled(lengths: StageLengths, factor: number, from: number): StageLengths {
  if (factor === 1) return lengths;
  let exact = 0;
  let given = 0;
  const one = (stage: number): number => {
    if (stage < from) return lengths[stage]!;
    exact += lengths[stage]! * factor;
    const rounded = Math.round(exact) - given;
    given += rounded;
    return rounded;
  };
  return [one(0), one(1), one(2), one(3)];
}
