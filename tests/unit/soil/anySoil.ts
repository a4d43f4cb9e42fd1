import fc from "fast-check";
import type { LayerDescription } from "../../../src/soil/layers/layerDescription.ts";
import type { FineEarth } from "../../../src/soil/equations/waterLimits.ts";

/** In even steps: `fc.double` draws evenly over what a double can hold, so that from 0 to 1 nearly all would be next to 0. */
const share = fc.integer({ min: 0, max: 10_000 }).map((n) => n / 10_000);

/** Any point of the texture triangle. */
export const anyTexture = fc.tuple(share, share).map(([a, b]) => ({
  sandFraction: Math.min(a, b),
  clayFraction: 1 - Math.max(a, b),
}));

/** Any fine earth whose values a layer may have. */
export const anyFineEarth: fc.Arbitrary<FineEarth> = fc
  .record({
    texture: anyTexture,
    organicMatterPercent: fc.double({ min: 0, max: 100, noNaN: true }),
    bulkDensityKgPerM3: fc.option(fc.integer({ min: 500, max: 2200 })),
    gravelVolumeFraction: fc.double({ min: 0, max: 0.9, noNaN: true }),
  })
  .map(({ texture, ...rest }) => ({ ...texture, ...rest }));

/** One to forty layers from the surface down, 3 to 600 mm each. */
export const anyColumn: fc.Arbitrary<LayerDescription[]> = fc
  .array(fc.tuple(anyFineEarth, fc.integer({ min: 3, max: 600 })), { minLength: 1, maxLength: 40 })
  .map((layers) => {
    let topMm = 0;
    return layers.flatMap(([soil, thicknessMm], i) => {
      if (topMm + thicknessMm > 10_000) return [];
      const layer = {
        name: `layer ${i + 1}`,
        topMm,
        bottomMm: topMm + thicknessMm,
        sandFraction: soil.sandFraction,
        clayFraction: soil.clayFraction,
        organicMatterPercent: soil.organicMatterPercent,
        bulkDensityKgPerM3: soil.bulkDensityKgPerM3 ?? undefined,
        gravelVolumeFraction: soil.gravelVolumeFraction,
      };
      topMm += thicknessMm;
      return [layer];
    });
  });
