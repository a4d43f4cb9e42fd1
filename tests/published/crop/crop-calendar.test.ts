import { describe, expect, test } from "vitest";
import table from "../../../data-reference/crop-sites.json";
import { stagesOfType } from "../../../src/crop/cropCalendar.ts";
import type { CropPlan } from "../../../src/crop/crop.ts";
import { cropCourse } from "../../../src/crop/cropCourse.ts";
import { cropDefaults, defaultPlan, findCrop } from "../../../src/crop/crops.ts";
import { stageHeat } from "../../../src/crop/siteHeat.ts";
import type { DailyWeather, MonthlyNormals } from "../../../src/weather/records/record.ts";
import { placeNamed } from "../../../truth/places.ts";
import {
  lindon,
  monthDayOf,
  normalWeather,
  sowingIndexOf,
  swingingWeather,
  waggaWagga,
} from "../../unit/crop/siteWeather.ts";
import { markOf, recordsOf, sourceOf } from "../weather/records.ts";

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

const harvest = take<string[], [string, string][]>("wheat-harvest");
describe(`${harvest.what} (${markOf(harvest)}), from Texas to Colorado`, () => {
  const wheat = findCrop("winter wheat");
  const usual = defaultPlan(wheat);
  const places = harvest.inputs.map((id, i) => [id, ...harvest.expected[i]!] as const);
  const harvestOn = (plan: CropPlan, weather: DailyWeather): string => {
    const sowing = sowingIndexOf(plan, weather);
    const { maturityDay } = cropCourse(plan, weather, sowing, sowing);
    return monthDayOf(weather, sowing + maturityDay + wheat.harvestAfterDays);
  };
  const sownOn = [
    { month: 9, day: 5 },
    { month: 9, day: 25 },
    { month: 10, day: 25 },
  ];
  const normalsOf = (id: string): MonthlyNormals => ({ ...placeNamed(id), wetDays: null });
  const middleOf = (plan: CropPlan, id: string) =>
    seeds.map((seed) => harvestOn(plan, swingingWeather(normalsOf(id), 4, seed))).sort()[7]!;

  test.each(places)("%s: %s to %s, sown early, usual or late", (id, from, to) => {
    const middle = sownOn.map((sowing) => middleOf({ ...usual, sowing }, id));
    expect(middle.filter((day) => day < from || day > to)).toEqual([]);
  });
  test.each(places)(
    "%s: %s to %s from a record without temperatures, sown early, usual or late",
    (id, from, to) => {
      const latitudeDeg = Number.parseFloat(placeNamed(id).latitude);
      const wishes = {
        factor: 1,
        ripe: null,
        fitsSite: false,
        ripeByFreeze: false,
        normals: null,
        latitudeDeg,
      };
      const blind = { ...normalWeather(normalsOf(id)), hasTemperature: false };
      const days = sownOn.map((sowing) => {
        const stages = stagesOfType(usual, { ...wishes, sowing });
        return harvestOn({ ...usual, ...stages, sowing }, blind);
      });
      expect(days.filter((day) => day < from || day > to)).toEqual([]);
    },
  );
  test("heat counted from sowing on would harvest in May in Texas: the check can fail", () => {
    const sinceSowing: CropPlan = { ...usual, springFrom: null, stageLengths: [330, 930, 390, 330] };
    expect(middleOf(sinceSowing, "bushland") < "06-01").toBe(true);
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
