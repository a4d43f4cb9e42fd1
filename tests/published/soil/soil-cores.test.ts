import { describe, expect, test } from "vitest";
import gravimetric from "../../../data-reference/soil-gravimetric.json" with { type: "json" };
import checks from "../../../data-reference/soil-core-checks.json" with { type: "json" };
import { probedWater } from "../../../src/evidence/samples/moistDepth.ts";
import { rootStopMPa } from "../../../src/evidence/samples/penetrometer.ts";
import { coreDensityKgPerM3, cylinderCm3, type SoilCore } from "../../../src/evidence/samples/soilCores.ts";
import { soilSampled } from "../../../src/evidence/samples/soilSampled.ts";
import { centralTexture, type TextureClass } from "../../../src/soil/equations/texture.ts";
import { resolveLayer } from "../../../src/soil/layers/resolveLayer.ts";
import { published } from "../published.ts";
import { closenessOf, recordsOf, sourceOf } from "../weather/records.ts";

const core = (dryMassG: number, volumeCm3: number): SoilCore => ({
  wetMassG: null,
  dryMassG,
  volumeCm3,
  stoneMassG: 0,
});
const layerOf = (bottomMm: number, texture: TextureClass = "loam", availableWater?: number) =>
  resolveLayer({ name: "soil", topMm: 0, bottomMm, ...centralTexture(texture), availableWater }, "layer")
    .layer;

describe("a core weighed moist and dry, to density, water by weight and volume, and depth of water", () => {
  test.each(recordsOf(gravimetric).rows())(
    "$what: $source ($provenance)",
    ({ inputs: i, expected, tolerance }) => {
      const weighed = { ...core(i.dryG, i.volumeCm3), wetMassG: i.moistG };
      const [told] = soilSampled([layerOf(i.layerMm)], [[weighed]], 0.95).layers;
      const near = (value: number, wanted: number, within: number) =>
        expect(Math.abs(value - wanted)).toBeLessThanOrEqual(within);
      near(told!.gravimetricPercent!.mean, expected.gravimetricPercent, tolerance.gravimetricPercent);
      near(told!.densityKgPerM3!.mean / 1000, expected.densityGPerCm3, tolerance.densityGPerCm3);
      near(told!.volumeFraction!.mean, expected.volumeFraction, tolerance.volumeFraction);
      near(told!.storedMm!.mean, expected.waterMm, tolerance.waterMm);
    },
  );
});

const records = recordsOf(checks);
const ring = records.take<
  { diameterMm: number; lengthMm: number; dryG: number },
  { volumeCm3: number; densityGPerCm3: number },
  { volumeCm3: number; densityGPerCm3: number }
>("core-ring");
published(
  `${sourceOf(ring)}: ${ring.what}, volume`,
  { unit: "cm3", tolerance: ring.tolerance.volumeCm3, because: ring.because, mark: "memory" },
  [[ring.inputs.diameterMm, ring.inputs.lengthMm, ring.expected.volumeCm3]],
  cylinderCm3,
);
published(
  `${sourceOf(ring)}: ${ring.what}, density`,
  { unit: "g/cm3", tolerance: ring.tolerance.densityGPerCm3, because: ring.because, mark: "memory" },
  [[ring.inputs.dryG, ring.inputs.diameterMm, ring.inputs.lengthMm, ring.expected.densityGPerCm3]],
  (dryG: number, diameterMm: number, lengthMm: number) =>
    coreDensityKgPerM3(core(dryG, cylinderCm3(diameterMm, lengthMm)))! / 1000,
);

const exercise = records.take<{ dryG: number; volumeCm3: number }, { densityGPerCm3: number }>("core-150");
published(
  sourceOf(exercise),
  closenessOf(exercise),
  [[exercise.inputs.dryG, exercise.inputs.volumeCm3, exercise.expected.densityGPerCm3]],
  (dryG: number, volumeCm3: number) => coreDensityKgPerM3(core(dryG, volumeCm3))! / 1000,
);

const mmPerFoot = 304.8;
const rule = records.take<{ moistFt: number; availableInPerFt: number }, { availableIn: number }>(
  "moist-depth-loam",
);
published(
  `${sourceOf(rule)}: ${rule.what}`,
  closenessOf(rule),
  [[rule.inputs.moistFt, rule.inputs.availableInPerFt, rule.expected.availableIn]],
  (feet: number, inPerFt: number) =>
    probedWater([layerOf(1500, "loam", inPerFt / 12)], feet * mmPerFoot, 0).availableMm / 25.4,
);
const range = records.take<
  { moistFt: number; textureClasses: TextureClass[] },
  { inPerFt: [number, number] }
>("moist-depth-loams-range");
published(
  `${sourceOf(range)}: ${range.what}, of a probe's moist depth`,
  closenessOf(range),
  range.inputs.textureClasses.map((name) => [name, range.inputs.moistFt, 0]),
  (name: TextureClass, feet: number) => {
    const perFoot = probedWater([layerOf(1500, name)], feet * mmPerFoot, 0).availableMm / 25.4 / feet;
    const [low, high] = range.expected.inPerFt;
    return Math.max(0, low - perFoot, perFoot - high);
  },
);

const stop = records.take<{ psi: number }, { mPa: number }>("penetrometer-stop");
published(
  `${sourceOf(stop)}: ${stop.what}`,
  closenessOf(stop),
  [[stop.inputs.psi, stop.expected.mPa]],
  () => rootStopMPa,
);
records.noneLeft();
