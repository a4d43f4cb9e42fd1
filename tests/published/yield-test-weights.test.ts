import { describe, expect, test } from "vitest";
import table from "../../data-reference/test-weights.json";
import { cropLines, yieldUnitOf } from "../../src/answer/yieldLines.ts";

const inBushels = cropLines.filter(({ us }) => us === "bu/ac");

describe("weight of a US bushel (USDA grain standards as quoted; exact)", () => {
  test("every crop counted in bushels has its row, and no other", () => {
    expect(inBushels.map(({ crop }) => crop).sort()).toEqual(table.weights.map(({ crop }) => crop).sort());
  });
  test.each(table.weights.map(({ crop, lbPerBushel, mark }) => [crop, lbPerBushel, mark] as const))(
    "%s: %d lb (%s)",
    (crop, lbPerBushel) => {
      const line = inBushels.find((one) => one.crop === crop)!;
      expect(yieldUnitOf(line).kgPerUsUnit).toBeCloseTo(lbPerBushel * 0.45359237, 9);
    },
  );
});
