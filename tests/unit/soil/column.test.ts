import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { InputError, type Problem } from "../../../src/problem.ts";
import { resolveColumn, restrictAt } from "../../../src/soil/layers/column.ts";
import {
  columnReadilyEvaporableMm,
  readilyEvaporableMm,
} from "../../../src/soil/equations/evaporableWater.ts";
import { hydrologicGroup } from "../../../src/soil/equations/hydrologicGroup.ts";
import type { LayerDescription } from "../../../src/soil/layers/layerDescription.ts";
import { anyColumn } from "./anySoil.ts";

const layer = (topMm: number, bottomMm: number, more: Partial<LayerDescription> = {}): LayerDescription => ({
  name: `${topMm}`,
  topMm,
  bottomMm,
  texture: "silt loam",
  ...more,
});
const resolve = (...layers: LayerDescription[]) => resolveColumn(layers, "soil.layers");

test("any column of possible layers resolves to ordered, finite limits", () => {
  fc.assert(
    fc.property(anyColumn, (descriptions) => {
      const { layers } = resolveColumn(descriptions, "soil.layers");
      expect(layers.length).toBe(descriptions.length);
      for (const one of layers) {
        expect(one.wiltingPoint).toBeGreaterThan(0);
        expect(one.fieldCapacity).toBeGreaterThan(one.wiltingPoint);
        expect(one.saturation).toBeGreaterThan(one.fieldCapacity);
        const numbers = Object.values(one).filter((value) => typeof value === "number");
        expect(numbers.every(Number.isFinite)).toBe(true);
      }
    }),
    { numRuns: 200 },
  );
});

describe("layers follow one another", () => {
  test.each([
    [[layer(50, 200)], /layers\[0\]\.top: expected the surface, 0, found 50 mm/],
    [
      [layer(0, 200), layer(250, 400)],
      /layers\[1\]\.top: expected the bottom of the layer above, 200 mm, found 250 mm/,
    ],
    [[layer(0, 200), layer(150, 400)], /layers\[1\]\.top: .*found 150 mm/],
    [[], /soil\.layers: expected at least one layer, found an empty list/],
  ])("%#", (layers, message) => expect(() => resolveColumn(layers, "soil.layers")).toThrow(message));

  test("depths written in two units meet", () => {
    const { layers } = resolve(layer(0, 203.2), layer(203.20001, 400));
    expect(layers[1]?.topMm).toBe(203.2);
  });

  test("the slips of all layers come together", () => {
    let problems: readonly Problem[] = [];
    try {
      resolve(layer(0, 200, { texture: "mud" }), layer(300, 400, { openShare: 2 }));
    } catch (error) {
      if (error instanceof InputError) problems = error.problems;
    }
    expect(problems.map(({ field }) => field)).toEqual([
      "soil.layers[0].texture",
      "soil.layers[1].top",
      "soil.layers[1].openShare",
    ]);
  });

  test("what is said of several layers is said once", () => {
    const { notes } = resolve(
      layer(0, 200, { availableWater: 0.18 }),
      layer(200, 400, { availableWater: 0.16 }),
    );
    expect(notes).toEqual([
      "0, 200: field capacity is the estimated wilting point plus the stated available water",
    ]);
  });
});

describe("a restricted depth ends the column", () => {
  const { layers } = resolve(layer(0, 200), layer(200, 600), layer(600, 1500));
  test("within a layer", () => {
    const { layers: kept, note } = restrictAt(layers, 500);
    expect(kept.map(({ bottomMm }) => bottomMm)).toEqual([200, 500]);
    expect(note).toContain(
      "ends on the rock at 19.7 in (500 mm), not at 59.1 in (1500 mm) and one layer is left out",
    );
  });
  test("at a boundary", () => expect(restrictAt(layers, 600).layers.length).toBe(2));
  test("below the column it changes nothing", () =>
    expect(restrictAt(layers, 1500)).toEqual({ layers, note: null }));
  test.each([0, -5, Number.NaN])("%s is no depth", (depth) => {
    expect(() => restrictAt(layers, depth)).toThrow(
      /soil\.restriction\.depth: expected a depth below the surface/,
    );
  });
});

describe("hydrologic group", () => {
  // TR-55 appendix A: A and B read, C and D memory.
  test.each([
    ["sand", "A"],
    ["loamy sand", "A"],
    ["sandy loam", "A"],
    ["silt loam", "B"],
    ["loam", "B"],
    ["sandy clay loam", "C"],
    ["clay loam", "D"],
    ["silty clay loam", "D"],
    ["sandy clay", "D"],
    ["silty clay", "D"],
    ["clay", "D"],
  ])(
    "a surface soil of %s without a measured conductivity is %s, whatever lies beneath",
    (texture, group) => {
      const { layers: over } = resolve(layer(0, 200, { texture }), layer(200, 1500, { texture: "clay" }));
      expect(hydrologicGroup(over, null).group).toBe(group);
      expect(hydrologicGroup(over, null).why).toContain(`the surface soil is ${texture}`);
    },
  );
  test("rock within half a metre makes it D", () => {
    expect(hydrologicGroup(resolve(layer(0, 1500, { texture: "sand" })).layers, 400).group).toBe("D");
  });
  test("a measured slow layer lowers it", () => {
    const loose = resolve(layer(0, 1500, { organicMatterPercent: 2.5 })).layers;
    const panned = resolve(
      layer(0, 125, { organicMatterPercent: 2.5 }),
      layer(125, 225, { saturatedConductivityMmPerDay: 67, organicMatterPercent: 2.5 }),
      layer(225, 1500, { organicMatterPercent: 2.5 }),
    ).layers;
    expect(hydrologicGroup(loose, null).group).toBe("B");
    expect(hydrologicGroup(panned, null).group).toBe("C");
    expect(hydrologicGroup(panned, null).why).toContain(
      "least conductive layer measured within 39.4 in (1000 mm), 125, lets 0.11 in/h (2.79 mm/h)",
    );
  });
  test("what lies below a metre does not count", () => {
    const deep = resolve(
      layer(0, 1000, { saturatedConductivityMmPerDay: 500 }),
      layer(1000, 1500, { saturatedConductivityMmPerDay: 5 }),
    ).layers;
    expect(hydrologicGroup(deep, null).group).toBe("B");
  });
  test("over rock at 0.5 to 1 m the upper half metre counts, by limits of its own", () => {
    // 500 mm a day is 5.8 um/s: B to a metre, C by the limits for soil over rock (NEH 630 ch. 7 Table 7-1, memory).
    const overRock = resolve(
      layer(0, 600, { saturatedConductivityMmPerDay: 500 }),
      layer(600, 800, { saturatedConductivityMmPerDay: 5 }),
    ).layers;
    expect(hydrologicGroup(overRock, 800).group).toBe("C");
    expect(hydrologicGroup(overRock, 800).why).toContain("measured within 19.7 in (500 mm), 0,");
    expect(hydrologicGroup(overRock, null).group).toBe("D");
  });
});

describe("evaporable water of a column", () => {
  test("by the texture of the top layer", () => {
    expect(columnReadilyEvaporableMm(resolve(layer(0, 1500)).layers, 100)).toBeCloseTo(
      readilyEvaporableMm(0.2, 0.15),
      12,
    );
  });
  test("stones take their share", () => {
    const stony = resolve(layer(0, 1500, { gravelVolumeFraction: 0.25 })).layers;
    expect(columnReadilyEvaporableMm(stony, 100)).toBeCloseTo(0.75 * readilyEvaporableMm(0.2, 0.15), 12);
  });
  test("never above what the evaporating depth can lose", () => {
    const sandy = resolve(
      layer(0, 1500, { texture: "sand", fieldCapacity: 0.06, wiltingPoint: 0.02 }),
    ).layers;
    expect(columnReadilyEvaporableMm(sandy, 60)).toBeCloseTo(60 * 0.05, 12);
  });
  test("the example of the docstring", () => expect(readilyEvaporableMm(0.4, 0.2)).toBeCloseTo(9.6, 12));
});
