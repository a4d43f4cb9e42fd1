import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { apart } from "../../../src/drawing/labels.ts";

const labels = fc.array(
  fc.tuple(
    fc.double({ min: -500, max: 1500, noNaN: true }),
    fc.double({ min: 0.1, max: 60, noNaN: true, noDefaultInfinity: true }),
  ),
  { maxLength: 12 },
);
const inOrder = (wanted: readonly number[]) =>
  wanted.map((_, i) => i).sort((a, b) => wanted[a]! - wanted[b]! || a - b);

describe("labels that would lie on each other", () => {
  test("are moved apart, no further than needed, in their order", () => {
    expect(apart([10, 12, 40], 14)).toEqual([4, 18, 40]);
    expect(apart([40, 12, 10], 14)).toEqual([40, 18, 4]);
    expect(apart([10, 12, 100], [10, 10, 10], 0, 100)).toEqual([6, 16, 95]);
  });
  test("stay within the ends", () => {
    expect(apart([98, 99], 10, 0, 100)).toEqual([85, 95]);
    expect(apart([-5, 1], [10, 20], 0, 100)).toEqual([5, 20]);
  });
  test("of which there are none, or one", () => {
    expect(apart([], 10, 0, 100)).toEqual([]);
    expect(apart([50], 10, 0, 100)).toEqual([50]);
    expect(apart([-50], 10, 0, 100)).toEqual([5]);
    expect(apart([1e300], 10, 0, 100)).toEqual([95]);
  });
  test("overlap evenly where there is not room for all", () => {
    expect(apart([50, 50, 50, 50], 40, 0, 100)).toEqual([12.5, 37.5, 62.5, 87.5]);
    expect(apart([1, 2], 10, 0, 0)).toEqual([0, 0]);
  });
  test("without height stand where they want to", () => expect(apart([3, 1], 0, 0, 10)).toEqual([3, 1]));

  test("keep their order, their distance where there is room, and the ends", () => {
    fc.assert(
      fc.property(labels, fc.double({ min: 1, max: 1000, noNaN: true }), (all, room) => {
        const [wanted, sizes] = [all.map(([at]) => at), all.map(([, size]) => size)];
        const found = apart(wanted, sizes, 0, room);
        const order = inOrder(wanted);
        const fits = sizes.reduce((sum, size) => sum + size, 0) <= room;
        order.slice(1).forEach((next, n) => {
          const i = order[n]!;
          const least = fits ? (sizes[i]! + sizes[next]!) / 2 : 0;
          expect(found[next]! - found[i]!).toBeGreaterThanOrEqual(least - 1e-6);
        });
        found.forEach((at, i) => {
          const half = fits ? sizes[i]! / 2 : 0;
          expect(at).toBeGreaterThanOrEqual(half - 1e-6);
          expect(at).toBeLessThanOrEqual(room - half + 1e-6);
        });
      }),
    );
  });
  test("stay where they want to be where none is in the way", () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: 0, max: 40, noNaN: true }), { maxLength: 9 }), (extra) => {
        let at = 5;
        const wanted = extra.map((more) => (at += 10 + more) - 5);
        const found = apart(wanted, 10, 0, 1000);
        found.forEach((place, i) => expect(place).toBeCloseTo(wanted[i]!, 6));
      }),
    );
  });
  test("are moved as little as any other places would", () => {
    const cost = (places: readonly number[], wanted: readonly number[]) =>
      places.reduce((sum, at, i) => sum + (at - wanted[i]!) ** 2, 0);
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 0, max: 100, noNaN: true }), { minLength: 1, maxLength: 6 }),
        fc.array(fc.double({ min: 0, max: 30, noNaN: true }), { minLength: 6, maxLength: 6 }),
        fc.double({ min: 0, max: 40, noNaN: true }),
        (some, gaps, start) => {
          const wanted = some.toSorted((a, b) => a - b);
          let at = start;
          // Any other places in the same order that keep off one another.
          const others = wanted.map((_, i) => (at += i === 0 ? 0 : 10 + gaps[i]!));
          expect(cost(apart(wanted, 10), wanted)).toBeLessThanOrEqual(cost(others, wanted) + 1e-6);
        },
      ),
    );
  });
});
