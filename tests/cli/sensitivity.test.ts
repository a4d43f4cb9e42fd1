/** `sensitivity` as a person calls it. */
import papa from "papaparse";
import { beforeAll, describe, expect, test } from "vitest";
import { run } from "../../src/cli/main.ts";
import { call, ownFolder, smallScenario, writeJson, type Called } from "./callCli.ts";

const folder = ownFolder();
const money = { price: "4.20 USD/bu", priceRange: ["3.40 USD/bu", "5.60 USD/bu"] };
const file = writeJson(folder, "field.json", { ...smallScenario, money });
const quick = ["--budget", "2000", "--years", "2"];

interface Answer {
  readonly kind: string;
  readonly unit: string;
  readonly factors: readonly {
    readonly name: string;
    readonly swing: number;
    readonly range: { readonly unit: string };
  }[];
}
interface Found {
  readonly format: string;
  readonly method: { readonly seasons: number; readonly rows: number };
  readonly leftOut: readonly { readonly name: string; readonly why: string }[];
  readonly pairs: readonly { readonly answers: readonly Answer[] }[];
}

describe("the answer", () => {
  let text: Called;
  let json: Called;
  beforeAll(async () => {
    text = await call(folder, "sensitivity", file, ...quick);
    json = await call(folder, "sensitivity", file, ...quick, "--json");
  });
  const found = () => JSON.parse(json.out) as Found;

  test("words first, then swings, shares, what was moved and what left out, in 80 columns", () => {
    expect(text.code).toBe(0);
    const lines = text.out.split("\n");
    for (const line of lines) expect(line.length).toBeLessThanOrEqual(80);
    expect(lines[0]).toMatch(/^(What|How much|The|Only|Nothing) /);
    const headings = ["one at a time", "share of the variance", "What was moved", "Left out", "Method"];
    const places = headings.map((heading) => lines.findIndex((line) => line.startsWith(heading)));
    expect(places).toEqual([...places].sort((a, b) => a - b));
    expect(places[0]).toBeGreaterThan(0);
  });

  test("how much will be run stands on stderr, and that much is run", () => {
    const [, said] = /: (\d+) seasons to run\n$/.exec(text.err) ?? [];
    expect(found().method.seasons).toBe(Number(said));
    expect(Number(said)).toBeLessThanOrEqual(2000);
  });

  test("the same call gives the same bytes", async () => {
    expect((await call(folder, "sensitivity", file, ...quick, "--json")).out).toBe(json.out);
  });

  test("JSON has a unit beside every figure, and water in mm", () => {
    const { format, pairs, leftOut } = found();
    expect(format).toBe("rootfront-sensitivity/1");
    expect(pairs[0]!.answers.map(({ kind, unit }) => [kind, unit])).toEqual([
      ["extraWaterUsed", "mm"],
      ["extraYield", "bu/ac"],
      ["net", "USD/ac"],
    ]);
    const rangeUnits = Object.fromEntries(
      pairs[0]!.answers[2]!.factors.map(({ name, range }) => [name, range.unit]),
    );
    expect(rangeUnits).toMatchObject({
      "extra depth": "mm",
      rain: "mm",
      price: "USD/bu",
      "yield slope": "bu/ac/in",
    });
    expect(leftOut.map(({ name }) => name)).toEqual(["residue", "stand"]);
  });

  test("CSV is the same in the units asked, a row a factor", async () => {
    const table = await call(folder, "sensitivity", file, ...quick, "--csv", "--units", "metric");
    const { data } = papa.parse<Record<string, string>>(table.out.trim(), { header: true });
    const net = found().pairs[0]!.answers[2]!;
    const rows = data.filter(({ answer }) => answer === "net");
    expect(rows.map(({ factor }) => factor)).toEqual(net.factors.map(({ name }) => name));
    expect(new Set(rows.map(({ unit }) => unit))).toEqual(new Set(["USD/ha"]));
    const acresPerHa = 2.4710538;
    rows.forEach(({ swing }, i) => expect(Number(swing)).toBeCloseTo(net.factors[i]!.swing * acresPerHa, 2));
  });
});

describe("what cannot be answered is told in one line", () => {
  test.each([
    [
      "one case",
      { cases: [{ name: "alone" }] },
      [],
      1,
      "cases: expected two cases or more, whose difference can be moved, found one;",
    ],
    ["too small a budget", {}, ["--budget", "100"], 2, "rootfront: --budget: expected at least"],
    ["a budget of 0", {}, ["--budget", "0"], 2, "It is a whole number from 1 to"],
    ["two forms", {}, ["--json", "--csv"], 2, "--json and --csv do not go together"],
  ])("%s", async (_, change, flags, code, said) => {
    const wrong = writeJson(folder, "wrong.json", { ...smallScenario, ...change });
    const told = await call(folder, "sensitivity", wrong, ...flags);
    expect(told.code).toBe(code);
    expect(told.err).toContain(said);
    expect(told.err.trim().split("\n")).toHaveLength(1);
    expect(told.out).toBe("");
  });

  test("no spread in anything", async () => {
    const wrong = writeJson(folder, "known.json", {
      ...smallScenario,
      soil: { ...smallScenario.soil, layers: [{ name: "all", bottom: "110 in", texture: "silt loam" }] },
      weather: { pattern: "summer-peak", annualRain: "13 in" },
      cases: [{ name: "as dug" }, { name: "residue", surface: { curveNumber: 70 } }],
      yield: {
        slope: { low: "6 bu/ac/in", middle: "6 bu/ac/in", high: "6 bu/ac/in" },
        threshold: "5 in",
      },
      ensemble: {
        years: 12,
        deepWaterSpread: "0 %",
        availableCapacitySpread: "0 %",
        deepUptakeSpread: "0 %",
        density: "usual",
      },
    });
    const told = await call(folder, "sensitivity", wrong);
    expect(told.err).toContain("no spread in anything");
    expect(told.err.trim().split("\n")).toHaveLength(1);
    expect(told.code).toBe(1);
  });
});

test("asked to stop it ends with one line and writes nothing", async () => {
  let [out, err] = ["", ""];
  const asked = new AbortController();
  asked.abort();
  const code = await run(["sensitivity", file], {
    stdout: { write: (text) => (out += text) },
    stderr: { write: (text) => (err += text) },
    cwd: folder,
    isTerminal: false,
    stopsWhenAsked: () => asked.signal,
  });
  expect(code).toBe(130);
  expect(out).toBe("");
  expect(err.trim().split("\n").at(-1)).toMatch(
    /^rootfront: stopped after \d+ of \d+ seasons; nothing is written$/,
  );
});
