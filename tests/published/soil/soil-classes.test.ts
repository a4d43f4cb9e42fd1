import { describe, expect, test } from "vitest";
import groups from "../../../data-reference/soil-hydrologic-group.json" with { type: "json" };
import triangle from "../../../data-reference/soil-texture-triangle.json" with { type: "json" };
import { hydrologicGroup } from "../../../src/soil/equations/hydrologicGroup.ts";
import { resolveLayer } from "../../../src/soil/layers/resolveLayer.ts";
import { textureClass, textureClasses } from "../../../src/soil/equations/texture.ts";
import { markOf, recordsOf } from "../weather/records.ts";

const ofTriangle = recordsOf(triangle);
const ofGroups = recordsOf(groups);

describe(`${triangle[0]!.source} (${markOf(triangle[0]!)}; the lines of the triangle)`, () => {
  test.each(ofTriangle.rows())(
    "sand $inputs.sandPercent, clay $inputs.clayPercent is $expected.textureClass: $what",
    (record) => {
      const { sandPercent, clayPercent } = record.inputs;
      expect(textureClass(sandPercent / 100, clayPercent / 100)).toBe(record.expected.textureClass);
    },
  );
  test("every class is among the points", () => {
    const named = new Set(triangle.map(({ expected }) => expected.textureClass));
    expect([...named].sort()).toEqual([...textureClasses].sort());
  });
});

describe(`${groups[0]!.source}, Table 7-1 (${markOf(groups[0]!)})`, () => {
  test.each(ofGroups.rows())(
    "$inputs.conductivityUmPerS um/s, restricted at $inputs.restrictedAtMm mm is $expected.group",
    (record) => {
      const { restrictedAtMm, conductivityUmPerS } = record.inputs;
      const { layer } = resolveLayer(
        {
          name: "all of it",
          topMm: 0,
          bottomMm: 1500,
          texture: "loam",
          saturatedConductivityMmPerDay: conductivityUmPerS * 86.4,
        },
        "soil.layers[0]",
      );
      expect(hydrologicGroup([layer], restrictedAtMm).group).toBe(record.expected.group);
    },
  );
});

ofTriangle.noneLeft();
ofGroups.noneLeft();
