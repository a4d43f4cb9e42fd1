import { describe, expect, test } from "vitest";
import { InputError } from "../../../src/problem.ts";
import type { LayerDescription } from "../../../src/soil/layers/layerDescription.ts";
import { resolveLayer } from "../../../src/soil/layers/resolveLayer.ts";

const path = "soil.layers[1]";
const pan: LayerDescription = { name: "pan", topMm: 125, bottomMm: 225, texture: "silt loam" };
const given = (more: Partial<LayerDescription>): LayerDescription => ({ ...pan, ...more });

function complaint(layer: LayerDescription): string {
  try {
    resolveLayer(layer, path);
  } catch (error) {
    if (error instanceof InputError) return error.message;
    throw error;
  }
  return "no complaint";
}

describe("what is left out", () => {
  test("a class alone gives a whole layer, every default said", () => {
    const { layer, defaults, notes } = resolveLayer(pan, path);
    expect(layer.sandFraction).toBe(0.2);
    expect(layer.clayFraction).toBe(0.15);
    expect(defaults.map(({ field }) => field)).toEqual([
      `${path}.sand`,
      `${path}.clay`,
      `${path}.organicMatter`,
      `${path}.gravelVolume`,
      `${path}.bulkDensity`,
    ]);
    for (const { value, why } of defaults) {
      expect(value).not.toBe("");
      expect(why.length).toBeGreaterThan(10);
    }
    expect(notes).toEqual([]);
  });

  test("without density or reading nothing holds roots back", () => {
    expect(resolveLayer(pan, path).layer.hindrance).toEqual({
      strict: 1,
      usual: 1,
      lenient: 1,
      basis: "bulk density",
    });
  });

  test("a stated saturation gives the density", () => {
    const { layer } = resolveLayer(given({ saturation: 0.5 }), path);
    expect(layer.bulkDensityKgPerM3).toBeCloseTo(1325, 9);
    expect(layer.saturation).toBe(0.5);
  });

  test("clay stated, sand from the class", () => {
    const { layer, defaults } = resolveLayer(given({ clayFraction: 0.2 }), path);
    expect(layer.clayFraction).toBe(0.2);
    expect(layer.sandFraction).toBe(0.2);
    expect(defaults.map(({ field }) => field)).not.toContain(`${path}.clay`);
  });
});

describe("what is stated holds", () => {
  test("measured limits, conductivity and cracks", () => {
    const stated = {
      wiltingPoint: 0.12,
      fieldCapacity: 0.3,
      saturation: 0.45,
      saturatedConductivityMmPerDay: 77,
      openShare: 0.1,
    };
    const { layer, notes } = resolveLayer(given({ ...stated, bulkDensityKgPerM3: 1450 }), path);
    const { openShare, ...limits } = stated;
    expect(layer).toMatchObject(limits);
    expect(layer.openShare).toEqual({ low: openShare, middle: openShare, high: openShare });
    expect(notes).toEqual([]);
  });

  test("available water beside a stated field capacity gives the wilting point", () => {
    const { layer } = resolveLayer(given({ fieldCapacity: 0.3, availableWater: 0.18 }), path);
    expect(layer.wiltingPoint).toBeCloseTo(0.12, 12);
  });

  test("available water alone stands on the estimated wilting point, and that is said", () => {
    const { layer, notes } = resolveLayer(given({ availableWater: 0.2 }), path);
    expect(layer.fieldCapacity - layer.wiltingPoint).toBeCloseTo(0.2, 12);
    expect(notes).toEqual([
      "pan: field capacity is the estimated wilting point plus the stated available water",
    ]);
  });

  test("stones by weight become stones by volume", () => {
    const { layer } = resolveLayer(given({ organicMatterPercent: 2.5, gravelMassFraction: 0.2 }), path);
    expect(layer.gravelVolumeFraction).toBeCloseTo(0.1153, 4); // Saxton & Rawls 2006 eq 19, see tests/published
  });

  test("a penetrometer reading replaces density", () => {
    const dense = given({ bulkDensityKgPerM3: 1750 });
    expect(resolveLayer(dense, path).layer.hindrance.usual).toBeLessThan(0.3);
    const probed = resolveLayer({ ...dense, penetrationResistanceMPa: 0.8, structure: "structured" }, path);
    expect(probed.layer.hindrance.usual).toBe(1);
    expect(probed.layer.hindrance.basis).toBe("penetration resistance");
    expect(probed.notes.join()).toContain("at field capacity");
  });

  test("a reading without structure is read as tilled, and that is said", () => {
    const { defaults } = resolveLayer(given({ penetrationResistanceMPa: 2 }), path);
    expect(defaults.find(({ field }) => field === `${path}.structure`)?.value).toBe("tilled");
  });

  test("shares that belong to another class win, and that is said", () => {
    const { layer, notes } = resolveLayer(given({ sandFraction: 0.6, clayFraction: 0.25 }), path);
    expect(layer.sandFraction).toBe(0.6);
    expect(notes[0]).toContain("make it a sandy clay loam, not a silt loam");
  });

  test("field capacity above the estimated saturation raises it, and that is said", () => {
    const { layer, notes } = resolveLayer(given({ fieldCapacity: 0.5, wiltingPoint: 0.2 }), path);
    expect(layer.saturation).toBeCloseTo(0.52, 12);
    expect(notes.join()).toContain("saturation is raised to 52 %");
  });
});

describe("what made a layer dense", () => {
  const dense = { bulkDensityKgPerM3: 1650 };
  const toldOf = (layer: LayerDescription) => {
    const resolved = resolveLayer(layer, path);
    const told = resolved.defaults.filter(({ field }) => /origin|openShare|structure/.test(field));
    return { layer: resolved.layer, told: told.map(({ field, value }) => `${field} ${value}`) };
  };
  test("within a foot it is taken for a pan, with few ways for roots, and both are told", () => {
    const { layer, told } = toldOf(given(dense));
    expect(layer.originAssumed).toBe(true);
    expect(layer.openShare).toEqual({ low: 0.1, middle: 0.2, high: 0.3 });
    expect(told).toEqual([`${path}.origin tillage pan`, `${path}.openShare 20 %`]);
  });
  test("deeper it is natural, with many ways", () => {
    const { layer, told } = toldOf(given({ ...dense, topMm: 305, bottomMm: 600 }));
    expect(layer.openShare).toEqual({ low: 0.3, middle: 0.5, high: 0.8 });
    expect(told).toEqual([`${path}.origin natural`, `${path}.openShare 50 %`]);
  });
  test("what is said holds, wherever it lies", () => {
    const natural = toldOf(given({ ...dense, origin: "natural" }));
    expect(natural.layer.openShare.middle).toBe(0.5);
    expect(natural.layer.originAssumed).toBe(false);
    expect(natural.told).toEqual([`${path}.openShare 50 %`]);
    const track = toldOf(given({ ...dense, topMm: 500, bottomMm: 600, origin: "wheel track" }));
    expect(track.layer.openShare.middle).toBe(0.2);
  });
  test("a stated open share leaves nothing to say", () => {
    const { layer, told } = toldOf(given({ ...dense, openShare: 0.02 }));
    expect(layer.openShare).toEqual({ low: 0.02, middle: 0.02, high: 0.02 });
    expect(layer.originAssumed).toBe(false);
    expect(told).toEqual([]);
  });
  test("a loose layer leaves nothing to say", () =>
    expect(toldOf(given({ bulkDensityKgPerM3: 1300 })).told).toEqual([]));
  test("a reading in a natural layer is read as one in structured soil", () =>
    expect(toldOf(given({ topMm: 400, bottomMm: 500, penetrationResistanceMPa: 2.5 })).told).toEqual([
      `${path}.structure structured`,
      `${path}.origin natural`,
      `${path}.openShare 50 %`,
    ]));
});

describe("how sure the available water is", () => {
  const sd = (more: Partial<LayerDescription>) => resolveLayer(given(more), path).layer.availableWaterSd;
  test("wide where both limits are estimated, narrow where both are measured, between where one is", () => {
    expect(sd({})).toBeCloseTo(0.05, 12);
    expect(sd({ wiltingPoint: 0.11 })).toBeCloseTo(0.05, 12);
    expect(sd({ fieldCapacity: 0.31 })).toBeCloseTo(0.025, 12);
    expect(sd({ fieldCapacity: 0.31, wiltingPoint: 0.11 })).toBeCloseTo(0.02, 12);
    expect(sd({ availableWater: 0.2 })).toBeCloseTo(0.02, 12);
  });
  test("at most a third of what there is, and only of the fine earth", () => {
    const sand = resolveLayer(given({ texture: "sand" }), path).layer;
    expect(sand.availableWaterSd).toBeCloseTo((sand.fieldCapacity - sand.wiltingPoint) / 3, 12);
    expect(sd({ gravelVolumeFraction: 0.2 })).toBeCloseTo(0.04, 12);
  });
});

describe("contradictions name the field, in one line", () => {
  test.each<[string, Partial<LayerDescription>, RegExp]>([
    [
      "bottom above top",
      { bottomMm: 100 },
      /\[1\]\.bottom: expected a depth below the layer's top \(125 mm\), found 100 mm/,
    ],
    ["top above ground", { topMm: -10 }, /\[1\]\.top: expected a depth from 0 to 10 m, found -10 mm/],
    ["not a number", { bottomMm: Number.NaN }, /\[1\]\.bottom: .*found no number/],
    ["unknown class", { texture: "silt lome" }, /\[1\]\.texture: .*did you mean "silt loam"/],
    [
      "no texture",
      { texture: undefined },
      /\[1\]\.texture: expected a USDA texture class, or both sand and clay, found nothing/,
    ],
    [
      "sand alone",
      { texture: undefined, sandFraction: 0.2 },
      /\[1\]\.clay: expected a USDA texture class, or both/,
    ],
    [
      "percent for fraction",
      { sandFraction: 20, clayFraction: 0.1 },
      /\[1\]\.sand: expected sand from 0 to 100 %, found 2000 %/,
    ],
    [
      "more than all",
      { sandFraction: 0.7, clayFraction: 0.4 },
      /\[1\]\.clay: .*at most 100 %, found 110 % together/,
    ],
    [
      "clay outside the class",
      { clayFraction: 0.5 },
      /\[1\]\.clay: expected a share usual in a silt loam, found 50 %/,
    ],
    [
      "density in g",
      { bulkDensityKgPerM3: 1.4 },
      /\[1\]\.bulkDensity: expected a bulk density from 0\.5 to 2\.2 g\/cm\^3/,
    ],
    ["negative organic matter", { organicMatterPercent: -1 }, /\[1\]\.organicMatter: .*found -1 %/],
    [
      "stones twice",
      { gravelMassFraction: 0.1, gravelVolumeFraction: 0.1 },
      /\[1\]\.gravelMass: expected stones by volume or by weight/,
    ],
    ["all stones", { gravelVolumeFraction: 0.95 }, /\[1\]\.gravelVolume: .*0 to 90 %, found 95 %/],
    [
      "wilting above capacity",
      { wiltingPoint: 0.3, fieldCapacity: 0.28 },
      /\[1\]\.wiltingPoint: .*wilting point 30 % \(stated\), field capacity 28 % \(stated\)/,
    ],
    [
      "wilting above estimate",
      { wiltingPoint: 0.4 },
      /\[1\]\.wiltingPoint: .*field capacity [\d.]+ % \(estimated\); correct them, or give both/,
    ],
    [
      "capacity below estimate",
      { fieldCapacity: 0.05 },
      /\[1\]\.fieldCapacity: .*wilting point [\d.]+ % \(estimated\)/,
    ],
    [
      "capacity above saturation",
      { fieldCapacity: 0.45, saturation: 0.4 },
      /\[1\]\.saturation: expected more water than at field capacity \(45 %\), found 40 %/,
    ],
    [
      "three that disagree",
      { wiltingPoint: 0.1, fieldCapacity: 0.3, availableWater: 0.1 },
      /\[1\]\.availableWater: .*\(20 %\), found 10 %/,
    ],
    [
      "available above capacity",
      { fieldCapacity: 0.2, availableWater: 0.25 },
      /\[1\]\.fieldCapacity: expected a wilting point above 0/,
    ],
    [
      "pores too few",
      { bulkDensityKgPerM3: 1700, saturation: 0.5 },
      /\[1\]\.bulkDensity: expected a density that leaves pores .*50 %, found 1\.70 g\/cm\^3, which leaves 35\.85 %/,
    ],
    [
      "capacity beyond pores",
      { bulkDensityKgPerM3: 1700, fieldCapacity: 0.4 },
      /\[1\]\.fieldCapacity: expected a field capacity below what the pores hold at 1\.70 g\/cm\^3 \(35\.85 %\)/,
    ],
    [
      "psi for MPa",
      { penetrationResistanceMPa: 300 },
      /\[1\]\.penetrationResistance: .*found 300 MPa; check the unit: 300 psi is about 2 MPa/,
    ],
    [
      "unknown structure",
      { structure: "crumbly" as never },
      /\[1\]\.structure: expected one of pan without pores, tilled, structured, found "crumbly"/,
    ],
    ["no conductivity", { saturatedConductivityMmPerDay: 0 }, /\[1\]\.saturatedConductivity: /],
    [
      "saturation beyond stones",
      { gravelVolumeFraction: 0.5, saturation: 0.48 },
      /\[1\]\.saturation: expected less water than fits between the stones/,
    ],
  ])("%s", (_what, more, message) => {
    const said = complaint(given(more));
    expect(said).toMatch(message);
    expect(said.split("\n").length).toBe(1);
  });

  test("several slips of one layer are all told", () => {
    expect(complaint(given({ bulkDensityKgPerM3: 1.4, openShare: 3 })).split("\n").length).toBe(2);
  });
});
