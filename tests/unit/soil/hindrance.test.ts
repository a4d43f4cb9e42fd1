import fc from "fast-check";
import { expect, test } from "vitest";
import { densityHindrance, familyClass } from "../../../src/soil/equations/densityFactor.ts";
import type { Hindrance } from "../../../src/soil/layers/layer.ts";
import {
  penetrationHindrance,
  psiToMPa,
  soilStructures,
} from "../../../src/soil/equations/penetrationFactor.ts";
import { resolveLayer } from "../../../src/soil/layers/resolveLayer.ts";
import { passageOf } from "../../../src/soil/layers/slices.ts";
import { anyTexture } from "./anySoil.ts";

const ordered = ({ strict, usual, lenient }: Hindrance): void => {
  expect(strict).toBeGreaterThanOrEqual(0);
  expect(usual).toBeGreaterThanOrEqual(strict);
  expect(lenient).toBeGreaterThanOrEqual(usual);
  expect(lenient).toBeLessThanOrEqual(1);
};

test.each([
  [0.92, 0.05, "sandy"],
  [0.8, 0.05, "sandy"],
  [0.65, 0.1, "coarse-loamy"],
  [0.15, 0.179, "coarse-loamy"],
  [0.149, 0.179, "coarse-silty"],
  [0.149, 0.18, "fine-silty"],
  [0.15, 0.18, "fine-loamy"],
  [0.4, 0.349, "fine-loamy"],
  [0.1, 0.349, "fine-silty"],
  [0.1, 0.35, "clayey 35 to 45 %"],
  [0.5, 0.45, "clayey 35 to 45 %"],
  [0.2, 0.451, "clayey over 45 %"],
])("sand %s, clay %s is %s", (sand, clay, family) => expect(familyClass(sand, clay)).toBe(family));

test("strict never above usual, usual never above lenient, all within 0 and 1", () => {
  fc.assert(
    fc.property(
      anyTexture,
      fc.integer({ min: 500, max: 2200 }),
      ({ sandFraction, clayFraction }, density) => {
        ordered(densityHindrance(sandFraction, clayFraction, density));
      },
    ),
  );
  for (const structure of soilStructures) {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 20, noNaN: true }), (mPa) =>
        ordered(penetrationHindrance(mPa, structure)),
      ),
    );
  }
});

test("more density in a layer never raises passage", () => {
  fc.assert(
    fc.property(
      anyTexture,
      fc.integer({ min: 500, max: 2100 }),
      fc.integer({ min: 0, max: 100 }),
      fc.double({ min: -1, max: 1, noNaN: true }),
      (texture, density, more, lenience) => {
        const passage = (bulkDensityKgPerM3: number): number =>
          passageOf(
            resolveLayer({ name: "a", topMm: 0, bottomMm: 100, ...texture, bulkDensityKgPerM3 }, "soil")
              .layer,
            lenience,
          );
        expect(passage(density + more)).toBeLessThanOrEqual(passage(density) + 1e-12);
      },
    ),
  );
});

test("a higher reading never raises the pace, a more open structure never lowers it", () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0, max: 10, noNaN: true }),
      fc.double({ min: 0, max: 3, noNaN: true }),
      (mPa, more) => {
        const [pan, tilled, structured] = soilStructures.map(
          (structure) => penetrationHindrance(mPa, structure).usual,
        );
        expect(pan).toBeLessThanOrEqual(tilled!);
        expect(tilled).toBeLessThanOrEqual(structured!);
        expect(penetrationHindrance(mPa + more, "tilled").usual).toBeLessThanOrEqual(tilled!);
      },
    ),
  );
});

test("a reading of 300 psi slows roots in a pan, and shuts them out only in the strict reading", () => {
  const { strict, usual, lenient } = penetrationHindrance(psiToMPa(300), "pan without pores");
  expect(strict).toBe(0);
  expect(usual).toBeCloseTo(0.294, 3);
  expect(lenient).toBeGreaterThan(0.5);
});

test("ordinary soil, up to 150 psi, is no hindrance", () => {
  expect(penetrationHindrance(psiToMPa(150), "tilled").usual).toBe(1);
});
