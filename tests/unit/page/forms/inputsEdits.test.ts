import { describe, expect, test } from "vitest";
import {
  addCase,
  caseNamedIn,
  casesIn,
  duplicateCase,
  goesWithCase,
  removeCase,
} from "../../../../web/forms/edits/caseEdits.ts";
import { caseInWords } from "../../../../web/forms/edits/caseWords.ts";
import {
  addLayer,
  joinLayers,
  namedIn,
  removeLayer,
  splitLayer,
} from "../../../../web/forms/edits/layerEdits.ts";
import { getAt, removeAt, setAt } from "../../../../web/state/path.ts";
import { demoAsWritten, demoNames, resolved } from "../../../support/demos.ts";
import type { Json } from "../../../../web/state/json.ts";

const scenario: Json = {
  soil: {
    layers: [
      { name: "topsoil", bottom: "6 in", texture: "loam" },
      {
        name: "pan",
        bottom: "10 in",
        texture: "silt loam",
        bulkDensity: "1.62 g/cm^3",
        water: "0.6 in available",
      },
      { name: "subsoil", thickness: "30 in", sand: "15 %", clay: "24 %", water: "2 in available" },
    ],
  },
  cases: [
    { name: "as it is" },
    {
      name: "loosened",
      soil: { layers: [{ name: "pan", bulkDensity: "1.36 g/cm^3" }] },
      rootingDepth: "+2 in",
    },
  ],
};
const mm = (top: number, bottom: number) => ({ topMm: top * 25.4, bottomMm: bottom * 25.4 });

describe("a layer", () => {
  test("told by its bottom is split at the middle; cases go along, and water told as an amount is shared out", () => {
    expect(splitLayer(scenario, 1, mm(6, 10), "us")).toEqual({
      soil: {
        layers: [
          { name: "topsoil", bottom: "6 in", texture: "loam" },
          {
            name: "pan, upper",
            bottom: "8 in",
            texture: "silt loam",
            bulkDensity: "1.62 g/cm^3",
            water: "0.3 in available",
          },
          {
            name: "pan, lower",
            bottom: "10 in",
            texture: "silt loam",
            bulkDensity: "1.62 g/cm^3",
            water: "0.3 in available",
          },
          { name: "subsoil", thickness: "30 in", sand: "15 %", clay: "24 %", water: "2 in available" },
        ],
      },
      cases: [
        { name: "as it is" },
        {
          name: "loosened",
          soil: {
            layers: [
              { name: "pan, upper", bulkDensity: "1.36 g/cm^3" },
              { name: "pan, lower", bulkDensity: "1.36 g/cm^3" },
            ],
          },
          rootingDepth: "+2 in",
        },
      ],
    });
  });

  test("told by its thickness is halved in the unit it was written in", () => {
    const { soil } = splitLayer(scenario, 2, mm(10, 40), "metric") as { soil: { layers: unknown[] } };
    expect(soil.layers.slice(2)).toEqual([
      { name: "subsoil, upper", thickness: "15 in", sand: "15 %", clay: "24 %", water: "1 in available" },
      { name: "subsoil, lower", thickness: "15 in", sand: "15 %", clay: "24 %", water: "1 in available" },
    ]);
  });

  test("joined with the next is what the thicker of them is made of, and what cases say of the other goes", () => {
    expect(joinLayers(scenario, 1, mm(6, 10), mm(10, 40), "us")).toEqual({
      soil: {
        layers: [
          { name: "topsoil", bottom: "6 in", texture: "loam" },
          { name: "subsoil", thickness: "34 in", sand: "15 %", clay: "24 %", water: "2.6 in available" },
        ],
      },
      cases: [{ name: "as it is" }, { name: "loosened", rootingDepth: "+2 in" }],
    });
  });

  test("split and joined again is what it was, in the cases too", () => {
    const split = splitLayer(scenario, 1, mm(6, 10), "us");
    expect(joinLayers(split, 1, mm(6, 8), mm(8, 10), "us")).toEqual(scenario);
  });

  test("removed goes out of the cases too", () => {
    const { cases } = removeLayer(scenario, 1) as { cases: unknown };
    expect(cases).toEqual([{ name: "as it is" }, { name: "loosened", rootingDepth: "+2 in" }]);
  });

  test("added has a name of its own and the texture above it", () => {
    const { soil } = addLayer(scenario, "metric") as { soil: { layers: unknown[] } };
    expect(soil.layers[3]).toEqual({ name: "layer 4", thickness: "300 mm", sand: "15 %", clay: "24 %" });
  });

  test("is followed by the cases that name it, but not while two share the name", () => {
    expect(namedIn(scenario, "pan")).toEqual(["cases[1].soil.layers[0].name"]);
    const twice = { ...scenario, soil: { layers: [{ name: "pan" }, { name: "pan" }] } };
    expect(namedIn(twice, "pan")).toEqual([]);
  });
});

describe("a case", () => {
  const names = (of: Json) => ((of as { cases?: { name: string }[] }).cases ?? []).map(({ name }) => name);
  test("is added two inches deeper; the first brings the field as described with it", () => {
    expect(names(addCase(scenario))).toEqual(["as it is", "loosened", "two inches deeper"]);
    expect(names(addCase(addCase({})))).toEqual(["as described", "two inches deeper", "two inches deeper 2"]);
  });
  test("is duplicated beside itself and removed; without any there is no list", () => {
    expect(names(duplicateCase(scenario, 0))).toEqual(["as it is", "as it is, again", "loosened"]);
    expect(names(removeCase(scenario, 0))).toEqual(["loosened"]);
    expect(removeCase({ name: "x", cases: [{ name: "only" }] }, 0)).toEqual({ name: "x" });
  });
  test.each(demoNames)(
    "of %s takes what was measured of it along: what is left can be read",
    async (name) => {
      const written = demoAsWritten(name) as Json;
      for (const [index, one] of casesIn(written).entries()) {
        const removed = removeCase(written, index);
        // What is now first may be told against the one that is gone: that is for its owner to mend.
        const left = index === 0 ? removeAt(removed, "cases[0].rootingDepth") : removed;
        const scenario = await resolved(left);
        expect(scenario.cases.map((other) => other.name)).not.toContain(one["name"]);
        expect(caseNamedIn(setAt(left, "cases", [{ name: one["name"]! }]), String(one["name"]))).toEqual([]);
      }
    },
  );
  test("takes nothing along where nothing names it, and says what goes", () => {
    const written = demoAsWritten("sorghum-over-plough-pan") as Json;
    expect(goesWithCase(written, "two inches deeper")).toBeNull();
    expect(getAt(removeCase(written, 2), "evidence")).toEqual(getAt(written, "evidence"));
    expect(goesWithCase(written, "pan loosened")).toBe("what was measured of it");
    const left = removeCase(written, 1);
    expect(getAt(left, "evidence.rootDepths")).toHaveLength(1);
    expect(getAt(left, "evidence.digDecides")).toBe(false);
    const none = removeCase(left, 0);
    expect(getAt(none, "evidence")).toBeUndefined();
    const wheat = demoAsWritten("wheat-after-fallow") as Json;
    expect(goesWithCase(wheat, "wheel track")).toContain("the rows of the field");
  });
  test("is followed by rows and evidence that name it", () => {
    const rows = { ...scenario, rowPositions: [{ case: "loosened", share: "100 %" }] };
    expect(caseNamedIn(rows, "loosened")).toEqual(["rowPositions[0].case"]);
  });

  test.each([
    [{ name: "a" }, []],
    [{ name: "a", rootingDepth: "+2 in" }, ["roots 2 in deeper than in “first”"]],
    [{ name: "a", rootingDepth: "−50 mm" }, ["roots 50 mm shallower than in “first”"]],
    [{ name: "a", rootingDepth: "34 in" }, ["roots to 34 in at most"]],
    [
      { name: "a", soil: { layers: [{ name: "pan", bulkDensity: "1.36 g/cm^3", clay: "20 %" }] } },
      ["pan: bulk density 1.36 g/cm^3, clay 20 %"],
    ],
    [
      { name: "a", surface: { residueCover: "80 %" }, model: { evaporation: "dual coefficient" } },
      ["surface: residue cover 80 %", "model: evaporation rule dual coefficient"],
    ],
    [
      { name: "a", soil: { startingWater: { moistDepth: "30 in", shareBelow: "20 %" } } },
      ["starting water: moist down to 30 in, below that 20 %"],
    ],
  ])("says what it changes in words: %j", (one, said) => {
    expect(caseInWords(one, "first")).toEqual(said);
  });
});
