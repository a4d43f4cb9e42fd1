import { daysInMonth, monthOf, yearOf } from "../../quantity/calendar.ts";
import { wetFromMm } from "./rainChain.ts";
import type { WeatherRecord } from "../records/record.ts";

/** What a record's rain is like: how much of it falls in big storms, how often it rains, how long it does not, how much years differ. */
export interface RainCharacter {
  /** Years (or seasons) with nearly every day: the ones counted below. */
  readonly wholeYears: number;
  /** Mean of the whole years. */
  readonly rainMm: number;
  /** Days with 0.25 mm or more; mean of the whole years. */
  readonly wetDays: number;
  /** Longest run of days below 0.25 mm within the year; mean of the whole years. */
  readonly longestDrySpellDays: number;
  /** Standard deviation of the whole years' totals; null below three years. */
  readonly yearlySdMm: number | null;
  /** Share of the rain on days with more than each of `aboveMm`, over all days measured; 0 to 1. */
  readonly shareAbove: readonly number[];
}

/** Months of the year that are looked at, first and last both in it. */
export interface MonthSpan {
  readonly fromMonth: number;
  readonly toMonth: number;
}

export const wholeYear: MonthSpan = { fromMonth: 1, toMonth: 12 };

/** A year or season with more missing days than this is left out; missing days of the others count as dry. Choice of ours. */
const mostMissingDays = 5;

/**
 * @param record NaN where a day was not measured
 * @param aboveMm daily amounts, mm
 * @param span for a gauge that is read only in some months
 * @returns zeros where there is nothing to count, never NaN
 */
export function rainCharacter(
  { firstDay, days, rainMm }: Pick<WeatherRecord, "firstDay" | "days" | "rainMm">,
  aboveMm: readonly number[],
  { fromMonth, toMonth }: MonthSpan = wholeYear,
): RainCharacter {
  const years = new Map<number, Year>();
  const above = aboveMm.map(() => 0);
  let total = 0;
  for (let day = 0; day < days; day++) {
    const month = monthOf(firstDay + day);
    if (month < fromMonth || month > toMonth) continue;
    const of = yearOf(firstDay + day);
    let year = years.get(of);
    if (year === undefined) years.set(of, (year = newYear()));
    const mm = rainMm[day]!;
    if (Number.isNaN(mm)) {
      year.run++;
    } else {
      year.measured++;
      year.rainMm += mm;
      total += mm;
      for (const [at, least] of aboveMm.entries()) if (mm > least) above[at]! += mm;
      if (mm >= wetFromMm) {
        year.wetDays++;
        year.run = 0;
      } else year.run++;
    }
    year.longest = Math.max(year.longest, year.run);
  }
  const whole = [...years]
    .filter(([year, { measured }]) => daysOfSpan(year, fromMonth, toMonth) - measured <= mostMissingDays)
    .map(([, year]) => year);
  const totals = whole.map((year) => year.rainMm);
  return {
    wholeYears: whole.length,
    rainMm: meanOf(totals),
    wetDays: meanOf(whole.map(({ wetDays }) => wetDays)),
    longestDrySpellDays: meanOf(whole.map(({ longest }) => longest)),
    yearlySdMm: totals.length < 3 ? null : sampleSd(totals),
    shareAbove: above.map((mm) => (total > 0 ? mm / total : 0)),
  };
}

interface Year {
  measured: number;
  rainMm: number;
  wetDays: number;
  run: number;
  longest: number;
}

const newYear = (): Year => ({ measured: 0, rainMm: 0, wetDays: 0, run: 0, longest: 0 });

function daysOfSpan(year: number, fromMonth: number, toMonth: number): number {
  let sum = 0;
  for (let month = fromMonth; month <= toMonth; month++) sum += daysInMonth(year, month);
  return sum;
}

function meanOf(values: readonly number[]): number {
  return values.length === 0 ? 0 : values.reduce((sum, value) => sum + value, 0) / values.length;
}

function sampleSd(values: readonly number[]): number {
  const centre = meanOf(values);
  return Math.sqrt(values.reduce((sum, value) => sum + (value - centre) ** 2, 0) / (values.length - 1));
}
