import { describe, expect, test } from "vitest";
import { climateAdjusted, climateTerm, coefficientAt } from "../../../src/crop/basalCoefficient.ts";
import { defaultPlan, findCrop } from "../../../src/crop/crops.ts";
import { isAsleep } from "../../../src/crop/dormancy.ts";
import { groundCover, heightAtMm } from "../../../src/crop/groundCover.ts";
import {
  borgGrimesShare,
  descentAtVelocityMm,
  potentialDepthMm,
} from "../../../src/crop/potentialDescent.ts";
import { degreeDays, longestSeasonDays, stageAt } from "../../../src/crop/stages.ts";
import { kcbOfLeafArea, standShareOf, thinnedKcb } from "../../../src/crop/thinStand.ts";
import { weatherOf } from "./siteWeather.ts";

describe("the season's clock", () => {
  test("a stage ends with its last day", () => {
    const lengths = [20, 35, 40, 30] as const;
    expect([0, 20, 20.5, 55, 95, 96, 125, 126].map((day) => stageAt(day, lengths))).toEqual([
      1, 1, 2, 2, 3, 4, 4, 5,
    ]);
  });
  test("cold days bring no heat", () => expect([degreeDays(4, 10), degreeDays(17, 10)]).toEqual([0, 7]));
  test("a stage of no length is passed over", () => {
    expect(coefficientAt(30, [30, 0, 40, 0], 0.15, 1.1, 0.25)).toBe(0.15);
    expect(coefficientAt(31, [30, 0, 40, 0], 0.15, 1.1, 0.25)).toBe(1.1);
    expect(coefficientAt(71, [30, 0, 40, 0], 0.15, 1.1, 0.25)).toBe(0.25);
  });
  test("the longest season is at least a day, and exact on calendar days", () => {
    const corn = defaultPlan(findCrop("corn"));
    expect(longestSeasonDays(corn, true)).toBe(161);
    expect(longestSeasonDays(corn, false)).toBe(140);
    expect(longestSeasonDays({ ...corn, clock: "days", stageLengths: [0, 0, 0, 0] }, true)).toBe(1);
  });
});

describe("examples of the docstrings", () => {
  test.each([
    [climateAdjusted(1.1, 2.2, 30, 400), 1.137],
    [borgGrimesShare(0.5), 0.5225],
    [groundCover(0.9, 1.3, 1000), 0.527],
    [kcbOfLeafArea(1.1, 2), 0.866],
    [standShareOf(0.5, "fills in"), 0.71],
  ])("%d is %d", (ours, said) => expect(Math.abs(ours - said)).toBeLessThan(0.003));
});

describe("edges", () => {
  test("wind, humidity and height are held within the equation's range", () => {
    expect(climateTerm(0, 100, 2000)).toBe(climateTerm(1, 80, 2000));
    expect(climateTerm(20, 0, 20_000)).toBe(climateTerm(6, 20, 10_000));
    expect(climateTerm(4, 30, 0)).toBe(0);
  });
  test("the curve is held within the season", () => {
    expect(borgGrimesShare(-1)).toBe(borgGrimesShare(0));
    expect(borgGrimesShare(2)).toBe(borgGrimesShare(1));
  });
  test("roots start at the seed", () => {
    expect(potentialDepthMm(0, 1500, 50)).toBe(50);
    expect(potentialDepthMm(1, 1500, 50)).toBeCloseTo(1500, 0);
  });
  test("a given velocity stops at the greatest depth and at maturity", () => {
    expect(descentAtVelocityMm(0.2, 300, 1500, 25)).toBe(25);
    expect(descentAtVelocityMm(0.8, 1490, 1500, 25)).toBe(10);
    expect(descentAtVelocityMm(0.8, 1600, 1500, 25)).toBe(0);
    expect(descentAtVelocityMm(1, 300, 1500, 25)).toBe(0);
  });
  test("a full stand keeps the published coefficient, an empty one has bare soil's", () => {
    expect(thinnedKcb(1.1, 1)).toBe(1.1);
    expect(thinnedKcb(1.1, 0)).toBe(0.15);
    expect(thinnedKcb(0.15, 0.5)).toBe(0.15);
    expect(thinnedKcb(0.1, 0.5)).toBe(0.1);
    expect(standShareOf(1.4, "stays small")).toBe(1);
  });
  test("a coefficient that does not rise has its full height from the start", () => {
    expect(heightAtMm(0.5, 0.5, 0.5, 800)).toBe(800);
    expect(heightAtMm(0.1, 0.15, 1.1, 800)).toBe(0);
  });
});

describe("sleep", () => {
  const oneWarmDay = weatherOf((day) => (day === weatherOf(() => 0).firstDay + 20 ? 12 : 0), 40);
  test("one warm day wakes nothing", () => expect(isAsleep(oneWarmDay, 20, 5)).toBe(true));
  test("a warm week does", () =>
    expect(
      isAsleep(
        weatherOf(() => 9, 40),
        20,
        5,
      ),
    ).toBe(false));
  test("the record's first day is judged by itself", () =>
    expect(
      isAsleep(
        weatherOf(() => 4),
        0,
        5,
      ),
    ).toBe(true));
  test("never where no threshold is, or no temperature", () => {
    expect(isAsleep(oneWarmDay, 20, null)).toBe(false);
    expect(isAsleep({ ...oneWarmDay, hasTemperature: false }, 20, 5)).toBe(false);
  });
});
