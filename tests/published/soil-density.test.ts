import { describe, expect, test } from "vitest";
import densities from "../../data-reference/bulk-density-factor.json" with { type: "json" };
import sheet from "../../data-reference/bulk-density-sheet.json" with { type: "json" };
import halfRate from "../../data-reference/penetration-half-rate.json" with { type: "json" };
import penetration from "../../data-reference/penetration-factor.json" with { type: "json" };
import units from "../../data-reference/penetration-units.json" with { type: "json" };
import porosities from "../../data-reference/soil-porosity.json" with { type: "json" };
import { densityHindrance, familyClass } from "../../src/soil/densityFactor.ts";
import { type SoilStructure, penetrationHindrance, psiToMPa } from "../../src/soil/penetrationFactor.ts";
import { porosity } from "../../src/soil/waterLimits.ts";
import { published } from "./published.ts";

const usual = (sand: number, clay: number, gPerCm3: number): number =>
  densityHindrance(sand / 100, clay / 100, gPerCm3 * 1000).usual;

describe("NSSH 618 Figure 618-A2 (read): the example texture is of the family it stands for", () => {
  test.each(densities.map(({ inputs }) => inputs))(
    "$sandPercent sand $clayPercent clay is $familyClass",
    (i) => {
      expect(familyClass(i.sandPercent / 100, i.clayPercent / 100)).toBe(i.familyClass);
    },
  );
});

const exact = { unit: "of the pace", tolerance: 1e-9, because: "a point of the table" } as const;
published(
  "Pierce et al. 1983: no hindrance up to the non-limiting density",
  { ...exact, mark: "memory" },
  densities.map(({ inputs: i, expected }) => [i.sandPercent, i.clayPercent, expected.unhinderedGPerCm3, 1]),
  usual,
);
published(
  "NSSH 618 Figure 618-A2: half the pace where restriction begins (the half is ours)",
  { ...exact, mark: "read" },
  densities.map(({ inputs: i, expected }) => [
    i.sandPercent,
    i.clayPercent,
    expected.restrictionBeginsGPerCm3,
    0.5,
  ]),
  usual,
);
published(
  "NSSH 618 Figure 618-A2: 0.05 of the pace at the root-limiting density (the 0.05 is ours)",
  { ...exact, mark: "read" },
  densities.map(({ inputs: i, expected }) => [
    i.sandPercent,
    i.clayPercent,
    expected.rootLimitingGPerCm3,
    0.05,
  ]),
  usual,
);
published(
  "NSSH 618 Figure 618-A2: strict reading, 0.33 where restriction begins",
  { ...exact, mark: "read" },
  densities.map(({ inputs: i, expected }) => [
    i.sandPercent,
    i.clayPercent,
    expected.restrictionBeginsGPerCm3,
    0.33,
  ]),
  (sand: number, clay: number, gPerCm3: number) =>
    densityHindrance(sand / 100, clay / 100, gPerCm3 * 1000).strict,
);
published(
  "NSSH 618 Figure 618-A2: lenient reading, no hindrance until restriction begins",
  { ...exact, mark: "read" },
  densities.map(({ inputs: i, expected }) => [
    i.sandPercent,
    i.clayPercent,
    expected.restrictionBeginsGPerCm3,
    1,
  ]),
  (sand: number, clay: number, gPerCm3: number) =>
    densityHindrance(sand / 100, clay / 100, gPerCm3 * 1000).lenient,
);

const loosely = {
  unit: "of the pace",
  tolerance: sheet[0]!.tolerance,
  because: sheet[0]!.because,
  mark: "read",
} as const;
published(
  "USDA-NRCS soil-quality sheet: near half where density affects roots",
  loosely,
  sheet.map(({ inputs: i, expected }) => [
    i.textures,
    i.sandPercent,
    i.clayPercent,
    expected.affectsGPerCm3,
    0.5,
  ]),
  (_textures: string, sand: number, clay: number, gPerCm3: number) => usual(sand, clay, gPerCm3),
);
published(
  "USDA-NRCS soil-quality sheet: next to nothing where density restricts roots",
  loosely,
  sheet.map(({ inputs: i, expected }) => [
    i.textures,
    i.sandPercent,
    i.clayPercent,
    expected.restrictsGPerCm3,
    0.05,
  ]),
  (_textures: string, sand: number, clay: number, gPerCm3: number) => usual(sand, clay, gPerCm3),
);

const porosityRecord = porosities[0]!;
published(
  porosityRecord.source,
  { unit: "fraction", tolerance: porosityRecord.tolerance, because: porosityRecord.because, mark: "read" },
  porosityRecord.inputs.densityGPerCm3.map((density, n) => [
    density,
    porosityRecord.expected.porosity[n] ?? Number.NaN,
  ]),
  (gPerCm3: number) => porosity(gPerCm3 * 1000),
);

const limits = penetration.flatMap(({ inputs, expected }) =>
  (["strict", "usual", "lenient"] as const).map(
    (reading) => [inputs.structure, reading, expected.limitMPa[reading], 0] as const,
  ),
);
published(
  "Ehlers et al. 1983; Gao et al. 2016; Taylor & Gardner 1963: no growth at the limit of resistance",
  { ...exact, because: "the limit itself", mark: "read" },
  limits,
  (structure: SoilStructure, reading: "strict" | "usual" | "lenient", mPa: number) =>
    penetrationHindrance(mPa, structure)[reading],
);
test("Ehlers et al. 1983 (read): growth falls along a straight line to the limit", () => {
  for (const { inputs, expected } of penetration) {
    const limit = expected.limitMPa.usual;
    const at = (mPa: number): number => penetrationHindrance(mPa, inputs.structure as SoilStructure).usual;
    expect(at(limit - 0.5) - at(limit)).toBeCloseTo(at(limit - 1) - at(limit - 0.5), 12);
    expect(at(limit - 0.5)).toBeGreaterThan(0);
  }
});

test("Bengough et al. 2011 (read): in a pan without pores the usual half rate lies within 0.8 to 2 MPa", () => {
  const [low, high] = halfRate[0]!.expected.halfRateMPa as [number, number];
  expect(penetrationHindrance(low, "pan without pores").usual).toBeGreaterThan(0.5);
  expect(penetrationHindrance(high, "pan without pores").usual).toBeLessThan(0.5);
});

const psi = units[0]!;
published(
  "unit definition: pounds per square inch to MPa",
  { unit: "MPa", tolerance: psi.tolerance, because: psi.because, mark: "memory" },
  psi.inputs.psi.map((value, n) => [value, psi.expected.mPa[n] ?? Number.NaN]),
  psiToMPa,
);
