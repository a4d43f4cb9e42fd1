import { describe, expect, test } from "vitest";
import { makeRootSupply, setRootSupply, shareAtDepth } from "../../../src/season/uptake.ts";
import { column, testSilt, testUptake } from "../../support/column.ts";

describe("the share of a slice's available water that roots can take in a day", () => {
  const rule = { sharePerDay: 0.096, denseRootsMm: 400, halvingMm: 600 };

  test("is whole down to where roots are dense", () => {
    for (const depthMm of [0, 12.5, 399, 400]) expect(shareAtDepth(depthMm, rule)).toBe(0.096);
  });

  // An exponential fall, as roots thin out (Gerwitz & Page 1974, abstract, read).
  test.each([
    [1000, 0.5],
    [1600, 0.25],
    [2200, 0.125],
    [700, Math.SQRT1_2],
  ])("and at %d mm %d of that: half with every halving", (depthMm, left) => {
    expect(shareAtDepth(depthMm, rule)).toBeCloseTo(0.096 * left, 12);
  });

  test("falls by the same factor over the same way, wherever that begins", () => {
    const factor = (fromMm: number) => shareAtDepth(fromMm + 150, rule) / shareAtDepth(fromMm, rule);
    for (const fromMm of [400, 733, 1500]) expect(factor(fromMm)).toBeCloseTo(Math.exp(-Math.LN2 / 4), 12);
  });

  test("never falls where roots are dense all the way down", () => {
    expect(shareAtDepth(5000, { ...rule, denseRootsMm: Infinity })).toBe(0.096);
  });

  test("counts all water above wilting point at field capacity, in what evaporation dries too", () => {
    const slices = column([testSilt], 50);
    const supply = makeRootSupply(slices.count);
    setRootSupply(supply, slices, 2, testUptake);
    for (const j of [0, 1, 2, 10]) {
      const held = slices.fieldCapacityMm[j]! - slices.wiltingPointMm[j]!;
      const counted = supply.shareAbove[j]! * (slices.fieldCapacityMm[j]! - supply.emptyMm[j]!);
      expect(counted).toBeCloseTo(held, 12);
    }
  });

  test("is told of a slice by its middle", () => {
    const slices = column([testSilt], 50);
    const supply = makeRootSupply(slices.count);
    setRootSupply(supply, slices, 0, { ...testUptake, ...rule });
    for (let j = 0; j < slices.count; j++)
      expect(supply.takenPerDay[j]! / supply.shareAbove[j]!).toBeCloseTo(shareAtDepth(50 * j + 25, rule), 12);
  });
});
