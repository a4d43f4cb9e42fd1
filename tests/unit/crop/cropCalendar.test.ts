import { describe, expect, test } from "vitest";
import type { CropPlan } from "../../../src/crop/crop.ts";
import { stagesOfType, type CalendarWishes } from "../../../src/crop/cropCalendar.ts";
import { cropCourse } from "../../../src/crop/cropCourse.ts";
import { cropDefaults, defaultPlan, findCrop } from "../../../src/crop/crops.ts";
import { firstFreezeDay, normalMeanC, stageHeat } from "../../../src/crop/siteHeat.ts";
import { dayNumber, dayOfYear, isoDate } from "../../../src/quantity/calendar.ts";
import { yearCourse } from "../../../src/weather/generate/normals.ts";
import type { DailyWeather } from "../../../src/weather/records/record.ts";
import {
  lindon,
  monthDayOf,
  normalWeather,
  sowingIndexOf,
  swingingWeather,
  waggaWagga,
} from "./siteWeather.ts";

const plan = (name: string): CropPlan => defaultPlan(findCrop(name));
const wishes = (usual: CropPlan, more: Partial<CalendarWishes> = {}): CalendarWishes => ({
  sowing: usual.sowing,
  factor: 1,
  ripe: null,
  fitsSite: true,
  ripeByFreeze: true,
  normals: lindon,
  latitudeDeg: null,
  ...more,
});
const ripeOn = (usual: CropPlan, more: Partial<CalendarWishes>, weather: DailyWeather): string => {
  const stages = stagesOfType(usual, wishes(usual, more));
  const sown = { ...usual, ...stages, sowing: more.sowing ?? usual.sowing };
  const sowing = sowingIndexOf(sown, weather);
  return monthDayOf(weather, sowing + cropCourse(sown, weather, sowing, sowing).maturityDay);
};
const total = (lengths: readonly number[]): number => lengths.reduce((sum, one) => sum + one, 0);

describe("a type that fits the site's season", () => {
  const sorghum = plan("grain sorghum");
  test("takes its calendar days in a normal year there", () => {
    const sowing = { month: 11, day: 15 };
    const suited = stagesOfType(sorghum, wishes(sorghum, { sowing, normals: waggaWagga }))!;
    expect(suited.stageLengths).toEqual(
      stageHeat(sorghum.stageDaysFallback, sowing, sorghum.baseC, waggaWagga),
    );
    expect(suited.stageLengths[2]).toBeGreaterThan(1.2 * sorghum.stageLengths[2]);
  });
  test("a crop that growers do not choose by its season, or a site too cold, is left as it is", () => {
    const barley = plan("barley");
    expect(stagesOfType(barley, wishes(barley, { fitsSite: false, ripeByFreeze: false }))).toEqual({
      stageLengths: barley.stageLengths,
      stageDaysFallback: barley.stageDaysFallback,
    });
    const frozen = { ...lindon, tMaxC: lindon.tMaxC.map((c) => c - 30) };
    expect(
      stagesOfType(sorghum, wishes(sorghum, { normals: frozen, ripeByFreeze: false }))?.stageLengths,
    ).toEqual(sorghum.stageLengths);
  });
  test("sown late it is a shorter one, ripe by the usual first freeze, and not below three quarters", () => {
    const freeze = isoDate(firstFreezeDay(dayNumber(2001, 6, 1), lindon)!).slice(5);
    expect(freeze >= "09-25" && freeze <= "10-15").toBe(true);
    const late = { sowing: { month: 6, day: 20 } };
    expect(ripeOn(sorghum, late, normalWeather(lindon)) <= freeze).toBe(true);
    expect(ripeOn(sorghum, { ...late, ripeByFreeze: false }, normalWeather(lindon)) > freeze).toBe(true);
    const latest = stagesOfType(sorghum, wishes(sorghum, { sowing: { month: 8, day: 20 } }))!;
    expect(total(latest.stageDaysFallback)).toBe(Math.round(0.75 * 125));
  });
});

describe("early, medium and full", () => {
  const ripening = cropDefaults.filter(({ name }) => name !== "perennial grass");
  test.each(ripening.map((crop) => [crop.name, crop] as const))(
    "%s: ripe in that order, days and degree days alike",
    (_, crop) => {
      const usual = defaultPlan(crop);
      const { early, full } = crop.maturity;
      const of = (factor: number) =>
        stagesOfType(usual, wishes(usual, { factor, fitsSite: crop.heatNeedFitsSite, ripeByFreeze: false }))!;
      const types = [of(early), of(1), of(full)];
      for (const lengths of [
        types.map(({ stageDaysFallback }) => total(stageDaysFallback)),
        types.map(({ stageLengths }) => total(stageLengths)),
      ])
        expect(lengths[0]! < lengths[1]! && lengths[1]! < lengths[2]!, String(lengths)).toBe(true);
    },
  );
  test("early corn is ripe two weeks before medium corn", () => {
    const corn = plan("corn");
    const days = (factor: number) =>
      total(stagesOfType(corn, wishes(corn, { factor, ripeByFreeze: false }))!.stageDaysFallback);
    expect([days(0.9), days(1), days(1.1)]).toEqual([126, 140, 154]);
  });
});

const seeds = Array.from({ length: 15 }, (_, i) => i + 1);

/** Days that swing by 4 C about a course whose months have Lindon's means. */
function yearsAboutMeans(seed: number): DailyWeather {
  const { ordinary } = yearCourse(lindon.tMaxC.map((c, month) => (c + lindon.tMinC[month]!) / 2));
  const weather = swingingWeather(lindon, 4, seed);
  const tMeanC = weather.tMeanC.map((c, i) => {
    const day = weather.firstDay + i;
    return c - normalMeanC(day, lindon) + ordinary[dayOfYear(day) - 1]!;
  });
  return { ...weather, tMeanC };
}

describe("ripe on a day", () => {
  test.each([
    ["corn", { month: 9, day: 10 }, "09-10"],
    ["grain sorghum", { month: 9, day: 25 }, "09-25"],
    ["barley", { month: 7, day: 20 }, "07-20"],
    ["winter wheat", { month: 6, day: 10 }, "06-10"],
  ])(
    "%s: the middle one of fifteen years ripens it within three days, calendar days exactly",
    (name, ripe, said) => {
      const usual = plan(name);
      const years = seeds.map((seed) => ripeOn(usual, { ripe, fitsSite: false }, yearsAboutMeans(seed)));
      const day = dayNumber(2001, ripe.month, ripe.day);
      const near = [-3, -2, -1, 0, 1, 2, 3].map((days) => isoDate(day + days).slice(5));
      expect(near).toContain(years.sort()[7]);
      const blind = { ...normalWeather(lindon), hasTemperature: false };
      expect(ripeOn(usual, { ripe, fitsSite: false }, blind)).toBe(said);
    },
  );
  test("the first stage of winter wheat still lasts to spring", () => {
    const wheat = plan("winter wheat");
    const stages = stagesOfType(wheat, wishes(wheat, { ripe: { month: 6, day: 10 }, fitsSite: false }))!;
    expect(stages.stageLengths[0]).toBe(wheat.stageLengths[0]);
    expect(stages.stageDaysFallback[0]).toBe(wheat.stageDaysFallback[0]);
  });
  test("a day that leaves no season is none", () => {
    const corn = plan("corn");
    expect(stagesOfType(corn, wishes(corn, { ripe: { month: 6, day: 1 } }))).toBeNull();
    expect(stagesOfType(corn, wishes(corn, { ripe: { month: 5, day: 9 } }))).toBeNull();
    const wheat = plan("winter wheat");
    expect(stagesOfType(wheat, wishes(wheat, { ripe: { month: 3, day: 20 } }))).toBeNull();
  });
});

test("without temperatures winter wheat is ripe four days earlier for each degree south", () => {
  const wheat = plan("winter wheat");
  const blind = { ...normalWeather(lindon), hasTemperature: false };
  const at = (latitudeDeg: number | null) =>
    ripeOn(wheat, { latitudeDeg, normals: null, fitsSite: false }, blind);
  expect([at(null), at(39.75), at(38.5), at(35.25), at(-35.25)]).toEqual([
    "07-02",
    "07-02",
    "06-27",
    "06-14",
    "06-14",
  ]);
});
