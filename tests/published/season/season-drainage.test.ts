import { createRequire } from "node:module";
import { describe, expect, test } from "vitest";
import { drainedTo, mayDrainAnywhere, soakAndDrain, type SoakResult } from "../../../src/season/drainage.ts";
import { column, testSilt } from "../../support/column.ts";

// A general-purpose solver of ordinary differential equations (Hairer & Wanner's extrapolation method), as a second opinion.
interface Solver {
  absoluteTolerance: number;
  relativeTolerance: number;
  solve(
    f: (x: number, y: number[]) => number[],
    from: number,
    start: number[],
    to: number,
  ): { y: number[]; outcome: number };
}
const { Solver } = createRequire(import.meta.url)("odex") as { Solver: new (n: number) => Solver };

function solved(f: (x: number, y: number[]) => number[], start: number[], to: number): number[] {
  const solver = new Solver(start.length);
  solver.absoluteTolerance = 1e-10;
  solver.relativeTolerance = 1e-10;
  return solver.solve(f, 0, start, to).y;
}

describe("drainage of one slice against a general ODE solver", () => {
  const rows = [
    // water, saturation mm, Ks mm/day, exponent, days
    [12, 12, 390, 12, 1],
    [11, 12, 390, 12, 1],
    [9, 12, 390, 12, 1],
    [12, 12, 26, 24, 1],
    [10.5, 12, 26, 24, 0.4],
    [60, 75, 900, 8, 1],
    [70, 75, 5, 30, 1],
  ] as const;
  test.each(rows)("from %d of %d mm at Ks %d, exponent %d, %d days", (water, saturation, ks, n, days) => {
    const [expected] = solved((_, [w]) => [-ks * (w! / saturation) ** n], [water], days);
    expect(Math.abs(drainedTo(water, saturation, ks, n, days) - expected!)).toBeLessThan(1e-6);
  });

  test("water above saturation leaves at Ks first", () => {
    // 15 mm in 12: 3 mm leave at 30 mm a day in 0.1 day, the rest drains for 0.9.
    const [expected] = solved((_, [w]) => [-30 * (w! / 12) ** 12], [12], 0.9);
    expect(Math.abs(drainedTo(15, 12, 30, 12, 1) - expected!)).toBeLessThan(1e-6);
    expect(drainedTo(60, 12, 30, 12, 1)).toBe(30);
  });
});

describe("drainage of a wet column against the coupled equations", () => {
  // dw/dt of each slice = what comes from above - K(w): the cascade lets each slice drain for the whole day with its
  // inflow there from the start, so it runs ahead of the coupled flow on the first day and meets it later.
  const slices = column([{ ...testSilt, thicknessMm: 300 }]);
  // The coupled flow knows no field capacity: here it is put so low that nothing stops.
  const drainsOn = { ...slices, fieldCapacityMm: slices.wiltingPointMm };
  const n = slices.count;
  const start = slices.saturationMm.map((s) => 0.95 * s);
  const exact = (days: number) =>
    solved(
      (_, w) => {
        const k = w.map(
          (x, j) =>
            slices.saturatedConductivityMmPerDay[j]! *
            (x / slices.saturationMm[j]!) ** slices.drainExponent[j]!,
        );
        return k.map((out, j) => (j === 0 ? 0 : k[j - 1]!) - out);
      },
      [...start],
      days,
    );
  const cascade = (days: number, of: typeof slices) => {
    const water = start.slice();
    const result: SoakResult = { refusedMm: 0, deepDrainageMm: 0 };
    const draining = mayDrainAnywhere(slices.count);
    for (let d = 0; d < days; d++) soakAndDrain(water, 0, of, draining, result);
    return water;
  };
  const total = (w: ArrayLike<number>) => Array.from(w).reduce((a, b) => a + b, 0);

  // Day, and how far off the drained amount may be: 48 mm drain in 3 days, and the cascade is up to 7 mm ahead then.
  test.each([
    [3, 0.15],
    [10, 0.08],
    [30, 0.05],
  ])("without a field capacity: what has drained after %d days is within a share of %d", (days, share) => {
    const drained = total(start) - total(exact(days));
    const ours = total(start) - total(cascade(days, drainsOn));
    expect(Math.abs(ours - drained) / drained).toBeLessThan(share);
  });

  test("it stops at field capacity, which the coupled flow passes only later", () => {
    const ours = cascade(30, slices);
    for (let j = 0; j < n; j++) expect(ours[j]!).toBeCloseTo(slices.fieldCapacityMm[j]!, 9);
  });
});

describe("infiltration", () => {
  const soak = (inflow: number, slices = column([testSilt])) => {
    const water = slices.wiltingPointMm.slice();
    const result: SoakResult = { refusedMm: 0, deepDrainageMm: 0 };
    soakAndDrain(water, inflow, slices, mayDrainAnywhere(slices.count), result);
    return { water, result, slices };
  };

  test("rain into dry soil fills slices to field capacity from the top; nothing is lost", () => {
    const { water, result, slices } = soak(40);
    expect(result).toEqual({ refusedMm: 0, deepDrainageMm: 0 });
    const gained = water.reduce((s, w, j) => s + w - slices.wiltingPointMm[j]!, 0);
    expect(gained).toBeCloseTo(40, 9);
    // 0.19 of each mm is room: the front of the water stands near 40 / 0.19 = 211 mm.
    expect(water[10]!).toBe(slices.wiltingPointMm[10]!);
    expect(water[5]!).toBeCloseTo(slices.fieldCapacityMm[5]!, 9);
  });

  test("a tight layer backs water up to the surface, and the surplus is refused", () => {
    const tight = { ...testSilt, thicknessMm: 500, conductivityMmPerDay: 0.5 };
    const { water, result, slices } = soak(200, column([{ ...testSilt, thicknessMm: 100 }, tight]));
    expect(result.refusedMm).toBeGreaterThan(0);
    for (let j = 0; j < 4; j++) expect(water[j]!).toBeCloseTo(slices.saturationMm[j]!, 9);
    const gained = water.reduce((s, w, j) => s + w - slices.wiltingPointMm[j]!, 0);
    expect(gained + result.refusedMm + result.deepDrainageMm).toBeCloseTo(200, 9);
  });
});
