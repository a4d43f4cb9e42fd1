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

test("all of it is held back where half of the difference and twice of it would fit as well", () => {
  const wide = Float64Array.from({ length: 101 }, (_, i) => i); // 5 to 95 of each hundred
  const measured = { middle: 45, low: 40, high: 50 };
  expect(reconcile(measured, wide, 0.9).verdict).toBe("too wide to tell");
  // The same middle, told more narrowly, can be contradicted.
  const narrow = wide.map((value) => 50 + (value - 50) / 4);
  expect(reconcile(measured, narrow, 0.9).verdict).toBe("all");
  // So for a loss.
  const loss = { middle: -45, low: -50, high: -40 };
  expect(
    reconcile(
      loss,
      wide.map((value) => -value),
      0.9,
    ).verdict,
  ).toBe("too wide to tell");
});

/** Explained differences as shares of the measured one, in thousandths, so that the limits between verdicts are met. */
const shares = fc.array(fc.integer({ min: -200, max: 1200 }), { minLength: 1, maxLength: 5 });

test("the same data in another unit give the same verdict", () => {
  fc.assert(
    fc.property(fc.double({ min: 1, max: 500, noNaN: true }), shares, (middle, thousandths) => {
      const verdictIn = (unit: number) =>
        reconcile(
          { middle: unit * middle, low: null, high: null },
          Float64Array.from(thousandths, (each) => (unit * middle * each) / 1000),
          0.9,
        ).verdict;
      expect(verdictIn(2)).toBe(verdictIn(1));
    }),
    { seed: 14, numRuns: 2000 },
  );
});
