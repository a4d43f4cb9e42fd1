import available from "../../data-reference/available-water.json" with { type: "json" };
import evaporable from "../../data-reference/soil-evaporable.json" with { type: "json" };
import gravimetric from "../../data-reference/soil-gravimetric.json" with { type: "json" };
import table19 from "../../data-reference/soil-fao56-table19.json" with { type: "json" };
import { describe, expect, test } from "vitest";
import { readilyEvaporableMm, totalEvaporableMm } from "../../src/soil/evaporableWater.ts";
import { gravimetricPercent, volumeFromGravimetric } from "../../src/soil/startingWater.ts";
import { type TextureClass, centralTexture } from "../../src/soil/texture.ts";
import { estimateWaterLimits } from "../../src/soil/waterLimits.ts";
import { published } from "./published.ts";

const limitsOf = (name: TextureClass) =>
  estimateWaterLimits({
    ...centralTexture(name),
    organicMatterPercent: 2.5,
    bulkDensityKgPerM3: null,
    gravelVolumeFraction: 0,
  });
const availableInPerFt = (name: TextureClass): number => {
  const { fieldCapacity, wiltingPoint } = limitsOf(name);
  return 12 * (fieldCapacity - wiltingPoint);
};
/** How far a value lies outside a range; 0 inside. */
const outside = (value: number, [low, high]: readonly number[]): number =>
  Math.max(0, (low ?? Number.NaN) - value, value - (high ?? Number.NaN));

for (const { what, inputs, expected, tolerance, because, source, provenance } of available) {
  const range = expected.inPerFt;
  if (!range || !inputs.textureClasses) continue;
  published(
    `${source}: ${what}, ${range.join(" to ")} in/ft`,
    { unit: "in/ft outside the range", tolerance, because, mark: provenance as "read" },
    inputs.textureClasses.map((name) => [name, 0]),
    (name: TextureClass) => outside(availableInPerFt(name), range),
  );
}

const inch = available.find(({ id }) => id === "available-water-inch-per-six")!;
published(
  inch.what,
  { unit: "in", tolerance: inch.tolerance, because: inch.because, mark: "common practice, no source" },
  (inch.inputs.textureClasses ?? []).map((name) => [name, inch.expected.waterIn ?? Number.NaN]),
  (name: TextureClass) => availableInPerFt(name) / 2,
);

const handbook = available.find(({ id }) => id === "available-water-handbook")!;
published(
  `${handbook.source}, ${handbook.locator}`,
  { unit: handbook.unit, tolerance: handbook.tolerance, because: handbook.because, mark: "read" },
  [
    [
      handbook.inputs.water33Percent ?? Number.NaN,
      handbook.inputs.water1500Percent ?? Number.NaN,
      handbook.inputs.densityGPerCm3 ?? Number.NaN,
      handbook.expected.fraction ?? Number.NaN,
    ],
  ],
  (water33: number, water1500: number, gPerCm3: number) =>
    volumeFromGravimetric(water33, gPerCm3 * 1000) - volumeFromGravimetric(water1500, gPerCm3 * 1000),
);

test("no available-water record is passed over", () => {
  const used = available.filter(({ expected: e }) => e.inPerFt ?? e.waterIn ?? e.fraction);
  expect(used.length).toBe(available.length);
});

describe("gravimetric worked examples (read)", () => {
  test.each(gravimetric)("$what: $source", ({ inputs: i, expected, tolerance }) => {
    const weightPercent = gravimetricPercent(i.moistG, i.dryG);
    const densityKgPerM3 = (i.dryG / i.volumeCm3) * 1000;
    const volume = volumeFromGravimetric(weightPercent, densityKgPerM3);
    expect(Math.abs(weightPercent - expected.gravimetricPercent)).toBeLessThanOrEqual(
      tolerance.gravimetricPercent,
    );
    expect(Math.abs(volume - expected.volumeFraction)).toBeLessThanOrEqual(tolerance.volumeFraction);
    expect(Math.abs(volume * i.layerMm - expected.waterMm)).toBeLessThanOrEqual(tolerance.waterMm);
  });
});

const tolerance19 = table19[0]!.tolerance;
published(
  "FAO-56 Table 19, readily evaporable water",
  {
    unit: "mm outside the range",
    tolerance: tolerance19.readilyEvaporableMm,
    because: table19[0]!.because,
    mark: "read",
  },
  table19.map(({ inputs, expected }) => [inputs.textureClass, ...expected.readilyEvaporableMm, 0]),
  (name: TextureClass, low: number, high: number) => {
    const { sandFraction, clayFraction } = centralTexture(name);
    return outside(readilyEvaporableMm(sandFraction, clayFraction), [low, high]);
  },
);
published(
  "FAO-56 Table 19, total evaporable water",
  {
    unit: "mm outside the range",
    tolerance: tolerance19.totalEvaporableMm,
    because: table19[0]!.because,
    mark: "read",
  },
  table19.map(({ inputs, expected }) => [
    inputs.textureClass,
    inputs.evaporatingDepthMm,
    ...expected.totalEvaporableMm,
    0,
  ]),
  (name: TextureClass, depthMm: number, low: number, high: number) => {
    const { fieldCapacity, wiltingPoint } = limitsOf(name);
    return outside(totalEvaporableMm(fieldCapacity, wiltingPoint, depthMm), [low, high]);
  },
);

const [ritchie, example35] = evaporable;
published(
  `${ritchie!.source}, ${ritchie!.locator}`,
  { unit: "mm", tolerance: ritchie!.tolerance, because: ritchie!.because, mark: "memory" },
  (ritchie!.inputs.sandPercent ?? []).map((sand, n) => [
    sand,
    ritchie!.inputs.clayPercent?.[n] ?? Number.NaN,
    (ritchie!.expected.readilyEvaporableMm ?? [])[n] ?? Number.NaN,
  ]),
  (sand: number, clay: number) => readilyEvaporableMm(sand / 100, clay / 100),
);
published(
  `${example35!.source}, ${example35!.locator}`,
  { unit: "mm", tolerance: example35!.tolerance, because: example35!.because, mark: "read" },
  [
    [
      example35!.inputs.fieldCapacity ?? Number.NaN,
      example35!.inputs.wiltingPoint ?? Number.NaN,
      example35!.inputs.evaporatingDepthMm ?? Number.NaN,
      example35!.expected.totalEvaporableMm ?? Number.NaN,
    ],
  ],
  totalEvaporableMm,
);
