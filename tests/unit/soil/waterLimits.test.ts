import fc from "fast-check";
import { expect, test } from "vitest";
import {
  estimateWaterLimits,
  gravelMassFraction,
  gravelVolumeFraction,
  particleDensityKgPerM3,
  porosity,
} from "../../../src/soil/equations/waterLimits.ts";
import { anyFineEarth } from "./anySoil.ts";

test("limits are ordered, finite and positive for any texture, organic matter, density and stones", () => {
  fc.assert(
    fc.property(anyFineEarth, (soil) => {
      const limits = estimateWaterLimits(soil);
      expect(limits.wiltingPoint).toBeGreaterThan(0);
      expect(limits.fieldCapacity).toBeGreaterThan(limits.wiltingPoint);
      expect(limits.saturation).toBeGreaterThan(limits.fieldCapacity);
      expect(limits.saturation).toBeLessThan(1);
      expect(limits.normalDensityKgPerM3).toBeGreaterThan(400);
      expect(limits.normalDensityKgPerM3).toBeLessThan(2200);
      expect(limits.saturatedConductivityMmPerDay).toBeGreaterThan(0);
      expect(limits.saturatedConductivityMmPerDay).toBeLessThan(1e6);
      expect(limits.drainExponent).toBeGreaterThanOrEqual(5);
      expect(limits.drainExponent).toBeLessThanOrEqual(43);
    }),
    { numRuns: 2000 },
  );
});

test("a denser soil never holds more, and never lets more through", () => {
  fc.assert(
    fc.property(
      anyFineEarth,
      fc.integer({ min: 600, max: 1900 }),
      fc.integer({ min: 1, max: 200 }),
      (soil, density, more) => {
        const loose = estimateWaterLimits({ ...soil, bulkDensityKgPerM3: density, gravelVolumeFraction: 0 });
        const dense = estimateWaterLimits({
          ...soil,
          bulkDensityKgPerM3: density + more,
          gravelVolumeFraction: 0,
        });
        expect(dense.saturation).toBeLessThan(loose.saturation);
        expect(dense.fieldCapacity).toBeLessThanOrEqual(loose.fieldCapacity);
      },
    ),
  );
});

test("stones take their share of every limit", () => {
  const soil = { sandFraction: 0.4, clayFraction: 0.2, organicMatterPercent: 1, bulkDensityKgPerM3: 1450 };
  const fine = estimateWaterLimits({ ...soil, gravelVolumeFraction: 0 });
  const stony = estimateWaterLimits({ ...soil, gravelVolumeFraction: 0.25 });
  for (const limit of ["wiltingPoint", "fieldCapacity", "saturation"] as const) {
    expect(stony[limit]).toBeCloseTo(0.75 * fine[limit], 12);
  }
  expect(stony.saturatedConductivityMmPerDay).toBeLessThan(fine.saturatedConductivityMmPerDay);
  expect(stony.drainExponent).toBe(fine.drainExponent);
});

test("stones by weight and by volume turn into each other", () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0, max: 0.9, noNaN: true }),
      fc.integer({ min: 600, max: 2000 }),
      (mass, density) => {
        expect(gravelMassFraction(gravelVolumeFraction(mass, density), density)).toBeCloseTo(mass, 9);
      },
    ),
  );
});

const silty = { sandFraction: 0.2, clayFraction: 0.15, organicMatterPercent: 2.5, gravelVolumeFraction: 0 };

test("within the paper's range nothing is noted", () => {
  expect(estimateWaterLimits({ ...silty, bulkDensityKgPerM3: null }).notes).toEqual([]);
  expect(estimateWaterLimits({ ...silty, bulkDensityKgPerM3: 1500 }).notes).toEqual([]);
});

test("a loess subsoil is as loose as surveys list it, and that is no news; loam as loose is", () => {
  const subsoil = { ...silty, organicMatterPercent: 0.5 };
  for (const density of [1200, 1250, 1300, 1340, 1380, 1420])
    expect(estimateWaterLimits({ ...subsoil, bulkDensityKgPerM3: density }).notes).toEqual([]);
  const clay = { ...subsoil, sandFraction: 0.2, clayFraction: 0.55, bulkDensityKgPerM3: 900 };
  expect(estimateWaterLimits(clay).notes.join()).toMatch(/0\.90 g\/cm\^3 is outside the .* Saxton/);
});

test.each([
  [
    { ...silty, sandFraction: 0.1, clayFraction: 0.7, bulkDensityKgPerM3: null },
    /clay 70 % is above the 60 %/,
  ],
  [{ ...silty, organicMatterPercent: 12, bulkDensityKgPerM3: null }, /organic matter 12 % is above the 8 %/],
  [
    { ...silty, bulkDensityKgPerM3: 2000 },
    /2\.00 g\/cm\^3 is outside the 1\.15 to 1\.70 that surveys list for such soil, and the 1\.24 to 1\.80 that Saxton/,
  ],
  [{ ...silty, bulkDensityKgPerM3: 900 }, /0\.90 g\/cm\^3 is outside the 1\.15 to 1\.70 that surveys/],
  [
    { ...silty, sandFraction: 0.1, clayFraction: 0.6, bulkDensityKgPerM3: 1900 },
    /the pores cannot hold this texture's usual water/,
  ],
  [
    { ...silty, sandFraction: 1, clayFraction: 0, organicMatterPercent: 0, bulkDensityKgPerM3: null },
    /the estimate runs too low/,
  ],
])("outside it, it is said: %j", (soil, note) => {
  expect(estimateWaterLimits(soil).notes.join("\n")).toMatch(note);
});

test("clay and organic matter above the range are held at its end", () => {
  const atEnd = estimateWaterLimits({
    ...silty,
    sandFraction: 0.1,
    clayFraction: 0.6,
    bulkDensityKgPerM3: null,
  });
  const above = estimateWaterLimits({
    ...silty,
    sandFraction: 0.1,
    clayFraction: 0.8,
    bulkDensityKgPerM3: null,
  });
  expect(above.fieldCapacity).toBe(atEnd.fieldCapacity);
});

test("saturation at a stated density is its pore space", () => {
  expect(estimateWaterLimits({ ...silty, bulkDensityKgPerM3: 1500 }).saturation).toBeCloseTo(
    1 - 1500 / particleDensityKgPerM3,
    12,
  );
  expect(porosity(1325)).toBe(0.5);
});
