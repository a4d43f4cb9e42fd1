import { expect, test } from "vitest";
import { secondStageMmPerRootDay } from "../../../src/soil/equations/evaporableWater.ts";

// Ritchie 1972, four soils (memory): data-reference/two-stage-checks.json. The clay shares are ours.
const soils = [
  [0.03, 3.34],
  [0.2, 4.04],
  [0.33, 5.08],
  [0.55, 3.5],
] as const;

test("the second stage lies straight between the four soils", () => {
  for (const [i, [clay, mm]] of soils.entries()) {
    expect(secondStageMmPerRootDay(clay)).toBeCloseTo(mm, 12);
    const next = soils[i + 1];
    if (next === undefined) continue;
    for (const way of [0.25, 0.5, 0.9])
      expect(secondStageMmPerRootDay(clay + way * (next[0] - clay))).toBeCloseTo(
        mm + way * (next[1] - mm),
        12,
      );
  }
});

test("and is held at the ends", () => {
  for (const clay of [0, 0.01]) expect(secondStageMmPerRootDay(clay)).toBe(3.34);
  for (const clay of [0.56, 0.8, 1]) expect(secondStageMmPerRootDay(clay)).toBe(3.5);
});
