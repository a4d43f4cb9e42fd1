import { describe, expect, test } from "vitest";
import { boundaryAt, boundaryChanges, canMove } from "../../../../web/views/pit/boundaryEdit.ts";
import type { Json } from "../../../../web/state/json.ts";

const inch = 25.4;
const layers = [
  { name: "topsoil", topMm: 0, bottomMm: 6 * inch },
  { name: "pan", topMm: 6 * inch, bottomMm: 10 * inch },
  { name: "subsoil", topMm: 10 * inch, bottomMm: 40 * inch },
];
const soilOf = (...written: Json[]): Json => ({ soil: { layers: written } });

describe("a boundary that is dragged", () => {
  const byBottom = soilOf(
    { name: "topsoil", bottom: "6 in" },
    { name: "pan", bottom: "254 mm" },
    { name: "subsoil", bottom: "40 in" },
  );

  test("is written as the bottom where the bottom was told", () => {
    expect(boundaryChanges(byBottom, 0, layers, 0, 7 * inch, "us")).toEqual([
      ["soil.layers[0].bottom", "7 in"],
    ]);
    expect(boundaryChanges(byBottom, 0, layers, 1, 270, "metric")).toEqual([
      ["soil.layers[1].bottom", "270 mm"],
    ]);
  });

  test("is written as thicknesses of both neighbours where these were told, so that what lies below stays", () => {
    const byThickness = soilOf(
      { name: "topsoil", thickness: "6 in" },
      { name: "pan", thickness: "4 in" },
      { name: "subsoil", thickness: "30 in" },
    );
    expect(boundaryChanges(byThickness, 0, layers, 1, 11.5 * inch, "us")).toEqual([
      ["soil.layers[1].thickness", "5.5 in"],
      ["soil.layers[2].thickness", "28.5 in"],
    ]);
    expect(boundaryChanges(byThickness, 0, layers, 2, 45 * inch, "us")).toEqual([
      ["soil.layers[2].thickness", "35 in"],
    ]);
  });

  test("goes to the case's own depth of the layer, if it has one", () => {
    const scenario = {
      ...(byBottom as object),
      cases: [{ name: "a" }, { name: "b", soil: { layers: [{ name: "pan", bottom: "9 in" }] } }],
    } as Json;
    expect(boundaryChanges(scenario, 1, layers, 1, 8 * inch, "us")).toEqual([
      ["cases[1].soil.layers[0].bottom", "8 in"],
    ]);
    expect(boundaryChanges(scenario, 0, layers, 1, 8 * inch, "us")).toEqual([
      ["soil.layers[1].bottom", "8 in"],
    ]);
  });

  test("is not to be moved where a file tells the layers, or where something else ends the soil", () => {
    expect(canMove({ soil: { horizons: { file: "x.csv" } } }, 0, layers, 0)).toBe(false);
    const onRock = {
      soil: {
        layers: [{ bottom: "6 in" }, { bottom: "10 in" }, { bottom: "50 in" }],
        restriction: { depth: "40 in" },
      },
    };
    expect([0, 1, 2].map((index) => canMove(onRock, 0, layers, index))).toEqual([true, true, false]);
  });

  test("stands on half inches or centimetres, a step from its neighbours", () => {
    expect(boundaryAt(layers, 1, 8.3 * inch, "us") / inch).toBeCloseTo(8.5, 9);
    expect(boundaryAt(layers, 1, 0, "us") / inch).toBeCloseTo(6.5, 9);
    expect(boundaryAt(layers, 1, 5000, "us") / inch).toBeCloseTo(39.5, 9);
    expect(boundaryAt(layers, 1, 0, "metric")).toBe(160);
    expect(boundaryAt(layers, 1, 217, "metric")).toBe(220);
  });
});
