import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { spotYieldKgPerHa } from "../../src/evidence/counts/countsAnswer.ts";
import { pairedDifference, welchDifference } from "../../src/statistics/differenceOfMeans.ts";
import { answerStrips } from "../../src/evidence/strips.ts";

const yieldKgPerHa = fc.double({ min: 0, max: 15_000, noNaN: true });
const yields = fc.array(yieldKgPerHa, { maxLength: 12 });
const missable = fc.option(yieldKgPerHa, { nil: null });
const confidence = fc.double({ min: 0.5, max: 0.999, noNaN: true });

const finite = (value: unknown): boolean =>
  typeof value === "number"
    ? Number.isFinite(value)
    : typeof value !== "object" || value === null || Object.values(value).every(finite);

describe("what was measured", () => {
  test("no number that is none ever leaves, and there is an interval or a reason", () => {
    fc.assert(
      fc.property(yields, yields, confidence, (first, second, level) => {
        const difference = welchDifference(first, second, level);
        expect(finite(difference)).toBe(true);
        expect(difference.interval === null).toBe(difference.why !== null);
      }),
    );
  });
  test("strips: pairs used and pairs left out are all pairs; no number that is none", () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(missable, missable), { maxLength: 10 }), confidence, (pairs, level) => {
        const answer = answerStrips({
          caseIndexes: [0, 1],
          pairs,
          year: null,
          confidence: level,
          detectKgPerHa: 300,
          chance: 0.8,
        });
        expect(answer.pairs + answer.missing.length).toBe(pairs.length);
        expect(finite(answer)).toBe(true);
      }),
      { numRuns: 60 },
    );
  });
  test("turned about, a difference changes its sign and nothing else", () => {
    fc.assert(
      fc.property(yields, yields, (first, second) => {
        const there = welchDifference(first, second, 0.9);
        const back = welchDifference(second, first, 0.9);
        expect(back.why).toBe(there.why);
        expect((back.value ?? 0) + (there.value ?? 0)).toBeCloseTo(0, 8);
        expect((back.interval?.low ?? 0) + (there.interval?.high ?? 0)).toBeCloseTo(0, 6);
      }),
    );
  });
  test("the order of pairs does not matter", () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(yieldKgPerHa, yieldKgPerHa), { minLength: 2, maxLength: 12 }),
        (pairs) => {
          const there = pairedDifference(pairs, 0.95);
          const back = pairedDifference(pairs.toReversed(), 0.95);
          expect(back.value!).toBeCloseTo(there.value!, 7);
          expect(back.why).toBe(there.why);
        },
      ),
    );
  });
  test("twice the ground with twice the heads is the same yield; twice the kernels is twice the yield", () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 500 }), fc.integer({ min: 0, max: 800 }), (heads, kernels) => {
        const spot = (times: number, kernelsPerHead: number) => ({
          areaM2: 4 * times,
          heads: heads * times,
          per: { kind: "kernels", kernelsPerHead, secondEarKernels: 0, oddRows: 0 } as const,
        });
        const once = spotYieldKgPerHa(spot(1, kernels), 0.3, 1);
        expect(spotYieldKgPerHa(spot(2, kernels), 0.3, 1)).toBeCloseTo(once, 6);
        expect(spotYieldKgPerHa(spot(1, 2 * kernels), 0.3, 1)).toBeCloseTo(2 * once, 6);
      }),
    );
  });
});
