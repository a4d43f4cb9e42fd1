import { describe, expect, test } from "vitest";
import { coldUpperCoefficient } from "../../../src/crop/coldGround.ts";
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
});
