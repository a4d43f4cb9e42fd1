import { describe, expect, test } from "vitest";
import { InputError } from "../../../src/problem.ts";
import { normalsFromPattern, rainPatterns } from "../../../src/weather/generate/rainPatterns.ts";

const summer = (rain: readonly number[]) => rain.slice(4, 9).reduce((sum, mm) => sum + mm, 0);
const total = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0);

describe.each(rainPatterns)("%s", (pattern) => {
  const normals = normalsFromPattern(pattern, 330);

  test("shares out the whole year's rain", () => expect(total(normals.rainMm)).toBeCloseTo(330, 9));

  test("has believable wet days: 1 to 9 mm each, more of them in wetter years", () => {
    for (const [month, mm] of normals.rainMm.entries()) {
      const perDay = mm / normals.wetDays![month]!;
      expect(perDay).toBeGreaterThan(1);
      expect(perDay).toBeLessThan(9);
    }
    expect(total(normalsFromPattern(pattern, 500).wetDays!)).toBeGreaterThan(total(normals.wetDays!));
  });

  test("south of the equator is turned by six months", () => {
    const south = normalsFromPattern(pattern, 330, -35);
    expect(south.rainMm[0]).toBe(normals.rainMm[6]);
    expect(south.tMaxC[0]).toBe(normals.tMaxC[6]);
    expect(south.wetDays![5]).toBe(normals.wetDays![11]);
  });

  test("takes no rain at all", () => {
    expect(total(normalsFromPattern(pattern, 0).rainMm)).toBe(0);
  });
});

test("the three peak where they say: May to September brings most, least, five twelfths of the rain", () => {
  expect(summer(normalsFromPattern("summer-peak", 100).rainMm)).toBeGreaterThan(60);
  expect(summer(normalsFromPattern("winter-peak", 100).rainMm)).toBeLessThan(30);
  expect(Math.abs(summer(normalsFromPattern("even", 100).rainMm) - 41.7)).toBeLessThan(1);
});

test.each([-1, Number.NaN, Number.POSITIVE_INFINITY])("a yearly total of %d is refused", (mm) => {
  expect(() => normalsFromPattern("even", mm)).toThrow(InputError);
});
