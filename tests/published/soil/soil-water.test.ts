import available from "../../../data-reference/available-water.json" with { type: "json" };
import evaporable from "../../../data-reference/soil-evaporable.json" with { type: "json" };
import gravimetric from "../../../data-reference/soil-gravimetric.json" with { type: "json" };
import table19 from "../../../data-reference/soil-fao56-table19.json" with { type: "json" };
import { describe, expect, test } from "vitest";
import { readilyEvaporableMm, totalEvaporableMm } from "../../../src/soil/equations/evaporableWater.ts";
import { gravimetricPercent, volumeFromGravimetric } from "../../../src/soil/layers/startingWater.ts";
import { type TextureClass, centralTexture } from "../../../src/soil/equations/texture.ts";
import { estimateWaterLimits } from "../../../src/soil/equations/waterLimits.ts";
import { published } from "../published.ts";
import { closenessOf, markOf, recordsOf, sourceOf } from "../weather/records.ts";

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

const ofAvailable = recordsOf(available);
for (const id of [
  "available-water-feel-fine-sand-loamy-fine-sand",
  "available-water-feel-sandy-loam-fine-sandy-loam",
  "available-water-feel-sandy-clay-loam-loam-silt-loam",
  "available-water-feel-clay-clay-loam-silty-clay-loam",
  "available-water-kansas",
]) {
  const record = ofAvailable.take<{ textureClasses: string[] }, { inPerFt: [number, number] }>(id);
  const range = record.expected.inPerFt;
  published(
    `${sourceOf(record)}: ${record.what}, ${range.join(" to ")} in/ft`,
    { ...closenessOf(record), unit: "in/ft outside the range" },
    record.inputs.textureClasses.map((name) => [name, 0]),
    (name: TextureClass) => outside(availableInPerFt(name), range),
  );
}

const inch = ofAvailable.take<{ textureClasses: string[] }, { waterIn: number }>(
  "available-water-inch-per-six",
);
published(
  inch.what,
  closenessOf(inch),
  inch.inputs.textureClasses.map((name) => [name, inch.expected.waterIn]),
  (name: TextureClass) => availableInPerFt(name) / 2,
);

const handbook = ofAvailable.take<
  { water33Percent: number; water1500Percent: number; densityGPerCm3: number },
  { fraction: number }
>("available-water-handbook");
published(
  sourceOf(handbook),
  closenessOf(handbook),
  [
    [
      handbook.inputs.water33Percent,
      handbook.inputs.water1500Percent,
      handbook.inputs.densityGPerCm3,
      handbook.expected.fraction,
    ],
  ],
  (water33: number, water1500: number, gPerCm3: number) =>
    volumeFromGravimetric(water33, gPerCm3 * 1000) - volumeFromGravimetric(water1500, gPerCm3 * 1000),
);

ofAvailable.noneLeft();

const ofGravimetric = recordsOf(gravimetric);
describe("gravimetric worked examples", () => {
  test.each(ofGravimetric.rows())("$what: $source ($provenance)", ({ inputs: i, expected, tolerance }) => {
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

ofGravimetric.noneLeft();

const ofTable19 = recordsOf(table19);
const rows19 = ofTable19.rows();
const first19 = rows19[0]!;
const closeness19 = { unit: "mm outside the range", because: first19.because, mark: markOf(first19) };
published(
  `${sourceOf(first19)}: readily evaporable water`,
  { ...closeness19, tolerance: first19.tolerance.readilyEvaporableMm },
  rows19.map(({ inputs, expected }) => [inputs.textureClass, ...expected.readilyEvaporableMm, 0]),
  (name: TextureClass, low: number, high: number) => {
    const { sandFraction, clayFraction } = centralTexture(name);
    return outside(readilyEvaporableMm(sandFraction, clayFraction), [low, high]);
  },
);
published(
  `${sourceOf(first19)}: total evaporable water`,
  { ...closeness19, tolerance: first19.tolerance.totalEvaporableMm },
  rows19.map(({ inputs, expected }) => [
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
ofTable19.noneLeft();

const ofEvaporable = recordsOf(evaporable);
const ritchie = ofEvaporable.take<
  { sandPercent: number[]; clayPercent: number[] },
  { readilyEvaporableMm: number[] }
>("readily-evaporable-ritchie");
published(
  sourceOf(ritchie),
  closenessOf(ritchie),
  ritchie.inputs.sandPercent.map((sand, n) => [
    sand,
    ritchie.inputs.clayPercent[n]!,
    ritchie.expected.readilyEvaporableMm[n]!,
  ]),
  (sand: number, clay: number) => readilyEvaporableMm(sand / 100, clay / 100),
);
const example35 = ofEvaporable.take<
  { fieldCapacity: number; wiltingPoint: number; evaporatingDepthMm: number },
  { totalEvaporableMm: number }
>("total-evaporable-example-35");
published(
  sourceOf(example35),
  closenessOf(example35),
  [
    [
      example35.inputs.fieldCapacity,
      example35.inputs.wiltingPoint,
      example35.inputs.evaporatingDepthMm,
      example35.expected.totalEvaporableMm,
    ],
  ],
  totalEvaporableMm,
);
ofEvaporable.noneLeft();
