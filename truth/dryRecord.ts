/**
 * A dry station record for Akron, of open data only: the rain of the gauge at Byers, Colorado (70 miles off, the same plains), from
 * April to October as it was measured, 1990 to 2003. The gauge tells no winter and no temperatures: those, and days it lacks, are
 * of the same days in the record of western Kansas, temperature shifted and winter rain scaled month by month to the normals
 * of the place. So storms of the season are a gauge's own; winter storms are a basin mean's, which are smoothed.
 */
import { readFileSync } from "node:fs";
import type { Place } from "./places.ts";

interface Day {
  rainMm: number;
  tMaxC: number;
  tMinC: number;
}

const gaugeFile = "weather-daily/byers_co_rain_apr-oct_1990-2019.csv";
const basinFile = "weather-daily/western_kansas_areal_mean_1948-2003.csv";
const isOfGauge = (month: number): boolean => month >= 4 && month <= 10;
const monthOf = (date: string): number => Number(date.slice(5, 7));

/** CSV text of the record, as a user would hand it in. */
export function dryRecord(openData: string, { rainMm, tMaxC, tMinC }: Place): string {
  const gauge = new Map(rowsOf(openData, gaugeFile).map(([date, rain]) => [date!, Number(rain)]));
  const basin = basinDays(openData).filter(([date]) => date >= "1990-01-01");
  const means = monthlyMeans(basin);
  const lines = basin.map(([date, day]) => {
    const month = monthOf(date);
    const usual = means[month - 1]!;
    const rain = isOfGauge(month)
      ? (gauge.get(date) ?? day.rainMm)
      : (day.rainMm * rainMm[month - 1]!) / usual.rainMm;
    const tMax = day.tMaxC + tMaxC[month - 1]! - usual.tMaxC;
    const tMin = day.tMinC + tMinC[month - 1]! - usual.tMinC;
    return recordLine(date, { rainMm: rain, tMaxC: tMax, tMinC: tMin });
  });
  return recordText(lines);
}

/** The record of western Kansas itself. Its storms are smoothed: for climate and long runs. */
export function westernKansasRecord(openData: string): string {
  return recordText(basinDays(openData).map(([date, day]) => recordLine(date, day)));
}

const recordText = (lines: readonly string[]): string =>
  ["date,rain_mm,tmax_C,tmin_C", ...lines, ""].join("\n");

/** Where the time of observation leaves the maximum below the minimum, or a shift does, the two change places. */
function recordLine(date: string, { rainMm, tMaxC, tMinC }: Day): string {
  const [low, high] = tMaxC < tMinC ? [tMaxC, tMinC] : [tMinC, tMaxC];
  return `${date},${rainMm.toFixed(2)},${high.toFixed(2)},${low.toFixed(2)}`;
}

function basinDays(openData: string): [string, Day][] {
  return rowsOf(openData, basinFile).map(([date, rain, tMax, tMin]) => [
    date!,
    { rainMm: Number(rain), tMaxC: Number(tMax), tMinC: Number(tMin) },
  ]);
}

function rowsOf(openData: string, file: string): string[][] {
  const lines = readFileSync(`${openData}/${file}`, "utf8").trim().split(/\r?\n/);
  return lines.slice(1).map((line) => line.split(","));
}

/** Rain is the sum of the mean month, temperatures are means. */
function monthlyMeans(days: readonly [string, Day][]): Day[] {
  const years = new Set(days.map(([date]) => date.slice(0, 4))).size;
  return Array.from({ length: 12 }, (_, m) => {
    const ofMonth = days.filter(([date]) => monthOf(date) === m + 1).map(([, day]) => day);
    const sum = (of: (day: Day) => number) => ofMonth.reduce((total, day) => total + of(day), 0);
    return {
      rainMm: sum((day) => day.rainMm) / years,
      tMaxC: sum((day) => day.tMaxC) / ofMonth.length,
      tMinC: sum((day) => day.tMinC) / ofMonth.length,
    };
  });
}
