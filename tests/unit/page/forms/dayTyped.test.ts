import { expect, test } from "vitest";
import { tryDate, tryMonthDay } from "../../../../src/quantity/dates.ts";
import { dayTyped, fallowUnit, isDay } from "../../../../web/forms/dayTyped.ts";

test.each([
  ["6/1", "us", "Jun 1"],
  ["6/1", "metric", "Jan 6"],
  ["1.6.", "metric", "Jun 1"],
  ["06/01/2024", "us", "2024-06-01"],
  ["1/6/2024", "metric", "2024-06-01"],
  ["13/1", "us", "13/1"],
  ["Jun 1", "us", "Jun 1"],
  ["2024-06-01", "us", "2024-06-01"],
  ["6/", "us", "6/"],
] as const)("%s in %s units is %s", (typed, units, day) => expect(dayTyped(typed, units)).toBe(day));

test("what comes of it can be read", () => {
  expect(tryMonthDay(dayTyped("6/1", "us"))).toEqual({ month: 6, day: 1 });
  expect(tryDate(dayTyped("6/1/2024", "us"))).toBe(tryDate("2024-06-01"));
});

test("only places of a day are read so", () => {
  for (const path of ["crop.sowing", "rotation[1].ripe", "evidence.rootDepths[0].date", "soil.waterMeasured"])
    expect(isDay(path), path).toBe(true);
  for (const path of ["crop.sowingDepth", "name", "weather.units"]) expect(isDay(path), path).toBe(false);
});

test("a fallow of 11 is months, of 330 days", () => {
  expect(fallowUnit("11")).toBe("months");
  expect(fallowUnit("330")).toBe("days");
});
