import fc from "fast-check";
import { expect, test } from "vitest";
import { reconcile } from "../../../src/evidence/reconcile.ts";

const runs = Float64Array.from({ length: 101 }, (_, i) => i); // 0 to 100, middle 50

test.each([
  { middle: 55, low: 20, high: 90, verdict: "all", share: 50 / 55 },
  { middle: 100, low: 60, high: 140, verdict: "part", share: 0.5 },
  { middle: 400, low: 300, high: 500, verdict: "little", share: 0.125 },
  { middle: -40, low: -60, high: -20, verdict: "none", share: -1.25 },
  { middle: 30, low: -5, high: 65, verdict: "nothing sure to explain", share: null },
  { middle: 0, low: null, high: null, verdict: "nothing sure to explain", share: null },
  { middle: 100, low: null, high: null, verdict: "part", share: 0.5 },
] as const)("measured $middle ($low to $high): $verdict", ({ verdict, share, ...measured }) => {
  const { explained, ...found } = reconcile(measured, runs, 0.9);
  expect(found).toEqual({ measured, verdict, share });
  expect(explained.middle).toBe(50);
  expect(explained.low).toBeCloseTo(5, 9);
  expect(explained.high).toBeCloseTo(95, 9);
});

/** To a millionth: doubling is exact there, as it is not in the last bits before 0. */
const yields = fc.double({ min: -200, max: 200, noNaN: true }).map((value) => Math.round(value * 1e6) / 1e6);

test("the same data in another unit give the same verdict", () => {
  fc.assert(
    fc.property(
      fc.double({ min: 1, max: 500, noNaN: true }),
      fc.array(yields, { minLength: 1, maxLength: 30 }),
      (middle, explained) => {
        const one = reconcile({ middle, low: null, high: null }, Float64Array.from(explained), 0.9);
        const twice = reconcile(
          { middle: 2 * middle, low: null, high: null },
          Float64Array.from(explained, (value) => 2 * value),
          0.9,
        );
        expect(twice.verdict).toBe(one.verdict);
      },
    ),
    { seed: 14 },
  );
});
