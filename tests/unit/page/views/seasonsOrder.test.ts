import { readFileSync } from "node:fs";
import { beforeAll, describe, expect, test } from "vitest";
import { comparisonOf } from "../../../../src/answer/comparison/compare.ts";
import { runEnsemble, type Ensemble } from "../../../../src/answer/runs/ensemble.ts";
import { shownIn } from "../../../../src/report/tables/formatters.ts";
import { resolveScenario } from "../../../../src/scenario/resolve/resolve.ts";
import {
  keysThatTell,
  onePerYear,
  seasonRows,
  sortedSeasons,
  type SeasonRow,
} from "../../../../web/views/seasons/rows.ts";
import { seasonsCsv, seasonsTable } from "../../../../web/views/seasons/table.ts";
import type { Answer } from "../../../../web/worker/protocol.ts";

const row = (run: number, year: number, extraWaterMm: number, more: Partial<SeasonRow> = {}): SeasonRow => ({
  run,
  year,
  runsOfYear: 1,
  seasonRainMm: 200 + run,
  annualRainMm: 330.2,
  cases: [
    { c: 0, rootDepthMm: 1000, waterUseMm: 300, yield: 40 },
    { c: 1, rootDepthMm: 1050, waterUseMm: 300 + extraWaterMm, yield: 41 },
  ],
  extraWaterMm,
  extraYield: extraWaterMm / 10,
  ...more,
});
const runsOf = (rows: readonly SeasonRow[]) => rows.map(({ run }) => run);

describe("the order of the seasons", () => {
  const rows = [row(0, 2003, 5), row(1, 2001, -2), row(2, 2002, 9), row(3, 2004, 5)];
  test.each([
    ["year", "ascending", [1, 2, 0, 3]],
    ["year", "descending", [3, 0, 2, 1]],
    ["rain", "descending", [3, 2, 1, 0]],
    ["water", "ascending", [1, 0, 3, 2]],
    ["water", "descending", [2, 0, 3, 1]],
    ["yield", "descending", [2, 0, 3, 1]],
  ] as const)("by %s, %s", (key, way, runs) => expect(runsOf(sortedSeasons(rows, key, way))).toEqual(runs));

  test("rain in the year is no choice where every year was scaled to the same", () => {
    expect(keysThatTell(rows)).toEqual(["year", "rain", "water", "yield"]);
    const uneven = rows.map((one) => ({ ...one, annualRainMm: 300 + 10 * one.run }));
    expect(keysThatTell(uneven)).toContain("annualRain");
    expect(keysThatTell(rows.map((one) => ({ ...one, annualRainMm: null })))).not.toContain("annualRain");
  });
});

test("a year that comes again is stood for by the run in its middle", () => {
  const rows = [row(0, 1991, 3), row(1, 1992, 8), row(2, 1991, 9), row(3, 1991, 4), row(4, 1992, 1)];
  const years = onePerYear(rows);
  // Of two the lower one: as the engine takes the middle run.
  expect(years.map(({ year, run, runsOfYear }) => [year, run, runsOfYear])).toEqual([
    [1991, 3, 3],
    [1992, 4, 2],
  ]);
});

describe("the table for a spreadsheet", () => {
  const told = {
    names: ["over the pan", "=2+3"],
    yieldUnit: "bu/ac",
    isGenerated: false,
    shown: shownIn("us"),
  };
  const [head, first] = seasonsCsv([row(0, 2003, 25.4, { annualRainMm: null })], told).split("\n");

  test("has the numbers of the table, finer", () => {
    expect(seasonsTable([row(0, 2003, 25.4)], told).rows[0]!.slice(0, 5)).toEqual([
      "2003",
      "1",
      "7.9",
      "13.0",
      "1.00",
    ]);
    expect(first!.split(",").slice(0, 6)).toEqual(["2003", "1", "7.87402", "", "1", "2.54"]);
  });
  test("disarms a name that would be taken for a formula", () => expect(head).toContain("'=2+3: root depth"));
});

describe("the rows", () => {
  let ensemble: Ensemble;
  beforeAll(async () => {
    const demo = JSON.parse(
      readFileSync(
        new URL("../../../../shared/scenarios/sorghum-over-plough-pan.json", import.meta.url),
        "utf8",
      ),
    ) as object;
    const scenario = await resolveScenario(
      { ...demo, ensemble: { years: 6, seed: 2 } },
      { fileName: "demo", readText: () => "" },
    );
    ensemble = runEnsemble(scenario);
  });

  test("are taken at the answer's own total, and their middle is the answer's", () => {
    const comparison = comparisonOf(ensemble, "metric");
    const byRun: Answer["byRun"] = {
      runs: ensemble.runs,
      years: Int32Array.from(ensemble.preparation.yearByRun, ({ year }) => year),
      typicalRun: 0,
      traces: { stepDays: 5, points: 0, cases: [] },
      byRainTotal: ensemble.byRainTotal.map(({ rainTotalMm, annualRainMmByRun, cases }) => ({
        rainTotalMm,
        annualRainMm: annualRainMmByRun,
        cases: cases.map(({ name, byRun: one, yieldKgPerHaByRun }) => ({
          name,
          seasonRainMm: one.rainMm,
          waterUseMm: one.waterUseMm,
          transpirationMm: one.transpirationMm,
          finalRootDepthMm: one.finalRootDepthMm,
          storedAtSowingMm: one.storedAtSowingMm,
          yield: yieldKgPerHaByRun,
        })),
      })),
    };
    comparison.differences.forEach(({ extraWaterUsedMm, extraYield }, d) => {
      const rows = seasonRows({ byRun, comparison }, d);
      const middle = (values: number[]) => {
        const sorted = values.toSorted((a, b) => a - b);
        return (sorted[2]! + sorted[3]!) / 2;
      };
      expect(middle(rows.map((one) => one.extraWaterMm!))).toBeCloseTo(extraWaterUsedMm.p50, 9);
      expect(middle(rows.map((one) => one.extraYield!))).toBeCloseTo(extraYield.p50, 6);
    });
  });
});
