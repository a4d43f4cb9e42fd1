import { dayInYear, dayOfMonth, monthOf, yearOf } from "../../quantity/calendar.ts";
import type { DailyWeather } from "../../weather/records/record.ts";

/** A year of the record that may bring the rest of a season. */
export interface OtherYear {
  /** Calendar year of the first day that is taken from it. */
  readonly year: number;
  /** Index in the record of the first day that is taken from it. */
  readonly thenIndex: number;
}

/**
 * The years of a record but the season's own, each with the day that follows the season's last known day there: the same day
 * of the calendar, so that years begin aligned whatever leap days lie before. After February 29 follows March 1; where the
 * next day is a February 29, other years begin with their 28th.
 *
 * @param lastDay day number of the last day known of the season under way
 */
export function otherYears(weather: DailyWeather, lastDay: number): OtherYear[] {
  const next = lastDay + 1;
  const monthDay = { month: monthOf(next), day: dayOfMonth(next) };
  const found: OtherYear[] = [];
  const last = yearOf(weather.firstDay + weather.days - 1);
  for (let year = yearOf(weather.firstDay); year <= last; year++) {
    const thenIndex = dayInYear(year, monthDay) - weather.firstDay;
    if (year !== yearOf(next) && thenIndex >= 0 && thenIndex < weather.days) found.push({ year, thenIndex });
  }
  return found;
}

/**
 * The record up to a day, then its days from another on, one after the other as they came: none is left out or taken twice, so
 * beyond a February 29 of one of the two they lie a day apart in the calendar.
 *
 * @param lastIndex of the last day kept
 * @param thenIndex of the first day that follows it; `lastIndex + 1` gives the record itself
 * @param mostDays that follow; fewer where the record ends
 */
export function spliced(
  weather: DailyWeather,
  lastIndex: number,
  thenIndex: number,
  mostDays: number,
): DailyWeather {
  const kept = lastIndex + 1;
  const end = Math.min(weather.days, thenIndex + mostDays);
  const days = kept + end - thenIndex;
  const join = (values: Float64Array): Float64Array => {
    const all = new Float64Array(days);
    all.set(values.subarray(0, kept));
    all.set(values.subarray(thenIndex, end), kept);
    return all;
  };
  // Field by field: the daily loop is compiled for one layout of this object.
  return {
    firstDay: weather.firstDay,
    days,
    rainMm: join(weather.rainMm),
    tMaxC: join(weather.tMaxC),
    tMinC: join(weather.tMinC),
    tMeanC: join(weather.tMeanC),
    et0Mm: join(weather.et0Mm),
    rhMinPercent: join(weather.rhMinPercent),
    wind2mMPerS: join(weather.wind2mMPerS),
    hasTemperature: weather.hasTemperature,
    referenceEt: weather.referenceEt,
    notes: weather.notes,
  };
}
