import { expect, test } from "vitest";
import { placeInWords } from "../../../web/inputs/placeWords.ts";
import { leafOf } from "../../../web/views/field/openLeaf.ts";

const scenario = {
  soil: { layers: [{ name: "topsoil" }, { name: "plough pan" }] },
  cases: [
    { name: "as it is" },
    { name: "loosened", soil: { layers: [{ name: "plough pan", bulkDensity: "x" }] } },
  ],
};

test.each([
  ["soil.layers[1].bulkDensity", "Bulk density, plough pan"],
  ["cases[1].soil.layers[0].bulkDensity", "Bulk density, plough pan, loosened"],
  ["site.latitude", "Latitude"],
  ["crop.stageLengths[2]", "Stage lengths"],
  ["soil.layers[7].bottom", "Down to"],
  ["weather.csv line 12", "weather.csv line 12"],
  ["colour", "colour"],
])("%s is called %s", (path, said) => expect(placeInWords(path, scenario)).toBe(said));

test.each([
  ["evidence.counts[0].kernelWeight", "counts"],
  ["evidence.strips.yields[0][1]", "strips"],
  ["evidence.rootDepths[1].date", "dig"],
  ["evidence.confidence", "dig"],
  ["soil.layers[2].cores[0].dryMass", "samples"],
  ["soil.layers[2].bulkDensity", null],
  ["money.price", "money"],
  ["moneyed", null],
  ["rowPositions.machine", "rows"],
])("%s is entered on the leaf %s", (path, leaf) => expect(leafOf(path)).toBe(leaf));
