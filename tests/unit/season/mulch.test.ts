import fc from "fast-check";
import { expect, test } from "vitest";
import { firstStageUnderResidue } from "../../../src/season/residue/mulch.ts";

test("residue leaves 0.35 to all of the first stage, and more of it never leaves more", () => {
  const cover = fc.integer({ min: 0, max: 1000 }).map((step) => step / 1000);
  fc.assert(
    fc.property(cover, cover, (a, b) => {
      const [less, more] = [Math.min(a, b), Math.max(a, b)];
      const [open, covered] = [firstStageUnderResidue(less), firstStageUnderResidue(more)];
      for (const share of [open, covered]) {
        expect(share).toBeGreaterThanOrEqual(0.35);
        expect(share).toBeLessThanOrEqual(1);
      }
      expect(covered).toBeLessThanOrEqual(open);
    }),
    { seed: 41 },
  );
});

test("bare ground keeps all of it, full cover 0.35; half covered as the example says", () => {
  expect(firstStageUnderResidue(0)).toBe(1);
  expect(firstStageUnderResidue(1)).toBe(0.35);
  expect(firstStageUnderResidue(0.5)).toBeCloseTo(0.74, 2);
});
