import { describe, expect, test } from "vitest";
import type { Comparison, DifferenceAnswer } from "../../../src/answer/comparison.ts";
import { comparisonText } from "../../../src/report/comparisonText.ts";
import { firstLines } from "../../../src/report/firstLine.ts";
import { shownIn } from "../../../src/report/shownUnits.ts";
import { someCase, someComparison, someDifference } from "./someComparison.ts";

const said = (comparison: Comparison) => firstLines(comparison, shownIn("us")).join("\n");
const differing = (change: Partial<DifferenceAnswer>) =>
  said(someComparison({ differences: [{ ...someDifference, ...change }] }));

const inches = (p10: number, p50: number, p90: number) => ({
  p10: p10 * 25.4,
  p50: p50 * 25.4,
  p90: p90 * 25.4,
});
const bushels = (p10: number, p50: number, p90: number) => ({ unit: "bu/ac" as const, p10, p50, p90 });

describe("the first line", () => {
  test("of the issue that asked for it", () => {
    expect(said(someComparison())).toBe(
      "At 13 in of rain the deeper roots used 0.4 in more water in the middle season (0.1 to 0.8), worth about 4 bu/ac (1 to 9).",
    );
  });

  test.each([
    [
      "small differences a digit finer",
      { extraWaterUsedMm: inches(0.07, 0.12, 0.29), extraYield: bushels(0, 0.3, 0.8) },
      "the deeper roots used 0.12 in more water in the middle season (0.07 to 0.29), worth about 0.3 bu/ac (0.0 to 0.8).",
    ],
    [
      "hardly any",
      { extraWaterUsedMm: inches(0, 0.02, 0.2), extraYield: bushels(0, 0, 0.8) },
      'the deeper roots used about as much water as "as dug" in the middle season (0.00 to 0.20 in), worth next to nothing in yield (0.0 to 0.8 bu/ac).',
    ],
    [
      "hardly any, and that less",
      { extraWaterUsedMm: inches(-0.18, -0.02, -0.01), extraYield: bushels(-1, -0.04, 0) },
      'the deeper roots used about as much water as "as dug" in the middle season (0.01 to 0.18 in less), worth next to nothing in yield (0.0 to 1.0 bu/ac less).',
    ],
    [
      "water without yield: below the line's threshold",
      { extraYield: bushels(0, 0, 0) },
      "the deeper roots used 0.4 in more water in the middle season (0.1 to 0.8), worth nothing in yield.",
    ],
    [
      "none at all",
      { extraDepthMm: 0, extraWaterUsedMm: inches(0, 0, 0), extraYield: bushels(0, 0, 0) },
      '"deeper" used exactly as much water as "as dug": no difference in water or yield.',
    ],
    [
      "less, from shallower roots",
      { extraDepthMm: -50, extraWaterUsedMm: inches(-0.8, -0.4, -0.1), extraYield: bushels(-9, -4, -1) },
      "the shallower roots used 0.4 in less water in the middle season (0.1 to 0.8), which costs about 4 bu/ac (1 to 9).",
    ],
    [
      "on both sides of nothing",
      { extraWaterUsedMm: inches(-0.2, 0.3, 0.8), extraYield: bushels(-2, 3, 9) },
      "the deeper roots used 0.3 in more water in the middle season (0.2 less to 0.8 more), worth about 3 bu/ac (2 less to 9 more).",
    ],
    [
      "no telling depth: the case by its name",
      { extraDepthMm: 2 },
      '"deeper" used 0.4 in more water in the middle season (0.1 to 0.8), worth about 4 bu/ac (1 to 9).',
    ],
  ])("%s", (_, change, line) => expect(differing(change)).toBe(`At 13 in of rain ${line}`));

  test("several totals: the others follow", () => {
    const { byRainTotal } = someComparison();
    const at = (inchesOfRain: number, p50: number) => ({
      ...byRainTotal[0]!,
      rainTotalMm: inchesOfRain * 25.4,
      differences: [
        { ...someDifference, extraWaterUsedMm: inches(0, p50, 0.8), extraYield: bushels(0, p50 * 10, 9) },
      ],
    });
    expect(said(someComparison({ byRainTotal: [at(12, 0.2), byRainTotal[0]!, at(14.5, 0.7)] }))).toContain(
      "\nAt 12 in it is 0.2 in and 2 bu/ac; at 14.5 in 0.7 in and 7 bu/ac.",
    );
  });

  test("several cases: a sentence each, by name", () => {
    const lines = said(
      someComparison({ differences: [someDifference, { ...someDifference, to: "no pan" }] }),
    );
    expect(lines.split("\n").map((line) => line.slice(0, 32))).toEqual([
      'At 13 in of rain "deeper" used 0',
      'At 13 in of rain "no pan" used 0',
    ]);
  });

  test.each([
    [
      { rainTotalMm: null, annualRainMm: inches(11, 13.6, 18.9) },
      "With the rain as it came (13.6 in in the middle year, 11 to 18.9) the",
    ],
    [
      { rainTotalMm: null, annualRainMm: inches(13, 13, 13) },
      "With 13 in of rain in the year, as it came, the",
    ],
    [{ rainTotalMm: null, annualRainMm: null }, "With the rain as it came the"],
    [
      { method: { ...someComparison().method, rainTotalOver: "season" as const } },
      "At 13 in of rain in the season the",
    ],
  ])("where: %#", (change, start) => {
    expect(said(someComparison(change)).startsWith(`${start} deeper roots used`)).toBe(true);
  });
});

describe("the whole text", () => {
  test.each(["us", "metric"] as const)("stays within 80 columns whatever the figures, %s", (units) => {
    const wide = { p10: -12345.6, p50: -1000, p90: 12345.6 };
    const differences = [
      { ...someDifference, to: "x".repeat(120), extraWaterUsedMm: { p10: -999, p50: 9, p90: 999 } },
    ];
    const cases = [
      {
        ...someCase,
        name: "y".repeat(120),
        yield: { unit: "lb/ac" as const, p10: 0, p50: 9999, p90: 99999 },
      },
    ];
    const extraYield = { unit: "lb/ac" as const, ...wide };
    const text = comparisonText(
      someComparison({
        cases,
        differences,
        byRainTotal: [
          {
            rainTotalMm: 330.2,
            annualRainMm: null,
            cases,
            differences: differences.map((one) => ({ ...one, extraYield })),
          },
        ],
        notes: ["z".repeat(300)],
      }),
      units,
      "each",
    );
    expect(Math.max(...text.split("\n").map((line) => line.length))).toBeLessThanOrEqual(80);
  });
});
