import fc from "fast-check";
import { expect, test } from "vitest";
import { makeRootSupply, setRootSupply, takeBySlice } from "../../src/season/uptake.ts";
import type { Slices } from "../../src/soil/layers/layer.ts";
import { column, testSilt, testUptake, waterAt } from "../support/column.ts";

const steps = fc.integer({ min: 0, max: 1000 }).map((n) => n / 1000);
const anyPassages = fc.array(steps, { minLength: 2, maxLength: 5 });

const columnOf = (passages: readonly number[]): Slices =>
  column(passages.map((passage) => ({ ...testSilt, thicknessMm: 200, passage })));

function takenMm(slices: Slices, frontMm: number, demandMm: number): number {
  const supply = makeRootSupply(slices.count);
  setRootSupply(supply, slices, 0, testUptake);
  const water = waterAt(slices, 0.7);
  const slice = slices.topMm.findLastIndex((topMm) => topMm <= frontMm);
  const rooted = { frontMm, beneathMm: water[slice]! };
  return takeBySlice(demandMm, rooted, supply, slices, water, new Float64Array(slices.count));
}

test("over the same water, with the front at the same depth, less passage in any layer never raises the day's uptake", () => {
  let lowered = 0;
  fc.assert(
    fc.property(
      anyPassages.chain((passages) => fc.tuple(fc.constant(passages), fc.nat({ max: passages.length - 1 }))),
      steps,
      steps.map((share) => share * 1000),
      steps.map((share) => share * 30),
      ([passages, j], less, frontMm, demandMm) => {
        const denser = passages.map((passage, k) => (k === j ? passage * less : passage));
        const free = takenMm(columnOf(passages), frontMm, demandMm);
        const held = takenMm(columnOf(denser), frontMm, demandMm);
        expect(held).toBeLessThanOrEqual(free + 1e-9);
        if (held < free - 0.01) lowered++;
      },
    ),
    { numRuns: 1000, seed: 20264 },
  );
  expect(lowered).toBeGreaterThan(50);
});

test("what lies above a pan is drawn on as freely as without it", () => {
  const [open, shut] = [columnOf([1, 1, 1]), columnOf([1, 0.04, 1])];
  expect(takenMm(shut, 200, 30)).toBeCloseTo(takenMm(open, 200, 30), 12);
  expect(takenMm(shut, 600, 30)).toBeGreaterThan(takenMm(shut, 200, 30));
  expect(takenMm(shut, 600, 30)).toBeLessThan(takenMm(open, 600, 30));
});
