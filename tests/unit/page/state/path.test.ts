import { describe, expect, test } from "vitest";
import type { Json } from "../../../../web/state/json.ts";
import { getAt, parsePath, removeAt, setAt } from "../../../../web/state/path.ts";

const scenario: Json = {
  name: "a field",
  soil: {
    layers: [
      { name: "topsoil", bottom: "6 in" },
      { name: "pan", bulkDensity: "1.62 g/cm^3" },
    ],
  },
  surface: { residueCover: "30 %" },
};

describe("a place written as problems write it", () => {
  test.each([
    ["name", ["name"]],
    ["soil.layers[1].bulkDensity", ["soil", "layers", 1, "bulkDensity"]],
    ["cases[0].soil.layers[2].name", ["cases", 0, "soil", "layers", 2, "name"]],
    ["weather.monthlyNormals.tMax[11]", ["weather", "monthlyNormals", "tMax", 11]],
    ["", []],
  ])("%s", (text, path) => expect(parsePath(text)).toEqual(path));

  test.each([
    "weather.csv line 12",
    ".name",
    "[0]",
    "soil..layers",
    "soil.layers[x]",
    "soil.layers[1]bulk",
    "a.",
    '["odd key"]',
  ])("%s is none", (text) => expect(parsePath(text)).toBeNull());
});

describe("reading, writing, taking away", () => {
  test("reads what is there, and undefined elsewhere", () => {
    expect(getAt(scenario, "soil.layers[1].bulkDensity")).toBe("1.62 g/cm^3");
    expect(getAt(scenario, "soil.layers[7].bulkDensity")).toBeUndefined();
    expect(getAt(scenario, "toString")).toBeUndefined();
  });
  test("writes without changing what was there", () => {
    const before = JSON.stringify(scenario);
    const after = setAt(scenario, "soil.layers[1].bulkDensity", "1.40 g/cm^3");
    expect(getAt(after, "soil.layers[1].bulkDensity")).toBe("1.40 g/cm^3");
    expect(getAt(after, "soil.layers[0].bottom")).toBe("6 in");
    expect(JSON.stringify(scenario)).toBe(before);
  });
  test("makes the groups and lists on the way", () => {
    expect(setAt({}, "cases[0].soil.layers[0].name", "pan")).toEqual({
      cases: [{ soil: { layers: [{ name: "pan" }] } }],
    });
  });
  test("will not leave a hole in a list", () => {
    expect(() => setAt(scenario, "soil.layers[5].name", "deep")).toThrow("a list of 2 has no place 5");
  });
  test("takes away, and groups that are empty then", () => {
    expect(removeAt(scenario, "surface.residueCover")).not.toHaveProperty("surface");
    expect(removeAt(scenario, "soil.layers[0]")).toMatchObject({ soil: { layers: [{ name: "pan" }] } });
  });
  test("an item of a list emptied from within keeps its place", () => {
    const bare = removeAt(removeAt(scenario, "soil.layers[0].name"), "soil.layers[0].bottom");
    expect(getAt(bare, "soil.layers[1].name")).toBe("pan");
  });
  test("a key of the language is a key like any other", () => {
    const odd = setAt({}, "__proto__.polluted", "yes");
    expect(({} as Record<string, unknown>)["polluted"]).toBeUndefined();
    expect(getAt(odd, "__proto__.polluted")).toBe("yes");
  });
});
