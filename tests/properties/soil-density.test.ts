import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { advancedFront, sliceAt } from "../../src/season/rootFront.ts";
import type { Slices } from "../../src/soil/layers/layer.ts";
import type { LayerDescription } from "../../src/soil/layers/layerDescription.ts";
import { resolveLayer } from "../../src/soil/layers/resolveLayer.ts";
import { asResolved, cutSlices } from "../../src/soil/layers/slices.ts";
import { anyTexture } from "../unit/soil/anySoil.ts";

/** Even steps from 0 to `max`. */
const upTo = (max: number) => fc.integer({ min: 0, max: 1000 }).map((n) => (n / 1000) * max);

/** Where a layer of a stated density lies, how roots take it, how wet the ground is, and a day of descent. */
const anyCase = fc.record({
  texture: anyTexture,
  openShare: upTo(0.5),
  lenience: upTo(2).map((n) => n - 1),
  density: fc.integer({ min: 1000, max: 1500 }),
  more: fc.integer({ min: 0, max: 300 }),
  wetness: upTo(1),
  frontMm: upTo(500),
  descentMm: upTo(120),
});

type AnyCase = typeof anyCase extends fc.Arbitrary<infer One> ? One : never;

/** Topsoil, layer, subsoil of one texture through the real soil room; densities are stated for the layer alone. */
function columnOf(
  texture: { sandFraction: number; clayFraction: number },
  layer: Partial<LayerDescription>,
  lenience: number,
) {
  const layers = [
    { name: "topsoil", topMm: 0, bottomMm: 150, ...texture },
    { name: "layer", topMm: 150, bottomMm: 400, ...texture, ...layer },
    { name: "subsoil", topMm: 400, bottomMm: 700, ...texture },
  ].map((description, i) => resolveLayer(description, `soil.layers[${i}]`).layer);
  return cutSlices(layers, 25, { ...asResolved, lenience }, 100);
}

const evaporating = 10; // slices of 10 mm within 100 mm

const wetTo = ({ wiltingPointMm, fieldCapacityMm }: Slices, share: number): Float64Array =>
  wiltingPointMm.map((wp, j) => wp + share * (fieldCapacityMm[j]! - wp));

const frontAfter = (
  slices: Slices,
  waterMm: Float64Array,
  { frontMm, descentMm, wetness }: { frontMm: number; descentMm: number; wetness: number },
): number =>
  advancedFront(
    frontMm,
    descentMm,
    Infinity,
    slices,
    waterMm,
    waterMm[sliceAt(frontMm, slices)]!,
    evaporating,
    wetness,
  );

/** Runs the law over 500 draws; and it must not be an empty one: the denser layer really holds the front in a fair share. */
function neverDeeper(fronts: (one: AnyCase) => number[]): void {
  let held = 0;
  fc.assert(
    fc.property(anyCase, (one) => {
      const [loose, dense] = fronts(one);
      expect(dense!).toBeLessThanOrEqual(loose! + 1e-9);
      if (dense! < loose! - 1) held++;
    }),
    { numRuns: 500 },
  );
  expect(held).toBeGreaterThan(25);
}

describe("density, hindrance, passage, front: more density in a layer never deepens the front", () => {
  test("over the same millimetres of water, where the water limits are measured and so stay", () => {
    neverDeeper((one) => {
      const measured = { openShare: one.openShare, fieldCapacity: 0.26, wiltingPoint: 0.12, saturation: 0.3 };
      return [one.density, one.density + one.more].map((bulkDensityKgPerM3) => {
        const slices = columnOf(one.texture, { ...measured, bulkDensityKgPerM3 }, one.lenience);
        return frontAfter(slices, wetTo(slices, one.wetness), one);
      });
    });
  });

  // Estimated limits move with density: a denser layer holds less, so the same millimetres fill more of it.
  test("over soil filled to the same share, where the limits are estimated", () => {
    neverDeeper((one) =>
      [one.density, one.density + one.more].map((bulkDensityKgPerM3) => {
        const { texture, openShare, lenience } = one;
        const slices = columnOf(texture, { openShare, bulkDensityKgPerM3 }, lenience);
        return frontAfter(slices, wetTo(slices, one.wetness), one);
      }),
    );
  });

  test("known shortfall: over the same millimetres, with limits by estimate, a denser layer can let the front deeper: by 1 to 3 mm of 20 in a day here", () => {
    const silty = { sandFraction: 0.1, clayFraction: 0.1 };
    const one = { frontMm: 250, descentMm: 20, wetness: 0.4 };
    const [loose, dense] = [1200, 1400].map((bulkDensityKgPerM3) =>
      columnOf(silty, { bulkDensityKgPerM3 }, 0),
    );
    const waterMm = wetTo(loose!, one.wetness);
    const deeperMm = frontAfter(dense!, waterMm, one) - frontAfter(loose!, waterMm, one);
    expect(deeperMm).toBeGreaterThan(1);
    expect(deeperMm).toBeLessThan(3);
  });
});
