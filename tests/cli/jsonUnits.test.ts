import { join, resolve } from "node:path";
import { describe, expect, test } from "vitest";
import { mmPerInch } from "../../src/quantity/constants.ts";
import { call, ownFolder, writeJson } from "./callCli.ts";

const root = resolve(import.meta.dirname, "../..");
const demo = join(root, "shared/scenarios/sorghum-over-plough-pan.json");
const record = join(root, "shared/scenarios/invented-station.csv");
const folder = ownFolder();

/** Keys whose figures have no unit: counts, years, shares of 1 and what is a pure number. */
const withoutUnit =
  /(?:^(?:runs|seed|year|years|sowingYear|run|n|now|rows|rowsInAll|caseIndex|againstIndex|freedom|t|tried|toHalve|toTellUsual|pairs|pairsToHalve|pairsNeeded|p|count|first|last|chains|warmUpYears|settlingYears|sowingYears|firstSowingYear|lastSowingYear|dayOfSeason|confidence|variation|chance|chanceNow|chanceItPays|demandMet|demandMetSoFar|demandMetAroundFlowering|interest|deepUptakeSpread|before|at|after|passage)|[sS]hare\w*)$/;
const unitInKey =
  /(?:Mm|MmPerDay|MPa|KgPerHaPerUnit|kgPerHaPerUnit|Days|Years|daysToMaturity|lastsDays|C|DegC|deepWaterSd)$/;

/** Every figure of an answer by its path, with whether its unit can be told. */
function figures(value: unknown, path = "", told = false): { path: string; told: boolean }[] {
  if (typeof value === "number") return [{ path, told }];
  if (Array.isArray(value)) return value.flatMap((one: unknown, i) => figures(one, `${path}[${i}]`, told));
  if (typeof value !== "object" || value === null) return [];
  const hasUnit = "unit" in value;
  return Object.entries(value).flatMap(([key, part]) =>
    figures(part, `${path}.${key}`, told || hasUnit || unitInKey.test(key) || withoutUnit.test(key)),
  );
}

async function answer(...args: string[]): Promise<unknown> {
  const { code, out, err } = await call(root, ...args, "--json", "--years", "8");
  expect([code, err]).toEqual([0, ""]);
  return JSON.parse(out);
}

function untold(of: unknown): string[] {
  return figures(of)
    .filter(({ told }) => !told)
    .map(({ path }) => path);
}

/** Every text under a key called unit. */
function units(value: unknown): string[] {
  if (typeof value !== "object" || value === null) return [];
  return Object.entries(value).flatMap(([key, part]) =>
    key === "unit" && typeof part === "string" ? [part] : units(part),
  );
}

describe("every figure of a JSON answer says its unit, in its key or beside it", () => {
  test.each([["us"], ["metric"]])("compare, %s", async (system) => {
    expect(untold(await answer("compare", demo, "--units", system))).toEqual([]);
  });
  test("evidence", async () => expect(untold(await answer("evidence", demo))).toEqual([]));
});

describe("what stands beside a figure follows --units throughout", () => {
  test("US", async () => {
    expect(new Set(units(await answer("compare", demo)))).toEqual(
      new Set(["mm", "share of 1", "bu/ac", "bu/ac/in", "ac", "USD", "USD/ac", "USD/bu"]),
    );
    expect(new Set(units(await answer("evidence", demo)))).toEqual(new Set(["mm", "share of 1", "bu/ac"]));
  });
  test("metric", async () => {
    expect(new Set(units(await answer("compare", demo, "--units", "metric")))).toEqual(
      new Set(["mm", "share of 1", "kg/ha", "kg/ha/mm", "ha", "USD", "USD/ha", "USD/kg"]),
    );
  });
  test("the same money in both: 160 acres, a price of 4.20 a bushel of 56 lb, a cost of 5.31 an acre", async () => {
    const us = (await answer("compare", demo)) as Answer;
    const metric = (await answer("compare", demo, "--units", "metric")) as Answer;
    expect(us.money.area).toEqual({ unit: "ac", value: 160 });
    expect(us.money.price).toMatchObject({ unit: "USD/bu", middle: 4.2, low: 3.4, high: 5.6 });
    expect(metric.money.price.middle).toBeCloseTo(4.2 / (56 * 0.45359237), 5);
    expect(metric.money.area.value).toBeCloseTo(64.75, 2);
    const [inUs, inMetric] = [us.money.pairs[0]!, metric.money.pairs[0]!];
    expect(inMetric.net.p50 * 0.40468564).toBeCloseTo(inUs.net.p50, 3);
    expect(inMetric.netForField).toEqual(inUs.netForField);
    // 18 USD over 4 years at 7 %: 0.29523 of it each year.
    expect(inUs.budget.addedCosts).toBeCloseTo(18 * 0.29523, 3);
    expect(us.method.yieldLine.slope.middle).toBeCloseTo(
      (metric.method.yieldLine.slope.middle * mmPerInch * 0.40468564) / (56 * 0.45359237),
      3,
    );
  });
  test("seasons: mm in the keys, the yield's unit beside it as asked", async () => {
    writeJson(folder, "record.json", {
      format: "rootfront-scenario/1",
      name: "on a record",
      invented: true,
      site: { latitude: "38.5 N", elevation: "3300 ft" },
      soil: { layers: [{ name: "all", bottom: "72 in", texture: "silt loam" }] },
      weather: { record },
      crop: { name: "grain sorghum" },
    });
    const { rows } = (await answer("seasons", join(folder, "record.json"))) as {
      rows: { yield_unit: string; season_rain_mm: number }[];
    };
    expect(rows[0]).toMatchObject({ yield_unit: "bu/ac" });
    expect(rows[0]).toHaveProperty("season_rain_mm");
  });
});

interface Answer {
  readonly method: { readonly yieldLine: { readonly slope: { readonly middle: number } } };
  readonly money: {
    readonly area: { readonly unit: string; readonly value: number };
    readonly price: { readonly unit: string; readonly low: number; readonly middle: number };
    readonly pairs: readonly {
      readonly net: { readonly p50: number };
      readonly netForField: object;
      readonly budget: { readonly addedCosts: number };
    }[];
  };
}
