import { beforeAll, describe, expect, test } from "vitest";
import { runEnsemble, type Ensemble } from "../../../src/answer/runs/ensemble.ts";
import { fieldAverage } from "../../../src/answer/comparison/fieldAverage.ts";
import { averageByRun } from "../../../src/answer/runs/rowsThatChange.ts";
import { countTracks, type RowPositions } from "../../../src/scenario/rowPositions.ts";
import { spreadOf } from "../../../src/statistics/quantiles.ts";
import { stream } from "../../../src/randomness.ts";
import { someScenario } from "./someScenario.ts";

const rowsOf = (
  inTrack: number,
  all: number | null,
  share = all === null ? 0.25 : inTrack / all,
): RowPositions => ({
  positions: [
    { name: "wheel track", caseIndex: 0, afterIndex: null, share, rows: all === null ? null : inTrack },
    {
      name: "other",
      caseIndex: 1,
      afterIndex: null,
      share: 1 - share,
      rows: all === null ? null : all - inTrack,
    },
  ],
  rowsInAll: all,
  plainIndex: 1,
});

describe("rows counted", () => {
  test("on a tyre, beside it, neither; each once", () => {
    expect(countTracks(16, [6, 11])).toEqual({ inTrack: 2, besideTrack: 4, other: 10 });
    expect(countTracks(16, [6.5, 10.5])).toEqual({ inTrack: 0, besideTrack: 4, other: 12 });
    expect(countTracks(8, [3, 5])).toEqual({ inTrack: 2, besideTrack: 3, other: 3 });
    expect(countTracks(8, [1, 8])).toEqual({ inTrack: 2, besideTrack: 2, other: 4 });
    expect(countTracks(1, [1])).toEqual({ inTrack: 1, besideTrack: 0, other: 0 });
  });

  test("make all rows, wherever the tyres run", () => {
    const draws = stream(2, "tyres");
    for (let i = 0; i < 200; i++) {
      const rows = 1 + Math.floor(24 * draws.uniform());
      const tyres = Array.from(
        { length: 1 + Math.floor(4 * draws.uniform()) },
        () => 0.5 + Math.round(2 * rows * draws.uniform()) / 2,
      );
      const { inTrack, besideTrack, other } = countTracks(rows, tyres);
      expect(inTrack + besideTrack + other).toBe(rows);
      expect(Math.min(inTrack, besideTrack, other)).toBeGreaterThanOrEqual(0);
    }
  });
});

describe("the average of rows", () => {
  test("lies between the lowest and the highest in every run", () => {
    const draws = stream(3, "rows");
    for (let i = 0; i < 50; i++) {
      const values = [0, 1, 2].map(() => Float64Array.from({ length: 20 }, () => draws.normal()));
      const [a, b] = [draws.uniform(), draws.uniform()].sort((x, y) => x - y) as [number, number];
      const shares = [a, b - a, 1 - b];
      const mean = averageByRun(
        values,
        shares.map((share, caseIndex) => ({ caseIndex, share })),
      );
      mean.forEach((value, run) => {
        const all = values.map((one) => one[run]!);
        expect(value).toBeGreaterThanOrEqual(Math.min(...all) - 1e-12);
        expect(value).toBeLessThanOrEqual(Math.max(...all) + 1e-12);
      });
    }
  });
});

describe("the field of an ensemble", () => {
  let ensemble: Ensemble;
  beforeAll(() => {
    ensemble = runEnsemble(someScenario());
  });
  const price = 0.2;
  const money = {
    currency: "USD",
    pricePerKg: { low: price, middle: price, high: price },
    areaHa: null,
    items: [],
  };

  test("with all rows as the first case is the first case, and differs from it by nothing", () => {
    const [at] = fieldAverage(ensemble, rowsOf(16, 16), money).byRainTotal;
    const [first] = ensemble.byRainTotal[0]!.cases;
    expect(at!.field.yieldKgPerHa).toEqual(spreadOf(first!.yieldKgPerHaByRun));
    expect(at!.againstAllAsFirst).toEqual({
      transpirationMm: { p10: 0, p50: 0, p90: 0 },
      waterUseMm: { p10: 0, p50: 0, p90: 0 },
      yieldKgPerHa: { p10: 0, p50: 0, p90: 0 },
      worthPerHa: { p10: 0, p50: 0, p90: 0 },
    });
    expect(at!.steps[0]!.oneMore).toBeNull();
  });

  test("is paired: the spread of the difference is that of its own runs", () => {
    const [at] = fieldAverage(ensemble, rowsOf(4, 16), money).byRainTotal;
    const [first, second] = ensemble.byRainTotal[0]!.cases;
    const gain = second!.yieldKgPerHaByRun.map(
      (value, run) => 0.75 * (value - first!.yieldKgPerHaByRun[run]!),
    );
    const wanted = spreadOf(gain);
    for (const key of ["p10", "p50", "p90"] as const) {
      expect(at!.againstAllAsFirst.yieldKgPerHa[key]).toBeCloseTo(wanted[key], 9);
      expect(at!.againstAllAsFirst.worthPerHa![key]).toBeCloseTo(price * wanted[key], 9);
    }
  });

  test("one more tracked row does what the field of one more tracked row shows", () => {
    const yieldOf = (inTrack: number) => fieldAverage(ensemble, rowsOf(inTrack, 16), null).byRainTotal[0]!;
    const { steps, againstAllAsFirst } = yieldOf(4);
    expect(steps.map(({ position, rows, share }) => [position, rows, share])).toEqual([
      ["wheel track", 1, 1 / 16],
    ]);
    expect(againstAllAsFirst.worthPerHa).toBeNull();
    const [first, second] = ensemble.byRainTotal[0]!.cases;
    const step = spreadOf(
      first!.yieldKgPerHaByRun.map((value, run) => (value - second!.yieldKgPerHaByRun[run]!) / 16),
    );
    expect(steps[0]!.oneMore!.yieldKgPerHa.p50).toBeCloseTo(step.p50, 9);
    expect(steps[0]!.oneFewer!.yieldKgPerHa.p10).toBeCloseTo(-step.p90, 9);
    expect(yieldOf(0).steps[0]!.oneFewer).toBeNull();
  });

  test("typed shares step by a hundredth of the rows", () => {
    const [step] = fieldAverage(ensemble, rowsOf(0, null), money).byRainTotal[0]!.steps;
    expect([step!.rows, step!.share]).toEqual([null, 0.01]);
  });
});
