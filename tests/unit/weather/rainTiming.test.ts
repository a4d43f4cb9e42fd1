import { describe, expect, test } from "vitest";
import { stream } from "../../../src/randomness.ts";
import { normalsFromPattern } from "../../../src/weather/generate/rainPatterns.ts";
import {
  persistenceOf,
  warmRainIndex,
  wetnessOf,
  wetnessSpreadOf,
  wetShareOfYear,
} from "../../../src/weather/generate/rainTiming.ts";

describe("the season of the rain", () => {
  const index = (pattern: Parameters<typeof normalsFromPattern>[0], latitudeDeg = 39) =>
    warmRainIndex(normalsFromPattern(pattern, 340, latitudeDeg));

  test("is above 0 with summer rain, below with winter rain, near 0 with even rain, on both sides of the equator", () => {
    expect(index("summer-peak")).toBeGreaterThan(0.4);
    expect(index("winter-peak")).toBeLessThan(-0.4);
    expect(Math.abs(index("even"))).toBeLessThan(0.05);
    expect(index("summer-peak", -35)).toBeCloseTo(index("summer-peak"), 9);
  });

  test("is 0 without rain or seasons, not a gap", () => {
    const flat = { tMaxC: Array<number>(12).fill(20.3), tMinC: Array<number>(12).fill(10.1) };
    expect(warmRainIndex(normalsFromPattern("even", 0))).toBe(0);
    expect(warmRainIndex({ ...normalsFromPattern("winter-peak", 300), ...flat })).toBe(0);
  });

  test("winter rain hangs together more, from day to day and over the year; both stay within the gauges'", () => {
    expect(persistenceOf(-0.8)).toBeGreaterThan(persistenceOf(0.6));
    expect(wetnessSpreadOf(-0.8)).toBeGreaterThan(wetnessSpreadOf(0.6));
    expect([persistenceOf(-3), persistenceOf(3)]).toEqual([0.37, 0.14]);
    expect([wetnessSpreadOf(-3), wetnessSpreadOf(3)]).toEqual([0.27, 0]);
  });
});

describe("a year's wetness", () => {
  const { normal } = stream(4, "wetness");
  const drawn = Array.from({ length: 100_000 }, () => normal());

  test("leaves the wet share's mean as it is (within 0.4 %: four standard errors), and it a share", () => {
    for (const share of [0.05, 0.3, 0.8, 1]) {
      const shares = drawn.map((z) => wetShareOfYear(share, wetnessOf(0.27, z)));
      const mean = shares.reduce((sum, one) => sum + one, 0) / shares.length;
      expect(Math.abs(mean / share - 1)).toBeLessThan(0.004);
      expect(Math.min(...shares.slice(0, 10_000))).toBeGreaterThan(0);
      expect(Math.max(...shares.slice(0, 10_000))).toBeLessThanOrEqual(1);
    }
  });

  test("is none without a spread", () => {
    expect(wetnessOf(0, 2.5)).toBe(0);
    expect(wetShareOfYear(0.2, 0)).toBe(0.2);
  });
});
