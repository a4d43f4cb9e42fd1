import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { resolveColumn } from "../../../src/soil/layers/column.ts";
import { asResolved, cutSlices } from "../../../src/soil/layers/slices.ts";
import {
  type StartingWater,
  startingWaterMm,
  volumeFromAvailableWater,
  volumeFromGravimetric,
} from "../../../src/soil/layers/startingWater.ts";
import { anyColumn } from "./anySoil.ts";

const { layers } = resolveColumn(
  [
    {
      name: "top",
      topMm: 0,
      bottomMm: 200,
      texture: "loam",
      wiltingPoint: 0.1,
      fieldCapacity: 0.3,
      saturation: 0.45,
    },
    {
      name: "sub",
      topMm: 200,
      bottomMm: 1000,
      texture: "loam",
      wiltingPoint: 0.12,
      fieldCapacity: 0.28,
      saturation: 0.42,
    },
  ],
  "soil.layers",
);
const slices = cutSlices(layers, 100, asResolved);
const still = { deepShift: 0, deepBelowMm: 500 };
const fractions = (start: StartingWater, draw = still): number[] =>
  [...startingWaterMm(slices, layers, start, draw)].map((mm) => Math.round(mm * 10) / 1000);

describe("as stated", () => {
  test("a share of available water", () => {
    expect(fractions({ kind: "share", share: 0.5 })).toEqual([
      0.2, 0.2, 0.2, 0.2, 0.2, 0.2, 0.2, 0.2, 0.2, 0.2,
    ]);
  });
  test("by layer, kept as measured", () => {
    const measured = fractions({ kind: "by layer", volumeFraction: [0.06, 0.35] });
    expect(measured).toEqual([0.06, 0.06, 0.35, 0.35, 0.35, 0.35, 0.35, 0.35, 0.35, 0.35]);
  });
  test("by layer, held between half the wilting point and saturation", () => {
    const measured = fractions({ kind: "by layer", volumeFraction: [0.01, 0.6] });
    expect(measured.slice(1, 3)).toEqual([0.05, 0.42]);
  });
  test("a moist depth within a slice", () => {
    const moist = fractions({ kind: "moist depth", moistDepthMm: 350, shareBelow: 0 });
    expect(moist).toEqual([0.3, 0.3, 0.28, 0.2, 0.12, 0.12, 0.12, 0.12, 0.12, 0.12]);
  });
  test("too few layers are refused", () => {
    expect(() => fractions({ kind: "by layer", volumeFraction: [0.2] })).toThrow(
      /startingWater: expected water for each of the 2 layers, found a list of 1/,
    );
  });
});

describe("the draw of deep water", () => {
  test("shifts only what lies below its depth", () => {
    const wetter = fractions({ kind: "share", share: 0.5 }, { deepShift: 0.25, deepBelowMm: 550 });
    expect(wetter).toEqual([0.2, 0.2, 0.2, 0.2, 0.2, 0.22, 0.24, 0.24, 0.24, 0.24]);
  });
  test("stops at wilting point and at field capacity", () => {
    expect(fractions({ kind: "share", share: 0.5 }, { deepShift: 3, deepBelowMm: 0 })[9]).toBe(0.28);
    expect(fractions({ kind: "share", share: 0.5 }, { deepShift: -3, deepBelowMm: 0 })[9]).toBe(0.12);
  });
  test("does not push wet measured soil any wetter", () => {
    const wet: StartingWater = { kind: "by layer", volumeFraction: [0.4, 0.4] };
    expect(fractions(wet, { deepShift: 0.5, deepBelowMm: 0 })[9]).toBe(0.4);
  });
  test("any start and draw stays between half the wilting point and saturation", () => {
    const anyStart: fc.Arbitrary<StartingWater> = fc.oneof(
      fc.record({ kind: fc.constant("share" as const), share: fc.double({ min: -1, max: 2, noNaN: true }) }),
      fc.record({
        kind: fc.constant("moist depth" as const),
        moistDepthMm: fc.double({ min: 0, max: 3000, noNaN: true }),
        shareBelow: fc.double({ min: 0, max: 1, noNaN: true }),
      }),
      fc.record({
        kind: fc.constant("by layer" as const),
        volumeFraction: fc.array(fc.double({ min: 0, max: 1, noNaN: true }), {
          minLength: 40,
          maxLength: 40,
        }),
      }),
    );
    fc.assert(
      fc.property(
        anyColumn,
        anyStart,
        fc.double({ min: -2, max: 2, noNaN: true }),
        (descriptions, start, deepShift) => {
          const column = resolveColumn(descriptions, "soil.layers").layers;
          const cut = cutSlices(column, 25, asResolved);
          const water = startingWaterMm(cut, column, start, { deepShift, deepBelowMm: 300 });
          const bad = [...water].filter(
            (mm, i) => !(mm >= 0.5 * cut.wiltingPointMm[i]! - 1e-12 && mm <= cut.saturationMm[i]! + 1e-12),
          );
          expect(bad).toEqual([]);
        },
      ),
      { numRuns: 100 },
    );
  });
});

describe("as people measure it", () => {
  test("by weight, stones taken off", () => {
    expect(volumeFromGravimetric(20, 1200)).toBeCloseTo(0.24, 12);
    expect(volumeFromGravimetric(20, 1200, 0.25)).toBeCloseTo(0.18, 12);
  });
  test("as inches of available water in a layer", () => {
    expect(volumeFromAvailableWater(25.4, 304.8, 0.12)).toBeCloseTo(0.12 + 1 / 12, 12);
  });
});
