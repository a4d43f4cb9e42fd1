import { describe, expect, test } from "vitest";
import { InputError } from "../../../src/problem.ts";
import { readHorizons } from "../../../src/soil/horizons/horizons.ts";
import { resolveLayer } from "../../../src/soil/layers/resolveLayer.ts";

// Invented tables, as they are typed off a web page or a report.
const typed = (...lines: string[]): string => lines.join("\n");
const read = (text: string) => readHorizons(text, "typed.csv", {});

describe("a printed soil table", () => {
  test("inches in the header, percent, water in inches an inch", () => {
    const { layers, name, doubts, restrictedAtMm } = read(
      typed("Top (in),Bottom (in),Sand %,Clay %,AWC", "0,6,18,21,0.20", "6,31.5,15,28,0.18"),
    );
    expect(name).toBe("the only soil");
    expect(doubts).toEqual([]);
    expect(restrictedAtMm).toBeNull();
    expect(layers.map((layer) => layer.name)).toEqual(["horizon at 0 in", "horizon at 6 in"]);
    expect(layers[0]?.bottomMm).toBeCloseTo(152.4, 9);
    expect(layers[1]?.bottomMm).toBeCloseTo(800.1, 9);
    expect(layers[1]).toMatchObject({ sandFraction: 0.15, clayFraction: 0.28, availableWater: 0.18 });
  });

  test("textures only, one depth column, tabs, rock at the end", () => {
    const { layers, restrictedAtMm } = read(
      typed("Horizon\tDepth (in)\tTexture", "Ap\t0 to 7\tSilt loam", "Bt\t7-24\tSiCL", "R\t24 – 60\tBedrock"),
    );
    expect(layers.map(({ texture }) => texture)).toEqual(["silt loam", "silty clay loam"]);
    expect(restrictedAtMm).toBeCloseTo(609.6, 9);
    const resolved = resolveLayer(layers[1]!, "soil.layers[1]").layer;
    expect(resolved.clayFraction).toBeGreaterThan(0.27);
  });

  test.each([
    // header cell, cell, property, what it is
    ["Organic matter (%)", "1.8", "organicMatterPercent", 1.8],
    ["Moist bulk density (g/cc)", "1.42", "bulkDensityKgPerM3", 1420],
    ["Bulk density", "1.42", "bulkDensityKgPerM3", 1420],
    ["Available water capacity (in/ft)", "2.16", "availableWater", 0.18],
    ["AWC, %", "18", "availableWater", 0.18],
    ["Rock fragments (%)", "12", "gravelVolumeFraction", 0.12],
    ["Ksat (in/hr)", "0.5", "saturatedConductivityMmPerDay", 304.8],
    ["Ksat (um/s)", "3", "saturatedConductivityMmPerDay", 259.2],
  ] as const)("%s %s", (header, cell, property, value) => {
    const { layers } = read(
      typed(`Top (cm),Bottom (cm),% Sand,% Silt,% Clay,"${header}"`, `0,160,20,55,25,${cell}`),
    );
    expect(layers[0]?.[property]).toBeCloseTo(value, 6);
  });

  test.each([
    [
      "no unit of depth",
      "Top,Bottom,Sand %,Clay %",
      "0,6,18,21",
      'typed.csv header: expected the unit of top in its header: in, inches, inch, ", cm, mm, found "top"; write it such as "Top (in)"',
    ],
    [
      "a unit that depths have not",
      "Top (acres),Bottom (in),Sand %,Clay %",
      "0,6,18,21",
      'typed.csv header: expected the unit of top in its header: in, inches, inch, ", cm, mm, found "top (acres)"; write it such as "Top (in)"',
    ],
    [
      "no unit of sand",
      "Top (in),Bottom (in),Sand,Clay %",
      "0,6,18,21",
      'typed.csv header: expected the unit of sand in its header: %, pct, percent, found "sand"; write it such as "Sand %"',
    ],
    [
      "neither texture nor sand",
      "Top (in),Bottom (in),AWC",
      "0,6,0.2",
      'typed.csv header: expected the column sand, clay of a printed soil table, found nothing; write a column "Texture" with the class by its name, or "Sand %" and "Clay %"',
    ],
    [
      "two columns of sand",
      "Top (in),Bottom (in),Sand %,% sand,Clay %",
      "0,6,18,18,21",
      'typed.csv header: expected one column of sand, found "sand %, % sand"; drop one of them',
    ],
    [
      "water by the foot under a plain AWC",
      "Top (in),Bottom (in),Texture,AWC",
      "0,6,loam,2.1",
      'typed.csv line 2 column awc: expected available water from 0 to 0.6 of the soil\'s volume, found "2.1 in/in"; write its unit in the header, such as "AWC (in/ft)" or "AWC %"',
    ],
    [
      "no such texture",
      "Top (in),Bottom (in),Texture",
      "0,6,gumbo",
      /^typed\.csv line 2 column texture: expected a USDA texture class/,
    ],
    [
      "one depth",
      "Depth (in),Texture",
      "6,loam",
      'typed.csv line 2 column depth (in): expected two depths such as "0 to 6", found "6"; write top and bottom of the horizon',
    ],
    [
      "an empty depth",
      "Top (in),Bottom (in),Texture",
      "0,,loam",
      "typed.csv line 2 column bottom (in): expected a depth, found nothing; fill it in",
    ],
    [
      "an impossible density",
      "Top (in),Bottom (in),Texture,Bulk density",
      "0,6,loam,88",
      'typed.csv line 2 column bulk density: expected a density from 0.05 to 2.65 g/cm3, found "88 g/cm3"; correct it, or write its unit in the header',
    ],
  ] as const)("%s is refused in one line", (_, header, row, message) => {
    const refused = () => read(typed(header, row));
    expect(refused).toThrow(InputError);
    expect(refused).toThrow(message);
  });

  test("a gap is told in inches", () => {
    expect(() => read(typed("Top (in),Bottom (in),Texture", "0,6,loam", "8,60,loam"))).toThrow(
      "a gap from 6 in (15.2 cm) to 8 in (20.3 cm)",
    );
  });
});
