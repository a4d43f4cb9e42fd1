import { describe, expect, test } from "vitest";
import { capacityBetweenMm, storedBetweenMm } from "../../../src/answer/runs/threeNumbers.ts";
import { slicesOf } from "./slicesOf.ts";

// 0.18 mm/mm above 200 mm, 0.10 below
const slices = slicesOf(100, [
  [0.12, 0.3],
  [0.12, 0.3],
  [0.1, 0.2],
  [0.1, 0.2],
]);

describe("the rule of thumb: extra depth x available water capacity", () => {
  test.each([
    ["within one slice", 110, 160, 9],
    ["across two soils", 150, 250, 14],
    ["no extra depth", 200, 200, 0],
    ["shallower: what is lost", 250, 150, -14],
    ["below the column nothing counts", 350, 900, 5],
  ])("%s", (_, from, to, mm) => expect(capacityBetweenMm(slices, from, to)).toBeCloseTo(mm, 10));
});

describe("stored in the extra depth", () => {
  // the last slice is below its wilting point
  const water = Float64Array.of(20, 20, 15, 5);
  test.each([
    ["available water only", 100, 200, 8],
    ["parts of slices", 150, 250, 4 + 2.5],
    ["nothing below wilting point", 300, 400, 0],
    ["shallower: what is lost", 250, 150, -6.5],
  ])("%s", (_, from, to, mm) => expect(storedBetweenMm(slices, water, from, to)).toBeCloseTo(mm, 10));
});
