import { describe, expect, test } from "vitest";
import table from "../../../data-reference/test-weights.json";
import { cropLines, yieldUnitOf } from "../../../src/crop/yield/yieldLines.ts";
import { recordsOf } from "../weather/records.ts";

const { rows, noneLeft } = recordsOf(table.records);
const weights = rows();
const inBushels = cropLines.filter(({ us }) => us === "bu/ac");

describe("weight of a US bushel (each with its source; exact)", () => {
  test("every crop counted in bushels has its row, and no other", () => {
    expect(inBushels.map(({ crop }) => crop).sort()).toEqual(weights.map(({ inputs }) => inputs.crop).sort());
  });
  test.each(weights)(
    "$inputs.crop: $expected.lbPerBushel lb, $source ($provenance)",
    ({ inputs, expected }) => {
      const line = inBushels.find(({ crop }) => crop === inputs.crop)!;
      expect(yieldUnitOf(line).kgPerUsUnit).toBeCloseTo(expected.lbPerBushel * 0.45359237, 9);
    },
  );
});

noneLeft();
