import sites from "../../../data-reference/crop-sites.json";
import type { CropPlan } from "../../../src/crop/crop.ts";
import { normalMeanC } from "../../../src/crop/siteHeat.ts";
import { dayInYear, dayNumber, isoDate } from "../../../src/quantity/calendar.ts";
import type { DailyWeather, MonthlyNormals } from "../../../src/weather/records/record.ts";

const firstDay = dayNumber(2001, 1, 1);

function site(id: string): { expected: Record<string, number[]> } {
  const found = sites.records.find((record) => record.id === id);
  if (!found) throw new Error(`no site ${id}`);
  return found as unknown as { expected: Record<string, number[]> };
}

/** Lindon, Colorado, 40 N on the High Plains. */
export const lindon: MonthlyNormals = {
  rainMm: [],
  wetDays: null,
  tMaxC: site("CL-01").expected.tMaxF!.map((f) => (f - 32) / 1.8),
  tMinC: site("CL-01").expected.tMinF!.map((f) => (f - 32) / 1.8),
};

/** Wagga Wagga, New South Wales: a cosine through the months' ends of the range, warmest in January. */
export const waggaWagga: MonthlyNormals = {
  rainMm: [],
  wetDays: null,
  tMaxC: yearly(site("CL-07").expected.tMaxC!),
  tMinC: yearly(site("CL-07").expected.tMinC!),
};

function yearly([coldest, warmest]: number[]): number[] {
  const middle = (warmest! + coldest!) / 2;
  return Array.from(
    { length: 12 },
    (_, m) => middle + ((warmest! - coldest!) / 2) * Math.cos((m * Math.PI) / 6),
  );
}

/** Weather of a given length from 1 January 2001, every element level but the mean temperature. */
export function weatherOf(meanC: (day: number) => number, days = 800, hasTemperature = true): DailyWeather {
  const level = (value: number): Float64Array => new Float64Array(days).fill(value);
  const tMeanC = level(0).map((_, i) => meanC(firstDay + i));
  return {
    firstDay,
    days,
    rainMm: level(1),
    tMaxC: tMeanC.map((c) => c + 8),
    tMinC: tMeanC.map((c) => c - 8),
    tMeanC,
    et0Mm: level(4),
    rhMinPercent: level(45),
    wind2mMPerS: level(2),
    hasTemperature,
    referenceEt: "level",
    notes: [],
  };
}

export const normalWeather = (normals: MonthlyNormals): DailyWeather =>
  weatherOf((day) => normalMeanC(day, normals));

/** Normals with slow swings about them: an autoregressive series, the same for a seed. */
export function swingingWeather(normals: MonthlyNormals, swingC: number, seed: number): DailyWeather {
  let state = seed * 2654435761;
  const uniform = (): number => {
    state = (state * 1664525 + 1013904223) % 4294967296;
    return (state + 1) / 4294967297;
  };
  let swing = 0;
  return weatherOf((day) => {
    const gauss = Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
    swing = 0.65 * swing + Math.sqrt(1 - 0.65 ** 2) * gauss;
    return normalMeanC(day, normals) + swingC * swing;
  });
}

export function sowingIndexOf(plan: CropPlan, weather: DailyWeather): number {
  return dayInYear(2001, plan.sowing) - weather.firstDay;
}

/** `06-30` of a day of the record. */
export function monthDayOf(weather: DailyWeather, index: number): string {
  return isoDate(weather.firstDay + index).slice(5);
}
