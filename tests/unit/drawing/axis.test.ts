import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { axisOver, marksBetween, multiplesWithin, roundUp, scaleTo } from "../../../src/drawing/axis.ts";

/** Nearer to 0 a double has fewer digits than a scale needs. */
const value = fc
  .double({ min: -1e300, max: 1e300, noNaN: true })
  .map((one) => (Math.abs(one) < 1e-280 ? 0 : one));
const steps = fc.integer({ min: 1, max: 20 });
/** Ends that differ by more than what two numbers of their size are told apart by. */
const span = fc
  .tuple(value, value)
  .filter(([a, b]) => Math.abs(b - a) > 1e-8 * Math.max(Math.abs(a), Math.abs(b)))
  .map(([a, b]) => [Math.min(a, b), Math.max(a, b)] as const);

const isRound = (number: number): boolean => /^[125]0*(?:e|$)/.test(number.toExponential(6).replace(".", ""));

describe("a scale", () => {
  test.each([
    [0, 10, 5, 50],
    [10, 0, 5, 50],
    [0, 10, 10, 100],
    [-10, 10, 0, 50],
  ])("from %d to %d puts %d at %d", (from, to, at, place) =>
    expect(scaleTo(from, to, 0, 100)(at)).toBe(place),
  );
  test("of one value puts all at its start", () => {
    expect(scaleTo(3, 3, 20, 100)(3)).toBe(20);
    expect(scaleTo(3, 3, 20, 100)(4)).toBe(20);
  });
  test("of the widest span there is gives numbers", () => {
    const at = scaleTo(-Number.MAX_VALUE, Number.MAX_VALUE, 0, 100);
    expect([-Number.MAX_VALUE, 0, Number.MAX_VALUE].map(at)).toEqual([0, 50, 100]);
  });
  test("gives numbers for numbers, its ends at its ends", () => {
    fc.assert(
      fc.property(span, ([from, to]) => {
        const at = scaleTo(from, to, 7, 93);
        expect(at(from)).toBe(7);
        expect(at(to)).toBeCloseTo(93, 9);
        expect(at(from / 2 + to / 2)).toBeCloseTo(50, 6);
      }),
    );
  });
});

describe("a round number", () => {
  test.each([
    [0.3, 0.5],
    [0.5, 0.5],
    [1, 1],
    [1.01, 2],
    [20, 20],
    [21, 50],
    [51, 100],
    [0.0007, 0.001],
    [0, 1],
    [-3, 1],
  ])("not below %d is %d", (least, round) => expect(roundUp(least)).toBe(round));
  test("is one of the kinds asked for", () => {
    expect(roundUp(2.1, [1, 2, 3, 4, 6, 8])).toBe(3);
    expect(roundUp(0.45, [1, 2, 3, 4, 6, 8])).toBe(0.6);
    expect(roundUp(81, [1, 2, 3, 4, 6, 8])).toBe(100);
  });
  test("of nothing that is a number is a number", () => {
    for (const least of [Number.NaN, Infinity, Number.MIN_VALUE, Number.MAX_VALUE])
      expect(Number.isFinite(roundUp(least))).toBe(true);
  });
  test("is never below, and less than three times what is asked", () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-290, max: 1e300, noNaN: true }), (least) => {
        const round = roundUp(least);
        expect(round).toBeGreaterThanOrEqual(least * (1 - 1e-8));
        expect(round).toBeLessThanOrEqual(least * 2.5 * (1 + 1e-8));
        expect(isRound(round)).toBe(true);
      }),
    );
  });
});

describe("marks", () => {
  test.each([
    [0, 71, 5, [0, 20, 40, 60]],
    [-0.3, 0.4, 4, [-0.2, 0, 0.2, 0.4]],
    [0, 1, 1, [0, 1]],
    [-1e-9, 1e-9, 2, [-1e-9, 0, 1e-9]],
    [0, 3e12, 3, [0, 1e12, 2e12, 3e12]],
  ])("from %d to %d in at most %d steps", (from, to, most, marks) =>
    expect(marksBetween(from, to, most)).toEqual(marks),
  );
  test.each([
    [3, 3],
    [0, 0],
    [5, 5 + 1e-14],
    [4, 2],
  ])("from %d to %d are the one value", (from, to) => expect(marksBetween(from, to, 4)).toEqual([from]));
  test("have no minus zero and no digits of the machine's own", () => {
    expect(Object.is(marksBetween(-0.3, 0.4, 4)[1], 0)).toBe(true);
    expect(multiplesWithin(0, 0.7, 0.1)).toEqual([0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7]);
  });
  test("lie inside, in order, a round step apart, and are no more than asked and one", () => {
    fc.assert(
      fc.property(span, steps, ([from, to], most) => {
        const marks = marksBetween(from, to, most);
        expect(marks.length).toBeLessThanOrEqual(most + 1);
        const step = roundUp(to / most - from / most);
        for (const mark of marks) {
          expect(Number.isFinite(mark)).toBe(true);
          expect(mark).toBeGreaterThanOrEqual(from - step * 1e-6);
          expect(mark).toBeLessThanOrEqual(to + step * 1e-6);
          expect(Math.abs(mark / step - Math.round(mark / step))).toBeLessThan(1e-6);
        }
        marks.slice(1).forEach((mark, i) => expect((mark - marks[i]!) / step).toBeCloseTo(1, 4));
      }),
    );
  });
});

describe("axes", () => {
  test.each([
    [0, 54.7, 7, [0, 10, 20, 30, 40, 50, 60], 0],
    [-0.3, 1.1, 4, [-0.5, 0, 0.5, 1, 1.5], 1],
    [0, 1400, 4, [0, 500, 1000, 1500], 0],
  ])("from %d to %d go by round steps", (low, high, count, ticks, digits) => {
    const axis = axisOver(low, high, 10, 110, count);
    expect(axis.ticks).toEqual(ticks);
    expect(axis.digits).toBe(digits);
    expect(axis.at(axis.from)).toBe(10);
    expect(axis.at(axis.to)).toBe(110);
  });
  test.each([0, 7, -7, 1e-200, 1e200])("of %d alone still have a length", (one) => {
    const axis = axisOver(one, one, 0, 100, 5);
    expect(axis.to).toBeGreaterThan(axis.from);
    expect(Number.isFinite(axis.at(one))).toBe(true);
    expect(axis.ticks.length).toBeGreaterThan(1);
  });
  test("hold what they are over, end on round numbers and have about as many steps as asked", () => {
    fc.assert(
      fc.property(span, steps, ([low, high], count) => {
        const axis = axisOver(low, high, 300, 20, count);
        const slack = axis.step * 1e-6;
        expect(axis.from).toBeLessThanOrEqual(low + slack);
        expect(axis.to).toBeGreaterThanOrEqual(high - slack);
        expect(axis.ticks.length).toBeLessThanOrEqual(count + 3);
        expect(axis.ticks[0]).toBe(axis.from);
        expect(axis.ticks.at(-1)).toBe(axis.to);
        for (const tick of axis.ticks) {
          expect(axis.at(tick)).toBeGreaterThanOrEqual(20 - 1e-3);
          expect(axis.at(tick)).toBeLessThanOrEqual(300 + 1e-3);
        }
      }),
    );
  });
});
