import { describe, expect, test } from "vitest";
import { answerOf } from "../../../src/answer/chain/answerOf.ts";
import { overRain, overRainOf } from "../../../src/answer/runs/overRain.ts";
import { runEnsemble } from "../../../src/answer/runs/ensemble.ts";
import { resolveScenario } from "../../../src/scenario/index.ts";
import { goodScenario, withChanges } from "../scenario/good-scenario.ts";

const read = (changes: Readonly<Record<string, unknown>>) =>
  resolveScenario(withChanges({ ...changes, "ensemble.years": 40 }, goodScenario), {
    fileName: "test.json",
    readText: () => {
      throw new Error("nothing to read");
    },
  });
const year = (rainMm: number, extraWaterUsedMm: number) => ({
  rainMm,
  extraWaterUsedMm,
  extraYieldKgPerHa: 10 * extraWaterUsedMm,
});

describe("years over their rain", () => {
  test("stand driest first, and in bands of as many years with the range of their own", () => {
    const years = Array.from({ length: 25 }, (_, i) => year(500 - 10 * i, i));
    const { years: sorted, bands } = overRain(years);
    expect(sorted.map(({ rainMm }) => rainMm)).toEqual(years.map(({ rainMm }) => rainMm).toReversed());
    expect(bands.map(({ years: held, fromMm, toMm }) => [held, fromMm, toMm])).toEqual([
      [13, 260, 380],
      [12, 390, 500],
    ]);
    expect(bands[0]!.extraWaterUsedMm.p50).toBe(18);
    expect(overRain(years.slice(0, 9)).bands).toEqual([]);
    expect(overRain([])).toEqual({ years: [], bands: [] });
  });
});

test("a total that is each year's leaves nothing to draw over; as the mean of years that vary it does", async () => {
  const each = runEnsemble(await read({}));
  for (const { rainMm } of overRainOf(each, 0)![0]!.years) expect(rainMm).toBeCloseTo(12 * 25.4, 6);
  const mean = runEnsemble(await read({ "weather.rainTotalIs": "long-run mean" }));
  const rain = overRainOf(mean, 0)![0]!.years.map(({ rainMm }) => rainMm);
  // The calendar years of all runs, those before the first and after the last sowing left out.
  expect(Math.abs(rain.reduce((a, b) => a + b) / rain.length / (12 * 25.4) - 1)).toBeLessThan(0.05);
  expect(rain.at(-1)! / rain[0]!).toBeGreaterThan(1.5);
});

test("without a rotation a total is each year's, with one the mean, and that is told", async () => {
  const single = await read({});
  expect(single.weather.rainTotalIs).toBe("each year");
  expect(single.defaults.some(({ field }) => field === "weather.rainTotalIs")).toBe(false);
  const rotating = await read({ rotation: "every year" });
  expect(rotating.weather.rainTotalIs).toBe("long-run mean");
  expect(rotating.defaults.find(({ field }) => field === "weather.rainTotalIs")?.value).toBe("long-run mean");
  const { chain, method } = answerOf(rotating, "us");
  expect([chain!.rainTotalIs, method.rainTotalIs]).toEqual(["long-run mean", "long-run mean"]);
  expect(chain!.overRain!.map(({ rainTotalMm }) => Math.round(rainTotalMm! / 25.4))).toEqual([12, 13, 14]);
  const { yearAfterYear, firstYear } = chain!.overRain![0]!.differences[0]!;
  expect(yearAfterYear.years.length).toBe(chain!.byCrop[0]!.differences[0]!.yearAfterYear.years);
  expect(firstYear.years.length).toBe(chain!.byCrop[0]!.differences[0]!.firstYear.years);
  const stated = await read({ rotation: "every year", "weather.rainTotalIs": "each year" });
  expect(answerOf(stated, "us").method.rainTotalIs).toBeUndefined();
});
