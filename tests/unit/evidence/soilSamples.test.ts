import { describe, expect, test } from "vitest";
import { probedWater } from "../../../src/evidence/samples/moistDepth.ts";
import { readingUse, readingsByLayer, stretchesAbove } from "../../../src/evidence/samples/penetrometer.ts";
import {
  coreDensityKgPerM3,
  coreGravimetricPercent,
  coreVolumeFraction,
  stoneVolumeFraction,
  type SoilCore,
} from "../../../src/evidence/samples/soilCores.ts";
import { soilSampled } from "../../../src/evidence/samples/soilSampled.ts";
import { stream } from "../../../src/randomness.ts";
import { volumeFromGravimetric } from "../../../src/soil/layers/startingWater.ts";
import { asDug } from "../answer/someScenario.ts";

const { layers } = asDug;
const core = (
  wetMassG: number | null,
  dryMassG: number,
  volumeCm3: number | null,
  stoneMassG = 0,
): SoilCore => ({
  wetMassG,
  dryMassG,
  volumeCm3,
  stoneMassG,
});

describe("cores", () => {
  test("water by volume is water by weight times density, stones and all", () => {
    const draws = stream(1, "cores");
    for (let i = 0; i < 200; i++) {
      const volume = 100 + 300 * draws.uniform();
      const stones = 60 * draws.uniform();
      const dry = stones + (volume - stones / 2.65) * (0.8 + draws.uniform());
      const one = core(dry + 0.3 * volume * draws.uniform(), dry, volume, stones);
      const byWeight = volumeFromGravimetric(
        coreGravimetricPercent(one)!,
        coreDensityKgPerM3(one)!,
        stoneVolumeFraction(one)!,
      );
      expect(coreVolumeFraction(one)).toBeCloseTo(byWeight, 12);
    }
  });

  test("what was not measured is null, never a number", () => {
    expect(coreDensityKgPerM3(core(120, 100, null))).toBeNull();
    expect(coreGravimetricPercent(core(null, 100, 64))).toBeNull();
    expect(coreVolumeFraction(core(120, 100, null))).toBeNull();
    expect(coreDensityKgPerM3(core(null, 300, 100, 299))).toBeNull();
  });

  test("several of a layer: mean, spread, interval; one has no spread", () => {
    const told = soilSampled(
      layers,
      [[core(118, 100, 80), core(126, 104, 80), core(121, 96, 80)], [core(130, 110, 70)], []],
      0.95,
    );
    const [top, pan] = told.layers;
    expect(told.layers.length).toBe(2);
    expect(top!.densityKgPerM3!.mean).toBeCloseTo(1250, 9);
    expect(top!.densityKgPerM3!.sd).toBeCloseTo(50, 9);
    // t of 2 degrees of freedom at 95 %, from tables (memory): 4.303.
    expect(top!.densityKgPerM3!.interval!.low).toBeCloseTo(1250 - (4.303 * 50) / Math.sqrt(3), 1);
    expect(pan!.densityKgPerM3).toMatchObject({ cores: 1, sd: null, interval: null });
    expect(told.waterOverMm).toBe(230);
    expect(told.storedMm).toBeCloseTo(top!.storedMm!.mean + pan!.storedMm!.mean, 9);
  });

  test("available water is what lies above wilting point, and none below it", () => {
    const { wiltingPoint, bottomMm } = layers[0]!;
    const [moist] = soilSampled(layers, [[core(100 + 20, 100, 80)], [], []], 0.95).layers;
    expect(moist!.availableMm!.mean).toBeCloseTo((20 / 80 - wiltingPoint) * bottomMm, 9);
    const [dry] = soilSampled(layers, [[core(101, 100, 80)], [], []], 0.95).layers;
    expect(dry!.availableMm!.mean).toBe(0);
    expect(dry!.storedMm!.mean).toBeCloseTo(bottomMm / 80, 9);
  });

  test("a core without volume takes the density of its layer", () => {
    const [told] = soilSampled(layers, [[core(120, 100, null)], [], []], 0.95).layers;
    expect(told!.densityKgPerM3).toBeNull();
    expect(told!.volumeFraction!.mean).toBeCloseTo(0.2 * 1.3, 9);
  });
});

describe("a push probe", () => {
  test("counts field capacity down to the moist depth and the share below it", () => {
    const all = probedWater(layers, 99_999, 0.3);
    const none = probedWater(layers, 0, 1);
    expect(all.belowMm).toBe(0);
    expect(none.availableMm).toBe(0);
    expect(none.belowMm).toBeCloseTo(all.availableMm, 9);
    const some = probedWater(layers, 600, 0.25);
    expect(some.belowMm).toBeCloseTo(0.25 * (all.availableMm - some.availableMm), 9);
    expect(some.storedMm).toBeGreaterThan(some.availableMm);
  });
});

describe("a penetrometer log", () => {
  const log = (...pairs: readonly (readonly [number, number])[]) =>
    pairs.map(([depthMm, resistanceMPa]) => ({ depthMm, resistanceMPa }));

  test("is parted where it passes the limit and comes back", () => {
    expect(stretchesAbove(log([50, 1], [150, 3], [250, 3], [350, 1]), 2)).toEqual([
      { fromMm: 100, toMm: 300 },
    ]);
    expect(stretchesAbove(log([350, 1], [50, 1], [250, 3], [150, 3]), 2)).toEqual([
      { fromMm: 100, toMm: 300 },
    ]);
    expect(stretchesAbove(log([50, 1], [150, 1.5]), 2)).toEqual([]);
  });

  test("may begin above the limit, or end there; pushes at one depth count as their mean", () => {
    expect(stretchesAbove(log([50, 3], [150, 1], [250, 3]), 2)).toEqual([
      { fromMm: 50, toMm: 100 },
      { fromMm: 200, toMm: null },
    ]);
    expect(stretchesAbove(log([50, 1], [150, 4], [150, 2], [250, 1]), 2)).toEqual([
      { fromMm: 100, toMm: 200 },
    ]);
  });

  test("has every reading in one layer", () => {
    const readings = log([0, 1], [130, 2], [131, 3], [230, 5], [900, 4], [2600, 2]);
    const byLayer = readingsByLayer(readings, layers);
    expect(byLayer).toEqual([
      { meanMPa: 1.5, readings: 2 },
      { meanMPa: 4, readings: 2 },
      { meanMPa: 3, readings: 2 },
    ]);
    expect(readingsByLayer([], layers)[0]).toEqual({ meanMPa: null, readings: 0 });
  });

  test("is used as the soil's wetness allows", () => {
    expect([0, 0.2, 0.39, 0.4, 0.6, 0.74, 0.75, 1].map(readingUse)).toEqual([
      "not used",
      "not used",
      "not used",
      "with a warning",
      "with a warning",
      "with a warning",
      "as read",
      "as read",
    ]);
  });
});
