import { refuse } from "../../problem.ts";
import {
  dayInYear,
  dayNumber,
  daysInMonth,
  monthOf,
  yearOf,
  type MonthDay,
} from "../../quantity/calendar.ts";
import { gapsOf, type Gap } from "./gaps.ts";
import { arrayOf, elementNames, elements, type Element } from "./readers/element.ts";
import type { MonthlyNormals, StationInfo, WeatherRecord } from "./record.ts";

/** What a record holds, for the `weather` command. Nothing in it is filled or estimated unless said. */
export interface Holdings {
  readonly station: StationInfo;
  readonly firstDay: number;
  readonly lastDay: number;
  readonly days: number;
  readonly elements: readonly ElementHolding[];
  /** Calendar years touched, in order. */
  readonly years: readonly YearHolding[];
  /** Years with rain, and temperatures where the record has them, on every day. */
  readonly completeYears: readonly number[];
  readonly season: SeasonHolding | null;
  readonly monthly: MonthlyMeans;
  readonly notes: readonly string[];
}

export interface ElementHolding {
  readonly element: Element;
  readonly words: string;
  readonly unit: string;
  readonly missingDays: number;
  readonly gaps: readonly Gap[];
  readonly longestGapDays: number;
}

export interface PeriodTotal {
  /** Calendar year; of a season over the new year, the one it ends in. */
  readonly year: number;
  /** Days of the period within the record. */
  readonly days: number;
  readonly missingRainDays: number;
  /** Sum of the days that have a figure; low where some are missing. */
  readonly rainMm: number;
}

export interface YearHolding extends PeriodTotal {
  /** Whole year within the record, no rain or temperature missing. */
  readonly complete: boolean;
}

export interface SeasonWindow {
  readonly from: MonthDay;
  /** Included. Before `from` in the calendar: the season crosses the new year. */
  readonly to: MonthDay;
}

export interface SeasonHolding {
  readonly window: SeasonWindow;
  /** Seasons wholly within the record. */
  readonly totals: readonly PeriodTotal[];
}

/** January first; null for a month of which the record has no year with four fifths of its days. */
export interface MonthlyMeans {
  readonly rainMm: readonly (number | null)[];
  readonly wetDays: readonly (number | null)[];
  /** Null where the record has no temperatures. */
  readonly tMaxC: readonly (number | null)[] | null;
  readonly tMinC: readonly (number | null)[] | null;
}

/** A day with as much rain counts as wet (0.01 in, the gauge's step). */
export const wetDayMm = 0.25;

export function describeHoldings(record: WeatherRecord, season: SeasonWindow | null = null): Holdings {
  const { firstDay, days, station, notes } = record;
  const lastDay = firstDay + days - 1;
  const years = yearsOf(record);
  return {
    station,
    firstDay,
    lastDay,
    days,
    elements: elementNames
      .filter((element) => arrayOf(record, element) !== null)
      .map((element) => holdingOf(record, element)),
    years,
    completeYears: years.filter(({ complete }) => complete).map(({ year }) => year),
    season: season === null ? null : { window: season, totals: seasonTotals(record, season) },
    monthly: monthlyMeans(record),
    notes,
  };
}

function holdingOf(record: WeatherRecord, element: Element): ElementHolding {
  const gaps = gapsOf(record, element);
  return {
    element,
    words: elements[element].words,
    unit: elements[element].unit,
    missingDays: gaps.reduce((sum, { days }) => sum + days, 0),
    gaps,
    longestGapDays: gaps.reduce((most, { days }) => Math.max(most, days), 0),
  };
}

function yearsOf(record: WeatherRecord): YearHolding[] {
  const lastDay = record.firstDay + record.days - 1;
  const years: YearHolding[] = [];
  for (let year = yearOf(record.firstDay); year <= yearOf(lastDay); year++) {
    const first = dayNumber(year, 1, 1);
    const last = dayNumber(year, 12, 31);
    const total = totalOver(record, Math.max(first, record.firstDay), Math.min(last, lastDay), year);
    const whole = first >= record.firstDay && last <= lastDay && total.missingRainDays === 0;
    const warm = [record.tMaxC, record.tMinC].every(
      (values) => values === null || noneMissing(values, first - record.firstDay, last - record.firstDay),
    );
    years.push({ ...total, complete: whole && warm });
  }
  return years;
}

function noneMissing(values: Float64Array, first: number, last: number): boolean {
  for (let day = Math.max(0, first); day <= last && day < values.length; day++)
    if (Number.isNaN(values[day]!)) return false;
  return true;
}

/** Rain of each season that lies wholly within the record. */
export function seasonTotals(record: WeatherRecord, { from, to }: SeasonWindow): PeriodTotal[] {
  const lastDay = record.firstDay + record.days - 1;
  const overNewYear = from.month * 100 + from.day > to.month * 100 + to.day;
  const totals: PeriodTotal[] = [];
  for (let year = yearOf(record.firstDay); year <= yearOf(lastDay); year++) {
    const first = dayInYear(overNewYear ? year - 1 : year, from);
    const last = dayInYear(year, to);
    if (first >= record.firstDay && last <= lastDay) totals.push(totalOver(record, first, last, year));
  }
  return totals;
}

function totalOver(
  { firstDay, rainMm }: WeatherRecord,
  first: number,
  last: number,
  year: number,
): PeriodTotal {
  let sum = 0;
  let missing = 0;
  for (let day = first; day <= last; day++) {
    const rain = rainMm[day - firstDay]!;
    if (Number.isNaN(rain)) missing++;
    else sum += rain;
  }
  return { year, days: last - first + 1, missingRainDays: missing, rainMm: sum };
}

function monthlyMeans(record: WeatherRecord): MonthlyMeans {
  const wet = record.rainMm.map((rain) => (Number.isNaN(rain) ? NaN : Number(rain >= wetDayMm)));
  return {
    rainMm: meansByMonth(record, record.rainMm, "total"),
    wetDays: meansByMonth(record, wet, "total"),
    tMaxC: record.tMaxC === null ? null : meansByMonth(record, record.tMaxC, "mean"),
    tMinC: record.tMinC === null ? null : meansByMonth(record, record.tMinC, "mean"),
  };
}

/** A month of a year counts when this share of its days has a figure; a total is then scaled to the whole month. */
const enoughOfMonth = 0.8;

/** For each month of the calendar, the mean over the years of its total or mean. */
function meansByMonth(
  { firstDay, days }: WeatherRecord,
  values: Float64Array,
  kind: "total" | "mean",
): (number | null)[] {
  const sums = new Float64Array(12);
  const years = new Float64Array(12);
  let day = 0;
  while (day < days) {
    const month = monthOf(firstDay + day);
    const length = daysInMonth(yearOf(firstDay + day), month);
    let sum = 0;
    let held = 0;
    for (; day < days && monthOf(firstDay + day) === month; day++) {
      if (Number.isNaN(values[day]!)) continue;
      sum += values[day]!;
      held++;
    }
    if (held < enoughOfMonth * length) continue;
    sums[month - 1]! += kind === "total" ? (sum * length) / held : sum / held;
    years[month - 1]!++;
  }
  return Array.from(sums, (sum, month) => (years[month] === 0 ? null : sum / years[month]!));
}

/**
 * Monthly normals from a record: means over its years, a month counting in each year that has four fifths of its days.
 * Refuses a record without temperatures, or that lacks a month of the calendar.
 */
export function monthlyNormalsOf(record: WeatherRecord): MonthlyNormals {
  const { rainMm, wetDays, tMaxC, tMinC } = monthlyMeans(record);
  return {
    rainMm: inEveryMonth(rainMm, "rain"),
    wetDays: inEveryMonth(wetDays, "rain"),
    tMaxC: inEveryMonth(tMaxC, elements.tMaxC.words),
    tMinC: inEveryMonth(tMinC, elements.tMinC.words),
  };
}

function inEveryMonth(means: readonly (number | null)[] | null, words: string): number[] {
  const held = (means ?? []).filter((mean) => mean !== null);
  if (held.length === 12) return held;
  const lacking = (means ?? []).flatMap((mean, month) => (mean === null ? [month + 1] : []));
  return refuse(
    "weather",
    `${words} in every month of the year, to make monthly normals`,
    means === null ? "no such element" : `none in month ${lacking.join(", ")}`,
    "give a record of a whole year or more, or state weather.monthlyNormals",
  );
}
