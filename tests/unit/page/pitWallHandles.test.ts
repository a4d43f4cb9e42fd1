import fc from "fast-check";
import { expect, test } from "vitest";
import { columnsFor, targetPx } from "../../../web/views/pit/overlay.ts";

test.each([
  [[], []],
  [[40], ["1 of 1"]],
  [
    [40, 80],
    ["1 of 1", "1 of 1"],
  ],
  [
    [20, 41, 120],
    ["1 of 2", "2 of 2", "1 of 1"],
  ],
  [
    [10, 20, 30, 80, 100],
    ["1 of 3", "2 of 3", "3 of 3", "1 of 2", "2 of 2"],
  ],
])("edges at %j share the width: %j", (ys, said) => {
  expect(columnsFor(ys).map(({ column, columns }) => `${column + 1} of ${columns}`)).toEqual(said);
});

test("neighbours less than a finger apart never lie in the same part", () => {
  fc.assert(
    fc.property(fc.array(fc.double({ min: 0, max: 60, noNaN: true }), { maxLength: 12 }), (steps) => {
      let at = 0;
      const ys = steps.map((step) => (at += step));
      const parts = columnsFor(ys);
      for (let i = 1; i < ys.length; i++) {
        if (ys[i]! - ys[i - 1]! >= targetPx) continue;
        expect(parts[i]!.columns).toBe(parts[i - 1]!.columns);
        expect(parts[i]!.column).not.toBe(parts[i - 1]!.column);
      }
    }),
  );
});
