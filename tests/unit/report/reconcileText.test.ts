import { expect, test } from "vitest";
import type { Reconciled } from "../../../src/answer/comparison/evidenceAnswer.ts";
import { measuredYield } from "../../../src/report/sentences/measuredYield.ts";
import { reconcileSaid, reconcileVerdict } from "../../../src/report/sentences/reconcileText.ts";

const said = measuredYield({ us: "bu/ac", kgPerUsUnit: 27.2155 }, "metric");

const unsure: Reconciled = {
  by: "strips",
  from: "stubble kept",
  to: "stubble removed",
  rowPosition: null,
  withKernelWeight: false,
  measured: { middle: 170, low: -150, high: 500 },
  explained: { middle: 300, low: -100, high: 900 },
  share: null,
  verdict: "nothing sure to explain",
};
const explaining = (middle: number): Reconciled => ({
  ...unsure,
  explained: { ...unsure.explained, middle },
});

test("a model within the measured interval is not doubted", () => {
  expect(reconcileVerdict(unsure)).toBe(
    "The measurement can't be told from no difference, so there is nothing sure to explain.",
  );
});

test.each([
  [930, "more"],
  [-400, "less"],
] as const)("a model outside the measured interval is told: %d", (middle, side) => {
  expect(reconcileVerdict(explaining(middle))).toContain(
    `the model promises ${side} than was measured: its middle season lies outside the measured interval. Check that`,
  );
});

test("an interval says whether kernel weight is in it", () => {
  expect(reconcileSaid(unsure, 0.95, said)).toContain("(95 % interval 150 less");
  expect(reconcileSaid({ ...unsure, by: "counts", withKernelWeight: true }, 0.95, said)).toContain(
    "(95 % interval of spots and kernel weight together 150 less",
  );
});
