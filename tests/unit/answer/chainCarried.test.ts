import { describe, expect, test } from "vitest";
import { groundUnder, waterInto } from "../../../src/answer/chain/carried.ts";
import { chainYears, settlingYears } from "../../../src/answer/chain/chainYears.ts";
import { coverOfMass, massUnderCover } from "../../../src/season/residue/mulch.ts";
import { makeLedger, sumOver } from "../../../src/season/ledger.ts";
import { makeWorkspace, simulate } from "../../../src/season/simulate.ts";
import { column, testCourse, testInput, testSilt, testWeather, waterAt } from "../../support/column.ts";
import { withChanges } from "../scenario/good-scenario.ts";
import { resolveScenario } from "../../../src/scenario/index.ts";

const sum = (values: Float64Array) => values.reduce((all, one) => all + one, 0);

describe("the water of one case in the soil of another", () => {
  const from = column([testSilt]);

  test("cut alike, it is the same to the last bit", () => {
    const water = waterAt(from, 0.6);
    expect(waterInto(water, from, column([testSilt]))).toEqual(water);
  });

  test("cut otherwise, as much of it", () => {
    const water = from.topMm.map((top, j) => from.wiltingPointMm[j]! + top / 300);
    expect(sum(waterInto(water, from, column([testSilt], 10)))).toBeCloseTo(sum(water), 9);
  });

  test("what a denser layer cannot hold goes beneath it", () => {
    const dense = { ...testSilt, thicknessMm: 200, saturation: 0.3, fieldCapacity: 0.25 };
    const to = column([dense, { ...testSilt, thicknessMm: 1300 }]);
    const water = waterAt(from, 1);
    const put = waterInto(water, from, to);
    expect(sum(put)).toBeCloseTo(sum(water), 9);
    for (let j = 0; j < to.count; j++) expect(put[j]!).toBeLessThanOrEqual(to.saturationMm[j]! + 1e-9);
  });
});

test("snow that lies on the first morning melts into the ground, and what lies on the last is told", () => {
  const slices = column([testSilt]);
  const course = testCourse(20, 10);
  const run = (startSnowMm: number, meanC: number) => {
    const weather = testWeather(20, () => ({ rainMm: 0, et0Mm: 1, meanC }));
    const ledger = makeLedger(20);
    const workspace = makeWorkspace(slices.count);
    simulate(
      { ...testInput({ slices, startWaterMm: waterAt(slices, 0.3), weather, course }), startSnowMm },
      ledger,
      workspace,
    );
    return { melt: sumOver(ledger.meltMm, 0, course.maturityDay), left: workspace.left.snowMm };
  };
  expect(run(20, 10).melt).toBeCloseTo(20, 12);
  expect(run(20, 10).left).toBe(0);
  expect(run(20, -10)).toEqual({ melt: 0, left: 20 });
});

test("the ground under the straw of the crop before is the ground of a scenario that states its cover", async () => {
  const resolve = (cover: string) =>
    resolveScenario(withChanges({ fallow: { length: "8 months" }, surface: { residueCoverFallow: cover } }), {
      fileName: "good.json",
      readText: () => "",
    });
  const [first, other] = await Promise.all([resolve("54 %"), resolve("80 %")]);
  const under = groundUnder(first.cases[0].ground, massUnderCover(0.8));
  const rounded = (ground: object) =>
    Object.entries(ground).map(([key, value]) => [key, typeof value === "number" ? value.toFixed(9) : value]);
  expect(rounded(under)).toEqual(rounded(other.cases[0].ground));
  expect(coverOfMass(massUnderCover(0.8))).toBeCloseTo(0.8, 12);
});

describe("the years of the chains", () => {
  const calendar = (first: number, last: number) => ({
    links: [{ year: first } as never],
    lastYear: last,
  });

  test("follow one another, each after its warm-up, as many as asked", () => {
    const chains = chainYears([calendar(2003, 2210)], 200, 6, 8);
    expect(chains[0]).toEqual({ warmUpFrom: 2003, from: 2009, to: 2020 });
    expect(chains[1]).toEqual({ warmUpFrom: 2015, from: 2021, to: 2032 });
    const years = chains.reduce((all, { from, to }) => all + to - from + 1, 0);
    expect(years).toBeGreaterThanOrEqual(200);
    expect(years).toBeLessThan(200 + settlingYears + 2);
  });

  test("hold a settled harvest of every phase, however few are asked for", () => {
    const three = [calendar(2003, 2100), calendar(2003, 2100), calendar(2004, 2100)];
    for (const years of [1, 5, 30])
      for (const { from, to } of chainYears(three, years, 6, 1))
        expect(to - from + 1).toBeGreaterThanOrEqual(settlingYears + 6);
  });

  test("of a short record go through it again, with a warm-up cut short", () => {
    const chains = chainYears([calendar(1992, 2003)], 40, 6, 8);
    expect(chains[0]).toEqual({ warmUpFrom: 1992, from: 1996, to: 2003 });
    expect(chains.length).toBe(5);
  });

  test("are none where a record holds no settled year", () => {
    expect(chainYears([calendar(1992, 1996)], 40, 6, 8)).toEqual([]);
  });
});
