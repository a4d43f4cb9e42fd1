import { describe, expect, test } from "vitest";
import { comparisonOf } from "../../../src/answer/comparison/compare.ts";
import { emptyEnsemble, runEnsemble, runInto } from "../../../src/answer/runs/ensemble.ts";
import { prepare } from "../../../src/answer/runs/prepare.ts";
import { readyRun } from "../../../src/answer/runs/readyRun.ts";
import { newAnswerCache, type AnswerCache } from "../../../src/answer/runs/answerCache.ts";
import { atOtherTotals, fanTotals } from "../../../src/answer/runs/rainFan.ts";
import { makeRunBuffers } from "../../../src/answer/runs/run.ts";
import type { Scenario } from "../../../src/scenario/scenario.ts";
import { asDug, someRecord, someScenario } from "./someScenario.ts";

function answerWith(cache: AnswerCache, scenario: Scenario) {
  const ensemble = emptyEnsemble(prepare(scenario, cache));
  const buffers = makeRunBuffers();
  // Backwards: the order of runs is of no account.
  for (let run = ensemble.runs - 1; run >= 0; run--) {
    const ready = readyRun(ensemble.preparation, run);
    ensemble.byRainTotal.forEach((_, t) => runInto(ensemble, run, t, ready, buffers));
  }
  return comparisonOf(ensemble, "us");
}

describe("a cache changes no answer", () => {
  const onRecord = (years: number) =>
    someScenario({
      weather: {
        ...someScenario().weather,
        source: { kind: "record", record: someRecord(years), normals: null },
      },
    });
  const thinner = { ...asDug.uptake, halvingMm: 200 };
  const other = { ...asDug, crop: { ...asDug.crop, sowing: { month: 5, day: 2 } } };
  const scenarios: [string, Scenario][] = [
    ["as it is", someScenario()],
    ["the same again", someScenario()],
    ["totals", someScenario({ weather: { ...someScenario().weather, rainTotalsMm: [300, 400] } })],
    ["sown at another time", someScenario({ cases: [other] })],
    [
      "with fallow",
      someScenario({
        cases: [
          { ...asDug, fallowDays: 300 },
          { ...other, fallowDays: 100, name: "later" },
        ],
      }),
    ],
    ["more years", someScenario({ ensemble: { ...someScenario().ensemble, years: 15 } })],
    ["another seed", someScenario({ ensemble: { ...someScenario().ensemble, seed: 99 } })],
    ["another place", someScenario({ site: { ...someScenario().site, latitudeDeg: 45 } })],
    ["slower uptake at depth", someScenario({ cases: [{ ...asDug, uptake: thinner }] })],
    [
      "uptake less well known",
      someScenario({ ensemble: { ...someScenario().ensemble, deepUptakeSpread: 2 } }),
    ],
    ["a record", onRecord(4)],
    ["the same record read again", onRecord(4)],
    ["a longer record", onRecord(6)],
  ];
  const cache = newAnswerCache();
  test.each(scenarios)("%s", (_, scenario) => {
    expect(answerWith(cache, scenario)).toEqual(comparisonOf(runEnsemble(scenario), "us"));
  });
  test("nor, bit for bit, the weather generated anew for other normals, more years, another seed", () => {
    const here = newAnswerCache();
    const { source } = someScenario().weather;
    if (source.kind !== "normals") throw new Error("these years are generated");
    for (const [times, years, seed] of [
      [1, 8, 1],
      [1.3, 8, 1],
      [0.6, 20, 1],
      [0.6, 5, 1],
      [1.1, 5, 2],
    ] as const) {
      const normals = { ...source.normals, rainMm: source.normals.rainMm.map((mm) => mm * times) };
      const asked = someScenario({
        weather: { ...someScenario().weather, source: { kind: "normals", normals } },
        ensemble: { ...someScenario().ensemble, years, seed },
      });
      const workedOut = (cache?: AnswerCache) => {
        const { workOut, ...years } = prepare(asked, cache).weatherYears;
        workOut(0, years.weather.days);
        return years;
      };
      expect(workedOut(here)).toEqual(workedOut());
    }
  });
  test("and it keeps the weather of the same record", () => {
    const here = newAnswerCache();
    const before = prepare(onRecord(4), here).weatherYears.weather;
    expect(prepare(onRecord(4), here).weatherYears.weather).toBe(before);
    expect(prepare(onRecord(5), here).weatherYears.weather).not.toBe(before);
  });
});

test("cases that differ in nothing but how roots take water are run each by its own rule", () => {
  // They stand in one soil, which is kept; once the first case's rule was kept with it.
  const usual = asDug.uptake;
  for (const uptake of [
    { ...usual, halvingMm: 200 },
    { ...usual, denseRootsMm: 100 },
    { ...usual, sharePerDay: 0.02 },
    { ...usual, rule: "root-zone average" as const },
  ]) {
    const later = { ...asDug, name: "other roots", uptake };
    const both = runEnsemble(someScenario({ cases: [asDug, later] })).byRainTotal[0]!.cases;
    const alone = runEnsemble(someScenario({ cases: [later] })).byRainTotal[0]!.cases;
    expect([...both[1]!.byRun.transpirationMm]).toEqual([...alone[0]!.byRun.transpirationMm]);
    expect([...both[1]!.byRun.transpirationMm]).not.toEqual([...both[0]!.byRun.transpirationMm]);
  }
});

describe("a fan over totals", () => {
  test("gives at a total what an ensemble at that total does", () => {
    const swept = someScenario({ weather: { ...someScenario().weather, rainTotalsMm: [333] } });
    const ensemble = emptyEnsemble(atOtherTotals(prepare(someScenario()), [333], 100));
    const buffers = makeRunBuffers();
    for (let run = 0; run < ensemble.runs; run++)
      runInto(ensemble, run, 0, readyRun(ensemble.preparation, run), buffers);
    expect(comparisonOf(ensemble, "us").byRainTotal).toEqual(
      comparisonOf(runEnsemble(swept), "us").byRainTotal,
    );
  });
  test("opens from the totals asked for outward", () => {
    expect(fanTotals(8, 20, 1, [12, 14])).toEqual([12, 14, 11, 13, 15, 10, 16, 9, 17, 8, 18, 19, 20]);
    expect(fanTotals(8, 12, 1, [])).toEqual([10, 9, 11, 8, 12]);
  });
});
