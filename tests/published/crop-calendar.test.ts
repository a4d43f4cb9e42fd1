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
} from "../unit/crop/siteWeather.ts";

const calendar = table.records.find(({ id }) => id === "plains-calendar") as unknown as {
  expected: [[string, string], [string, string]];
};
const [wheatRipe, sorghumRipe] = calendar.expected;

const seeds = Array.from({ length: 15 }, (_, i) => i + 1);

const ripeOn = (crop: string, weather: DailyWeather): string => {
  const plan = defaultPlan(findCrop(crop));
  const sowing = sowingIndexOf(plan, weather);
  return monthDayOf(weather, sowing + cropCourse(plan, weather, sowing, sowing).maturityDay);
};

describe("when crops are ripe at about 40 N on the plains (common practice, no source)", () => {
  test.each([
    ["winter wheat", ...wheatRipe],
    ["grain sorghum", ...sorghumRipe],
  ])("%s: %s to %s in a normal year, and in the middle one of fifteen that swing", (crop, from, to) => {
    const normal = ripeOn(crop, normalWeather(lindon));
    const swinging = seeds.map((seed) => ripeOn(crop, swingingWeather(lindon, 4, seed))).sort()[7]!;
    expect([normal, swinging].filter((ripe) => ripe < from || ripe > to)).toEqual([]);
  });
});

describe("the table's degree days are its calendar days at Lindon's normals (CL-01, read), to the 5 they are rounded to", () => {
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
