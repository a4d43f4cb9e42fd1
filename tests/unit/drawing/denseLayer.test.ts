import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { hatching } from "../../../src/drawing/denseLayer.ts";

const strokesOf = (path: string) =>
  [...path.matchAll(/M(-?[\d.]+) (-?[\d.]+)L(-?[\d.]+) (-?[\d.]+)/g)].map((found) =>
    found.slice(1).map(Number),
  ) as [number, number, number, number][];

describe("hatching", () => {
  test("crosses the box from its lower edge up to the right, ends cut off", () => {
    expect(hatching({ x: 10, y: 20, width: 10, height: 10 }, 10)).toBe("M10 25L15 20M15 30L20 25");
  });
  test("of a box without height or width has strokes of no length, if any", () => {
    expect(hatching({ x: 0, y: 0, width: 0, height: 0 }, 5)).toBe("");
    for (const [x1, y1, x2, y2] of strokesOf(hatching({ x: 0, y: 3, width: 20, height: 0 }, 5)))
      expect([x1, y1]).toEqual([x2, y2]);
  });
  test("never passes the box, and is closer where the gap is smaller", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 400 }),
        fc.integer({ min: 1, max: 200 }),
        fc.double({ min: 3, max: 40, noNaN: true }),
        (width, height, gap) => {
          const box = { x: 30, y: 50, width, height };
          const strokes = strokesOf(hatching(box, gap));
          for (const [x1, y1, x2, y2] of strokes) {
            expect(Math.min(x1, x2)).toBeGreaterThanOrEqual(30);
            expect(Math.max(x1, x2)).toBeLessThanOrEqual(30 + width);
            expect(Math.min(y1, y2)).toBeGreaterThanOrEqual(50);
            expect(Math.max(y1, y2)).toBeLessThanOrEqual(50 + height);
          }
          expect(strokesOf(hatching(box, gap / 2)).length).toBeGreaterThanOrEqual(strokes.length);
        },
      ),
    );
  });
});
