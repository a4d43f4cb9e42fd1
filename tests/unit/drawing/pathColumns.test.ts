import { expect, test } from "vitest";
import { pathColumns } from "../../../src/drawing/pathColumns.ts";

const room = { left: 40, right: 340, top: 20, bottom: 120 };
const range = (mean: number) => ({ mean, p10: mean - 0.3, p90: mean + 0.4 });

test("a column a year in order, a year without harvest an empty one, the later years last and set off", () => {
  const { columns, columnPx, gapX } = pathColumns(
    [1, 2, 4].map((year) => ({ year, ...range(1 / year) })),
    range(0.1),
    room,
  );
  expect(columns.map(({ year }) => year)).toEqual([1, 2, 3, 4, null]);
  expect(columns.map((one) => one.range === null)).toEqual([false, false, true, false, false]);
  const xs = columns.map(({ x }) => x);
  expect(xs).toEqual(xs.toSorted((a, b) => a - b));
  expect(xs[1]! - xs[0]!).toBeCloseTo(columnPx, 9);
  expect(xs[4]! - xs[3]!).toBeGreaterThan(1.4 * columnPx);
  expect(gapX).toBeGreaterThan(xs[3]! + columnPx / 2);
  expect(xs[0]! - columnPx / 2).toBeCloseTo(room.left, 9);
  expect(xs[4]!).toBeLessThan(room.right);
});

test.each([
  ["gains", [0.5, 0.2]],
  ["losses", [-2, -3]],
  ["next to nothing", [0, 0]],
])("every range, its ends and nothing lie within the room: %s", (_, means) => {
  const flat = { mean: 0, p10: 0, p90: 0 };
  const path = means.map((mean, i) => ({ year: i + 1, ...(mean === 0 ? flat : range(mean)) }));
  const { y, marks } = pathColumns(path, path.at(-1)!, room);
  for (const value of [0, ...marks, ...path.flatMap(({ mean, p10, p90 }) => [mean, p10, p90])]) {
    expect(y(value)).toBeGreaterThanOrEqual(room.top - 1e-9);
    expect(y(value)).toBeLessThanOrEqual(room.bottom + 1e-9);
  }
});
