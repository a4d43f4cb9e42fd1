import { describeScenario } from "../../../src/scenario/say/describe.ts";
import { describe, expect, test } from "vitest";
import { InputError, refuse } from "../../../src/problem.ts";
import { resolveScenario, type Scenario } from "../../../src/scenario/index.ts";
import { withChanges } from "./good-scenario.ts";

const noFiles = {
  fileName: "scenario.json",
  readText: (path: string, field: string) => refuse(field, "a file", path, ""),
};
const resolved = (changes: Record<string, unknown>): Promise<Scenario> =>
  resolveScenario(withChanges(changes), noFiles);
const defaultOf = ({ defaults }: Scenario, field: string) =>
  defaults.find((one) => one.field === field)?.value;

describe("units are read once and only numbers are left", () => {
  test("lengths, densities and days", async () => {
    const { site, cases, weather } = await resolved({});
    expect(site).toEqual({ latitudeDeg: 38.5, elevationM: 1005.84, setting: "inland" });
    expect(cases[0].layers.map(({ topMm, bottomMm }) => [topMm, bottomMm])).toEqual([
      [0, 127],
      [127, 228.6],
      [228.6, 1828.8],
    ]);
    expect(cases[0].layers[1]?.bulkDensityKgPerM3).toBe(1620);
    expect(cases[0].crop.sowing).toEqual({ month: 6, day: 1 });
    expect(weather.rainTotalsMm).toEqual([304.8, 330.2, 355.6]);
    expect(weather.rainTotalOver).toBe("year");
  });

  test("the same scenario in the other system is the same", async () => {
    const us = await resolved({});
    const metric = await resolved({
      "site.elevation": "1005.84 m",
      "soil.layers[0].thickness": 127,
      "soil.layers[1].thickness": "10.16 cm",
      "soil.layers[1].bulkDensity": "1620 kg/m3",
      "soil.layers[2].bottom": "1.8288 m",
      "weather.annualRain": ["304.8 mm", 330.2, "35.56 cm"],
      "cases[1].rootingDepth": "+50.8 mm",
    });
    expect(metric).toEqual(us);
  });

  test("fallow of 14 months is whole days", async () => {
    expect((await resolved({ "fallow.length": "14 months" })).cases[0].fallowDays).toBe(426);
  });

  test("a thin stand by its population", async () => {
    const crop = { "crop.population": "10,000 plants/ac", "crop.fullPopulation": "40,000 plants/ac" };
    expect((await resolved(crop)).cases[0].crop.standShare).toBeCloseTo(0.5, 10); // FAO-56 Box 17: (1/4) ^ 0.5
    const usual = await resolved({ "crop.population": "12,500 plants/ac" });
    expect(usual.cases[0].crop.standShare).toBeCloseTo(0.5, 6);
    expect(usual.defaults).toContainEqual(
      expect.objectContaining({
        field: "crop.fullPopulation",
        why: expect.stringMatching(/^a full dryland stand: Kansas State .*\(memory\)$/),
      }),
    );
    expect(describeScenario(usual, "us").replaceAll(/\s+/g, " ")).toContain(
      "The stand has 50 % of a full one's leaves.",
    );
    const small = await resolved({ ...crop, "crop.plantHabit": "stays small" });
    expect(small.cases[0].crop.standShare).toBeCloseTo(0.25, 10);
  });
});

test("beside a record of rain alone, monthly temperatures are enough, and stand in for its own", async () => {
  const record = "date,rain_mm\n2020-01-01,0\n2020-01-02,5\n";
  const monthlyNormals = { tMax: Array(12).fill("50 F"), tMin: Array(12).fill("32 F") };
  const scenario = withChanges({ weather: { record: "rain.csv", monthlyNormals } });
  const { weather } = await resolveScenario(scenario, { ...noFiles, readText: () => record });
  expect(weather.source).toMatchObject({
    kind: "record",
    normals: { tMaxC: Array(12).fill(10), tMinC: Array(12).fill(0) },
  });
});

test("an inch, as check says the usual slices, is a thickness of slices", async () => {
  const { cases } = await resolved({ "soil.sliceThickness": "1 in" });
  expect(cases[0].sliceThicknessMm).toBe(25.4);
});

describe("every default is written down", () => {
  test("with its field, value and reason", async () => {
    const scenario = await resolved({ "soil.startingWater": undefined });
    for (const field of [
      "soil.startingWater.share",
      "soil.layers[0].fieldCapacity",
      "soil.hydrologicGroup",
      "surface.curveNumberCrop",
      "surface.readilyEvaporable",
      "crop.kcbMid",
      "crop.stageLengths",
      "fallow.length",
      "yield.slope",
      "ensemble.years",
      "weather.referenceEt",
      "model.uptake",
    ]) {
      expect(scenario.defaults.find((one) => one.field === field)).toEqual({
        field,
        value: expect.stringMatching(/./),
        why: expect.stringMatching(/./),
      });
    }
  });

  test("and what is given is not", async () => {
    const scenario = await resolved({
      "crop.kcbMid": 1.05,
      "surface.curveNumber": 80,
      "ensemble.years": 30,
      "soil.hydrologicGroup": "B",
    });
    for (const field of [
      "crop.kcbMid",
      "surface.curveNumberCrop",
      "ensemble.years",
      "soil.hydrologicGroup",
    ]) {
      expect(defaultOf(scenario, field)).toBeUndefined();
    }
    expect(scenario.cases[0].crop.kcbMid).toBe(1.05);
    expect(scenario.cases[0].ground.curveNumberFallow).toBe(80);
  });

  test("once, though every case shares it", async () => {
    const { defaults } = await resolved({});
    const fields = defaults.map(({ field }) => field);
    expect(new Set(fields).size).toBe(fields.length);
    expect(fields.filter((field) => field.startsWith("cases["))).toEqual([]);
  });

  test("a case tells only those of its own", async () => {
    const { defaults } = await resolved({
      "cases[1].soil": { layers: [{ name: "pan", bulkDensity: "1.40 g/cm^3" }] },
    });
    const own = defaults.map(({ field }) => field).filter((field) => field.startsWith("cases["));
    expect(own).toContain("cases[1].soil.layers[0].saturation");
    expect(own).not.toContain("cases[1].soil.layers[0].organicMatter");
  });

  test("what follows from a case's own soil is told at the case, and the base's stays what it is", async () => {
    const scenario = await resolved({
      "cases[1].soil": { layers: [{ name: "pan", saturatedConductivity: "0.01 in/h" }] },
    });
    for (const field of ["soil.hydrologicGroup", "surface.curveNumberFallow", "surface.curveNumberCrop"]) {
      expect(scenario.defaults.filter((one) => one.field === field)).toHaveLength(1);
      expect(defaultOf(scenario, `cases[1].${field}`)).toBeDefined();
      expect(defaultOf(scenario, `cases[1].${field}`)).not.toBe(defaultOf(scenario, field));
    }
    expect(defaultOf(scenario, "surface.curveNumberCrop")).toBe(
      String(scenario.cases[0].ground.curveNumberCrop),
    );
    const fields = scenario.defaults.map(({ field }) => field);
    expect(new Set(fields).size).toBe(fields.length);
  });
});

describe("a case is the file with what differs", () => {
  test("an untouched case is the first again", async () => {
    const { cases } = await resolved({ "cases[1]": { name: "again" } });
    expect({ ...cases[1], name: "" }).toEqual({ ...cases[0], name: "" });
  });

  test("layers are matched by name; the others stay", async () => {
    const { cases } = await resolved({
      "cases[1]": { name: "loosened", soil: { layers: [{ name: "pan", bulkDensity: "1.35 g/cm^3" }] } },
    });
    expect(cases[1]?.layers[1]?.bulkDensityKgPerM3).toBe(1350);
    expect(cases[1]?.layers[1]?.hindrance.usual).toBeGreaterThan(cases[0].layers[1]?.hindrance.usual ?? 1);
    expect(cases[1]?.layers[0]).toEqual(cases[0].layers[0]);
    expect(cases[1]?.layers[2]).toEqual(cases[0].layers[2]);
  });

  test("a thicker layer pushes down those beneath it", async () => {
    const { cases } = await resolved({
      "soil.layers[2]": { name: "subsoil", thickness: "60 in", texture: "silt loam" },
      "cases[1]": { name: "thick", soil: { layers: [{ name: "pan", thickness: "6 in" }] } },
    });
    expect(cases[1]?.layers[2]?.topMm).toBeCloseTo(279.4, 9);
    expect(cases[1]?.layers[2]?.bottomMm).toBeCloseTo(1803.4, 9);
  });

  test("one way of saying a thing makes the base's other void", async () => {
    const { cases } = await resolved({
      "surface.residueCoverFallow": "60 %",
      "cases[1]": {
        name: "other",
        soil: {
          layers: [
            { name: "subsoil", texture: "clay" },
            { name: "topsoil", sand: "30 %", clay: "20 %" },
          ],
        },
        surface: { residueCover: "10 %" },
      },
    });
    expect(cases[1]?.layers[2]?.clayFraction).toBeGreaterThan(0.4);
    expect(cases[1]?.layers[0]?.sandFraction).toBe(0.3);
    expect(cases[0].ground.residueCoverFallow).toBe(0.6);
    expect(cases[1]?.ground.residueCoverFallow).toBe(0.1);
  });

  test("a case's density makes the base's penetrometer reading void, and says so", async () => {
    const { cases, notes } = await resolved({
      "soil.layers[1].penetrationResistance": "350 psi",
      "cases[1]": { name: "loosened", soil: { layers: [{ name: "pan", bulkDensity: "1.35 g/cm^3" }] } },
    });
    expect(cases[0].layers[1]?.hindrance.basis).toBe("penetration resistance");
    expect(cases[1]?.layers[1]?.hindrance.basis).toBe("bulk density");
    expect(notes.some((note) => note.includes("penetrometer reading belongs"))).toBe(true);
  });

  test("starting water is replaced as a whole", async () => {
    const { cases } = await resolved({
      "cases[1]": { name: "moist", soil: { startingWater: { moistDepth: "30 in", shareBelow: "20 %" } } },
    });
    expect(cases[0].startingWater).toEqual({ kind: "share", share: 0.4 });
    expect(cases[1]?.startingWater).toEqual({ kind: "moist depth", moistDepthMm: 762, shareBelow: 0.2 });
  });

  test("sown on another day it is the same type of crop, which needs the same heat", async () => {
    const { cases } = await resolved({ "cases[1]": { name: "early", crop: { sowing: "May 10" } } });
    expect(cases[1]?.crop.sowing).toEqual({ month: 5, day: 10 });
    expect(cases[1]?.crop.stageLengths).toEqual(cases[0].crop.stageLengths);
  });

  test("rooting depths: grown, stated, and against the first", async () => {
    const { cases } = await resolved({
      cases: [{ name: "a" }, { name: "b", rootingDepth: "34 in" }, { name: "c", rootingDepth: "-2 in" }],
    });
    expect(cases.map(({ rooting }) => rooting)).toEqual([
      { kind: "grown" },
      { kind: "absolute", depthMm: 863.6 },
      { kind: "relative", extraMm: -50.8 },
    ]);
  });

  test("without any case the file is one", async () => {
    const scenario = await resolved({ cases: undefined });
    expect(scenario.cases).toHaveLength(1);
    expect(defaultOf(scenario, "cases")).toBeDefined();
  });
});

describe("water in the soil when the run begins", () => {
  const inLayers = async (first: string) => {
    const { cases } = await resolved({
      "soil.startingWater": undefined,
      "soil.layers[0].bulkDensity": "1.30 g/cm^3",
      "soil.layers[0].wiltingPoint": "10 %",
      "soil.layers[0].fieldCapacity": "30 %",
      "soil.layers[0].water": first,
      "soil.layers[1].water": "40 % of available",
      "soil.layers[2].water": "40 % of available",
    });
    const { startingWater } = cases[0];
    return startingWater.kind === "by layer" ? startingWater.volumeFraction[0] : undefined;
  };

  // 5 in of soil, 1.30 g/cm3, wilting point 10 %, field capacity 30 %: by hand.
  test.each([
    ["20 % by weight", 0.26],
    ["27 % by volume", 0.27],
    ["0.5 in available", 0.2],
    ["25 % of available", 0.15],
    ["0 % of available", 0.1],
  ])("%s is %d by volume", async (water, expected) => {
    expect(await inLayers(water)).toBeCloseTo(expected, 10);
  });

  test("stones hold none of it", async () => {
    const { cases } = await resolved({
      "soil.startingWater": undefined,
      "soil.layers[0].bulkDensity": "1.30 g/cm^3",
      "soil.layers[0].gravelVolume": "20 %",
      "soil.layers[0].water": "20 % by weight",
      "soil.layers[1].water": "40 % of available",
      "soil.layers[2].water": "40 % of available",
    });
    const { startingWater } = cases[0];
    const [first] = startingWater.kind === "by layer" ? startingWater.volumeFraction : [];
    expect(first).toBeCloseTo(0.208, 10);
  });
});

describe("soil that ends", () => {
  test("at caliche: layers below it go, and it is said", async () => {
    const { cases, notes } = await resolved({ "soil.restriction": { depth: "30 in", kind: "caliche" } });
    expect(cases[0].layers.at(-1)?.bottomMm).toBe(762);
    expect(notes.some((note) => note.includes("ends on the caliche at 30 in (762 mm), not at 72 in"))).toBe(
      true,
    );
  });
});

describe("curve numbers", () => {
  // TR-55 Table 2-2b (read), hydrologic group B; fallow bare 86, lowered by a tenth of the share under residue (Steichen 1983, read).
  test.each([
    ["grain sorghum", undefined, undefined, 86, 81],
    ["grain sorghum", "40 %", undefined, 82.6, 75],
    ["grain sorghum", "10 %", undefined, 85.1, 80],
    ["winter wheat", "40 %", undefined, 82.6, 72],
    ["winter wheat", undefined, "contoured", 86, 74],
    ["chickpea", "40 %", undefined, 82.6, 72],
  ])(
    "%s, residue %s, %s: %d in fallow, %d with the crop",
    async (name, residueCover, treatment, fallow, crop) => {
      const { cases } = await resolved({
        "crop.name": name,
        "crop.sowing": undefined,
        "soil.hydrologicGroup": "B",
        surface: { ...(residueCover && { residueCover }), ...(treatment && { treatment }) },
      });
      expect(cases[0].ground.curveNumberFallow).toBeCloseTo(fallow, 9);
      expect(cases[0].ground.curveNumberCrop).toBe(crop);
    },
  );
});

describe("yield", () => {
  test("bushels weigh what the crop's do", async () => {
    const { yieldLine } = await resolved({ "yield.cap": "100 bu/ac" });
    expect(yieldLine.unit).toMatchObject({ us: "bu/ac", kgPerUsUnit: expect.closeTo(56 * 0.45359237, 6) });
    expect(yieldLine.capKgPerHa).toBeCloseTo(6276.77, 1);
  });

  test("a slope of one's own says where it comes from", async () => {
    const { yieldLine } = await resolved({
      yield: {
        slope: { low: "1 bu/ac/in", middle: "5 bu/ac/in", high: "9 bu/ac/in" },
        source: "strips of our own",
      },
    });
    expect(yieldLine.slopeKgPerHaPerMm.middle).toBeCloseTo((5 * 62.7677) / 25.4, 3);
    expect(yieldLine.source).toBe("strips of our own");
  });
});

describe("a crop of one's own", () => {
  const safflower = {
    crop: {
      name: "safflower",
      sowing: "Apr 20",
      stageLengths: ["20 days", "35 days", "45 days", "25 days"],
      kcbInitial: 0.15,
      kcbMid: 0.95,
      kcbEnd: 0.2,
      height: "2.5 ft",
      maxRootDepth: "5 ft",
    },
    yield: { slope: { low: "60 lb/ac/in", middle: "100 lb/ac/in", high: "140 lb/ac/in" }, threshold: "6 in" },
  };

  test("runs on its own numbers", async () => {
    const { cases, yieldLine } = await resolved(safflower);
    expect(cases[0].crop).toMatchObject({
      clock: "days",
      stageLengths: [20, 35, 45, 25],
      maxRootDepthMm: 1524,
    });
    expect(yieldLine).toMatchObject({ unit: { us: "lb/ac" }, source: "given in the scenario" });
  });

  test("needs its yield line", async () => {
    await expect(resolved({ crop: safflower.crop })).rejects.toThrow("yield.threshold");
  });
});

test("money, evidence and row positions come out in SI, by the cases' places", async () => {
  const { money, evidence, rowPositions } = await resolved({
    money: { price: "5 USD/bu", addedCost: "12 USD/ac", area: "160 ac" },
    evidence: { rootDepths: [{ case: "deeper", date: "2021-07-14", depths: ["24 in", "26 in"] }] },
    rowPositions: [
      { name: "wheel track", case: "as it is", share: "33 %" },
      { case: "deeper", share: "67 %" },
    ],
  });
  expect(money).toMatchObject({ currency: "USD", items: [{ part: "addedCosts", per: "hectare" }] });
  expect(money!.areaHa).toBeCloseTo(64.75, 2);
  expect(evidence).toMatchObject({
    confidence: 0.95,
    dig: { groups: [{ caseIndex: 1, depthsMm: [609.6, 660.4] }], drives: true, paired: false },
    counts: null,
    strips: null,
  });
  expect(rowPositions?.positions).toMatchObject([
    { name: "wheel track", caseIndex: 0, share: 0.33 },
    { name: "deeper", caseIndex: 1, share: 0.67 },
  ]);
});

describe("a dig that cannot be", () => {
  const dug = (more: object) => ({
    evidence: { rootDepths: [{ case: "deeper", date: "2021-07-14", depths: ["24 in", "26 in"], ...more }] },
  });

  test.each([
    ["a negative depth", dug({ depths: ["-3 in"] }), "evidence.rootDepths[0].depths[0]", /more than 0/],
    ["text for a number", dug({ depths: ["deep"] }), "evidence.rootDepths[0].depths[0]", /depth such as/],
    ["no plant", dug({ depths: [] }), "evidence.rootDepths[0].depths", /list of/],
    ["an unknown case", dug({ case: "depper" }), "evidence.rootDepths[0].case", /name of a case/],
    ["a date that is none", dug({ date: "2021-02-30" }), "evidence.rootDepths[0].date", /date such as/],
    [
      "deeper than the soil",
      dug({ depths: ["19 ft"] }),
      "evidence.rootDepths[0].depths[0]",
      /soil described/,
    ],
    [
      "pairs of unequal number",
      {
        evidence: {
          plantsPaired: true,
          rootDepths: [
            { case: "as it is", date: "2021-07-14", depths: ["24 in"] },
            { case: "deeper", date: "2021-07-14", depths: ["24 in", "26 in"] },
          ],
        },
      },
      "evidence.rootDepths[1].depths",
      /one for each plant/,
    ],
    [
      "an unknown layer",
      { evidence: { ...dug({}).evidence, denseLayer: "plough pam" } },
      "evidence.denseLayer",
      /name of a layer/,
    ],
    [
      "a limit without readings",
      { evidence: { ...dug({}).evidence, fit: "penetration limit" } },
      "evidence.fit",
      /penetrometer/,
    ],
  ] as const)("%s is told by its field", async (_what, change, field, expected) => {
    const refused = (await resolved(change).catch((error: unknown) => error)) as InputError;
    const { problems } = refused;
    expect(problems.map((one) => one.field)).toContain(field);
    expect(problems.find((one) => one.field === field)!.expected + problems[0]!.mend).toMatch(expected);
  });
});

test("an InputError carries every problem", async () => {
  const refused = resolved({ "site.latitude": "x", "crop.sowing": "x" });
  await expect(refused).rejects.toBeInstanceOf(InputError);
  await expect(refused).rejects.toMatchObject({
    problems: [{ field: "site.latitude" }, { field: "crop.sowing" }],
  });
});
