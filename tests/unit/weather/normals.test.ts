import { describe, expect, test } from "vitest";
import { daysInMonth } from "../../../src/quantity/calendar.ts";
import { overDays, yearCourse } from "../../../src/weather/generate/normals.ts";
import { plainsNormals } from "./sampleRecord.ts";

describe("the course through the year", () => {
  const jagged = [0, 10, 0, 10, 0, 10, 0, 10, 0, 10, 0, 10];

  test.each([
    ["plains", plainsNormals.tMaxC],
    ["jagged", jagged],
    ["flat", Array<number>(12).fill(7)],
  ])("brings every monthly mean back: %s", (_name, monthly) => {
    const course = yearCourse(monthly);
    for (const [kind, year] of [
      ["ordinary", 2021],
      ["leap", 2020],
    ] as const) {
      let start = 0;
      for (const [month, value] of monthly.entries()) {
        const days = course[kind].subarray(start, (start += daysInMonth(year, month + 1)));
        expect(days.reduce((sum, each) => sum + each, 0) / days.length).toBeCloseTo(value, 9);
      }
      expect(course[kind]).toHaveLength(start);
    }
  });

  test("has no step, over the new year neither: under 0.45 C a day on the plains", () => {
    const year = [...yearCourse(plainsNormals.tMaxC).ordinary];
    const steps = year.map((value, day) => Math.abs(value - year.at(day - 1)!));
    expect(Math.max(...steps)).toBeLessThan(0.45);
  });

  test("laid over a record starts on its day and crosses leap years", () => {
    const course = yearCourse(plainsNormals.tMaxC);
    const values = overDays(course, 2019, 365, 368);
    expect(values[0]).toBe(course.ordinary[364]);
    expect(values[1]).toBe(course.leap[0]);
    expect(values[366]).toBe(course.leap[365]);
    expect(values[367]).toBe(course.ordinary[0]);
  });
});
