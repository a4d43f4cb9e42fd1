import { describe, expect, test } from "vitest";
import { comparisonOf } from "../../../src/answer/comparison/compare.ts";
import { runEnsemble, type CaseRuns } from "../../../src/answer/runs/ensemble.ts";
import { InputError } from "../../../src/problem.ts";
import { jsonText } from "../../../src/report/tables/roundForPrint.ts";
import type { Scenario } from "../../../src/scenario/scenario.ts";
import { asDug, someRecord, someScenario } from "./someScenario.ts";

const answer = (scenario: Scenario) => jsonText(comparisonOf(runEnsemble(scenario), "us"));
const swept = { ...someScenario().weather, rainTotalsMm: [305, 330, 356] };

function onRecord(years: number, fallowDays = 0): Scenario {
  return someScenario({
    weather: {
      ...someScenario().weather,
      source: { kind: "record", record: someRecord(years), normals: null },
    },
    cases: [{ ...asDug, fallowDays }],
  });
}

describe("the same seed", () => {
  test("gives the same bytes", () => expect(answer(someScenario())).toBe(answer(someScenario())));
  test("another one does not", () => {
    const { ensemble } = someScenario();
    expect(answer(someScenario({ ensemble: { ...ensemble, seed: 8 } }))).not.toBe(answer(someScenario()));
  });
  test("more years leave the first ones as they were", () => {
    const { ensemble } = someScenario();
    const few = runEnsemble(someScenario());
    const more = runEnsemble(someScenario({ ensemble: { ...ensemble, years: 20 } }));
    const used = (one: typeof few) => [...one.byRainTotal[0]!.cases[1]!.byRun.waterUseMm.subarray(0, 12)];
    expect(used(more)).toEqual(used(few));
  });
});

describe("identical cases", () => {
  test.each([
    ["grown", asDug],
    ["told by depth: nothing deeper", { ...asDug, rooting: { kind: "relative", extraMm: 0 } as const }],
    ["with a long fallow", asDug],
  ])("%s: every run differs by exactly 0", (name, later) => {
    const fallowDays = name === "with a long fallow" ? 320 : 0;
    const ensemble = runEnsemble(
      someScenario({
        weather: swept,
        cases: [
          { ...asDug, fallowDays },
          { ...later, fallowDays, name: "the same" },
        ],
      }),
    );
    for (const { cases, pairs } of ensemble.byRainTotal) {
      const [first, second] = cases;
      for (const key of Object.keys(first!.byRun) as (keyof CaseRuns["byRun"])[]) {
        expect([...second!.byRun[key]]).toEqual([...first!.byRun[key]]);
      }
      expect([...second!.yieldKgPerHaByRun]).toEqual([...first!.yieldKgPerHaByRun]);
      expect(pairs[0]!.ruleOfThumbMmByRun.every((mm) => mm === 0)).toBe(true);
      expect(pairs[0]!.storedInExtraDepthMmByRun.every((mm) => mm === 0)).toBe(true);
    }
    const { differences } = comparisonOf(ensemble, "us");
    expect(differences[0]).toMatchObject({
      extraDepthMm: 0,
      extraWaterUsedMm: { p10: 0, p50: 0, p90: 0 },
      extraYield: { p10: 0, p50: 0, p90: 0 },
      shareAfterFlowering: null,
      shareOfSeasonsItMattered: 0,
    });
  });
});

describe("a stated depth", () => {
  test("lies the asked distance below the first case's, in every run", () => {
    const [at] = runEnsemble(someScenario()).byRainTotal;
    const [first, second] = at!.cases;
    second!.byRun.finalRootDepthMm.forEach((mm, run) => {
      expect(mm - first!.byRun.finalRootDepthMm[run]!).toBeCloseTo(50.8, 9);
    });
  });
  test("of the first case stops its front there", () => {
    const [at] = runEnsemble(
      someScenario({ cases: [{ ...asDug, rooting: { kind: "absolute", depthMm: 300 } }] }),
    ).byRainTotal;
    expect(Math.max(...at!.cases[0]!.byRun.finalRootDepthMm)).toBeLessThanOrEqual(300);
  });
  test("means the same in a later case: where the soil ends it above, it ends there in both", () => {
    for (const depthMm of [300, 2500, 9000]) {
      const rooting = { kind: "absolute", depthMm } as const;
      const [at] = runEnsemble(
        someScenario({
          cases: [
            { ...asDug, rooting },
            { ...asDug, name: "the same", rooting },
          ],
        }),
      ).byRainTotal;
      const [first, second] = at!.cases;
      expect([...second!.byRun.finalRootDepthMm]).toEqual([...first!.byRun.finalRootDepthMm]);
      expect(Math.max(...second!.byRun.finalRootDepthMm)).toBeLessThanOrEqual(Math.min(depthMm, 2600));
    }
  });
  test("of a later case is not reached for the first one's sake", () => {
    const deep = { ...asDug, name: "deep", rooting: { kind: "absolute", depthMm: 2590 } } as const;
    const [at] = runEnsemble(someScenario({ cases: [asDug, deep] })).byRainTotal;
    const [grown, stated] = at!.cases;
    expect([...stated!.byRun.finalRootDepthMm]).toEqual([...grown!.byRun.finalRootDepthMm]);
  });
});

describe("years", () => {
  test("of a record are gone through again with other draws", () => {
    const { preparation, byRainTotal } = runEnsemble(onRecord(4));
    expect(preparation.yearByRun.map(({ year }) => year)).toEqual([
      1991, 1992, 1993, 1994, 1991, 1992, 1993, 1994, 1991, 1992, 1993, 1994,
    ]);
    const used = byRainTotal[0]!.cases[0]!.byRun.waterUseMm;
    expect(used[0]).not.toBe(used[4]);
  });
  test("one year is enough for a spring crop without fallow", () => {
    expect(runEnsemble(onRecord(1)).preparation.weatherYears.sowingYears).toHaveLength(1);
  });
  test("with a fallow the first sowing is the first that the record reaches back from", () => {
    expect(
      runEnsemble(onRecord(3, 330)).preparation.weatherYears.sowingYears.map(({ year }) => year),
    ).toEqual([1992, 1993]);
  });
  test("a record too short for one run says so", () => {
    expect(() => runEnsemble(onRecord(1, 330))).toThrow(InputError);
    expect(() => runEnsemble(onRecord(1, 330))).toThrow(
      /^weather: expected a record of at least one whole run, from 330 days of fallow before sowing of grain sorghum to maturity \(at most \d+ days\), found 1991-01-01 to 1991-12-31; give a longer record, or less fallow and the water measured at sowing$/,
    );
  });
  test("are as many as runs when they are generated", () => {
    const { preparation } = runEnsemble(someScenario({ cases: [{ ...asDug, fallowDays: 700 }] }));
    expect(preparation.yearByRun.map(({ year }) => year)).toEqual(
      Array.from({ length: 12 }, (_, i) => 2001 + i),
    );
  });
});

describe("rainfall totals", () => {
  test("every year brings the total, and every total meets the same draws and temperatures", () => {
    const { byRainTotal, preparation } = runEnsemble(someScenario({ weather: swept }));
    byRainTotal.forEach(({ rainTotalMm, annualRainMmByRun }) => {
      annualRainMmByRun!.forEach((mm) => expect(mm).toBeCloseTo(rainTotalMm!, 9));
    });
    expect(preparation.drawsByRun).toHaveLength(12);
    const demand = byRainTotal.map(({ cases }) => [...cases[0]!.byRun.transpirationDemandMm]);
    expect(demand[1]).toEqual(demand[0]);
  });
  test("over the season bring that much from sowing to the usual day of maturity", () => {
    const { preparation } = runEnsemble(
      someScenario({ weather: { ...swept, rainTotalsMm: [200], rainTotalOver: "season" } }),
    );
    const { rain, weatherByTotal, sowingYears } = preparation.weatherYears;
    const window = /each season \((\w+ \d+) to (\w+ \d+)\) scaled/.exec(rain)!;
    const { firstDay, rainMm } = weatherByTotal[0]!;
    for (const { year } of sowingYears) {
      const [from, to] = [window[1], window[2]].map(
        (day) => Date.parse(`${day}, ${year} UTC`) / 86_400_000 - firstDay,
      );
      const sum = rainMm.subarray(from, to! + 1).reduce((all, mm) => all + mm, 0);
      expect(sum).toBeCloseTo(200, 9);
    }
  });
});

test("progress is told to the end", () => {
  const told: [number, number][] = [];
  runEnsemble(someScenario({ weather: swept }), (done, total) => told.push([done, total]));
  expect(told).toHaveLength(36);
  expect(told.at(-1)).toEqual([36, 36]);
});

test("the balance of every day of every run closes", () => {
  const { byRainTotal } = runEnsemble(
    someScenario({ weather: swept, cases: [{ ...asDug, fallowDays: 300 }] }),
  );
  for (const { cases } of byRainTotal) {
    for (const { byRun } of cases) expect(Math.max(...byRun.balanceErrorMm)).toBeLessThan(1e-9);
  }
});
