import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { resolveColumn } from "../../../src/soil/layers/column.ts";
import type { SoilLayer } from "../../../src/soil/layers/layer.ts";
import { asResolved, cutSlices, hindranceAt, openShareAt } from "../../../src/soil/layers/slices.ts";
import { anyColumn } from "./anySoil.ts";

const sum = (values: Float64Array): number => values.reduce((total, value) => total + value, 0);
const anyDraw = fc.record({
  capacity: fc.double({ min: -9, max: 9, noNaN: true }),
  openness: fc.double({ min: -2, max: 2, noNaN: true }),
  lenience: fc.double({ min: -2, max: 2, noNaN: true }),
});

const loam: SoilLayer = resolveColumn(
  [{ name: "loam", topMm: 0, bottomMm: 100, texture: "loam" }],
  "soil.layers",
).layers[0]!;
const stack = (...thicknessesMm: number[]): SoilLayer[] => {
  let topMm = 0;
  return thicknessesMm.map((thicknessMm) => {
    const layer = { ...loam, topMm, bottomMm: topMm + thicknessMm };
    topMm += thicknessMm;
    return layer;
  });
};

test("cutting neither makes nor loses thickness or water, and keeps the limits in order under any draw", () => {
  fc.assert(
    fc.property(
      anyColumn,
      fc.double({ min: 1, max: 100, noNaN: true }),
      anyDraw,
      (descriptions, maxMm, draw) => {
        const { layers } = resolveColumn(descriptions, "soil.layers");
        const slices = cutSlices(layers, maxMm, draw);
        const depthMm = layers.at(-1)!.bottomMm;
        expect(Math.abs(sum(slices.thicknessMm) - depthMm)).toBeLessThan(1e-6);
        const wiltingMm = layers.reduce((total, l) => total + l.wiltingPoint * (l.bottomMm - l.topMm), 0);
        expect(Math.abs(sum(slices.wiltingPointMm) - wiltingMm)).toBeLessThan(1e-6);
        const bad: number[] = [];
        for (let i = 0; i < slices.count; i++) {
          const layer = layers[slices.layer[i]!]!;
          const [topMm, thicknessMm] = [slices.topMm[i]!, slices.thicknessMm[i]!];
          const good =
            thicknessMm > 0 &&
            thicknessMm <= maxMm * (1 + 1e-9) &&
            topMm >= layer.topMm &&
            topMm + thicknessMm <= layer.bottomMm + 1e-6 &&
            slices.wiltingPointMm[i]! > 0 &&
            slices.fieldCapacityMm[i]! > slices.wiltingPointMm[i]! &&
            slices.saturationMm[i]! > slices.fieldCapacityMm[i]! &&
            slices.passage[i]! >= 0 &&
            slices.passage[i]! <= 1 &&
            slices.rootsLeft[i]! >= 0 &&
            slices.rootsLeft[i]! <= (i === 0 ? 1 : slices.rootsLeft[i - 1]!);
          if (!good) bad.push(i);
        }
        expect(bad).toEqual([]);
      },
    ),
    { numRuns: 100 },
  );
});

describe("cuts", () => {
  test.each([
    [[100], 25, [25, 25, 25, 25]],
    [[100], 40, [100 / 3, 100 / 3, 100 / 3]],
    [[3, 26], 25, [3, 13, 13]],
    [[0.3 * 3 * 1000], 300, [300, 300, 300]], // 900.0000000000001 / 300 is a hair above 3
  ])("layers of %j mm, at most %s mm", (thicknesses, maxMm, expected) => {
    const { thicknessMm } = cutSlices(stack(...thicknesses), maxMm, asResolved);
    expect([...thicknessMm].map((mm) => Math.round(mm * 1e6))).toEqual(
      expected.map((mm) => Math.round(mm * 1e6)),
    );
  });
  test("four hundred layers", () => {
    expect(cutSlices(stack(...Array.from({ length: 400 }, () => 3)), 25, asResolved).count).toBe(400);
  });
  test.each([0, -1, Number.NaN])("a thickness of %s is our own mistake", (maxMm) => {
    expect(() => cutSlices([loam], maxMm, asResolved)).toThrow(RangeError);
  });
});

describe("draws", () => {
  const available = (capacity: number, layer = loam): number => {
    const { fieldCapacityMm, wiltingPointMm } = cutSlices([layer], 100, { ...asResolved, capacity });
    return fieldCapacityMm[0]! - wiltingPointMm[0]!;
  };
  test("move available water by the layer's own standard deviation, with the wilting point fixed", () => {
    expect(available(1) - available(0)).toBeCloseTo(100 * loam.availableWaterSd, 9);
    expect(available(-0.5) - available(0)).toBeCloseTo(-50 * loam.availableWaterSd, 9);
    const measured = { ...loam, availableWaterSd: 0.02 };
    expect(available(1, measured) - available(0)).toBeCloseTo(2, 9);
  });
  test("leave a fifth of the available water", () => {
    expect(available(-9) / available(0)).toBeCloseTo(0.2, 12);
  });
  test("leave a tenth of the drainable space below saturation", () => {
    const { fieldCapacityMm, saturationMm } = cutSlices([loam], 100, { ...asResolved, capacity: 99 });
    expect(saturationMm[0]! - fieldCapacityMm[0]!).toBeCloseTo(
      10 * (loam.saturation - loam.fieldCapacity),
      9,
    );
  });
  test("leave the conductivity at field capacity what it was", () => {
    fc.assert(
      fc.property(anyColumn, anyDraw, (descriptions, draw) => {
        const { layers } = resolveColumn(descriptions, "soil.layers");
        const slices = cutSlices(layers, 50, draw);
        for (let j = 0; j < slices.count; j++) {
          const layer = layers[slices.layer[j]!]!;
          // As logarithms: K / Ks = (theta / theta s) ^ n.
          const was = layer.drainExponent * Math.log(layer.fieldCapacity / layer.saturation);
          const is =
            slices.drainExponent[j]! * Math.log(slices.fieldCapacityMm[j]! / slices.saturationMm[j]!);
          if (!(Math.abs(is / was - 1) < 1e-9)) throw new Error(`slice ${j}: ln K ${is}, it was ${was}`);
        }
      }),
      { numRuns: 100, seed: 61 },
    );
  });
  test("take the open share from its low to its high in two straight lines, held at the ends", () => {
    const range = { low: 0.3, middle: 0.5, high: 0.8 };
    const shares = [-3, -1, -0.5, 0, 0.5, 1, 3].map((openness) => openShareAt(range, openness));
    [0.3, 0.3, 0.4, 0.5, 0.65, 0.8, 0.8].forEach((value, i) => expect(shares[i]).toBeCloseTo(value, 12));
  });
  test("read hindrance from strict to lenient in a straight line, held at the ends", () => {
    const hindrance = { strict: 0.2, usual: 0.5, lenient: 1, basis: "bulk density" } as const;
    const readings = [-3, -1, -0.5, 0, 0.5, 1, 3].map((lenience) => hindranceAt(hindrance, lenience));
    [0.2, 0.2, 0.35, 0.5, 0.75, 1, 1].forEach((value, i) => expect(readings[i]).toBeCloseTo(value, 12));
  });
  test("cracks let a share through whatever the density", () => {
    const shut = {
      ...loam,
      openShare: { low: 0.1, middle: 0.1, high: 0.1 },
      hindrance: { strict: 0, usual: 0, lenient: 0, basis: "bulk density" as const },
    };
    expect(cutSlices([shut], 100, asResolved).passage[0]).toBeCloseTo(0.1, 12);
  });
});

describe("roots that get through", () => {
  const through = (passage: number) => ({
    ...loam,
    openShare: { low: 0, middle: 0, high: 0 },
    hindrance: { strict: passage, usual: passage, lenient: passage, basis: "bulk density" as const },
  });
  const rootsLeft = (...passages: number[]) => {
    const layers = stack(...passages.map(() => 100)).map((layer, i) => ({
      ...layer,
      ...through(passages[i]!),
      topMm: layer.topMm,
      bottomMm: layer.bottomMm,
    }));
    return [...cutSlices(layers, 100, asResolved).rootsLeft];
  };
  test("are all of them where nothing hinders", () => expect(rootsLeft(1, 1, 1)).toEqual([1, 1, 1]));
  test("are fewer in a dense layer and in all that lies beneath, however open that is", () =>
    expect(rootsLeft(1, 0.25, 1, 1)).toEqual([1, 0.5, 0.5, 0.5]));
  test("are as few as the worst of two layers leaves", () =>
    expect(rootsLeft(0.25, 0.64, 0.04)).toEqual([0.5, 0.5, 0.2]));
  test("are none beneath a layer that is shut", () => expect(rootsLeft(1, 0, 1)).toEqual([1, 0, 0]));
});
