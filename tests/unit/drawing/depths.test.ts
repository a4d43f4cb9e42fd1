import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { depthTicks, inWholeSteps } from "../../../src/drawing/depths.ts";

describe("depths", () => {
  test("are marked in round steps of the unit on show", () => {
    expect(depthTicks(1000, 420, true).map(({ text }) => text)).toEqual([
      "0",
      "6",
      "12",
      "18",
      "24",
      "30",
      "36",
    ]);
    expect(depthTicks(1000, 400, false).map(({ mm }) => mm)).toEqual([
      0, 100, 200, 300, 400, 500, 600, 700, 800, 900, 1000,
    ]);
  });
  test.each([
    [0, 400],
    [0.001, 400],
    [1000, 0],
    [1e9, 400],
  ])("of %d mm on %d px begin at the surface and are numbers", (depthMm, heightPx) => {
    for (const inInches of [true, false]) {
      const ticks = depthTicks(depthMm, heightPx, inInches);
      expect(ticks[0]).toEqual({ mm: 0, text: "0" });
      for (const { mm } of ticks) expect(Number.isFinite(mm)).toBe(true);
    }
  });
  test("keep their distance, lie inside, and are whole numbers of the unit", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 50, max: 5000, noNaN: true }),
        fc.integer({ min: 60, max: 900 }),
        fc.boolean(),
        fc.integer({ min: 10, max: 60 }),
        (depthMm, heightPx, inInches, leastPx) => {
          const ticks = depthTicks(depthMm, heightPx, inInches, leastPx);
          const places = ticks.map(({ mm }) => (mm / depthMm) * heightPx);
          expect(Math.max(...places)).toBeLessThanOrEqual(heightPx + 1e-6);
          places.slice(1).forEach((y, i) => expect(y - places[i]!).toBeGreaterThanOrEqual(leastPx - 1e-6));
          for (const { text } of ticks) expect(text).toMatch(/^\d+$/);
        },
      ),
    );
  });
  test("shown go in whole steps, and no less than some", () => {
    expect(inWholeSteps(1000, 304.8, 3)).toBeCloseTo(4 * 304.8, 9);
    expect(inWholeSteps(0, 304.8, 3)).toBeCloseTo(3 * 304.8, 9);
    expect(inWholeSteps(76.2, 76.2, 1)).toBe(76.2);
  });
});
