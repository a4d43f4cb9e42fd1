import { describe, expect, test } from "vitest";
import table from "../../data-reference/crop-sites.json";
import { cropCourse } from "../../src/crop/cropCourse.ts";
import { cropDefaults, defaultPlan, findCrop } from "../../src/crop/crops.ts";
import { stageHeat } from "../../src/crop/siteHeat.ts";
import type { DailyWeather } from "../../src/weather/record.ts";
import {
  lindon,
  monthDayOf,
  normalWeather,
  sowingIndexOf,
  swingingWeather,
  waggaWagga,
} from "../unit/crop/siteWeather.ts";
import { markOf, recordsOf, sourceOf } from "./records.ts";

const { take, noneLeft } = recordsOf(table.records);
const calendar = take<string[], [[string, string], [string, string]]>("plains-calendar");
const [wheatRipe, sorghumRipe] = calendar.expected;

const seeds = Array.from({ length: 15 }, (_, i) => i + 1);

const ripeOn = (crop: string, weather: DailyWeather): string => {
  const plan = defaultPlan(findCrop(crop));
  const sowing = sowingIndexOf(plan, weather);
  return monthDayOf(weather, sowing + cropCourse(plan, weather, sowing, sowing).maturityDay);
};

describe(`${calendar.what} (${markOf(calendar)})`, () => {
  test.each([
    ["winter wheat", ...wheatRipe],
    ["grain sorghum", ...sorghumRipe],
  ])("%s: %s to %s in a normal year, and in the middle one of fifteen that swing", (crop, from, to) => {
    const normal = ripeOn(crop, normalWeather(lindon));
    const swinging = seeds.map((seed) => ripeOn(crop, swingingWeather(lindon, 4, seed))).sort()[7]!;
    expect([normal, swinging].filter((ripe) => ripe < from || ripe > to)).toEqual([]);
  });
});

/** The places the tests stand on are the records, not copies of them. */
const lindonNormals = take<null, { tMaxF: number[]; tMinF: number[]; rainIn: number[]; rainInYear: number }>(
  "CL-01",
);
const waggaRange = take<null, { tMaxC: [number, number]; tMinC: [number, number] }>("CL-07");
test(`${sourceOf(lindonNormals)} (${markOf(lindonNormals)}): twelve months, and the year's rain is their sum`, () => {
  const { tMaxF, tMinF, rainIn, rainInYear } = lindonNormals.expected;
  expect([tMaxF, tMinF, rainIn].map(({ length }) => length)).toEqual([12, 12, 12]);
  expect(Math.abs(rainIn.reduce((sum, inches) => sum + inches, 0) - rainInYear)).toBeLessThanOrEqual(0.06);
  lindon.tMaxC.forEach((c, month) => expect(c * 1.8 + 32).toBeCloseTo(tMaxF[month]!, 9));
  lindon.tMinC.forEach((c, month) => expect(c * 1.8 + 32).toBeCloseTo(tMinF[month]!, 9));
});
test(`${sourceOf(waggaRange)} (${markOf(waggaRange)}): the coldest and the warmest month`, () => {
  const ends = (monthly: readonly number[]) => [Math.min(...monthly), Math.max(...monthly)];
  for (const which of ["tMaxC", "tMinC"] as const) {
    const off = ends(waggaWagga[which]).map((c, i) => Math.abs(c - waggaRange.expected[which][i]!));
    expect(Math.max(...off)).toBeLessThanOrEqual(waggaRange.tolerance);
  }
});

describe(`the table's degree days are its calendar days at Lindon's normals (${lindonNormals.id}, ${markOf(lindonNormals)}), to the 5 they are rounded to`, () => {
  const taken = cropDefaults.filter(({ values }) =>
    values.stageLengths.why.includes("calendar days turned into"),
  );
  test("seven crops", () => expect(taken.length).toBe(7));
  test.each(taken.map((crop) => [crop.name, defaultPlan(crop)] as const))("%s", (_, plan) => {
    const heat = stageHeat(plan.stageDaysFallback, plan.sowing, plan.baseC, lindon);
    plan.stageLengths.forEach((length, stage) =>
      expect(Math.abs(length - heat[stage]!)).toBeLessThanOrEqual(3),
    );
  });
});

noneLeft();
