import { describe, expect, test } from "vitest";
import { middleRun } from "../../../src/answer/runs/chosenRun.ts";
import type { Ensemble } from "../../../src/answer/runs/ensemble.ts";

type Runs = readonly (readonly [transpirationMm: number, finalRootDepthMm: number])[];

function ensembleOf(byCase: readonly Runs[]): Ensemble {
  const cases = byCase.map((runs) => ({
    byRun: {
      transpirationMm: Float64Array.from(runs, ([mm]) => mm),
      finalRootDepthMm: Float64Array.from(runs, ([, mm]) => mm),
    },
  }));
  return { byRainTotal: [{ rainTotalMm: null, cases }] } as unknown as Ensemble;
}

describe("a season near the middle", () => {
  const first: Runs = [
    [100, 500],
    [100, 900],
    [100, 700],
    [100, 600],
    [100, 800],
  ];

  test("is the middle one in the water and in the roots", () => {
    const second: Runs = [
      [101, 500],
      [102, 900],
      [103, 700],
      [104, 600],
      [105, 800],
    ];
    expect(middleRun(ensembleOf([first, second]))).toBe(2);
  });

  test("is not one of middle water whose roots are the deepest of all", () => {
    const second: Runs = [
      [101, 500],
      [103, 900],
      [102, 700],
      [104, 600],
      [105, 800],
    ];
    expect(middleRun(ensembleOf([first, second]))).not.toBe(1);
  });

  test("of a case alone is the middle one in the water used and in its roots", () => {
    const alone: Runs = [
      [90, 900],
      [110, 650],
      [100, 700],
    ];
    expect(middleRun(ensembleOf([alone]))).toBe(2);
  });

  test("of equals is the first", () => {
    const equal: Runs = [
      [90, 900],
      [90, 900],
    ];
    expect(middleRun(ensembleOf([equal, equal]))).toBe(0);
  });
});
