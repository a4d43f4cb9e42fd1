import { describe, expect, test } from "vitest";
import { comparisonOf } from "../../src/answer/compare.ts";
import { prepare, readyRun, runAtRain, runEnsemble } from "../../src/answer/ensemble.ts";
import { jsonText } from "../../src/report/roundForPrint.ts";
import { demoAsWritten, demoNames, resolved } from "../support/demos.ts";

const median = (values: Float64Array) => Float64Array.from(values).sort()[values.length >> 1]!;

describe.each(demoNames)("demo %s", (name) => {
  test("says it is invented", () => expect(demoAsWritten(name)["invented"]).toBe(true));

  test("closes every day's balance to 1e-9 mm and gives no number that is none", async () => {
    const ensemble = runEnsemble(await resolved(demoAsWritten(name)));
    for (const atRain of ensemble.byRainTotal) {
      for (const one of atRain.cases) {
        for (const [key, values] of Object.entries({ ...one.byRun, yield: one.yieldKgPerHaByRun })) {
          expect(values.every(Number.isFinite), key).toBe(true);
        }
        expect(Math.max(...one.byRun.balanceErrorMm)).toBeLessThan(1e-9);
      }
    }
  });

  test("keeps water between half the wilting point and saturation, and the front going down", async () => {
    const preparation = prepare(await resolved(demoAsWritten(name)));
    for (const run of [0, 7, 31]) {
      for (const { ledger, slices, course } of runAtRain(preparation, readyRun(preparation, run), 0)) {
        const water = ledger.waterMmByDayAndSlice!;
        for (let day = 0; day <= course.maturityDay; day++) {
          if (day > 0 && !(ledger.frontMm[day]! >= ledger.frontMm[day - 1]!))
            throw new Error(`front rises on day ${day}`);
          for (let j = 0; j < slices.count; j++) {
            const mm = water[day * slices.count + j]!;
            if (!(mm >= 0.5 * slices.wiltingPointMm[j]! - 1e-9 && mm <= slices.saturationMm[j]! + 1e-9))
              throw new Error(`slice ${j} holds ${mm} mm on day ${day}`);
          }
        }
      }
    }
  });

  test("more rain never lowers the median yield", async () => {
    const written = demoAsWritten(name);
    const weather = {
      ...(written["weather"] as object),
      annualRain: [8, 10, 12, 13, 14, 16, 20].map((i) => `${i} in`),
    };
    const ensemble = runEnsemble(await resolved({ ...written, weather, ensemble: { years: 60, seed: 3 } }));
    ensemble.preparation.scenario.cases.forEach((_, c) => {
      const yields = ensemble.byRainTotal.map(({ cases }) => median(cases[c]!.yieldKgPerHaByRun));
      for (let i = 1; i < yields.length; i++) expect(yields[i]!).toBeGreaterThanOrEqual(yields[i - 1]!);
      expect(yields.at(-1)!).toBeGreaterThan(yields[0]!);
    });
  });

  test("halving the slices moves the extra water used by less than 1 % of itself", async () => {
    const written = demoAsWritten(name);
    const extra = async (sliceThickness: string) => {
      const soil = { ...(written["soil"] as object), sliceThickness };
      return comparisonOf(runEnsemble(await resolved({ ...written, soil })), "us").differences.map(
        ({ extraWaterUsedMm }) => extraWaterUsedMm.p50,
      );
    };
    const usual = await extra("25 mm");
    const halved = await extra("12.5 mm");
    expect(usual.length).toBeGreaterThan(0);
    for (const [i, mm] of usual.entries()) {
      // Where depth brings nearly nothing, 1 % of it is less than any gauge could show: a hundredth of a millimetre will do.
      expect(Math.abs(halved[i]! - mm), `${mm} mm became ${halved[i]} mm`).toBeLessThan(
        Math.max(0.01 * Math.abs(mm), 0.01),
      );
    }
  });

  test("gives the same bytes twice and others with another seed; equal cases differ by exactly 0", async () => {
    const written = demoAsWritten(name);
    const text = async (seed: number) =>
      jsonText(
        comparisonOf(runEnsemble(await resolved({ ...written, ensemble: { years: 40, seed } })), "us"),
      );
    expect(await text(5)).toBe(await text(5));
    expect(await text(5)).not.toBe(await text(6));
    const [first] = written["cases"] as [{ name: string }];
    const twins = {
      ...written,
      cases: [first, { ...first, name: "the same again" }],
      ensemble: { years: 40, seed: 5 },
    };
    const answer = comparisonOf(runEnsemble(await resolved(twins)), "us");
    for (const { differences } of answer.byRainTotal) {
      for (const d of differences) {
        expect([d.extraDepthMm, d.ruleOfThumbMm, d.storedInExtraDepthMm].map(Math.abs)).toEqual([0, 0, 0]);
        expect(Object.values(d.extraWaterUsedMm).map(Math.abs)).toEqual([0, 0, 0]);
        expect(d.extraYield).toMatchObject({ p10: 0, p50: 0, p90: 0 });
      }
    }
  });
});
