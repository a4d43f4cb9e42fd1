import { describe, expect, test } from "vitest";
import { coldUpperCoefficient, hasFrosts } from "../../../src/crop/coldGround.ts";
import { cropCourse } from "../../../src/crop/cropCourse.ts";
import { cropNamed, defaultPlan } from "../../../src/crop/crops.ts";
import { testWeather } from "../../support/column.ts";

describe("cold ground", () => {
  test.each([
    [1.2, 0, 0.25],
    [1.2, 0.15, 0.25],
    [1.2, 0.6, 0.65],
    [0.2, 0, 0.2],
  ])("Kcmax %d with Kcb %d is held to %d", (kcMax, kcb, held) => {
    expect(coldUpperCoefficient(kcMax, kcb)).toBeCloseTo(held, 12);
  });

  test("fallow is held in a cold month and free in a warm one", () => {
    const weather = testWeather(400, (d) => ({ meanC: d < 60 ? -3 : 22 }));
    const course = cropCourse(defaultPlan(cropNamed("grain sorghum")!), weather, 0, 120);
    expect(course.kcMaxByDay[40]!).toBe(0.25);
    expect(course.kcMaxByDay[80]!).toBe(1.2);
  });

  describe("has frosts when the nights of the last seven days were below 0 C in the mean", () => {
    // testWeather's nights are 6 C below the day's mean.
    const nights = (...tMinC: number[]) => ({
      ...testWeather(tMinC.length, (d) => ({ meanC: tMinC[d]! + 6 })),
      tMaxC: Float64Array.from(tMinC, (c) => c + 40), // warm days do not count
    });
    test.each([
      ["a week just below", [-0.1, -0.1, -0.1, -0.1, -0.1, -0.1, -0.1], true],
      ["a week at 0", [0, 0, 0, 0, 0, 0, 0], false],
      ["one cold night among mild ones", [2, 2, 2, 2, 2, 2, -11], false],
      ["one very cold night among mild ones", [2, 2, 2, 2, 2, 2, -13], true],
      ["frost eight nights ago", [-60, 1, 1, 1, 1, 1, 1, 1], false],
      ["a record's first night", [-1], true],
    ] as const)("%s", (_, tMinC, cold) => {
      expect(hasFrosts(nights(...tMinC), tMinC.length - 1)).toBe(cold);
    });
    test("never without temperatures", () => {
      expect(hasFrosts({ ...nights(-9, -9), hasTemperature: false }, 1)).toBe(false);
    });
  });
});
