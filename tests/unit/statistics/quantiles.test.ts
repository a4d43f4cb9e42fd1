import fc from "fast-check";
import jstat from "jstat";
import { describe, expect, test } from "vitest";
import { medianOf, middleIndex, quantile, rankShares, spreadOf } from "../../../src/statistics/quantiles.ts";

describe("quantile, definition 7 of Hyndman & Fan", () => {
  const sorted = Float64Array.of(1, 2, 3, 4);
  // (n - 1) x share = 3 x share places after the first value
  test.each([
    [0, 1],
    [0.1, 1.3],
    [0.5, 2.5],
    [0.9, 3.7],
    [1, 4],
  ])("share %d gives %d", (share, expected) => expect(quantile(sorted, share)).toBeCloseTo(expected, 12));

  test("one value is every quantile", () => {
    expect(spreadOf(Float64Array.of(7))).toEqual({ p10: 7, p50: 7, p90: 7 });
  });
  test("nothing has no quantile", () => expect(() => quantile(new Float64Array(0), 0.5)).toThrow("nothing"));
  test("equal values stay themselves to the last bit", () => {
    expect(medianOf(new Float64Array(10).fill(0.1))).toBe(0.1);
  });
  test("the values keep their order", () => {
    const values = Float64Array.of(3, 1, 2);
    expect(spreadOf(values).p50).toBe(2);
    expect([...values]).toEqual([3, 1, 2]);
  });
});

/** Not among what the project itself uses of the library. */
const meanRanks = (jstat as unknown as { rank: (values: number[]) => number[] }).rank;

describe("shares of rank", () => {
  test("run from low to high, equals in the middle of their places", () => {
    expect([...rankShares(Float64Array.of(5, 1, 3, 1))]).toEqual([0.875, 0.25, 0.625, 0.25]);
  });
  test("all equal stand in the middle", () =>
    expect([...rankShares(Float64Array.of(2, 2, 2))]).toEqual([0.5, 0.5, 0.5]));
  test("agree with the mean ranks of a general statistics library", () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: -9, max: 9 }), { minLength: 1, maxLength: 40 }), (values) => {
        const ranks = meanRanks(values);
        const shares = rankShares(Float64Array.from(values));
        ranks.forEach((rank, i) => expect(shares[i]).toBeCloseTo((rank - 0.5) / values.length, 12));
      }),
    );
  });
});

describe("the run in the middle", () => {
  test("of an odd number", () => expect(middleIndex(Float64Array.of(5, 1, 3))).toBe(2));
  test("of an even number is the lower of the two", () =>
    expect(middleIndex(Float64Array.of(4, 1, 3, 2))).toBe(3));
  test("of equals is an early one", () => expect(middleIndex(Float64Array.of(2, 2, 2))).toBe(1));
});
