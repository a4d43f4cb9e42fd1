import { describe, expect, test } from "vitest";
import { kinds, sayNumber, sayQuantity, sayYield, type QuantityKind } from "../../../src/quantity/index.ts";
import { beforeAll } from "vitest";
import { loadUnits, readQuantity } from "../../../src/quantity/index.ts";

beforeAll(loadUnits);

test.each([
  [0, "0"],
  [-0.0001, "0"],
  [0.364, "0.36"],
  [13, "13"],
  [13.04, "13"],
  [13.06, "13.1"],
  [355.6, "356"],
  [12345.6, "12346"],
  [1e-9, "0"],
])("%d is said %j", (value, said) => expect(sayNumber(value)).toBe(said));

test("no number that is none is ever said", () => expect(() => sayNumber(Number.NaN)).toThrow("finite"));

describe("quantities in both systems", () => {
  test.each([
    ["depth", 355.6, "14 in", "356 mm"],
    ["rain", 9.1, "0.36 in", "9.1 mm"],
    ["density", 1420, "1.42 g/cm^3", "1.42 g/cm^3"],
    ["temperature", 10, "50 F", "10 C"],
    ["temperatureDifference", 5, "9 F", "5 C"],
    ["share", 0.35, "35 %", "35 %"],
    ["resistance", 2.0684, "300 psi", "2.07 MPa"],
    ["conductivity", 304.8, "0.5 in/h", "12.7 mm/h"],
    ["meltFactor", 2.7432, "0.06 in/F/day", "2.74 mm/C/day"],
    ["elevation", 1005.84, "3300 ft", "1006 m"],
    ["speed", 4.4704, "10 mph", "4.5 m/s"],
    ["area", 64.75, "160 ac", "64.8 ha"],
  ] as const)("%s %d", (kind, value, us, metric) => {
    expect([sayQuantity(value, kind, "us"), sayQuantity(value, kind, "metric")]).toEqual([us, metric]);
  });

  test("a yield is said in the crop's own unit, or in kg/ha", () => {
    const corn = { us: "bu/ac", kgPerUsUnit: 56 * 0.45359237 };
    expect(sayYield(62.77 * 40, corn, "us")).toBe("40 bu/ac");
    expect(sayYield(2510.8, corn, "metric")).toBe("2511 kg/ha");
    expect(sayYield(1120.85, { us: "lb/ac", kgPerUsUnit: 0.45359237 }, "us")).toBe("1000 lb/ac");
  });
});

describe("what is said can be read again", () => {
  const rounded: Partial<Record<QuantityKind, number>> = { duration: 120, temperature: 10, population: 6 };
  test.each(Object.keys(kinds) as QuantityKind[])("%s", (kind) => {
    const value =
      rounded[kind] ?? (kind === "density" ? 1420 : kind === "share" || kind === "sharePerDay" ? 0.35 : 25.4);
    for (const units of ["us", "metric"] as const) {
      const again = readQuantity(sayQuantity(value, kind, units), kind, kind);
      expect(Math.abs(again / value - 1)).toBeLessThan(0.03);
    }
  });
});
