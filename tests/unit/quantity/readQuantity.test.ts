import { beforeAll, describe, expect, test } from "vitest";
import { InputError } from "../../../src/problem.ts";
import { loadUnits, readQuantity, type QuantityKind } from "../../../src/quantity/index.ts";

beforeAll(loadUnits);

/** Definitions: 1 in = 25.4 mm, 1 lb = 0.45359237 kg, 1 acre = 43,560 square feet, 1 bu of 56 lb here. */
const context = { kgPerBushel: 56 * 0.45359237 };
const haPerAcre = 0.40468564224;

const passes: readonly (readonly [QuantityKind, string | number, number])[] = [
  ["depth", "14 in", 355.6],
  ["depth", "14in", 355.6],
  ["depth", ' 14" ', 355.6],
  ["depth", "14 inches", 355.6],
  ["depth", "2 1/2 in", 63.5],
  ["depth", "1/2 in.", 12.7],
  ["depth", "1.5 ft", 457.2],
  ["depth", "35 cm", 350],
  ["depth", "1,200 mm", 1200],
  ["depth", "+2 in", 50.8],
  ["depth", "-2 in", -50.8],
  ["depth", "\u22122 in", -50.8],
  ["depth", "350", 350],
  ["depth", 350, 350],
  ["rain", "13 in", 330.2],
  ["elevation", "3300 ft", 1005.84],
  ["elevation", 1000, 1000],
  ["density", "1.42 g/cm^3", 1420],
  ["density", "1.42 g/cm\u00b3", 1420],
  ["density", "1.42 g/cc", 1420],
  ["density", "1.42 Mg/m3", 1420],
  ["density", "1420 kg/m3", 1420],
  ["density", "1420 kg m-3", 1420],
  ["density", "1420 kg\u00b7m\u207b\u00b3", 1420],
  ["density", 1.42, 1420],
  ["temperature", "50 F", 10],
  ["temperature", "50 \u00b0F", 10],
  ["temperature", "50 degF", 10],
  ["temperature", "10 C", 10],
  ["temperature", "10 deg C", 10],
  ["temperature", "-4 F", -20],
  ["temperature", -4, -4],
  ["temperatureDifference", "9 F", 5],
  ["thermalTime", "900 F day", 500],
  ["thermalTime", "900 GDD F", 500],
  ["thermalTime", "500 \u00b0C days", 500],
  ["thermalTime", 500, 500],
  ["share", "35 %", 0.35],
  ["share", "35%", 0.35],
  ["share", "35 percent", 0.35],
  ["share", "0.35", 0.35],
  ["share", "0.27 cm3/cm3", 0.27],
  ["share", "2.1 in/ft", 0.175],
  ["sharePerDay", "9.6 %/day", 0.096],
  ["sharePerDay", "0.096 per day", 0.096],
  ["resistance", "300 psi", 300 * 0.00689475729],
  ["resistance", "2 MPa", 2],
  ["resistance", "2000 kPa", 2],
  ["resistance", "20 bar", 2],
  ["speed", "10 mph", 4.4704],
  ["speed", "36 km/h", 10],
  ["speed", "3.5 m/s", 3.5],
  ["rate", "0.5 in/day", 12.7],
  ["rate", "1.5 cm/d", 15],
  ["conductivity", "9 um/s", 777.6],
  ["conductivity", "9 \u00b5m/s", 777.6],
  ["conductivity", "0.5 in/h", 304.8],
  ["conductivity", "12 mm/hr", 288],
  ["conductivity", "30 cm/day", 300],
  ["duration", "3 weeks", 21],
  ["duration", "120 d", 120],
  ["duration", "12 months", 365.25],
  ["meltFactor", "2.7 mm/C/day", 2.7],
  ["meltFactor", "0.06 in/F/day", 2.7432],
  ["population", "4046.8564224 plants/ac", 1],
  ["population", "4.0468564224k plants/ac", 1],
  ["population", "4.0468564224 k/ac", 1],
  ["population", "4.0468564224 thousand plants/ac", 1],
  ["population", "4,046.8564224 plants per acre", 1],
  ["population", "60000 /ha", 6],
  ["population", "6 plants/m^2", 6],
  ["population", "6 /m2", 6],
  ["area", "1 ac", haPerAcre],
  ["yieldPerArea", "1 bu/ac", context.kgPerBushel / haPerAcre],
  ["yieldPerArea", "1 bushel per acre", context.kgPerBushel / haPerAcre],
  ["yieldPerArea", "1000 lb/ac", 453.59237 / haPerAcre],
  ["yieldPerArea", "2.5 t/ha", 2500],
  ["yieldPerWater", "25.4 bu/ac/in", context.kgPerBushel / haPerAcre],
  ["yieldPerWater", "10 kg/ha/mm", 10],
  ["testWeight", "56 lb/bu", context.kgPerBushel],
];

const fails: readonly (readonly [QuantityKind, unknown])[] = [
  ["depth", ""],
  ["depth", "in"],
  ["depth", "deep"],
  ["depth", "14 kg"],
  ["depth", "14 in in"],
  ["depth", "14 min"],
  ["depth", "1,4 in"],
  ["depth", "1.2.3 in"],
  ["depth", "5-6 in"],
  ["depth", "1/0 in"],
  ["depth", "1e400 in"],
  ["depth", Number.NaN],
  ["depth", Infinity],
  ["depth", null],
  ["depth", undefined],
  ["depth", ["14 in"]],
  ["depth", { in: 14 }],
  ["depth", true],
  ["density", "1.42 in"],
  ["density", "1.42 g/cm^2"],
  ["temperature", "50 K/day"],
  ["temperature", "50 X"],
  ["share", "35 in"],
  ["share", "35 C/F"],
  ["thermalTime", "900 F"],
  ["thermalTime", "900 days"],
  ["resistance", "300 lb"],
  ["conductivity", "9 um"],
  ["population", "24000 plants"],
  ["yieldPerArea", "45 bu"],
  ["yieldPerArea", "45 lb/ac/in"],
  ["yieldPerWater", "5 bu/ac"],
  ["testWeight", "56 lb"],
  ["testWeight", 56],
];

describe("texts that pass", () => {
  test.each(passes)("%s %j is %d", (kind, text, expected) => {
    expect(readQuantity(text, kind, "field", context)).toBeCloseTo(expected, 8);
  });
});

describe("texts that fail", () => {
  test.each(fails)("%s %j", (kind, text) => {
    expect(() => readQuantity(text, kind, "field", context)).toThrow(InputError);
  });
  test("bushels of a crop that is not counted in them", () => {
    expect(() => readQuantity("45 bu/ac", "yieldPerArea", "field")).toThrow(InputError);
  });
  test("the line says what is wanted, what was found and how to write it", () => {
    expect(() => readQuantity("14 kg", "depth", "--deeper")).toThrow(
      '--deeper: expected a depth such as "14 in" or "350 mm", found "14 kg"; write the unit as in, ft, mm, cm or m',
    );
  });
});
