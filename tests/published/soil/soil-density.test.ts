import { describe, expect, test } from "vitest";
import densities from "../../../data-reference/bulk-density-factor.json" with { type: "json" };
import sheet from "../../../data-reference/bulk-density-sheet.json" with { type: "json" };
import halfRates from "../../../data-reference/penetration-half-rate.json" with { type: "json" };
import penetration from "../../../data-reference/penetration-factor.json" with { type: "json" };
import units from "../../../data-reference/penetration-units.json" with { type: "json" };
import porosities from "../../../data-reference/soil-porosity.json" with { type: "json" };
import { densityHindrance, familyClass } from "../../../src/soil/equations/densityFactor.ts";
import {
  type SoilStructure,
  penetrationHindrance,
  psiToMPa,
} from "../../../src/soil/equations/penetrationFactor.ts";
import { porosity } from "../../../src/soil/equations/waterLimits.ts";
import { published } from "../published.ts";
import { closenessOf, markOf, recordsOf, sourceOf } from "../weather/records.ts";

// The code takes its thresholds from data-reference/, so they are typed here again, off the sources: a slip in one shows.

/** NSSH 618, Amendment 36 (2019), Figure 618-A2 (read), g/cm3 at 33 kPa: a texture of the class, restriction begins, root-limiting. */
const handbook = [
  ["sandy", 88, 5, 1.69, 1.85],
  ["coarse-loamy", 65, 10, 1.63, 1.8],
  ["fine-loamy", 40, 25, 1.6, 1.78],
  ["coarse-silty", 10, 10, 1.6, 1.79],
  ["fine-silty", 10, 25, 1.54, 1.65],
  ["clayey 35 to 45 %", 20, 40, 1.49, 1.58],
  ["clayey over 45 %", 20, 60, 1.39, 1.47],
] as const;

/** Pierce et al. 1983, J. Soil Water Conserv. 38:39-44 (memory), g/cm3: non-limiting density by family texture class. */
const pierce = [
  ["sandy", 88, 5, 1.6],
  ["coarse-loamy", 65, 10, 1.5],
  ["fine-loamy", 40, 25, 1.46],
  ["coarse-silty", 10, 10, 1.43],
  ["fine-silty", 10, 25, 1.34],
  ["clayey 35 to 45 %", 20, 40, 1.4],
  ["clayey over 45 %", 20, 60, 1.3],
] as const;

const ofDensities = recordsOf(densities);
const ourClasses = ofDensities.rows().map(({ inputs }) => inputs.familyClass);
describe("NSSH 618 Figure 618-A2 (read): every family class of our table is among the rows", () => {
  test("seven classes", () => {
    expect([...ourClasses].sort()).toEqual(handbook.map(([family]) => family).sort());
    expect(pierce.map(([family]) => family)).toEqual(handbook.map(([family]) => family));
  });
  test.each(handbook)("%s: %d sand %d clay", (family, sand, clay) => {
    expect(familyClass(sand / 100, clay / 100)).toBe(family);
  });
});

const read =
  (reading: "strict" | "usual" | "lenient") =>
  (_family: string, sand: number, clay: number, gPerCm3: number): number =>
    densityHindrance(sand / 100, clay / 100, gPerCm3 * 1000)[reading];
const usual = read("usual");

const exact = { unit: "of the pace", tolerance: 1e-9, because: "a point of the table" } as const;
published(
  "Pierce et al. 1983: no hindrance up to the non-limiting density",
  { ...exact, mark: "memory" },
  pierce.map((row) => [...row, 1]),
  usual,
);
test("Pierce et al. 1983 (memory): hindrance begins there", () => {
  for (const [family, sand, clay, gPerCm3] of pierce)
    expect(usual(family, sand, clay, gPerCm3 + 0.005), family).toBeLessThan(1);
});

const begins = handbook.map(([family, sand, clay, gPerCm3]) => [family, sand, clay, gPerCm3]);
const limiting = handbook.map(([family, sand, clay, , gPerCm3]) => [family, sand, clay, gPerCm3]);
for (const [reading, atBeginning, atLimit] of [
  ["strict", 0.33, 0],
  ["usual", 0.5, 0.05],
  ["lenient", 1, 0.05],
] as const) {
  published(
    `NSSH 618 Figure 618-A2, ${reading} reading: ${atBeginning} of the pace where restriction begins (the height is ours)`,
    { ...exact, mark: "read" },
    begins.map((row) => [...row, atBeginning]),
    read(reading),
  );
  published(
    `NSSH 618 Figure 618-A2, ${reading} reading: ${atLimit} of the pace at the root-limiting density (the height is ours)`,
    { ...exact, mark: "read" },
    limiting.map((row) => [...row, atLimit]),
    read(reading),
  );
}

const ofSheet = recordsOf(sheet);
const rowsOfSheet = ofSheet.rows();
const loosely = {
  unit: "of the pace",
  tolerance: sheet[0]!.tolerance,
  because: sheet[0]!.because,
  mark: markOf(sheet[0]!),
};
for (const [what, density, pace] of [
  ["near half where density affects roots", "affectsGPerCm3", 0.5],
  ["next to nothing where density restricts roots", "restrictsGPerCm3", 0.05],
] as const) {
  published(
    `${sourceOf(sheet[0]!)}: ${what}`,
    loosely,
    rowsOfSheet.map(({ inputs: i, expected }) => [
      i.textures,
      i.sandPercent,
      i.clayPercent,
      expected[density],
      pace,
    ]),
    usual,
  );
}

const ofPorosity = recordsOf(porosities);
const pores = ofPorosity.take<{ densityGPerCm3: number[] }, { porosity: number[] }>("porosity-by-density");
published(
  sourceOf(pores),
  closenessOf(pores),
  pores.inputs.densityGPerCm3.map((density, n) => [density, pores.expected.porosity[n]!]),
  (gPerCm3: number) => porosity(gPerCm3 * 1000),
);

/** Resistance at which roots stop, MPa, typed off the abstracts: Gao et al. 2016; Ehlers et al. 1983. */
const limits = [
  ["pan without pores", "usual", 2.5],
  ["tilled", "usual", 3.6],
  // The lowest of untilled soil: a tilled one may come near it.
  ["tilled", "lenient", 4.6],
  ["structured", "strict", 4.6],
  ["structured", "usual", 4.85],
  ["structured", "lenient", 5.1],
] as const;
const atLimit = (structure: SoilStructure, reading: "strict" | "usual" | "lenient", mPa: number) =>
  penetrationHindrance(mPa, structure)[reading];
const justBelow = (structure: SoilStructure, reading: "strict" | "usual" | "lenient", mPa: number) =>
  penetrationHindrance(mPa - 0.05, structure)[reading] > 0 ? 1 : 0;
const theLimit = { ...exact, because: "the limit itself; 4.85 is the middle of 4.6 to 5.1" } as const;
for (const [source, mark, rows] of [
  ["Gao et al. 2016; Ehlers et al. 1983", "read", limits],
  [
    "Taylor & Gardner 1963",
    "memory",
    [
      ["pan without pores", "lenient", 2.96],
      ["tilled", "strict", 2.96],
    ],
  ],
  ["Penn State Extension, Agronomy Facts 63: 300 psi as 2 MPa", "read", [["pan without pores", "strict", 2]]],
] as const) {
  published(
    `${source}: no growth at the limit`,
    { ...theLimit, mark },
    rows.map((r) => [...r, 0]),
    atLimit,
  );
  published(
    `${source}: some growth 0.05 MPa below it`,
    { ...theLimit, unit: "(1 = yes)", mark },
    rows.map((row) => [...row, 1]),
    justBelow,
  );
}
const ofPenetration = recordsOf(penetration);
const ourStructures = ofPenetration.rows().map(({ inputs }) => inputs.structure);
test("every structure of our table is among the rows", () => {
  expect([...ourStructures].sort()).toEqual([...new Set(limits.map(([structure]) => structure))].sort());
});

test("Ehlers et al. 1983 (read): growth falls along a straight line to the limit", () => {
  for (const [structure, reading, limit] of limits) {
    const at = (mPa: number): number => penetrationHindrance(mPa, structure)[reading];
    expect(at(limit - 0.5) - at(limit)).toBeCloseTo(at(limit - 1) - at(limit - 0.5), 12);
    expect(at(limit - 0.5)).toBeGreaterThan(0);
  }
});

const ofHalfRates = recordsOf(halfRates);
const halfRate = ofHalfRates.take<null, { halfRateMPa: [number, number] }>("penetration-half-rate");
test(`${sourceOf(halfRate)} (${markOf(halfRate)}): in a pan without pores the usual half rate lies within the range`, () => {
  const [low, high] = halfRate.expected.halfRateMPa;
  expect(penetrationHindrance(low, "pan without pores").usual).toBeGreaterThan(0.5);
  expect(penetrationHindrance(high, "pan without pores").usual).toBeLessThan(0.5);
});

const ofUnits = recordsOf(units);
const psi = ofUnits.take<{ psi: number[] }, { mPa: number[] }>("penetration-psi");
published(
  sourceOf(psi),
  closenessOf(psi),
  psi.inputs.psi.map((value, n) => [value, psi.expected.mPa[n]!]),
  psiToMPa,
);

for (const { noneLeft } of [ofDensities, ofSheet, ofPorosity, ofPenetration, ofHalfRates, ofUnits])
  noneLeft();
