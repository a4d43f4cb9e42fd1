import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import papa from "papaparse";
import { describe, expect, test } from "vitest";
import { call, ownFolder, smallScenario, writeJson } from "./callCli.ts";

const folder = ownFolder();
writeJson(folder, "small.json", { ...smallScenario, fallow: { length: "60 days" } });
const { soil, ...others } = smallScenario;
const { layers } = soil;
writeJson(folder, "years.json", {
  ...others,
  soil: { layers },
  rotation: "every year",
  ensemble: { years: 24, seed: 1 },
});

type Row = Record<string, string>;
const read = (csv: string) => papa.parse<Row>(csv, { header: true, skipEmptyLines: true }).data;

describe("seasons", () => {
  test("without a rotation a row a run and case, the balance closed", async () => {
    const { code, out, err } = await call(folder, "seasons", "small.json", "--units", "metric");
    expect([code, err]).toEqual([0, ""]);
    const rows = read(out);
    expect(new Set(rows.map((row) => row["case"])).size).toBe(2);
    for (const row of rows) {
      expect(Math.abs(Number(row["residual_mm"]))).toBeLessThan(1e-9);
      const byLayer = [1, 2, 3].reduce((sum, n) => sum + Number(row[`stored_at_sowing_layer_${n}_mm`]), 0);
      expect(Math.abs(byLayer - Number(row["stored_at_sowing_mm"]))).toBeLessThan(0.01);
    }
    const ofFirst = rows.filter((row) => row["case"] === rows[0]!["case"]);
    expect(new Set(ofFirst.map((row) => row["extra_transpiration_mm"]))).toEqual(new Set(["0"]));
  });

  test("with a rotation its chains, each year's first day the day after the harvest before", async () => {
    const { code, out } = await call(
      folder,
      "seasons",
      "years.json",
      "--rain",
      "14 in",
      "--only",
      "chain,case,first_day,harvest",
    );
    expect(code).toBe(0);
    expect(out.split("\n")[0]).toBe("chain,case,first_day,harvest");
    const rows = read(out).filter((row) => row["chain"] === "1" && row["case"] === "deeper");
    expect(rows.length).toBeGreaterThan(5);
    const next = (date: string) => new Date(Date.parse(date) + 86_400_000).toISOString().slice(0, 10);
    rows.slice(1).forEach((row, i) => expect(row["first_day"]).toBe(next(rows[i]!["harvest"]!)));
  });

  test("--sort and --only order and choose; a column that is not there is refused", async () => {
    const up = read((await call(folder, "seasons", "small.json", "--sort", "yield", "--only", "yield")).out);
    const down = read((await call(folder, "seasons", "small.json", "--sort=-yield", "--only", "yield")).out);
    const numbers = up.map((row) => Number(row["yield"]));
    expect(numbers).toEqual(numbers.toSorted((a, b) => a - b));
    expect(down.map((row) => Number(row["yield"]))).toEqual(numbers.toReversed());
    const bad = await call(folder, "seasons", "small.json", "--only", "yeild");
    expect([bad.code, bad.err]).toEqual([2, 'rootfront: --only: no column "yeild"; did you mean "yield"?\n']);
  });

  test("--json gives metric rows", async () => {
    const { out } = await call(folder, "seasons", "years.json", "--json", "--only", "year_rain,yield_unit");
    const { format, rows } = JSON.parse(out) as { format: string; rows: Record<string, unknown>[] };
    expect(format).toBe("rootfront-seasons/1");
    expect(Object.keys(rows[0]!)).toEqual(["year_rain_mm", "yield_unit"]);
    expect(rows[0]!["yield_unit"]).toBe("bu/ac");
  });

  test("--skip-gaps leaves out the seasons of a gap, counted and named; without it the record is refused", async () => {
    const lines = readFileSync("shared/scenarios/invented-station.csv", "utf8").split("\n");
    const gap = lines.filter((line) => !/^1995-07-(?:0|1)\d/.test(line));
    writeFileSync(join(folder, "gap.csv"), gap.join("\n"));
    const written = { ...smallScenario, weather: { record: "gap.csv" }, ensemble: { years: 20 } };
    writeJson(folder, "gap.json", written);
    const refused = await call(folder, "seasons", "gap.json");
    expect(refused.code).toBe(1);
    const { code, out, err } = await call(folder, "seasons", "gap.json", "--skip-gaps");
    expect(code).toBe(0);
    expect(err.replaceAll("\n", " ").replaceAll("  ", " ")).toMatch(
      /^Left out: 1 season that touch.* sown in 1995\. Gaps: .*1995-07-01 to 1995-07-19 \(19 days\)/,
    );
    const years = read(out).map((row) => row["sowing"]!.slice(0, 4));
    expect(years).not.toContain("1995");
    expect(years).toContain("1994");
  });
});

describe("compare on a quick question of years in a row", () => {
  const quick = (...more: string[]) =>
    call(
      folder,
      "compare",
      "--texture",
      "silt loam",
      "--rain",
      "14 in",
      "--crop",
      "grain sorghum",
      "--deeper",
      "2 in",
      ...more,
    );

  test("first year and year after year stand first", async () => {
    const { code, out } = await quick("--rotation", "every year", "--residue", "60 %", "--years", "24");
    expect(code).toBe(0);
    expect(out).toMatch(/^At a mean of 14 in of rain a year, the deeper roots .*first\syear/s);
    expect(out).toContain("Years in a row (grain sorghum; the question is about grain sorghum)");
    expect(out).toContain("soil.startingWater: what 6 years before left");
  });

  test("--moist is a probe before sowing", async () => {
    const { out } = await quick("--moist", "36 in", "--years", "24", "--json");
    expect(out).toContain('"soil.startingWater.shareBelow"');
    expect(JSON.parse(out)).not.toHaveProperty("chain");
  });

  test("what is wrong is told of the flag", async () => {
    expect((await quick("--rotation", "every yaer")).err).toMatch(
      /^--rotation: .*did you mean "every year"\?\n$/,
    );
    expect((await quick("--rotation", "winter weat, grain sorghum, fallow")).err).toMatch(/^--rotation: /);
    expect((await quick("--residue", "160 %")).err).toMatch(/^--residue: /);
    expect((await quick("--moist", "36")).err).toContain("Its unit is missing");
  });
});
