import { daysInMonth, monthOf } from "../../quantity/calendar.ts";
import { wetFromMm } from "./rainChain.ts";
import type { MonthlyNormals, WeatherRecord } from "../records/record.ts";

/** Twelve values each, January first; null where a month was never measured. */
export interface RecordNormals {
  readonly rainMm: readonly (number | null)[];
  readonly wetDays: readonly (number | null)[];
  readonly tMaxC: readonly (number | null)[];
  readonly tMinC: readonly (number | null)[];
}

/** A month counts from this many measured days on, over all years. Choice of ours. */
const leastDays = 25;

/** Monthly normals of a record: the mean of its measured days times the length of the month. */
export function recordNormals(
  record: Pick<WeatherRecord, "firstDay" | "days" | "rainMm" | "tMaxC" | "tMinC">,
): RecordNormals {
  const rain = monthlyMeans(record, record.rainMm, (mm) => mm);
  const wet = monthlyMeans(record, record.rainMm, (mm) => (mm >= wetFromMm ? 1 : 0));
  const times = (means: (number | null)[]) =>
    means.map((mean, month) => (mean === null ? null : mean * lengthOf(month)));
  return {
    rainMm: times(rain),
    wetDays: times(wet),
    tMaxC: monthlyMeans(record, record.tMaxC, (celsius) => celsius),
    tMinC: monthlyMeans(record, record.tMinC, (celsius) => celsius),
  };
}

/** The record's normals, and another place's where it has none. */
export function filledNormals(own: RecordNormals, standIn: MonthlyNormals): MonthlyNormals {
  const fill = (values: readonly (number | null)[], others: readonly number[]) =>
    values.map((value, month) => value ?? others[month]!);
  return {
    rainMm: fill(own.rainMm, standIn.rainMm),
    wetDays: fill(own.wetDays, standIn.wetDays ?? Array<number>(12).fill(0)), // 0 with rain goes by the assumption
    tMaxC: fill(own.tMaxC, standIn.tMaxC),
    tMinC: fill(own.tMinC, standIn.tMinC),
  };
}

function lengthOf(month: number): number {
  return month === 1 ? 28.25 : daysInMonth(2001, month + 1);
}

function monthlyMeans(
  { firstDay, days }: Pick<WeatherRecord, "firstDay" | "days">,
  values: Float64Array | null,
  counted: (value: number) => number,
): (number | null)[] {
  const months = Array.from({ length: 12 }, () => ({ sum: 0, days: 0 }));
  for (let day = 0; day < days; day++) {
    const value = values?.[day] ?? Number.NaN;
    if (Number.isNaN(value)) continue;
    const month = months[monthOf(firstDay + day) - 1]!;
    month.sum += counted(value);
    month.days++;
  }
  return months.map(({ sum, days: measured }) => (measured < leastDays ? null : sum / measured));
}
