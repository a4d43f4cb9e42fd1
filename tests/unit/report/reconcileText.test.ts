import { describe, expect, test } from "vitest";
import type { Reconciled } from "../../../src/answer/comparison/evidenceAnswer.ts";
import { measuredYield } from "../../../src/report/sentences/field/measuredYield.ts";
import {
  contradictionsSaid,
  reconcileSaid,
  reconcileVerdict,
} from "../../../src/report/sentences/field/reconcileText.ts";

const said = measuredYield({ us: "bu/ac", kgPerUsUnit: 27.2155 }, "metric");

const unsure: Reconciled = {
  by: "strips",
  from: "stubble kept",
  to: "stubble removed",
  rowPosition: null,
  year: null,
  isOfYear: false,
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
    `the model promises ${side} than was measured: a typical year lies outside the measured interval. Check that`,
  );
});

test("an interval says whether kernel weight is in it", () => {
  expect(reconcileSaid(unsure, 0.95, said)).toContain("(95 % interval 150 less");
  expect(reconcileSaid({ ...unsure, by: "counts", withKernelWeight: true }, 0.95, said)).toContain(
    "(95 % interval of spots and kernel weight together 150 less",
  );
});

describe("counts and strips of the same cases", () => {
  const by = (one: Reconciled["by"], low: number | null, high: number | null): Reconciled => ({
    ...unsure,
    by: one,
    measured: { middle: ((low ?? 0) + (high ?? 0)) / 2, low, high },
  });
  const told = (...all: Reconciled[]) => contradictionsSaid(all, 0.95, said);

  test("that lie apart contradict each other, in one sentence", () => {
    const [sentence, ...more] = told(by("strips", 100, 300), by("counts", 400, 900));
    expect(more).toEqual([]);
    expect(sentence).toContain(
      'against "stubble kept", "stubble removed" yields 100 to 300 kg/ha more by strips and 400 to 900 kg/ha more by counts (95 % intervals), and these ranges do not overlap.',
    );
  });
  test("are turned where they were told the other way round", () => {
    const turned = { ...by("counts", -300, -100), from: "stubble removed", to: "stubble kept" };
    expect(told(by("strips", 100, 300), turned)).toEqual([]);
    expect(told(by("strips", 400, 500), turned)[0]).toContain("100 to 300 kg/ha more by counts");
  });
  test.each([
    ["overlap", by("counts", 250, 900)],
    ["have no interval", by("counts", null, null)],
    ["are of another case", { ...by("counts", 400, 900), to: "third" }],
    ["are of one place in the row", { ...by("counts", 400, 900), rowPosition: "wheel track" }],
  ])("that %s do not", (_, counts) => expect(told(by("strips", 100, 300), counts)).toEqual([]));
});
