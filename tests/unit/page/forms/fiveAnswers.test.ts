import { beforeAll, describe, expect, test } from "vitest";
import { loadUnits } from "../../../../src/quantity/index.ts";
import { resolveScenario } from "../../../../src/scenario/index.ts";
import {
  asDug,
  asLoose,
  scenarioOfAnswers,
  type FiveAnswers,
} from "../../../../src/scenario/say/fiveAnswers.ts";
import { depthSpan } from "../../../../src/scenario/say/denseLayer.ts";
import { answered, answersNow, emptyWork } from "../../../../web/forms/edits/answersGiven.ts";
import { merged } from "../../../../web/forms/edits/merged.ts";
import type { Json } from "../../../../web/state/json.ts";
import { getAt, setAt } from "../../../../web/state/path.ts";
import type { Work } from "../../../../web/state/scenarioStore.ts";
import { demoAsWritten } from "../../../support/demos.ts";

beforeAll(loadUnits);

const noFiles = {
  fileName: "scenario.json",
  readText: (path: string) => {
    throw new Error(`no file ${path}`);
  },
};
const scenarioOf = (answers: FiveAnswers) => scenarioOfAnswers(answers).file as Json;
const read = (answers: FiveAnswers) => resolveScenario(scenarioOf(answers), noFiles);
const demo: Work = { scenario: demoAsWritten("sorghum-over-plough-pan") as Json, attachments: {} };

describe("a field in five answers", () => {
  test.each<[string, FiveAnswers]>([
    ["no answer at all", {}],
    ["one", { texture: "clay loam" }],
    ["a dense layer without its depth", { dense: "wheel track" }],
    ["a dense layer from the surface", { dense: "tillage pan", denseSpan: "0 to 4 in" }],
    ["a rotation", { crop: "wheat-corn-fallow" }],
    ["less deep", { deeper: "-3 in" }],
    [
      "what was dug",
      { dense: "tillage pan", deeper: asDug, dugDense: "24, 27 in", dugLoose: "31 in", dugOn: "2024-07-03" },
    ],
    ["what was dug, not yet typed", { dense: "tillage pan", deeper: asDug }],
  ])("with %s is a whole scenario, and everything in it that nobody said is told", async (_, answers) => {
    const { file, assumed } = scenarioOfAnswers(answers);
    await expect(resolveScenario(file, noFiles)).resolves.toBeDefined();
    for (const { field } of assumed) expect(getAt(file as Json, field), field).toBeDefined();
    expect(file).not.toHaveProperty("invented");
    expect(file).not.toHaveProperty("money");
  });

  test("where it is dense, it is dense between these depths, and the question is the layer loosened", async () => {
    const { cases } = await read({ texture: "silty clay loam", dense: "tillage pan", denseSpan: "7-11 in" });
    const [now, loose] = cases;
    const dense = now!.layers[1]!;
    expect([dense.topMm, dense.bottomMm].map(Math.round)).toEqual([178, 279]);
    // Where restriction begins, half of the pace is left by the usual reading.
    expect(dense.hindrance.usual).toBeCloseTo(0.5, 2);
    expect(loose!.layers[1]!.hindrance.usual).toBe(1);
  });

  test("a depth goes before the loosened layer, and plants that were dug are evidence", async () => {
    const stated = await read({ dense: "tillage pan", deeper: "2 in" });
    expect(stated.cases[1]!.rooting).toEqual({ kind: "relative", extraMm: 50.8 });
    const dug = await read({
      dense: "tillage pan",
      deeper: asDug,
      dugDense: "24, 27 in",
      dugLoose: "30, 31 in",
      dugOn: "2024-07-03",
    });
    expect(dug.evidence?.dig?.drives).toBe(true);
    expect(dug.evidence?.dig?.groups.map(({ depthsMm }) => depthsMm.length)).toEqual([2, 2]);
    // Nothing dense to fit: what was dug says how far apart they are.
    const apart = await read({ deeper: asDug, dugDense: "24, 27 in", dugLoose: "30, 31 in" });
    expect(apart.cases[1]!.rooting).toEqual({ kind: "relative", extraMm: 5 * 25.4 });
  });

  test.each([
    ["6 to 10 in", ["6 in", "10 in"]],
    ["6-10 in", ["6 in", "10 in"]],
    ["15 cm .. 25 cm", ["15 cm", "25 cm"]],
    ["10 in", null],
    ["deep", null],
  ])("a span %j", (text, ends) => expect(depthSpan(text)).toEqual(ends));
});

describe("answering on the page", () => {
  test("the first answer leaves the demo behind: its dig, counts, costs, water and notes are not in one's own field", () => {
    const { scenario, answers } = answered(demo, { crop: "corn" });
    expect(answers).toEqual({ crop: "corn" });
    expect(scenario).toEqual(scenarioOf({ crop: "corn" }));
    for (const key of ["evidence", "money", "notes", "invented", "ensemble"])
      expect(scenario).not.toHaveProperty(key);
  });

  test("what was entered by hand stays when another answer is given", () => {
    const start = answered(emptyWork(), { texture: "loam", dense: "tillage pan", crop: "corn" });
    const weighed = setAt(start.scenario, "soil.layers[1].bulkDensity", "1.62 g/cm^3");
    const priced = setAt(weighed, "money.price", "4.20 USD/bu");
    const next = answered({ ...start, scenario: priced }, { rain: "18 in", crop: "winter wheat" });
    expect(getAt(next.scenario, "soil.layers[1].bulkDensity")).toBe("1.62 g/cm^3");
    expect(getAt(next.scenario, "money.price")).toBe("4.20 USD/bu");
    expect(getAt(next.scenario, "weather.annualRain")).toBe("18 in");
    expect(getAt(next.scenario, "crop.name")).toBe("winter wheat");
    expect(getAt(next.scenario, "rotation")).toBe("wheat-fallow");
  });

  test("a rain typed in Inputs is the answer, and can be answered anew", () => {
    const start = answered(emptyWork(), { rain: "14 in" });
    const typed = setAt(start.scenario, "weather.annualRain", "16 in");
    expect(answersNow(start.answers!, typed).rain).toBe("16 in");
    const next = answered({ ...start, scenario: typed }, { rain: "18 in" });
    expect(getAt(next.scenario, "weather.annualRain")).toBe("18 in");
  });

  test("a case that gets another name takes along what was measured of it", () => {
    const start = answered(emptyWork(), { dense: "tillage pan", deeper: asLoose });
    const counts = [{ case: "dense layer loosened", rowWidth: "30 in", spots: [{ heads: 30 }] }];
    const counted = setAt(start.scenario, "evidence.counts", counts);
    const next = answered({ ...start, scenario: counted }, { deeper: "2 in" });
    expect(getAt(next.scenario, "evidence.counts[0].case")).toBe("deeper roots");
    expect(getAt(next.scenario, "cases[1].name")).toBe("deeper roots");
  });

  test("a weather file takes the place of the total, and the total that of the file", () => {
    const file = { name: "station.csv", text: "date,prcp" };
    const dropped = answered(emptyWork(), { record: file.name, rain: undefined }, file);
    expect(getAt(dropped.scenario, "weather")).toEqual({ record: "station.csv" });
    expect(dropped.attachments).toEqual({ "station.csv": "date,prcp" });
    const back = answered(dropped, { record: undefined, rain: "12 in" });
    expect(getAt(back.scenario, "weather.annualRain")).toBe("12 in");
    expect(back.attachments).toEqual({});
  });
});

describe("a step taken in what was changed since", () => {
  test.each<[string, Json, Json, Json, Json]>([
    ["untouched", { a: 1 }, { a: 2 }, { a: 1 }, { a: 2 }],
    ["changed by hand", { a: 1 }, { a: 2 }, { a: 5 }, { a: 5 }],
    ["added by hand", { a: 1 }, { a: 2 }, { a: 1, own: 3 }, { a: 2, own: 3 }],
    ["taken away", { a: 1, b: 2 }, { a: 1 }, { a: 1, b: 2, own: 3 }, { a: 1, own: 3 }],
  ])("%s", (_, before, after, now, next) => expect(merged(before, after, now)).toEqual(next));
});
