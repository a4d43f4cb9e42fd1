import type { Slices } from "../../../src/soil/layers/layer.ts";

/** A column for tests: equal slices, each with its wilting point and field capacity as fractions. */
export function slicesOf(
  thicknessMm: number,
  limits: readonly (readonly [wp: number, fc: number])[],
): Slices {
  const count = limits.length;
  const of = (value: (i: number) => number) => Float64Array.from({ length: count }, (_, i) => value(i));
  return {
    count,
    topMm: of((i) => i * thicknessMm),
    thicknessMm: of(() => thicknessMm),
    layer: new Int32Array(count),
    wiltingPointMm: of((i) => limits[i]![0] * thicknessMm),
    fieldCapacityMm: of((i) => limits[i]![1] * thicknessMm),
    saturationMm: of(() => 0.5 * thicknessMm),
    saturatedConductivityMmPerDay: of(() => 100),
    drainExponent: of(() => 10),
    passage: of(() => 1),
    rootsLeft: of(() => 1),
  };
}
