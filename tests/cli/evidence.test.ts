import { readFileSync } from "node:fs";
import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { Comparison } from "../../src/answer/comparison/comparison.ts";
import { demoAsWritten, demoNames } from "../support/demos.ts";
import { call, writeJson } from "./callCli.ts";

const root = join(import.meta.dirname, "../..");
const demoPath = (name: string) => `shared/scenarios/${name}.json`;

let folder = "";
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "rootfront-evidence-"));
});
afterAll(() => rm(folder, { recursive: true, force: true }));

/** The first demo with another `evidence`, in a file. */
async function withEvidence(evidence: unknown, more: object = {}): Promise<string> {
  const path = join(folder, "field.json");
  const demo = { ...demoAsWritten("sorghum-over-plough-pan"), ensemble: { years: 12 } };
  await writeFile(path, JSON.stringify({ ...demo, evidence, ...more }));
  return path;
}

const dug = (depths: unknown[], date = "2024-07-18") => ({
  rootDepths: [{ case: "over the pan", date, depths }],
});

const dugDemos = demoNames.filter((name) => {
  const { evidence } = JSON.parse(readFileSync(join(root, demoPath(name)), "utf8")) as {
    evidence?: { rootDepths?: unknown[] };
  };
  return (evidence?.rootDepths?.length ?? 0) > 0;
});

describe.each(dugDemos)("evidence of the demo %s", (name) => {
  test("in 80 columns, and as JSON the same as compare's", async () => {
    const text = await call(root, "evidence", demoPath(name), "--years", "20");
    expect(text).toMatchObject({ code: 0, err: "" });
    expect(text.out).toContain("THE DIG");
    expect(text.out).not.toMatch(/NaN|Infinity|undefined/);
    expect(text.out.split("\n").filter((line) => line.length > 80)).toEqual([]);
    const json = JSON.parse((await call(root, "evidence", demoPath(name), "--years", "20", "--json")).out);
    const compared = await call(root, "compare", demoPath(name), "--years", "20", "--json");
    const { evidence } = JSON.parse(compared.out) as Comparison;
    expect(json).toMatchObject({ format: "rootfront-evidence/1", invented: true, ...evidence });
  });
});

describe("the dig drives the answer", () => {
  const differenceOf = async (path: string): Promise<Comparison["differences"][number]> => {
    const { out } = await call(root, "compare", path, "--json");
    return (JSON.parse(out) as Comparison).differences[0]!;
  };
  const both = (shallow: string[], deep: string[], more: object = {}) => ({
    rootDepths: [
      { case: "over the pan", date: "2024-07-18", depths: shallow },
      { case: "pan loosened", date: "2024-07-18", depths: deep },
    ],
    ...more,
  });

  test("the further apart the plants, the more water; shown only, not at all", async () => {
    const near = await differenceOf(
      await withEvidence(both(["14 in", "15 in", "16 in"], ["16 in", "17 in", "18 in"])),
    );
    const far = await differenceOf(
      await withEvidence(both(["14 in", "15 in", "16 in"], ["26 in", "27 in", "28 in"])),
    );
    expect(far.extraDepthMm).toBeGreaterThan(near.extraDepthMm);
    expect(far.extraWaterUsedMm.p50).toBeGreaterThan(near.extraWaterUsedMm.p50);
    const without = await differenceOf(await withEvidence(undefined));
    const shown = await differenceOf(
      await withEvidence(
        both(["14 in", "15 in", "16 in"], ["26 in", "27 in", "28 in"], { digDecides: false }),
      ),
    );
    expect(shown).toEqual(without);
  });

  test("plants no passage explains are told, and their layer counts as open, not as its density says", async () => {
    const path = await withEvidence(dug(["6 ft", "6.1 ft", "6.2 ft"]));
    const { out } = await call(root, "evidence", path);
    expect(out.replaceAll(/\s+/g, " ")).toContain(
      "It counts as open (100 % at most), not as its density says. Suspect first the model's own pace",
    );
    // The case dug is the first: through an open layer it loses less to the other than its density would have it lose.
    const { p50 } = (await differenceOf(path)).extraWaterUsedMm;
    const byDensity = await differenceOf(await withEvidence(undefined));
    expect(p50).toBeLessThan(byDensity.extraWaterUsedMm.p50);
  });

  test("a penetrometer's limit can be fitted in place of a passage", async () => {
    const demo = demoAsWritten("sorghum-over-plough-pan") as { soil: { layers: object[] } };
    const layers = demo.soil.layers.map((layer, l) =>
      l === 1 ? { ...layer, bulkDensity: undefined, penetrationResistance: "2.2 MPa" } : layer,
    );
    const path = await withEvidence(
      { ...dug(["40 in", "42 in", "44 in"]), fit: "penetration limit" },
      { soil: { ...demo.soil, layers } },
    );
    const { out } = await call(root, "evidence", path, "--json");
    const { fit } = (JSON.parse(out) as NonNullable<Comparison["evidence"]> & object).dig!;
    expect(fit).toMatchObject({ what: "penetration limit", layer: null });
    expect(fit!.cases[0]!.value).toBeGreaterThan(2.2);
    expect(fit!.cases[0]!.low).toBeLessThan(fit!.cases[0]!.high);
  });
});

test("strips with a year stand beside that season of the record; a year it lacks is told", async () => {
  const strips = (year: number) => ({
    format: "rootfront-scenario/1",
    name: "strips of a year",
    invented: true,
    site: { latitude: "38.5 N", elevation: "3300 ft" },
    soil: {
      layers: [{ name: "all", bottom: "72 in", texture: "silt loam" }],
      startingWater: { share: "60 %" },
    },
    weather: { record: join(root, "shared/scenarios/invented-station.csv") },
    crop: { name: "grain sorghum" },
    cases: [
      { name: "shallow", rootingDepth: "20 in" },
      { name: "deep", rootingDepth: "40 in" },
    ],
    ensemble: { years: 20 },
    evidence: {
      strips: {
        cases: ["shallow", "deep"],
        yields: [
          ["150 bu/ac", "155 bu/ac"],
          ["151 bu/ac", "157 bu/ac"],
        ],
        year,
      },
    },
  });
  writeJson(folder, "y2012.json", strips(2012));
  writeJson(folder, "y2031.json", strips(2031));
  const held = (await call(folder, "evidence", "y2012.json")).out.replaceAll(/\s+/g, " ");
  expect(held).toContain("The model's levels are those of the season of 2012.");
  expect(held).toContain("of the draws of the season of 2012 lie from");
  expect(held).toContain('The levels of "shallow" disagree by more than their ranges: strips 150.5 bu/ac');
  const lacking = (await call(folder, "evidence", "y2031.json")).out.replaceAll(/\s+/g, " ");
  expect(lacking).toContain("No station record here holds the season of 2031.");
});

describe("evidence that is wrong is told in one line, by its field", () => {
  test.each([
    ["dug before sowing", dug(["24 in"], "2024-04-18"), "evidence.rootDepths[0].date"],
    ["a negative depth", dug(["-24 in"]), "evidence.rootDepths[0].depths[0]"],
    ["text for a number", dug(["deep"]), "evidence.rootDepths[0].depths[0]"],
    ["a depth without a plant", dug([]), "evidence.rootDepths[0].depths"],
    [
      "a letter for a strip",
      { strips: { cases: ["over the pan", "pan loosened"], yields: [["x", "40 bu/ac"]] } },
      "evidence.strips.yields[0][0]",
    ],
    [
      "no case of that name",
      { strips: { cases: ["over the pan", "pan losened"], yields: [["38 bu/ac", "40 bu/ac"]] } },
      "evidence.strips.cases[1]",
    ],
    [
      "half an ear",
      {
        counts: [{ case: "over the pan", rowWidth: "30 in", spots: [{ heads: 3.5, kernelsPerHead: [900] }] }],
      },
      "evidence.counts[0].spots[0].heads",
    ],
    ["nothing measured", undefined, "evidence"],
  ])("%s", async (_what, evidence, field) => {
    const { code, out, err } = await call(root, "evidence", await withEvidence(evidence));
    expect(code).toBe(1);
    expect(out).toBe("");
    expect(err.trimEnd().split("\n")).toHaveLength(1);
    expect(err.startsWith(`${field}: expected `) || err.includes(` ${field}: expected `)).toBe(true);
  });

  test.each([
    ["one plant", ["24 in"], "one plant does not tell how plants differ"],
    ["depths all equal", ["24 in", "24 in", "24 in"], "depths all equal do not tell how plants differ"],
  ])("%s goes on, with what is assumed", async (_what, depths, said) => {
    const { code, out } = await call(root, "evidence", await withEvidence(dug(depths)));
    expect(code).toBe(0);
    expect(out.replaceAll(/\s+/g, " ")).toContain(said);
  });
});

test("every demo has plants dug, but the one whose point is that nothing was measured", () => {
  expect(demoNames.filter((name) => !dugDemos.includes(name))).toEqual(["sorghum-in-rotation"]);
});
