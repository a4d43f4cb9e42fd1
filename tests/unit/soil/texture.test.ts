import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  centralTexture,
  readTextureClass,
  textureClass,
  textureClassNamed,
  textureMend,
  textureClasses,
} from "../../../src/soil/equations/texture.ts";

test("the example of the docstring", () => expect(textureClass(0.2, 0.15)).toBe("silt loam"));

test.each(textureClasses)("the middle of %s is a %s", (name) => {
  const { sandFraction, clayFraction } = centralTexture(name);
  expect(textureClass(sandFraction, clayFraction)).toBe(name);
});

test("every point of the triangle has a class", () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0, max: 1, noNaN: true }),
      fc.double({ min: 0, max: 1, noNaN: true }),
      (a, b) => {
        const sand = Math.min(a, b);
        const clay = 1 - Math.max(a, b);
        expect(textureClasses).toContain(textureClass(sand, clay));
      },
    ),
  );
});

test.each([
  [-0.1, 0.2],
  [0.7, 0.4],
  [Number.NaN, 0.2],
  [0.2, Infinity],
])("sand %s and clay %s are no texture", (sand, clay) => {
  expect(() => textureClass(sand, clay)).toThrow(/texture: expected sand and clay from 0 to 100 %/);
});

describe("names", () => {
  test.each([
    ["Silt Loam", "silt loam"],
    ["  SILTY-CLAY_loam ", "silty clay loam"],
    ["SiCL", "silty clay loam"],
    ["sl", "sandy loam"],
    ["fsl", "sandy loam"],
    ["LVFS", "loamy sand"],
    ["very fine sandy loam", "sandy loam"],
    ["loamy fine sand", "loamy sand"],
    ["coarse sand", "sand"],
    ["c", "clay"],
  ])("%s is %s", (text, name) => expect(readTextureClass(text)).toBe(name));

  test.each(["", "gravelly loam", "fine loam", "loess", "глина", "silt clay", "coarse silty"])(
    "%s is none",
    (text) => {
      expect(readTextureClass(text)).toBeNull();
    },
  );

  test.each([
    ["silt laom", "silt loam"],
    ["sandy lome", "sandy loam"],
    ["cley", "clay"],
    ["silt clay loam", "silty clay loam"],
  ])("%s is nearest to %s", (text, name) => expect(textureMend(text)).toBe(`did you mean "${name}"?`));

  test("what is near none is sent to the list", () => {
    expect(textureMend("mud")).toBe("name one of these, or give sand and clay in percent");
  });

  test("a wrong name is answered with the nearest", () => {
    expect(() => textureClassNamed("silt lome", "soil.layers[0].texture")).toThrow(
      /^soil\.layers\[0\]\.texture: expected a USDA texture class .*found "silt lome"; did you mean "silt loam"\?/,
    );
  });
});
