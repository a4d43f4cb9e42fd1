import { readFileSync } from "node:fs";
import { beforeAll, describe, expect, test } from "vitest";
import { comparisonOf } from "../../../../src/answer/comparison/compare.ts";
import { runEnsemble, type Ensemble } from "../../../../src/answer/runs/ensemble.ts";
import { shownIn } from "../../../../src/report/tables/formatters.ts";
import { resolveScenario } from "../../../../src/scenario/resolve/resolve.ts";
import {
  onePerYear,
  rainThatTells,
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
    { c: 0, storedAtSowingMm: 150, rootDepthMm: 1000, waterUseMm: 300, yield: 40 },
    { c: 1, storedAtSowingMm: 150, rootDepthMm: 1050, waterUseMm: 300 + extraWaterMm, yield: 41 },
  ],
  extraWaterMm,
  extraYield: extraWaterMm / 10,
  ...more,
});
const runsOf = (rows: readonly SeasonRow[]) => rows.map(({ run }) => run);

describe("the order of the seasons", () => {
  const rows = [row(0, 2003, 5), row(1, 2001, -2), row(2, 2002, 9), row(3, 2004, 5)];
  test.each([
    ["year", "water", [1, 2, 0, 3]],
    ["rain", "water", [0, 1, 2, 3]],
    ["size", "water", [2, 0, 3, 1]],
    ["size", "yield", [2, 0, 3, 1]],
  ] as const)("by %s of the %s", (key, of, runs) =>
    expect(runsOf(sortedSeasons(rows, key, of))).toEqual(runs),
  );

  test("the year's own rain tells, where years were not scaled to the same: else the season's", () => {
    expect(rainThatTells(rows)).toBe("season");
    const uneven = rows.map((one) => ({ ...one, annualRainMm: 300 - 10 * one.run }));
    expect(rainThatTells(uneven)).toBe("year");
    expect(runsOf(sortedSeasons(uneven, "rain", "water"))).toEqual([3, 2, 1, 0]);
    expect(rainThatTells([...uneven, row(4, 2005, 1, { annualRainMm: null })])).toBe("season");
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
      const rows = seasonRows({ byRun, comparison, inARow: null }, d);
      const middle = (values: number[]) => {
        const sorted = values.toSorted((a, b) => a - b);
        return (sorted[2]! + sorted[3]!) / 2;
      };
      expect(middle(rows.map((one) => one.extraWaterMm!))).toBeCloseTo(extraWaterUsedMm.p50, 9);
      expect(middle(rows.map((one) => one.extraYield!))).toBeCloseTo(extraYield.p50, 6);
    });
  });

  test("with a rotation are the years in a row, each with its own sowing year", () => {
    const comparison = comparisonOf(ensemble, "metric");
    const runs = (times: number) => ({
      rainTotalMm: comparison.rainTotalMm,
      annualRainMm: Float64Array.of(300, 500),
      cases: comparison.cases.map(({ name }, c) => {
        const of = (mm: number) => Float64Array.of(times * mm + c, times * mm + 2 * c);
        return {
          name,
          seasonRainMm: of(200),
          waterUseMm: of(300),
          transpirationMm: of(250),
          finalRootDepthMm: of(1000),
          storedAtSowingMm: of(100),
          yield: of(40),
        };
      }),
    });
    const byRun: Answer["byRun"] = {
      runs: 2,
      years: Int32Array.of(2001, 2002),
      typicalRun: 0,
      traces: { stepDays: 5, points: 0, cases: [] },
      byRainTotal: [runs(1)],
    };
    const inARow = { sentences: [], walked: [], years: Int32Array.of(2011, 2014), byRainTotal: [runs(2)] };
    const rows = seasonRows({ byRun, comparison, inARow }, 0);
    expect(
      rows.map(({ year, extraWaterMm, cases }) => [year, extraWaterMm, cases[0]!.storedAtSowingMm]),
    ).toEqual([
      [2011, 1, 200],
      [2014, 2, 200],
    ]);
  });
});
