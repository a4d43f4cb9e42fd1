import { describe, expect, test } from "vitest";
import { medianOf, middleIndex, quantile, spreadOf } from "../../../src/answer/quantiles.ts";

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

describe("the run in the middle", () => {
  test("of an odd number", () => expect(middleIndex(Float64Array.of(5, 1, 3))).toBe(2));
  test("of an even number is the lower of the two", () =>
    expect(middleIndex(Float64Array.of(4, 1, 3, 2))).toBe(3));
  test("of equals is an early one", () => expect(middleIndex(Float64Array.of(2, 2, 2))).toBe(1));
});
