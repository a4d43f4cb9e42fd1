import { describe, expect, test } from "vitest";
import { leftoversIn, withoutLeftovers } from "../../../../web/forms/edits/leftovers.ts";
import type { Json } from "../../../../web/state/json.ts";
import { getAt, removeAt, setAt } from "../../../../web/state/path.ts";
import { demoAsWritten } from "../../../support/demos.ts";

const example = demoAsWritten("sorghum-over-plough-pan") as Json;
const examples = [{ id: "sorghum-over-plough-pan", name: "the example", scenario: example }];
const found = (scenario: Json) => leftoversIn(scenario, examples);

describe("what an example leaves in another field", () => {
  test("is nothing while it is the example: rain, cases and its water may be tried on", () => {
    expect(found(example)).toBeNull();
    expect(found(setAt(example, "weather.annualRain", "18 in"))).toBeNull();
    expect(found(setAt(example, "soil.startingWater.share", "70 %"))).toBeNull();
  });

  test.each<[string, Json, string]>([
    ["another crop", setAt(example, "crop.name", "corn"), "the crop"],
    ["another soil", setAt(example, "soil.layers[1].bulkDensity", "1.5 g/cm^3"), "the soil"],
    ["no longer invented", removeAt(example, "invented"), "the mark “invented”"],
  ])(
    "with %s is its dig, counts, costs, notes, water and fallow, and goes in one step",
    (_, changed, what) => {
      const left = found(changed)!;
      expect(left.differs).toEqual([what]);
      expect(left.parts.map(({ said }) => said)).toEqual([
        "the plants dug",
        "the counts",
        "costs and prices",
        "its notes",
        "the water at the start",
        "the fallow",
        ...(what === "the crop" ? ["the sowing date"] : []),
      ]);
      const without = withoutLeftovers(changed, left);
      for (const path of ["evidence", "money", "notes", "fallow", "soil.startingWater"])
        expect(getAt(without, path), path).toBeUndefined();
      expect(getAt(without, "cases")).toEqual(getAt(changed, "cases"));
      expect(found(without)).toBeNull();
    },
  );

  test("is not what was measured in its place", () => {
    const own = ["evidence", "money", "notes"].reduce(removeAt, setAt(example, "crop.name", "corn"));
    expect(found(own)).toBeNull();
    expect(found(setAt(own, "evidence.counts", [{ case: "over the pan", spots: [{}] }]))).toBeNull();
  });
});
