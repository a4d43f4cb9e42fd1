import { pt, qt } from "lib-r-math.js";
import * as simple from "simple-statistics";
import { describe, expect, test } from "vitest";
import {
  pairedDifference,
  pooledDifference,
  welchDifference,
} from "../../../src/statistics/differenceOfMeans.ts";
import {
  chanceAt,
  mostAdvised,
  neededForReach,
  neededToHalve,
  neededToTell,
  type Layout,
} from "../../../src/statistics/howMany.ts";
import { meanInterval } from "../../../src/statistics/meanInterval.ts";
import { spreadOf } from "../../../src/statistics/spread.ts";
import { chanceToTell, tQuantile, twoSidedT } from "../../../src/statistics/studentT.ts";
import { stream } from "../../../src/randomness.ts";

const sets = 1000;
/** Sums in another order differ in the last digits. */
const sameSum = 1e-9;
/** The library behind our t ends its series at 3 in 10 million. */
const sameT = 3e-7;

interface Two {
  readonly first: readonly number[];
  readonly second: readonly number[];
  readonly confidence: number;
}

/** Yields of 2 to 30 plots, some nearly alike, some far apart. */
function randomSets(): readonly Two[] {
  const draws = stream(11, "sets of a test");
  const of = (n: number, mean: number, sd: number) =>
    Array.from({ length: n }, () => mean + sd * draws.normal());
  return Array.from({ length: sets }, (_, s) => {
    const size = () => 2 + Math.floor(draws.uniform() * 29);
    const spread = 10 ** (draws.uniform() * 4 - 1);
    const first = of(size(), 3000 * draws.uniform(), spread);
    const second = of(
      s % 2 === 0 ? first.length : size(),
      3000 * draws.uniform(),
      spread * 3 * draws.uniform() + 0.01,
    );
    return { first, second, confidence: 0.5 + 0.499 * draws.uniform() };
  });
}

const near = (ours: number, theirs: number, share: number, scale = Math.abs(theirs)) =>
  expect(Math.abs(ours - theirs)).toBeLessThanOrEqual(share * Math.max(scale, 1e-12));

describe(`statistics agree with general libraries on ${sets} random sets`, () => {
  const all = randomSets();
  test("there are sets", () => expect(all).toHaveLength(sets));

  test("mean, median, standard deviation, coefficient of variation (simple-statistics)", () => {
    for (const { first } of all) {
      const { mean, median, sd, variation } = spreadOf(first);
      const scale = Math.max(...first.map(Math.abs));
      near(mean!, simple.mean([...first]), sameSum, scale);
      near(median!, simple.median([...first]), sameSum, scale);
      near(sd!, simple.sampleStandardDeviation([...first]), sameSum, scale);
      near(
        variation!,
        simple.sampleStandardDeviation([...first]) / Math.abs(simple.mean([...first])),
        1e-7,
        Math.max(1, variation!),
      );
    }
  });

  test("t quantiles (R's, as lib-r-math)", () => {
    for (const { first, second, confidence } of all) {
      const { freedom } = welchDifference(first, second, confidence);
      for (const v of [first.length - 1, freedom!]) {
        near(twoSidedT(confidence, v), qt((1 + confidence) / 2, v), sameT);
        near(tQuantile((1 - confidence) / 2, v), qt((1 - confidence) / 2, v), sameT);
      }
    }
  });

  test("interval of a mean", () => {
    for (const { first, confidence } of all) {
      const { interval } = meanInterval(first, confidence);
      const reach =
        (qt((1 + confidence) / 2, first.length - 1) * simple.sampleStandardDeviation([...first])) /
        Math.sqrt(first.length);
      near(interval!.high - interval!.low, 2 * reach, sameT, 2 * reach + 1e-3);
      near((interval!.high + interval!.low) / 2, simple.mean([...first]), sameSum, 3000);
    }
  });

  test("pooled t of two sets (simple-statistics)", () => {
    for (const { first, second, confidence } of all) {
      const { t } = pooledDifference(first, second, confidence);
      near(t!, simple.tTestTwoSample([...second], [...first])!, 1e-7);
    }
  });

  test("Welch's t, degrees of freedom and interval, written out with simple-statistics", () => {
    for (const { first, second, confidence } of all) {
      const ours = welchDifference(first, second, confidence);
      const [a, b] = [first, second].map((set) => simple.sampleVariance([...set]) / set.length) as [
        number,
        number,
      ];
      const error = Math.sqrt(a + b);
      const freedom = (a + b) ** 2 / (a ** 2 / (first.length - 1) + b ** 2 / (second.length - 1));
      near(ours.freedom!, freedom, 1e-8);
      near(
        ours.t!,
        (simple.mean([...second]) - simple.mean([...first])) / error,
        1e-7,
        Math.max(1, Math.abs(ours.t!)),
      );
      near(ours.interval!.high - ours.interval!.low, 2 * error * qt((1 + confidence) / 2, freedom), sameT);
    }
  });

  test("paired t is the t test of the differences against nothing (simple-statistics)", () => {
    let tried = 0;
    for (const { first, second, confidence } of all) {
      if (first.length !== second.length) continue;
      tried++;
      const differences = first.map((value, i) => second[i]! - value);
      const { t } = pairedDifference(
        first.map((value, i) => [value, second[i]!] as const),
        confidence,
      );
      // The library divides the squares by n, where a sample's are divided by n - 1.
      const n = differences.length;
      near(t!, simple.tTest(differences, 0) * Math.sqrt((n - 1) / n), 1e-7, Math.max(1, Math.abs(t!)));
    }
    expect(tried).toBeGreaterThan(400);
  });

  test("chance of a t test to tell a difference (R's noncentral t)", () => {
    const draws = stream(12, "shifts of a test");
    for (const { first, confidence } of all) {
      const freedom = first.length - 1;
      const shift = 6 * draws.uniform();
      const t = qt((1 + confidence) / 2, freedom);
      near(
        chanceToTell(shift, freedom, confidence),
        1 - pt(t, freedom, shift) + pt(-t, freedom, shift),
        1e-5,
        1,
      );
    }
  });
});

describe("too little to say is said, never NaN", () => {
  test.each([
    ["no values", []],
    ["one value", [5]],
    ["all equal", [0.1, 0.1, 0.1]],
  ] as const)("%s", (why, values) => {
    expect(meanInterval(values, 0.95)).toMatchObject({ interval: null, standardError: null, why });
    const { t, ...rest } = welchDifference(values, values, 0.95);
    expect(rest).toMatchObject({ interval: null, why });
    expect(t).toBeNull();
  });
  test.each([
    ["no pairs", []],
    ["one pair", [[1, 2]]],
    [
      "all differences equal",
      [
        [1, 2],
        [5, 6],
        [2, 3],
      ],
    ],
  ] as const)("%s", (why, pairs) => {
    expect(pairedDifference(pairs, 0.95)).toMatchObject({ interval: null, t: null, why });
  });
  test("an empty list has a spread of nulls", () => {
    expect(spreadOf([])).toEqual({
      n: 0,
      mean: null,
      median: null,
      sd: null,
      variation: null,
      smallest: null,
      largest: null,
    });
  });
  test("one constant set beside one that varies still has an interval", () => {
    const { freedom, interval } = welchDifference([4, 4, 4], [5, 6, 7], 0.95);
    expect(freedom).toBeCloseTo(2, 12);
    expect(interval).not.toBeNull();
  });
});

describe("how many more", () => {
  const layouts: readonly Layout[] = [
    { kind: "one set", sd: 8 },
    { kind: "two sets", sds: [8, 3] },
    { kind: "two sets", sds: [8, 8] },
  ];

  test.each(layouts)("%j: the fewest that are enough, and one less is not", (layout) => {
    for (const difference of [2, 5, 20]) {
      const n = neededToTell(layout, difference, 0.95, 0.8)!;
      expect(chanceAt(layout, n, difference, 0.95)).toBeGreaterThanOrEqual(0.8);
      // Below two there is no chance at all, so this holds at the least n as well.
      expect(chanceAt(layout, n - 1, difference, 0.95)).toBeLessThan(0.8);
    }
  });
  test.each(layouts)("%j: a longer search from two finds the same", (layout) => {
    for (const difference of [3, 6, 12]) {
      let n = 2;
      while (chanceAt(layout, n, difference, 0.95) < 0.8) n++;
      expect(neededToTell(layout, difference, 0.95)).toBe(n);
    }
  });
  test("halving an interval of few takes fewer than four times as many, as t falls", () => {
    const layout = { kind: "one set", sd: 8 } as const;
    const n = neededToHalve(layout, 3, 0.95)!;
    const reach = (of: number) => (twoSidedT(0.95, of - 1) * 8) / Math.sqrt(of);
    expect(reach(n)).toBeLessThanOrEqual(reach(3) / 2);
    expect(reach(n - 1)).toBeGreaterThan(reach(3) / 2);
    expect(n).toBeLessThan(12);
  });
  test("halving an interval of many takes four times as many", () => {
    expect(neededToHalve({ kind: "one set", sd: 8 }, 400, 0.95)! / 1600).toBeCloseTo(1, 2);
  });
  test("more than is sensible is told as such", () => {
    expect(neededToTell({ kind: "one set", sd: 8 }, 0.01, 0.95)).toBeNull();
    expect(neededForReach({ kind: "one set", sd: 8 }, 0, 0.95)).toBeNull();
    expect(mostAdvised).toBe(10_000);
  });
  test("without a difference the test sounds as often as its level", () => {
    expect(chanceToTell(0, 10, 0.95)).toBeCloseTo(0.05, 5);
  });
});
