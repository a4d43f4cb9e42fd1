import { describe, expect, test } from "vitest";
import table3 from "../../../data-reference/saxton-rawls-table3.json" with { type: "json" };
import conductivity from "../../../data-reference/saxton-rawls-conductivity.json" with { type: "json" };
import gravel from "../../../data-reference/saxton-rawls-gravel.json" with { type: "json" };
import range from "../../../data-reference/saxton-rawls-range.json" with { type: "json" };
import vectors from "../../../data-reference/saxton-rawls-vectors.json" with { type: "json" };
import { textureClass, textureClasses } from "../../../src/soil/equations/texture.ts";
import {
  estimateWaterLimits,
  gravelConductivityShare,
  gravelVolumeFraction,
  statedRange,
  wholeDensityKgPerM3,
} from "../../../src/soil/equations/waterLimits.ts";
import { published } from "../published.ts";
import { markOf, recordsOf, sourceOf } from "../weather/records.ts";

const ofTable3 = recordsOf(table3);
const ofVectors = recordsOf(vectors);
const ofGravel = recordsOf(gravel);
const ofConductivity = recordsOf(conductivity);
const ofRange = recordsOf(range);
const rows3 = ofTable3.rows();
const first3 = rows3[0]!;

const limitsOf = (
  sandPercent: number,
  clayPercent: number,
  organicMatterPercent: number,
  densityGPerCm3: number | null,
) =>
  estimateWaterLimits({
    sandFraction: sandPercent / 100,
    clayFraction: clayPercent / 100,
    organicMatterPercent,
    bulkDensityKgPerM3: densityGPerCm3 === null ? null : densityGPerCm3 * 1000,
    gravelVolumeFraction: 0,
  });

const columns = {
  wiltingPointPercent: (l: ReturnType<typeof limitsOf>) => l.wiltingPoint * 100,
  fieldCapacityPercent: (l: ReturnType<typeof limitsOf>) => l.fieldCapacity * 100,
  saturationPercent: (l: ReturnType<typeof limitsOf>) => l.saturation * 100,
  availableFraction: (l: ReturnType<typeof limitsOf>) => l.fieldCapacity - l.wiltingPoint,
  saturatedConductivityMmPerHour: (l: ReturnType<typeof limitsOf>) => l.saturatedConductivityMmPerDay / 24,
  densityGPerCm3: (l: ReturnType<typeof limitsOf>) => l.bulkDensityKgPerM3 / 1000,
} as const;

test("Table 3 has all twelve classes", () => {
  expect(rows3.map(({ inputs }) => inputs.textureClass).sort()).toEqual([...textureClasses].sort());
});

for (const [column, ours] of Object.entries(columns) as [
  keyof typeof columns,
  (typeof columns)["wiltingPointPercent"],
][]) {
  published(
    `Saxton & Rawls 2006, Table 3, ${column}`,
    {
      unit: first3.unit[column],
      tolerance: first3.tolerance[column],
      because: first3.because,
      mark: markOf(first3),
    },
    // class, sand %, clay %, organic matter %, printed value
    rows3.map(({ inputs: i, expected }) => [
      i.textureClass,
      i.sandPercent,
      i.clayPercent,
      i.organicMatterPercent,
      expected[column],
    ]),
    (_name: string, sand: number, clay: number, organic: number) => ours(limitsOf(sand, clay, organic, null)),
  );
}

describe(`Saxton & Rawls 2006, Table 3, textures lie in their own class (${markOf(first3)})`, () => {
  test.each(rows3.map(({ inputs }) => inputs))(
    "$sandPercent sand $clayPercent clay is $textureClass",
    (inputs) => {
      expect(textureClass(inputs.sandPercent / 100, inputs.clayPercent / 100)).toBe(inputs.textureClass);
    },
  );
});

for (const record of ofVectors.rows()) {
  const { what, inputs: i, expected, tolerance, because } = record;
  const limits = limitsOf(i.sandPercent, i.clayPercent, i.organicMatterPercent, i.densityGPerCm3);
  published(
    `Saxton & Rawls 2006, eqs 1 to 18: ${what}, ${i.organicMatterPercent} % organic matter, density ${i.densityGPerCm3 ?? "normal"}`,
    { unit: "of the value", tolerance, because, mark: markOf(record) },
    // what, value by value; relative, so that one tolerance serves fractions and mm/h
    [
      ["wilting point", limits.wiltingPoint / expected.wiltingPoint, 1],
      ["field capacity", limits.fieldCapacity / expected.fieldCapacity, 1],
      ["saturation", limits.saturation / expected.saturation, 1],
      [
        "conductivity",
        limits.saturatedConductivityMmPerDay / 24 / expected.saturatedConductivityMmPerHour,
        1,
      ],
      ["density", limits.bulkDensityKgPerM3 / 1000 / expected.densityGPerCm3, 1],
      ["lambda", limits.poreSizeIndex / expected.poreSizeIndex, 1],
    ],
    (_what: string, ratio: number) => ratio,
  );
}

for (const record of ofGravel.rows()) {
  const { what, inputs: i, expected, tolerance, because } = record;
  const matrix = limitsOf(i.sandPercent, i.clayPercent, i.organicMatterPercent, null);
  const density = matrix.bulkDensityKgPerM3;
  const volume = gravelVolumeFraction(i.gravelMassFraction, density);
  const whole = estimateWaterLimits({
    sandFraction: i.sandPercent / 100,
    clayFraction: i.clayPercent / 100,
    organicMatterPercent: i.organicMatterPercent,
    bulkDensityKgPerM3: null,
    gravelVolumeFraction: volume,
  });
  published(
    `Saxton & Rawls 2006, eqs 19 to 22: ${what}`,
    { unit: "fraction; g/cm3", tolerance, because, mark: markOf(record) },
    [
      ["stones by volume", volume, expected.gravelVolumeFraction],
      ["density with stones", wholeDensityKgPerM3(density, volume) / 1000, expected.wholeDensityGPerCm3],
      ["available water", whole.fieldCapacity - whole.wiltingPoint, expected.availableWater],
      ["conductivity share", gravelConductivityShare(volume, density), expected.conductivityShare],
      [
        "the same, in the limits",
        whole.saturatedConductivityMmPerDay / matrix.saturatedConductivityMmPerDay,
        expected.conductivityShare,
      ],
    ],
    (_what: string, value: number) => value,
  );
}

for (const record of ofConductivity.rows()) {
  const { what, inputs: i, expected, tolerance, because } = record;
  const limits = limitsOf(i.sandPercent, i.clayPercent, i.organicMatterPercent, null);
  published(
    `Saxton & Rawls 2006, eqs 16 to 18: ${what}`,
    { unit: "of the value", tolerance, because, mark: markOf(record) },
    i.volumeFraction.map((theta, n) => [theta, expected.conductivityMmPerHour[n] ?? Number.NaN, 1]),
    (theta: number, printed: number) =>
      ((limits.saturatedConductivityMmPerDay / 24) * (theta / limits.saturation) ** limits.drainExponent) /
      printed,
  );
}

const stated = ofRange.take<
  null,
  { clayPercentMax: number; organicMatterPercentMax: number; densityFactor: number[] }
>("saxton-rawls-range");
test(`${sourceOf(stated)} (${markOf(stated)}): stated range of use`, () => {
  expect(statedRange.clayFraction * 100).toBe(stated.expected.clayPercentMax);
  expect(statedRange.organicMatterPercent).toBe(stated.expected.organicMatterPercentMax);
  expect(statedRange.densityFactor).toEqual(stated.expected.densityFactor);
});

for (const { noneLeft } of [ofTable3, ofVectors, ofGravel, ofConductivity, ofRange]) noneLeft();
