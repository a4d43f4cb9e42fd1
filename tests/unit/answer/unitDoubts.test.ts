import { describe, expect, test } from "vitest";
import { unitDoubts } from "../../../src/answer/comparison/unitDoubts.ts";
import { mmPerInch } from "../../../src/quantity/constants.ts";
import type { WeatherRecord } from "../../../src/weather/records/record.ts";

const days = 730;
/** Highs between two figures, the warmest in the middle of the year; 1.2 mm of rain a day. */
function recordOf(coldestC: number, warmestC: number, rainMmPerDay = 1.2): WeatherRecord {
  const tMaxC = Float64Array.from({ length: days }, (_, day) => {
    const share = (1 - Math.cos((2 * Math.PI * day) / 365)) / 2;
    return coldestC + share * (warmestC - coldestC);
  });
  return { rainMm: new Float64Array(days).fill(rainMmPerDay), tMaxC } as unknown as WeatherRecord;
}

describe("a record whose unit is doubted", () => {
  test("is none of a place where crops grow, hot or cold", () => {
    expect(unitDoubts(recordOf(8, 34))).toEqual([]);
    expect(unitDoubts(recordOf(-20, 22))).toEqual([]);
    expect(unitDoubts(recordOf(30, 42))).toEqual([]);
  });
  test("holds Celsius under a heading of Fahrenheit", () => {
    const toC = (figure: number) => (figure - 32) / 1.8;
    const [said, ...more] = unitDoubts(recordOf(toC(8), toC(34)));
    expect(said).toMatch(/^Even in the warmest month the highest temperatures are 34 F \(1 C\) on average/);
    expect(more).toEqual([]);
  });
  test("holds Fahrenheit under a heading of Celsius", () => {
    expect(unitDoubts(recordOf(40, 95)).join()).toContain("which no place has");
  });
  test("is as cold every day as no cropland is in winter", () => {
    expect(unitDoubts(recordOf(-60, -60)).join()).toContain("-76 F (-60 C)");
  });
  test("holds millimetres taken for inches", () => {
    expect(unitDoubts(recordOf(8, 34, 1.2 * mmPerInch)).join()).toContain("Rain comes to");
  });
  test("gaps do not count, and a record shorter than a year is not judged by its warmest month", () => {
    const gappy = recordOf(8, 34);
    for (let day = 0; day < days; day += 3) gappy.tMaxC![day] = NaN;
    expect(unitDoubts(gappy)).toEqual([]);
    const winter = {
      ...recordOf(0, 5),
      rainMm: new Float64Array(90).fill(1),
      tMaxC: new Float64Array(90).fill(2),
    };
    expect(unitDoubts(winter)).toEqual([]);
  });
});
