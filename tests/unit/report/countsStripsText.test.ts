import { describe, expect, test } from "vitest";
import { bushelsPerAcre, kgPerHaOfUs } from "../../../src/crop/yield/yieldLine.ts";
import type { CountedGroup, Counts, GrainWeight } from "../../../src/evidence/counts/counts.ts";
import { answerCounts } from "../../../src/evidence/counts/countsAnswer.ts";
import { givenWeight, usualKernelWeight } from "../../../src/evidence/counts/countsWeight.ts";
import { answerStrips, type Strips } from "../../../src/evidence/strips.ts";
import { countsLines } from "../../../src/report/sentences/field/countsText.ts";
import { howManyLines, plants } from "../../../src/report/sentences/field/howManyText.ts";
import { measuredYield } from "../../../src/report/sentences/field/measuredYield.ts";
import { stripsLines } from "../../../src/report/sentences/field/stripsText.ts";

const corn = bushelsPerAcre(56);
const names = ["normal depth", "two inches deeper"];
const kg = (bushels: number | null) => (bushels === null ? null : kgPerHaOfUs(bushels, corn));

type Pair = readonly [number | null, number | null];
function stripsOf(pairs: readonly Pair[], detect: number | null = null): { strips: Strips; text: string } {
  const strips: Strips = {
    caseIndexes: [0, 1],
    year: null,
    pairs: pairs.map(([a, b]) => [kg(a), kg(b)] as const),
    confidence: 0.95,
    detectKgPerHa: kg(detect),
    chance: 0.8,
  };
  const lines = stripsLines(strips, answerStrips(strips), names, corn, "us");
  expect(Math.max(...lines.map((line) => line.length))).toBeLessThanOrEqual(80);
  return { strips, text: lines.join(" ") };
}

describe("strips in plain words", () => {
  test("three that vary can't tell 5 bu/ac from nothing, and how many could", () => {
    const { text, strips } = stripsOf(
      [
        [60, 64],
        [55, 61],
        [58, 59],
      ],
      5,
    );
    expect(text).toContain("Three pairs of strips can't tell 5 bu/ac from nothing here:");
    expect(text).toContain("anything from 2.6 less to 9.9 bu/ac more (95 % interval) fits as well.");
    const { pairsNeeded } = answerStrips(strips).detect!;
    expect(text).toContain(
      `To tell 5 bu/ac from nothing with a chance of 80 % takes ${pairsNeeded} pairs of strips; with 3`,
    );
    expect(text).toContain("Guides ask for four to six pairs");
  });
  test("four that agree tell them apart", () => {
    expect(
      stripsOf([
        [60, 64],
        [55, 60.5],
        [58, 62.8],
        [61, 66],
      ]).text,
    ).toContain(
      'Four pairs of strips tell the cases apart: "two inches deeper" yields 4.8 bu/ac more than "normal depth", 3.8 to 5.8 bu/ac more (95 % interval).',
    );
  });
  test("missing yields are told, and one pair gives no interval", () => {
    const { text } = stripsOf([
      [60, 64],
      [55, null],
      [null, null],
    ]);
    expect(text).toContain(
      "but nothing says how sure: one pair of strips does not show how much pairs of strips differ.",
    );
    expect(text).toContain(
      'Left out: pair 2 (lacks the yield of "two inches deeper"), pair 3 (lacks both yields).',
    );
  });
  test("no whole pair", () => {
    expect(stripsOf([[60, null]]).text).toContain(
      "No pair of strips has both yields: there is nothing to compare.",
    );
  });
  test("differences alike, though units were turned, give no interval", () => {
    expect(
      stripsOf([
        [60, 64],
        [55, 59],
        [57.3, 61.3],
      ]).text,
    ).toContain("agree to the last digit");
  });
  test("a mean of nothing", () => {
    expect(
      stripsOf([
        [60, 60],
        [55, 56],
        [58, 57],
      ]).text,
    ).toContain("Three pairs of strips show no difference here");
  });
});

const groupOf = (
  caseIndex: number,
  kernels: readonly number[],
  weight: GrainWeight,
  rowPosition: string | null = null,
): CountedGroup => ({
  field: `evidence.counts[${caseIndex}]`,
  caseIndex,
  rowPosition,
  weight,
  moistureFactor: 1,
  stage: "dent",
  spots: kernels.map((kernelsPerHead) => ({
    areaM2: 4.0468564224,
    heads: 18,
    per: { kind: "kernels", kernelsPerHead, secondEarKernels: 0, oddRows: 0 },
  })),
});

function countsOf(groups: readonly CountedGroup[], paired = false) {
  const counts: Counts = { groups, paired, year: null, confidence: 0.95, crop: "corn" };
  const answer = answerCounts(counts);
  const lines = countsLines(counts, answer, names, corn, "us", { kgPerHa: kg(5)!, chance: 0.8 });
  expect(Math.max(...lines.map((line) => line.length))).toBeLessThanOrEqual(80);
  return { answer, text: lines.join(" ").replaceAll(/ +/g, " ") };
}

const normal = [320, 340, 310, 330, 325];
const deeper = [350, 355, 348, 340, 360];

describe("counts in plain words", () => {
  test("weighed alike: the difference, its interval, no word of a range", () => {
    const { text, answer } = countsOf([
      groupOf(0, normal, givenWeight(0.28, "kernel")),
      groupOf(1, deeper, givenWeight(0.28, "kernel")),
    ]);
    expect(text).toMatch(
      /By counts "two inches deeper" yields \d\.\d bu\/ac more than "normal depth", .* the spots tell the cases apart\./,
    );
    expect(answer.differences[0]!.byWeight).toBeNull();
    expect(text).not.toContain("Kernel weight alone");
    expect(text).toContain("with a chance of 80 %");
  });
  test("not weighed: the usual range scales the difference and is most of what is not known of a yield", () => {
    const usual = usualKernelWeight("corn", null)!;
    const { text, answer } = countsOf([groupOf(0, normal, usual), groupOf(1, deeper, usual)]);
    const { byWeight, difference, sharedWeight } = answer.differences[0]!;
    expect(sharedWeight).toBe(true);
    expect(byWeight!.lowKgPerHa).toBeCloseTo((difference.value! * 90) / 110, 6);
    expect(byWeight!.highKgPerHa).toBeCloseTo((difference.value! * 90) / 75, 6);
    expect(answer.groups[0]!.byWeight!.share).toBeGreaterThan(0.8);
    expect(text).toContain("Both cases are given the same kernel weight");
    expect(text).toContain("not weighed");
  });
  test("one weighed, one not: the range stands between them", () => {
    const usual = usualKernelWeight("corn", null)!;
    const { answer } = countsOf([
      groupOf(0, normal, givenWeight(usual.middle, "kernel")),
      groupOf(1, deeper, usual),
    ]);
    const [a, b] = answer.groups.map(({ estimate }) => estimate.value!) as [number, number];
    expect(answer.differences[0]!.sharedWeight).toBe(false);
    expect(answer.differences[0]!.byWeight!.lowKgPerHa).toBeCloseTo((b * 90) / 110 - a, 6);
  });
  test("one spot each: no interval, and it says so", () => {
    const { text } = countsOf([
      groupOf(0, [320], givenWeight(0.28, "kernel")),
      groupOf(1, [350], givenWeight(0.28, "kernel")),
    ]);
    expect(text).toContain("but nothing says how sure: one spot does not show how much spots differ.");
    expect(text).toContain("One spot is few: guides ask for at least five");
  });
  test("spots in pairs take the differences within pairs", () => {
    const weight = givenWeight(0.28, "kernel");
    const { answer } = countsOf(
      [
        groupOf(0, normal, weight),
        groupOf(
          1,
          normal.map((k, i) => k + 20 + i),
          weight,
        ),
      ],
      true,
    );
    expect(answer.differences[0]!.difference.freedom).toBe(4);
    expect(answer.differences[0]!.layout).toMatchObject({ kind: "one set" });
  });
  test("a row position without its match is told", () => {
    const weight = givenWeight(0.28, "kernel");
    const { text, answer } = countsOf([
      groupOf(0, normal, weight),
      groupOf(1, deeper, weight, "wheel track"),
    ]);
    expect(answer.differences).toEqual([]);
    expect(text).toContain('Counts at "wheel track" have no match in the first case counted');
  });
});

test("how many more plants of the dig", () => {
  const lines = howManyLines(
    {
      layout: { kind: "two sets", sds: [60, 60] },
      now: 5,
      reach: 87,
      confidence: 0.95,
      wanted: { difference: 51, said: "2 in", chance: 0.8 },
    },
    plants,
  );
  expect(lines[0]).toMatch(/^Half as wide an interval takes \d+ plants of each case; there are 5 now\.$/);
  expect(lines[1]).toMatch(
    /^To tell 2 in from nothing with a chance of 80 % takes \d+ plants of each case; with 5 the chance is \d+ %\.$/,
  );
});

test.each([
  [1.1, 9.3, "1.1 to 9.3 bu/ac more"],
  [-2, 11.2, "2.0 less to 11.2 bu/ac more"],
  [-9.3, -1.1, "1.1 to 9.3 bu/ac less"],
])("a range from %d to %d", (low, high, said) => {
  expect(measuredYield(corn, "us").moreRange(kg(low)!, kg(high)!)).toBe(said);
});
