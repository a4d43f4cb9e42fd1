import { expect, test } from "vitest";
import { shownYield } from "../../../src/answer/comparison/yieldUnits.ts";

test("56 lb/bu: 1 bu/ac is 62.77 kg/ha (common practice)", () => {
  const { unit, factor } = shownYield({ us: "bu/ac", kgPerUsUnit: 56 * 0.45359237 }, "us");
  expect(unit).toBe("bu/ac");
  expect(1 / factor).toBeCloseTo(62.77, 2);
});

test("1 lb/ac is 1.1209 kg/ha", () => {
  expect(1 / shownYield({ us: "lb/ac", kgPerUsUnit: 0.45359237 }, "us").factor).toBeCloseTo(1.12085, 5);
});

test("metric is kg/ha as it is", () => {
  expect(shownYield({ us: "bu/ac", kgPerUsUnit: 25.4 }, "metric")).toEqual({ unit: "kg/ha", factor: 1 });
});
