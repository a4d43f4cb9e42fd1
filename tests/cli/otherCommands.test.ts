import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import papa from "papaparse";
import { describe, expect, test } from "vitest";
import { sayProblem, type Problem } from "../../src/problem.ts";
import { shownIn } from "../../src/report/tables/formatters.ts";
import { seasonsCsv } from "../../web/views/seasons/table.ts";
import { call, ownFolder, smallScenario, writeJson } from "./callCli.ts";

const folder = ownFolder();
writeJson(folder, "small.json", { ...smallScenario, fallow: { length: "60 days" } });

describe("ledger", () => {
  type Row = Record<string, string>;
  const read = (csv: string) => papa.parse<Row>(csv, { header: true, skipEmptyLines: true }).data;
  const number = (row: Row, key: string) => Number(row[key]);

  test("a row a day and case, the balance closed on each", async () => {
    const { code, out, err } = await call(folder, "ledger", "small.json", "--units", "metric");
    expect(code).toBe(0);
    expect(err).toMatch(
      /^run \d+, one near the middle: sown in generated year \d+ \(20\d\d\), rain scaled to 330 mm\n$/,
    );
    const rows = read(out);
    const names = [...new Set(rows.map((row) => row["case"]))];
    expect(names).toEqual(["as dug", "deeper"]);
    for (const name of names) {
      const days = rows.filter((row) => row["case"] === name);
      expect(days.filter((row) => row["stage"] === "fallow")).toHaveLength(60);
      for (const [d, row] of days.entries()) {
        expect(Math.abs(number(row, "residual_mm"))).toBeLessThan(1e-9);
        if (d === 0) continue;
        const change = number(row, "storage_mm") - number(days[d - 1]!, "storage_mm");
        const flux =
          number(row, "infiltration_mm") -
          number(row, "evaporation_mm") -
          number(row, "transpiration_mm") -
          number(row, "drainage_mm");
        expect(Math.abs(change - flux)).toBeLessThan(0.01); // printed to six digits
        const layers = [1, 2, 3].reduce((sum, n) => sum + number(row, `storage_layer_${n}_mm`), 0);
        expect(Math.abs(layers - number(row, "storage_mm"))).toBeLessThan(0.01);
        expect(number(row, "root_front_mm")).toBeGreaterThanOrEqual(number(days[d - 1]!, "root_front_mm"));
      }
    }
  });

  test("--run and --year choose, and say the same run", async () => {
    const byRun = await call(folder, "ledger", "small.json", "--run", "4");
    const byYear = await call(folder, "ledger", "small.json", "--year", "2004");
    expect(byRun.err).toBe("run 4: sown in generated year 4 (2004), rain scaled to 13 in\n");
    expect(byYear.out).toBe(byRun.out);
    expect(byRun.out.split("\n")[0]).toContain("root_front_in");
  });

  test("the name of a case that a spreadsheet would run is disarmed, as in the seasons' table", async () => {
    for (const name of ["=1+1", "+1", "-1", "@x", "\t=1"]) {
      const cases = [{ name }, { name: "other", rootingDepth: "+2 in" }];
      const file = writeJson(folder, "live.json", { ...smallScenario, cases });
      const { out } = await call(folder, "ledger", file, "--run", "1");
      const [head] = seasonsCsv([], {
        names: [name],
        yieldUnit: "bu/ac",
        isGenerated: true,
        shown: shownIn("us"),
      }).split("\n");
      const written = `'${name.replace("\t", " ")}`;
      expect(papa.parse<string[]>(head!).data[0]).toContain(`${written}: root depth, in`);
      expect(new Set(read(out).map((row) => row["case"]))).toEqual(new Set([written, "other"]));
    }
  });

  test("--json holds the same rows", async () => {
    const { out } = await call(folder, "ledger", "small.json", "--run", "4", "--json");
    const csv = read((await call(folder, "ledger", "small.json", "--run", "4", "--units", "metric")).out);
    const answer = JSON.parse(out) as { format: string; run: number; rows: Record<string, unknown>[] };
    expect(answer).toMatchObject({
      format: "rootfront-ledger/1",
      run: 4,
      sowingYear: 2004,
      rainTotalMm: 330.2,
    });
    expect(answer.rows).toHaveLength(csv.length);
    expect(answer.rows[70]!["storage_mm"]).toBe(Number(csv[70]!["storage_mm"]));
  });
});

describe("weather", () => {
  const dayOf = (d: number) => new Date(Date.UTC(2019, 0, 1 + d)).toISOString().slice(0, 10);
  // 2 mm on the first of every ten days; three days of 2020 without rain reading
  const rows = Array.from(
    { length: 731 },
    (_, d) => `${dayOf(d)},${d >= 400 && d < 403 ? "" : d % 10 === 0 ? 2 : 0},20,5`,
  );
  writeFileSync(join(folder, "two-years.csv"), ["date,rain_mm,tmax_C,tmin_C", ...rows].join("\n"));
  writeJson(folder, "on-record.json", { ...smallScenario, weather: { record: "two-years.csv" } });
  const inMiddle = ["--latitude", "38 N", "--elevation", "1000 m"];

  test("tells years, gaps, totals and reference ET, in 80 columns", async () => {
    const { code, out, err } = await call(
      folder,
      "weather",
      "two-years.csv",
      "--units",
      "metric",
      ...inMiddle,
    );
    expect({ code, err }).toEqual({ code: 0, err: "" });
    expect(out).toContain("2019-01-01 to 2020-12-31, 731 days, 1 complete year.");
    expect(out).toContain("Gaps of rain: 2020-02-05 (3 days).");
    expect(out).toMatch(/^2019 +74\.0 /m); // days 0, 10, ... 360: 37 of 2 mm
    expect(out).toMatch(/^2020 \* /m);
    expect(out).toContain("Reference ET: FAO-56 Penman-Monteith");
    expect(Math.max(...out.split("\n").map((line) => line.length))).toBeLessThanOrEqual(80);
  });

  test("of a scenario it takes the record that it names", async () => {
    const own = await call(folder, "weather", "two-years.csv", "--json", ...inMiddle);
    const named = await call(folder, "weather", "on-record.json", "--json", ...inMiddle);
    expect(named.out).toBe(own.out);
    expect(JSON.parse(own.out)).toMatchObject({ format: "rootfront-weather/1", completeYears: 1, days: 731 });
  });

  test("--from, --to and --max-gap-days are the scenario's own, asked for here", async () => {
    const days = ["--from", "2020-01-01", "--to", "2020-12-31"];
    const { code, out } = await call(folder, "weather", "two-years.csv", ...days, ...inMiddle);
    expect(code).toBe(0);
    expect(out).toContain("2020-01-01 to 2020-12-31, 366 days");
    expect(out).toContain("Reference ET: FAO-56");
    const weather = { record: "two-years.csv", from: "2020-01-01", to: "2020-12-31", maxGapDays: 2 };
    writeJson(folder, "part.json", { ...smallScenario, weather });
    const strict = await call(folder, "weather", "part.json", ...inMiddle);
    expect(strict.out).toContain("2020-01-01 to 2020-12-31, 366 days");
    expect(strict.out).toMatch(/No reference ET: [^]*2020-02-05/);
    const asked = await call(folder, "weather", "part.json", "--max-gap-days", "3", ...inMiddle);
    expect(asked.out).toBe(out);
  });

  test("a record in another unit than it says is doubted, here and in the answer", async () => {
    const wet = rows.map((row) => row.replace(/,2,/, ",250,"));
    writeFileSync(join(folder, "wet.csv"), ["date,rain_mm,tmax_C,tmin_C", ...wet].join("\n"));
    const doubt = /hard\s+to\s+believe:\s+is\s+its\s+unit\s+right\?/;
    expect((await call(folder, "weather", "wet.csv", ...inMiddle)).out).toMatch(doubt);
    expect((await call(folder, "weather", "two-years.csv", ...inMiddle)).out).not.toMatch(doubt);
    writeJson(folder, "on-wet.json", { ...smallScenario, weather: { record: "wet.csv" } });
    expect((await call(folder, "compare", "on-wet.json")).out).toMatch(doubt);
  });

  test("without a latitude it says why there is no reference ET", async () => {
    const { code, out } = await call(folder, "weather", "two-years.csv");
    expect(code).toBe(0);
    expect(out).toContain("No reference ET: the file does not say where the station lies; give --latitude");
  });
});

describe("check and new", () => {
  test("check says the scenario with every default", async () => {
    const { code, out } = await call(folder, "check", "small.json");
    expect(code).toBe(0);
    expect(out).toMatch(/^small and invented \(invented data\)\n/);
    const { defaults } = JSON.parse((await call(folder, "check", "small.json", "--json")).out) as {
      defaults: { field: string }[];
    };
    for (const { field } of defaults) expect(out).toContain(field);
    expect(Math.max(...out.split("\n").map((line) => line.length))).toBeLessThanOrEqual(80);
  });

  test("new writes a scenario that passes check, and never over a file", async () => {
    expect(await call(folder, "new", "fresh.json")).toEqual({
      code: 0,
      out: "",
      err: "wrote fresh.json; look at it with: rootfront check fresh.json\n",
    });
    const written = readFileSync(join(folder, "fresh.json"), "utf8");
    expect((await call(folder, "check", "fresh.json")).code).toBe(0);
    expect((await call(folder, "new", "fresh.json")).code).toBe(1);
    expect(readFileSync(join(folder, "fresh.json"), "utf8")).toBe(written);
    expect((await call(folder, "new")).out).toBe(written);
  });

  test("new --json prints JSON: the scenario, or the name of the file that holds it", async () => {
    const plain = await call(folder, "new");
    expect(await call(folder, "new", "--json")).toEqual(plain);
    const { code, out, err } = await call(folder, "new", "other.json", "--json");
    expect({ code, err, out: JSON.parse(out) as unknown }).toEqual({
      code: 0,
      err: "",
      out: { format: "rootfront-new/1", file: "other.json" },
    });
    expect(readFileSync(join(folder, "other.json"), "utf8")).toBe(plain.out);
  });

  test("check --json says what is wrong as JSON too, and leaves the file of --out alone", async () => {
    expect(JSON.parse((await call(folder, "check", "small.json", "--json")).out)).toMatchObject({
      format: "rootfront-check/1",
      problems: [],
    });
    writeJson(folder, "wrong.json", { ...smallScenario, crop: { name: "bananas" } });
    writeFileSync(join(folder, "kept.json"), "kept");
    const { code, out, err } = await call(folder, "check", "wrong.json", "--json", "--out", "kept.json");
    expect(code).toBe(1);
    const { problems } = JSON.parse(out) as { problems: Problem[] };
    expect(problems.map(({ field }) => field)).toEqual(["crop.name"]);
    expect(err).toBe(`${problems.map((one) => `wrong.json: ${sayProblem(one)}`).join("\n")}\n`);
    expect(readFileSync(join(folder, "kept.json"), "utf8")).toBe("kept");
  });
});

describe("help and version", () => {
  test.each([[["--help"]], [["compare", "--help"]], [["ledger", "--help"]], [["new", "--help"]]])(
    "%j goes to stdout in 80 columns, exit 0",
    async (args) => {
      const { code, out, err } = await call(folder, ...args);
      expect({ code, err }).toEqual({ code: 0, err: "" });
      expect(out).toMatch(/^Usage: rootfront/);
      expect(Math.max(...out.split("\n").map((line) => line.length))).toBeLessThanOrEqual(80);
    },
  );
  test("--version is the package's", async () => {
    const { out } = await call(folder, "--version");
    const { version } = JSON.parse(readFileSync(new URL("../../package.json", import.meta.url), "utf8")) as {
      version: string;
    };
    expect(out).toBe(`${version}\n`);
  });
});
