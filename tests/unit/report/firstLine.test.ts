import { describe, expect, test } from "vitest";
import type { Comparison, DifferenceAnswer } from "../../../src/answer/comparison/comparison.ts";
import { comparisonText } from "../../../src/report/sentences/comparisonText.ts";
import { firstLines } from "../../../src/report/sentences/firstLine.ts";
import { shownIn } from "../../../src/report/tables/formatters.ts";
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
      "At 13 in of rain the deeper roots took up 0.4 in more water in a typical year, worth about 4 bu/ac. In 8 years of 10: 0.1 to 0.8 in, 1 to 9 bu/ac.",
    );
  });

  test("says that most seasons were too short for the crop, before anything is read into the rest", () => {
    const unripe = (share: number) =>
      said(someComparison({ cases: someComparison().cases.map((one) => ({ ...one, unripeShare: share })) }));
    expect(unripe(1)).toMatch(/But in 100 % of the years the crop ran out of time before it was ripe: check/);
    expect(unripe(0.4)).not.toContain("ripe");
  });

  test("a line without a slope is worth nothing, and is not said to be at least nothing", () => {
    const { method } = someComparison();
    const flat = { ...method.yieldLine, slopeKgPerHaPerMm: { low: 0, middle: 0, high: 0 } };
    const differences = [{ ...someDifference, extraYield: bushels(0, 0, 0) }];
    const line = said(someComparison({ differences, method: { ...method, yieldLine: flat } }));
    expect(line).toMatch(/worth nothing in yield\. In 8 years of 10: [^,]* in\.$/);
  });

  test.each([
    [
      "small differences a digit finer",
      { extraWaterUsedMm: inches(0.07, 0.12, 0.29), extraYield: bushels(0, 0.3, 0.8) },
      "the deeper roots took up 0.12 in more water in a typical year, worth about 0.3 bu/ac. In 8 years of 10: 0.07 to 0.29 in, 0.0 to 0.8 bu/ac.",
    ],
    [
      "hardly any",
      {
        extraWaterUsedMm: inches(0, 0.02, 0.19),
        extraYield: bushels(0, 0, 0.8),
        shareOfSeasonsItMattered: 0.05,
      },
      'the deeper roots took up about as much water as "as dug" in a typical year, worth next to nothing in yield. In 8 years of 10: 0.00 to 0.19 in, 0.0 to 0.8 bu/ac.',
    ],
    [
      "hardly any, and that less",
      {
        extraWaterUsedMm: inches(-0.18, -0.02, -0.01),
        extraYield: bushels(-0.9, -0.04, 0),
        shareOfSeasonsItMattered: 0.05,
      },
      'the deeper roots took up about as much water as "as dug" in a typical year, worth next to nothing in yield. In 8 years of 10: 0.01 to 0.18 in less, 0.0 to 0.9 bu/ac less.',
    ],
    [
      "water without yield: below the line's threshold",
      { extraYield: bushels(0, 0, 0) },
      "the deeper roots took up 0.4 in more water in a typical year, worth nothing in yield. In 8 years of 10: 0.1 to 0.8 in.",
    ],
    [
      "none at all",
      {
        extraDepthMm: 0,
        extraWaterUsedMm: inches(0, 0, 0),
        extraYield: bushels(0, 0, 0),
        shareOfSeasonsItMattered: 0,
      },
      '"deeper" took up exactly as much water as "as dug": no difference in water or yield.',
    ],
    [
      "nothing in nine seasons of ten is not exactly nothing",
      {
        extraWaterUsedMm: inches(0, 0, 0),
        extraYield: bushels(0, 0, 0),
        shareOfSeasonsItMattered: 0.04,
      },
      'the deeper roots took up about as much water as "as dug" in a typical year, worth nothing in yield.',
    ],
    [
      "nothing in the middle, much at one end",
      { extraWaterUsedMm: inches(-0.9, 0, 0.1), extraYield: bushels(-17, 0, 0.4) },
      'the deeper roots took up about as much water as "as dug" in most years, worth next to nothing, but at least 0.9 in and 17 bu/ac less in one year of ten.',
    ],
    [
      "nothing in the middle, much at both ends",
      { extraWaterUsedMm: inches(-0.9, 0.01, 0.6), extraYield: bushels(-17, 0, 11) },
      'the deeper roots took up about as much water as "as dug" in most years, worth next to nothing, but at least 0.9 in and 17 bu/ac less in one year of ten and at least 0.6 in and 11 bu/ac more in one.',
    ],
    [
      "a little at both ends, often enough to be seen",
      {
        extraWaterUsedMm: inches(-0.1, 0, 0.1),
        extraYield: bushels(-0.5, 0, 0.5),
        shareOfSeasonsItMattered: 0.12,
      },
      'the deeper roots took up about as much water as "as dug" in most years, worth next to nothing, but the difference was 0.2 in or more in 12 % of them.',
    ],
    [
      "water without yield in the middle, yield at one end",
      { extraYield: bushels(0, 0, 9) },
      "the deeper roots took up 0.4 in more water in a typical year, worth nothing in most years, but at least 9 bu/ac more in one year of ten. In 8 years of 10: 0.1 to 0.8 in, 0 to 9 bu/ac.",
    ],
    [
      "more than the roots differs: the case by its name",
      { onlyRootsDiffer: false },
      '"deeper" took up 0.4 in more water in a typical year, worth about 4 bu/ac. In 8 years of 10: 0.1 to 0.8 in, 1 to 9 bu/ac.',
    ],
    [
      "less, from shallower roots",
      { extraDepthMm: -50, extraWaterUsedMm: inches(-0.8, -0.4, -0.1), extraYield: bushels(-9, -4, -1) },
      "the shallower roots took up 0.4 in less water in a typical year, which costs about 4 bu/ac. In 8 years of 10: 0.1 to 0.8 in less, 1 to 9 bu/ac less.",
    ],
    [
      "on both sides of nothing",
      { extraWaterUsedMm: inches(-0.2, 0.3, 0.8), extraYield: bushels(-2, 3, 9) },
      "the deeper roots took up 0.3 in more water in a typical year, worth about 3 bu/ac. In 8 years of 10: 0.2 in less to 0.8 in more, 2 bu/ac less to 9 bu/ac more.",
    ],
    [
      "no telling depth: the case by its name",
      { extraDepthMm: 2 },
      '"deeper" took up 0.4 in more water in a typical year, worth about 4 bu/ac. In 8 years of 10: 0.1 to 0.8 in, 1 to 9 bu/ac.',
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

  test("a side is told where the sentence before does not tell it", () => {
    const { byRainTotal } = someComparison();
    const less = { ...someDifference, extraWaterUsedMm: inches(-0.9, -0.4, 0) };
    const at = { ...byRainTotal[0]!, rainTotalMm: 304.8, differences: [less] };
    expect(said(someComparison({ byRainTotal: [at, byRainTotal[0]!] }))).toContain(
      "At 12 in it is 0.4 in and 4 bu/ac less.",
    );
  });

  test.each([
    ["described soil", 'The roots of "deeper" could not go deeper: the soil is described to 26.0 in.'],
    ["rock", 'The roots of "deeper" could not go deeper: rock at 26.0 in ends them.'],
    ["caliche", 'The roots of "deeper" could not go deeper: caliche at 26.0 in ends them.'],
  ] as const)("roots stopped by %s", (rootsEndAt, words) => {
    const cases = [someCase, { ...someCase, name: "deeper", rootsEndAt }];
    expect(said(someComparison({ cases }))).toMatch(new RegExp(`1 to 9 bu/ac\\. ${words}$`));
  });

  test("what is hard to believe comes before the answer", () => {
    const doubts = ["Rain of 130 in a year is asked for: check the number and its unit."];
    expect(said(someComparison({ doubts }))).toMatch(
      /^Doubtful: Rain of 130 in .* unit\.\s+At 13 in of rain/,
    );
    const whole = comparisonText(someComparison({ doubts }), "us", "deciding");
    expect(whole.split("Doubtful:").length).toBe(2);
    expect(whole).toMatch(/^Doubtful: Rain of 130 in/);
  });

  test("one run has no range", () => {
    const method = { ...someComparison().method, runs: 1 };
    expect(said(someComparison({ method }))).toBe(
      "At 13 in of rain the deeper roots took up 0.4 in more water in the one season run, worth about 4 bu/ac.",
    );
    const alone = said(someComparison({ method, cases: [someCase], differences: [] }));
    expect(alone).toContain("in the one season run, for about 24 bu/ac. There is only one case");
    expect(comparisonText(someComparison({ method }), "us", "deciding")).not.toMatch(/P10|P90/);
  });

  test("several cases: a sentence each, by name", () => {
    const lines = said(
      someComparison({ differences: [someDifference, { ...someDifference, to: "no pan" }] }),
    );
    expect(lines.split("\n").map((line) => line.slice(0, 32))).toEqual([
      'At 13 in of rain "deeper" took u',
      'At 13 in of rain "no pan" took u',
    ]);
  });

  test.each([
    [
      { rainTotalMm: null, annualRainMm: inches(11, 13.6, 18.9) },
      "With the rain as it came (about 13.6 in a year; 11 to 18.9 in 8 years of 10), the",
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
    expect(said(someComparison(change)).startsWith(`${start} deeper roots took up`)).toBe(true);
  });
});

describe("the whole text", () => {
  test("a case has as many digits in the table as in the sentence", () => {
    const { byRainTotal } = someComparison();
    const few = {
      ...someDifference,
      to: "few",
      extraWaterUsedMm: inches(0.1, 0.2, 0.3),
      extraYield: bushels(0.4, 0.8, 1.3),
    };
    const differences = [someDifference, few];
    const text = comparisonText(
      someComparison({ differences, byRainTotal: [{ ...byRainTotal[0]!, differences }] }),
      "us",
      "deciding",
    );
    expect(text.replaceAll("\n", " ")).toContain(
      "about 0.8 bu/ac. In 8 years of 10: 0.10 to 0.30 in, 0.4 to 1.3 bu/ac.",
    );
    expect(text).toMatch(/0\.10 0\.20 0\.30 +0\.4 0\.8 1\.3/);
    expect(text).toMatch(/ 0\.1 +0\.4 +0\.8 +1 +4 +9 /);
  });

  test("control characters of a name go no further", () => {
    const name = "pan\u001b[31m\u009b\u202e red\nnext";
    const cases = [{ ...someCase, name }];
    const text = comparisonText(someComparison({ scenario: name, cases, notes: [name] }), "us", "all");
    // oxlint-disable-next-line no-control-regex
    expect(text).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u202e]/);
    expect(text).not.toMatch(/^next/m);
    expect(text).toContain("pan [31m");
  });

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
      "all",
    );
    expect(Math.max(...text.split("\n").map((line) => line.length))).toBeLessThanOrEqual(80);
  });
});
