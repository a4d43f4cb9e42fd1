import { readFileSync, writeFileSync } from "node:fs";
import { join, resolve } from "node:path";
import { describe, expect, test } from "vitest";
import Papa from "papaparse";
import type { Comparison } from "../../src/answer/comparison/comparison.ts";
import { mmPerInch } from "../../src/quantity/constants.ts";
import type { Spread } from "../../src/statistics/quantiles.ts";
import { call, ownFolder } from "./callCli.ts";

const root = resolve(import.meta.dirname, "../..");
const demo = join(root, "shared/scenarios/sorghum-over-plough-pan.json");
const quick = ["--texture", "silt loam", "--rain", "12..14 in", "--crop", "corn", "--deeper", "2 in"];

async function compare(...args: string[]): Promise<string> {
  const { code, out, err } = await call(root, "compare", ...args, "--years", "8");
  expect([code, err]).toEqual([0, ""]);
  return out;
}

describe("--brief", () => {
  test("ten lines of 80 columns, dollars first, and the two defaults that decide most", async () => {
    const lines = (await compare(demo, "--brief")).trimEnd().split("\n");
    expect(lines.length).toBeLessThanOrEqual(10);
    expect(lines.filter((line) => line.length > 80)).toEqual([]);
    expect(lines[0]).toMatch(/^"pan loosened": [+-][\d.]+ USD\/ac \(/);
    expect(lines.filter((line) => line.startsWith("Not stated: ")).length).toBe(2);
  });
  test("of a quick question: start and yield line", async () => {
    const out = await compare(...quick, "--brief");
    expect(out).toMatch(/^At 13 in of rain, year after year, against "as now"/);
    expect(out).toContain("Not stated: soil.startingWater, taken as what 6 years before");
    expect(out).toContain("Not stated: yield.line, taken as ");
  });
});

describe("--brief and --csv of a dig that leaves two readings, with 2 of 8 rows in tracks", async () => {
  const folder = ownFolder();
  const path = join(folder, "rows.json");
  const dug = readFileSync(join(root, "tests/fixtures/dig/two-rows-dug.json"), "utf8");
  const rowPositions = { rows: 8, rowsInTrack: 2, inTrack: "turned", other: "straight" };
  writeFileSync(path, JSON.stringify({ ...(JSON.parse(dug) as object), rowPositions }));
  const { digReadings, money } = JSON.parse(await compare(path, "--json")) as {
    digReadings: { answers: { differences: { extraYield: Spread; net: Spread }[] }[] };
    money: { pairs: { net: Spread }[] };
  };

  test("ten lines tell the other readings and which rows the money is of", async () => {
    const out = await compare(path, "--brief");
    expect(out.trimEnd().split("\n").length).toBeLessThanOrEqual(10);
    const [, stopped] = digReadings.answers.map(({ differences }) => differences[0]!);
    const said = out.replaceAll(/\s+/g, " ");
    expect(said).toContain("2 of 8 rows change, pays in");
    expect(said).toContain(
      `Dig read otherwise, "straight": +${stopped!.extraYield.p50.toFixed(0)} bu/ac, +${stopped!.net.p50.toFixed(2)} USD/ac if the roots stopped where they were dug; 0 bu/ac, 0.00 USD/ac by density`,
    );
  });

  test("the table has the share that leads from the yield of those rows to the money of the field", async () => {
    const { data } = Papa.parse<Record<string, string>>((await compare(path, "--csv")).trimEnd(), {
      header: true,
    });
    expect(data.map((row) => row["share_of_rows_that_change"])).toEqual(["", "0.25"]);
    const { extra_yield_p50_bu_per_ac: bushels, net_p50_usd_per_ac: net } = data[1]!;
    // No costs, one price.
    expect(Number(net)).toBeCloseTo(0.25 * 4.2 * Number(bushels), 2);
    expect(Number(net)).toBeCloseTo(money.pairs[0]!.net.p50, 3);
  });
});

describe("--csv", () => {
  test.each([
    ["us", "in", "bu_per_ac", "usd_per_ac", mmPerInch],
    ["metric", "mm", "kg_per_ha", "usd_per_ha", 1],
  ])(
    "%s: a row a rainfall total and case, units in the head",
    async (system, length, grain, money, perUnit) => {
      const { data } = Papa.parse<Record<string, string>>(
        (await compare(demo, "--csv", "--units", system)).trimEnd(),
        { header: true },
      );
      const { byRainTotal } = JSON.parse(await compare(demo, "--json", "--units", system)) as Comparison;
      expect(data.length).toBe(9);
      const middle = data[4]!;
      const difference = byRainTotal[1]!.differences[0]!;
      expect(middle).toMatchObject({ case: "pan loosened", against: "over the pan" });
      expect(Number(middle[`rain_total_${length}`])).toBeCloseTo(330.2 / perUnit, 3);
      expect(Number(middle[`extra_water_used_p50_${length}`])).toBeCloseTo(
        difference.extraWaterUsedMm.p50 / perUnit,
        4,
      );
      expect(Number(middle[`extra_yield_p90_${grain}`])).toBeCloseTo(difference.extraYield.p90, 3);
      expect(Number.isFinite(Number(middle[`net_p50_${money}`]))).toBe(true);
      expect(data[3]![`extra_yield_p50_${grain}`]).toBe("");
    },
  );
});

describe("--defaults", () => {
  test("lists all with their reasons; without it the two that decide most, and how many more there are", async () => {
    const two = await compare(...quick);
    expect(two).toMatch(
      /Not stated, and decides most \(\d\d more defaults: --defaults\)\n- soil\.startingWater: what 6 years before left/,
    );
    expect(two).not.toContain("soil.sliceThickness");
    const all = await compare(...quick, "--defaults");
    expect(all).toMatch(/Defaults used \(\d\d\)/);
    expect(all).toContain("soil.sliceThickness");
  });
  test("two forms of one answer are refused", async () => {
    expect(await call(root, "compare", demo, "--csv", "--json")).toEqual({
      code: 2,
      out: "",
      err: "rootfront: --json and --csv do not go together: give one\n",
    });
  });
});
