/** Laws of money: only rows that change earn, and a gain that comes once is counted once. Invented fields. */
import { describe, expect, test } from "vitest";
import { answerOf } from "../../src/answer/chain/answerOf.ts";
import { moneyOverYears } from "../../src/answer/money/moneyOverYears.ts";
import { levelAmount, lookAhead, worthToday } from "../../src/answer/money/overYears.ts";
import { annualRecovery } from "../../src/answer/money/partialBudget.ts";
import type { MoneyItem, MoneyPlan } from "../../src/scenario/moneyPlan.ts";
import { stream } from "../../src/randomness.ts";
import { resolved } from "../support/demos.ts";

const tool = (amount: number, years: number, interest: number): MoneyItem => ({
  name: "tool",
  part: "addedCosts",
  amount,
  per: "hectare",
  once: { years, interest },
});
const plan = (items: readonly MoneyItem[]): MoneyPlan => ({
  currency: "USD",
  pricePerKg: { low: 0.2, middle: 0.2, high: 0.2 },
  areaHa: 60,
  items,
});
const pricesOf = (chains: number) => new Float64Array(chains).fill(0.2);

describe("gains of years that differ", () => {
  test("a gain that comes once is paid once, whatever the life and the interest", () => {
    const draws = stream(1, "once");
    for (let i = 0; i < 100; i++) {
      const years = 1 + Math.floor(20 * draws.uniform());
      const interest = i % 4 === 0 ? 0 : 0.2 * draws.uniform();
      const counts = worthToday(years, interest);
      const once = new Float64Array(years);
      once[0] = 100;
      // 100 at the end of the first year, borrowed against: the level amount pays it back with interest.
      expect(levelAmount(once, counts)).toBeCloseTo(annualRecovery(100 / (1 + interest), years, interest), 9);
      expect(levelAmount(once.fill(100), counts)).toBeCloseTo(100, 9);
    }
  });

  test("years alike are worth what a single season says, and what is left at the end is the level amount's worth", () => {
    const draws = stream(2, "level");
    for (let i = 0; i < 50; i++) {
      const years = 1 + Math.floor(12 * draws.uniform());
      const interest = 0.15 * draws.uniform();
      const money = plan([
        tool(300 * draws.uniform(), years, interest),
        { name: "pass", part: "addedCosts", amount: 10, per: "hectare", once: null },
      ]);
      const ahead = lookAhead(money, 8);
      const counts = worthToday(ahead.years, ahead.interest);
      const gains = Float64Array.from({ length: years }, () => 500 * draws.uniform());
      const { path, paidAtStartPerHa, yearlyCostPerHa } = moneyOverYears([gains], pricesOf(1), money, ahead);
      const levelNet =
        0.2 * levelAmount(gains, counts) - annualRecovery(money.items[0]!.amount, years, interest) - 10;
      expect(paidAtStartPerHa).toBeCloseTo(money.items[0]!.amount, 9);
      expect(yearlyCostPerHa).toBeCloseTo(10, 9);
      expect(path.at(-1)!.leftSoFarPerHa.mean).toBeCloseTo(
        levelNet * counts.reduce((sum, one) => sum + one, 0),
        6,
      );
    }
  });

  test("what is paid back is paid back in the year its gains tell, or never", () => {
    const ahead = lookAhead(plan([tool(100, 5, 0)]), 8);
    const paid = (...byYear: number[]) =>
      moneyOverYears(
        [Float64Array.from(byYear, (usd) => usd / 0.2)],
        pricesOf(1),
        plan([tool(100, 5, 0)]),
        ahead,
      ).payBackYears!.p50;
    expect(paid(100, 0, 0, 0, 0)).toBe(1);
    expect(paid(60, 20, 20, 0, 0)).toBe(3);
    expect(paid(60, 5, 5, 5, 5)).toBeNull();
    // Multiplied by the years it lasts, 60 in the first year would have been 300.
  });
});

const field = (more: Record<string, unknown>) => ({
  format: "rootfront-scenario/1",
  name: "Invented",
  site: { latitude: "38.5 N", elevation: "3300 ft" },
  soil: {
    layers: [{ name: "soil", bottom: "72 in", texture: "silt loam" }],
    startingWater: { moistDepth: "36 in", shareBelow: "50 %" },
  },
  weather: { pattern: "summer-peak", annualRain: "16 in" },
  crop: { name: "grain sorghum" },
  cases: [
    { name: "turned", rootingDepth: "16 in" },
    { name: "straight", rootingDepth: "40 in" },
  ],
  money: { price: "4.20 USD/bu", costs: [{ name: "pass", amount: "40 USD/ac", years: 5, interest: "7 %" }] },
  ensemble: { years: 36 },
  ...more,
});
const rows = (rowsInTrack: number) => ({ rows: 8, rowsInTrack, inTrack: "turned", other: "straight" });
const pairOf = async (more: Record<string, unknown>) =>
  answerOf(await resolved(field(more)), "us").money!.pairs[0]!;

describe.each([
  ["single seasons", {}],
  ["years in a row", { rotation: "every year" }],
])("rows that change, %s", (_, years) => {
  test("2 of 8 rows give a quarter of the gain, one an eighth, none nothing", async () => {
    const all = await pairOf(years);
    for (const [inTrack, part] of [
      [2, 1 / 4],
      [1, 1 / 8],
      [0, 0],
    ] as const) {
      const some = await pairOf({ ...years, rowPositions: rows(inTrack) });
      expect(some.rows!.share).toBeCloseTo(part, 12);
      for (const key of ["p10", "p50", "p90"] as const)
        expect(some.extraYieldKgPerHa[key]).toBeCloseTo(part * all.extraYieldKgPerHa[key], 9);
      expect(some.budgetPerHa.addedReturns).toBeCloseTo(part * all.budgetPerHa.addedReturns, 9);
      for (const [i, year] of (some.overYears?.path ?? []).entries())
        expect(year.gainPerHa.mean).toBeCloseTo(part * all.overYears!.path[i]!.gainPerHa.mean, 9);
    }
    expect(Math.abs(all.extraYieldKgPerHa.p90)).toBeGreaterThan(50);
  });

  test("with the cases the other way round the tracks cost that quarter", async () => {
    const cases = [...field({}).cases].reverse();
    const back = await pairOf({ ...years, cases, rowPositions: rows(2) });
    const gain = await pairOf({ ...years, rowPositions: rows(2) });
    expect(back.rows!.positions.map(({ before, after }) => [before, after])).toEqual([
      ["straight", "turned"],
      ["straight", "straight"],
    ]);
    // Near, not the same: the draws follow the first case's roots, and a chain also lives with its own water.
    expect(back.extraYieldKgPerHa.p50).toBeLessThan(0);
    const ratio = back.extraYieldKgPerHa.p50 / -gain.extraYieldKgPerHa.p50;
    expect(ratio).toBeGreaterThan(Object.keys(years).length === 0 ? 0.95 : 0.3);
    expect(ratio).toBeLessThan(Object.keys(years).length === 0 ? 1.05 : 3);
  });
});

test("with years in a row equal cases earn 0 in every year, and leave their costs", async () => {
  const cases = [{ name: "now" }, { name: "the same" }];
  const { overYears, chanceItPays, netPerHa } = await pairOf({ rotation: "wheat-sorghum-fallow", cases });
  for (const { gainPerHa } of overYears!.path) expect(gainPerHa).toEqual({ mean: 0, p10: 0, p50: 0, p90: 0 });
  expect(overYears!.path).toHaveLength(5);
  expect(chanceItPays).toBe(0);
  expect(netPerHa.p90).toBeLessThan(0);
  expect(overYears!.payBackYears).toEqual({ p10: null, p50: null, p90: null });
});

test("roots that are stopped: the first year's gain is not multiplied by the years the work lasts", async () => {
  const chained = await pairOf({ rotation: "every year", ensemble: { years: 96 } });
  const single = await pairOf({ ensemble: { years: 96 } });
  const { path } = chained.overYears!;
  const later = path.slice(1).reduce((sum, { gainPerHa }) => sum + gainPerHa.mean, 0) / (path.length - 1);
  expect(path[0]!.gainPerHa.mean).toBeGreaterThan(2 * later);
  expect(chained.budgetPerHa.addedReturns).toBeLessThan(0.8 * single.budgetPerHa.addedReturns);
});
