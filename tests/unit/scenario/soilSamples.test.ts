import { describe, expect, test } from "vitest";
import { InputError } from "../../../src/problem.ts";
import { resolveScenario } from "../../../src/scenario/index.ts";
import type { Scenario } from "../../../src/scenario/scenario.ts";
import { withChanges } from "./good-scenario.ts";

/** Scenarios with cores and penetrometer logs; all invented. */
const surroundings = { fileName: "test.json", readText: () => "" };
const read = (changes: Readonly<Record<string, unknown>>): Promise<Scenario> =>
  resolveScenario(withChanges(changes), surroundings);
const linesOf = async (changes: Readonly<Record<string, unknown>>): Promise<string[]> => {
  try {
    await read(changes);
  } catch (error) {
    if (error instanceof InputError) return error.message.split("\n");
    throw error;
  }
  return [];
};

const pan = "soil.layers[1]";
const noDensity = { [`${pan}.bulkDensity`]: undefined };
const core = { wetMass: "120 g", dryMass: "100 g", volume: "64 cm^3" };
const wetCores = (dryG: number) => [{ wetMass: `${dryG * 1.2} g`, dryMass: `${dryG} g`, volume: "100 cm^3" }];

/** What is written, and every line a person then reads. */
const bad: readonly (readonly [string, Readonly<Record<string, unknown>>, ...string[]])[] = [
  [
    "a core lighter wet than dry",
    { [`${pan}.cores`]: [{ ...core, wetMass: "90 g" }] },
    "soil.layers[1].cores[0].wetMass: expected at least the dry weight, 100 g, found 90 g; check which weight is which",
  ],
  [
    "a dry weight below 0",
    { [`${pan}.cores`]: [{ ...core, dryMass: "-100 g" }] },
    'soil.layers[1].cores[0].dryMass: expected more than 0 and at most 20 kg (44 lb), found "-100 g"; check the number and its unit',
  ],
  [
    "a weight as words",
    { [`${pan}.cores`]: [{ ...core, dryMass: "heavy" }] },
    'soil.layers[1].cores[0].dryMass: expected a weight such as "512 g", found "heavy"; start with a number written with a point, such as 1.5',
  ],
  [
    "a weight in inches",
    { [`${pan}.cores`]: [{ ...core, dryMass: "100 in" }] },
    'soil.layers[1].cores[0].dryMass: expected a weight such as "512 g", found "100 in"; write the unit as g, kg, oz or lb',
  ],
  [
    "a diameter without length",
    { [`${pan}.cores`]: [{ dryMass: "100 g", diameter: "2 in" }] },
    "soil.layers[1].cores[0].length: expected diameter and length together, found nothing; give both, or the volume",
  ],
  [
    "volume and diameter",
    { [`${pan}.cores`]: [{ ...core, diameter: "2 in", length: "3 in" }] },
    "soil.layers[1].cores[0].volume: expected the volume, or diameter and length, found both; leave one out",
  ],
  [
    "a dry weight alone",
    { [`${pan}.cores`]: [{ dryMass: "100 g" }] },
    "soil.layers[1].cores[0].wetMass: expected a wet weight, or the volume of the ring, found nothing; give one or both",
  ],
  [
    "stones heavier than the core",
    { [`${pan}.cores`]: [{ ...core, stoneMass: "200 g" }] },
    "soil.layers[1].cores[0].stoneMass: expected less than the dry weight, 100 g, found 200 g; give the dry weight of the whole core, stones and all",
  ],
  [
    "a core as dense as iron",
    { [`${pan}.cores`]: [{ ...core, volume: "20 cm^3" }] },
    "soil.layers[1].cores[0]: expected a core of 0.5 to 2.2 g/cm^3, dry and without its stones, found 5 g/cm^3; check its weights and its volume",
  ],
  [
    "starting water from cores that are not there",
    { "soil.startingWater": { from: "cores" } },
    "soil.startingWater.from: expected cores with their wet weight in the layers, found none; give the layers their cores, or say the starting water another way",
  ],
  [
    "starting water from cores and a share",
    { "soil.startingWater": { from: "cores", share: "50 %" } },
    "soil.startingWater: expected from cores, or share, or moistDepth, found more than one; leave out the others",
  ],
  [
    "nothing said below the deepest core, and a layer left out above it",
    { "soil.startingWater": { from: "cores" }, ...noDensity, [`${pan}.cores`]: wetCores(150) },
    'soil.startingWater.shareBelow: expected the share of the available water below the deepest core, which is in "pan", found nothing; say how moist the soil is there',
    "soil.layers[0].cores: expected a core with its wet weight in every layer down to the deepest cored one, found nothing; give one, or leave out startingWater.from",
  ],
  [
    "a core wetter than the soil can be",
    {
      "soil.startingWater": { from: "cores", shareBelow: "30 %" },
      "soil.layers[0].cores": [{ wetMass: "200 g", dryMass: "130 g", volume: "100 cm^3" }],
    },
    "soil.layers[0].cores: expected 5.2 % to 50.9 % by volume, half of wilting point to saturation, found a core, which is 70 % by volume; check the sample, and the layer's density and texture",
  ],
  [
    "wetness as a word that is none",
    { [`${pan}.penetrationResistance`]: "300 psi", [`${pan}.penetrationWetness`]: "drie" },
    'soil.layers[1].penetrationWetness: expected how wet the soil was: "dry", "moist" or "wet", or a share of the available water such as "60 %", found "drie"; did you mean "dry"?',
  ],
  [
    "wetness above all that is available",
    { [`${pan}.penetrationResistance`]: "300 psi", [`${pan}.penetrationWetness`]: "140 %" },
    'soil.layers[1].penetrationWetness: expected how wet the soil was: "dry", "moist" or "wet", or a share of the available water such as "60 %", found "140 %"; 0 is wilting point, 100 % field capacity',
  ],
  [
    "a log reading above the sky",
    { "soil.penetrometer": { readings: [{ depth: "-2 in", resistance: "300 psi" }] } },
    'soil.penetrometer.readings[0].depth: expected 0 to 79 in (2000 mm), found "-2 in"; check the number and its unit',
  ],
];

describe("samples that are wrong", () => {
  const rows = bad.map(([name, changes, ...lines]) => ({ name, changes, lines }));
  test.each(rows)("$name", async ({ changes, lines }) => {
    expect(await linesOf(changes)).toEqual(lines);
  });
});

describe("cores", () => {
  test("give the density where none is typed, and hold roots back as a typed one", async () => {
    const typed = await read({ [`${pan}.bulkDensity`]: "1.6 g/cm^3" });
    const cored = await read({
      ...noDensity,
      [`${pan}.cores`]: [
        { dryMass: "158 g", volume: "100 cm^3" },
        { dryMass: "162 g", volume: "100 cm^3" },
      ],
    });
    expect(cored.cases[0].layers[1]!.bulkDensityKgPerM3).toBeCloseTo(1600, 6);
    expect(cored.cases[0].layers[1]!.hindrance.usual).toBeCloseTo(
      typed.cases[0].layers[1]!.hindrance.usual,
      9,
    );
    expect(cored.notes).toContain("pan: bulk density 1.6 g/cm^3 from 2 cores.");
  });

  test("a typed density goes before them", async () => {
    const { cases } = await read({ [`${pan}.cores`]: wetCores(130) });
    expect(cases[0].layers[1]!.bulkDensityKgPerM3).toBe(1620);
  });

  test("stones weighed out leave the density of the fine earth, and their share of the volume", async () => {
    const { cases } = await read({
      ...noDensity,
      [`${pan}.cores`]: [{ dryMass: "176.5 g", stoneMass: "26.5 g", volume: "110 cm^3" }],
    });
    expect(cases[0].layers[1]!.bulkDensityKgPerM3).toBeCloseTo(1500, 6);
    expect(cases[0].layers[1]!.gravelVolumeFraction).toBeCloseTo(10 / 110, 9);
  });

  test("of a case make the base's density and reading void", async () => {
    const { cases } = await read({
      [`${pan}.penetrationResistance`]: "350 psi",
      "cases[1]": { name: "loosened", soil: { layers: [{ name: "pan", cores: wetCores(132) }] } },
    });
    expect(cases[0].layers[1]!.hindrance.basis).toBe("penetration resistance");
    expect(cases[1]!.layers[1]!.hindrance.basis).toBe("bulk density");
    expect(cases[1]!.layers[1]!.bulkDensityKgPerM3).toBeCloseTo(1320, 6);
  });

  test("are no starting water unless the file says so", async () => {
    const { cases } = await read({ [`${pan}.cores`]: wetCores(130) });
    expect(cases[0].startingWater).toEqual({ kind: "share", share: 0.4 });
  });

  test("are the starting water where it says so; below them the share stated", async () => {
    const { cases } = await read({
      "soil.startingWater": { from: "cores", shareBelow: "30 %" },
      "soil.layers[0].cores": wetCores(120),
      [`${pan}.cores`]: [{ wetMass: "115 g", dryMass: "100 g" }],
    });
    const start = cases[0].startingWater;
    if (start.kind !== "by layer") throw new Error(start.kind);
    const { wiltingPoint, fieldCapacity } = cases[0].layers[2]!;
    expect(start.volumeFraction[0]).toBeCloseTo(0.24, 9);
    expect(start.volumeFraction[1]).toBeCloseTo(0.15 * 1.62, 9);
    expect(start.volumeFraction[2]).toBeCloseTo(wiltingPoint + 0.3 * (fieldCapacity - wiltingPoint), 9);
  });

  test("a case of another density keeps the water that was cored", async () => {
    const { cases } = await read({
      "soil.startingWater": { from: "cores", shareBelow: "30 %" },
      "soil.layers[0].cores": wetCores(120),
      [`${pan}.cores`]: [{ wetMass: "115 g", dryMass: "100 g" }],
      "cases[1]": { name: "loosened", soil: { layers: [{ name: "pan", bulkDensity: "1.4 g/cm^3" }] } },
    });
    const [start, loosened] = cases.map(({ startingWater }) => startingWater);
    if (start?.kind !== "by layer" || loosened?.kind !== "by layer") throw new Error("no water by layer");
    expect(loosened.volumeFraction[1]).toBeCloseTo(start.volumeFraction[1]!, 9);
  });
});

describe("penetrometer readings", () => {
  const reading = (wetness: string | undefined) =>
    read({ [`${pan}.penetrationResistance`]: "350 psi", [`${pan}.penetrationWetness`]: wetness });

  test("in dry soil are not used: density decides, and it is said", async () => {
    const { cases, notes } = await reading("dry");
    expect(cases[0].layers[1]!.hindrance.basis).toBe("bulk density");
    expect(notes.join("\n")).toContain(
      "pan: the penetrometer read 350 psi (2.41 MPa) in soil that held about 20 % of its available water: too dry to tell a dense layer from a dry one, so the reading is not used. Its bulk density decides;",
    );
  });

  test("in moist soil are used with a warning; in wet soil, or where nothing is said, without", async () => {
    const moist = await reading("60 %");
    expect(moist.cases[0].layers[1]!.hindrance.basis).toBe("penetration resistance");
    expect(moist.notes.join("\n")).toContain("it may overstate what holds roots back");
    for (const sure of [await reading("wet"), await reading(undefined)]) {
      expect(sure.cases[0].layers[1]!.hindrance).toEqual(moist.cases[0].layers[1]!.hindrance);
      expect(sure.notes.join("\n")).not.toContain("overstate");
    }
  });

  const log = {
    readings: [
      { depth: "3 in", resistance: "150 psi" },
      { depth: "6 in", resistance: "320 psi" },
      { depth: "8 in", resistance: "380 psi" },
      { depth: "14 in", resistance: "200 psi" },
    ],
  };

  test("a log gives each layer the mean of its readings; a typed reading stays", async () => {
    const { cases } = await read({
      "soil.penetrometer": log,
      "soil.layers[2].penetrationResistance": "100 psi",
    });
    const readings = cases[0].layers.map(({ hindrance }) => (hindrance.resistanceMPa ?? 0) / 0.006894757);
    expect(readings[0]).toBeCloseTo(150, 2);
    expect(readings[1]).toBeCloseTo(350, 2);
    expect(readings[2]).toBeCloseTo(100, 2);
  });

  test("a dry log decides nothing; a case's own log goes before the base's reading", async () => {
    const dry = await read({ "soil.penetrometer": { ...log, wetness: "dry" } });
    expect(dry.cases[0].layers.map(({ hindrance }) => hindrance.basis)).toEqual(
      Array(3).fill("bulk density"),
    );
    const own = await read({
      [`${pan}.penetrationResistance`]: "400 psi",
      "cases[1]": {
        name: "loosened",
        soil: { penetrometer: { readings: [{ depth: "7 in", resistance: "180 psi" }], wetness: "wet" } },
      },
    });
    expect(own.cases[0].layers[1]!.hindrance.resistanceMPa).toBeCloseTo(400 * 0.006894757, 5);
    expect(own.cases[1]!.layers[1]!.hindrance.resistanceMPa).toBeCloseTo(180 * 0.006894757, 5);
  });
});
