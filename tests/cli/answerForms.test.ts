import { join, resolve } from "node:path";
import { describe, expect, test } from "vitest";
import Papa from "papaparse";
import type { Comparison } from "../../src/answer/comparison/comparison.ts";
import { mmPerInch } from "../../src/quantity/constants.ts";
import { call } from "./callCli.ts";

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
