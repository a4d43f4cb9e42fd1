import { beforeAll, describe, expect, test } from "vitest";
import { runEnsemble, type Ensemble } from "../../../src/answer/runs/ensemble.ts";
import { drawPrices, moneyOf, moneyOfExtraYield } from "../../../src/answer/money/money.ts";
import { partsPerHa } from "../../../src/answer/money/yearlyItems.ts";
import type { MoneyItem, MoneyPlan } from "../../../src/scenario/moneyPlan.ts";
import {
  annualRecovery,
  breakEvenAreaHa,
  breakEvenYieldKgPerHa,
} from "../../../src/answer/money/partialBudget.ts";
import { stream } from "../../../src/randomness.ts";
import { someScenario } from "./someScenario.ts";

const cost = (amount: number, more: Partial<MoneyItem> = {}): MoneyItem => ({
  name: "pass",
  part: "addedCosts",
  amount,
  per: "hectare",
  once: null,
  ...more,
});
const plan = (items: readonly MoneyItem[], more: Partial<MoneyPlan> = {}): MoneyPlan => ({
  currency: "USD",
  pricePerKg: { low: 0.2, middle: 0.2, high: 0.2 },
  areaHa: 60,
  items,
  ...more,
});
const sure = (runs: number, price = 0.2) => new Float64Array(runs).fill(price);

describe("money of an extra yield", () => {
  test("the break-even yield nets nothing, at any price and costs", () => {
    const draws = stream(5, "break even");
    for (let i = 0; i < 200; i++) {
      const price = 0.05 + draws.uniform();
      const items = [
        cost(80 * draws.uniform()),
        cost(40 * draws.uniform(), { part: "reducedCosts" }),
        cost(5000 * draws.uniform(), {
          per: "field",
          once: { years: 1 + 20 * draws.uniform(), interest: 0.2 * draws.uniform() },
        }),
      ];
      const pricePerKg = { low: price, middle: price, high: price };
      const { breakEven } = moneyOfExtraYield(
        Float64Array.of(100),
        plan(items, { pricePerKg }),
        sure(1, price),
        10,
      );
      const even = Float64Array.of(breakEven.extraYieldKgPerHa!);
      const { netPerHa, budgetPerHa } = moneyOfExtraYield(
        even,
        plan(items, { pricePerKg }),
        sure(1, price),
        10,
      );
      expect(netPerHa.p50).toBeCloseTo(0, 9);
      expect(budgetPerHa.net).toBeCloseTo(0, 9);
      expect(breakEven.extraWaterMm).toBeCloseTo(even[0]! / 10, 9);
    }
  });

  test("net is linear in the price, and the price that breaks even nets nothing", () => {
    const extra = Float64Array.of(50, 120, 300);
    const netAt = (price: number) => moneyOfExtraYield(extra, plan([cost(30)]), sure(3, price), 10).netPerHa;
    for (const key of ["p10", "p50", "p90"] as const) {
      expect(netAt(0.3)[key] - netAt(0.2)[key]).toBeCloseTo(netAt(0.2)[key] - netAt(0.1)[key], 9);
    }
    const { breakEven } = moneyOfExtraYield(extra, plan([cost(30)]), sure(3), 10);
    expect(netAt(breakEven.pricePerKg!).p50).toBeCloseTo(0, 9);
  });

  test("a lost yield is a reduced return, with no price and no area that pays", () => {
    const lost = moneyOfExtraYield(Float64Array.of(-100), plan([cost(900, { per: "field" })]), sure(1), 10);
    expect(lost.budgetPerHa).toMatchObject({ addedReturns: 0, addedCosts: 15, reducedReturns: 20, net: -35 });
    expect(lost.breakEven.pricePerKg).toBeNull();
    expect(lost.payBack).toMatchObject({ haPerYear: null, haOverLife: null });
    expect(lost.chanceItPays).toBe(0);
  });

  test("the field is the hectare times the area; without an area there is none", () => {
    const one = moneyOfExtraYield(Float64Array.of(100, 200), plan([cost(5)]), sure(2), 10);
    expect(one.netForField!.p90).toBeCloseTo(60 * one.netPerHa.p90, 9);
    expect(
      moneyOfExtraYield(Float64Array.of(1), plan([], { areaHa: null }), sure(1), 10).netForField,
    ).toBeNull();
  });

  test("chance of paying counts runs above nothing", () => {
    const extra = Float64Array.of(-10, 0, 40, 60, 100);
    expect(moneyOfExtraYield(extra, plan([cost(10)]), sure(5), 10).chanceItPays).toBe(2 / 5);
    expect(moneyOfExtraYield(extra, plan([]), sure(5), 10).chanceItPays).toBe(3 / 5);
  });

  test("the table has the range's prices, or a fifth less and more", () => {
    const pricesOf = (pricePerKg: MoneyPlan["pricePerKg"]) =>
      moneyOfExtraYield(Float64Array.of(1), plan([], { pricePerKg }), sure(1), 10).byPrice.map(
        (at) => at.pricePerKg,
      );
    expect(pricesOf({ low: 0.1, middle: 0.2, high: 0.4 })).toEqual([0.1, 0.2, 0.4]);
    const [low, middle, high] = pricesOf({ low: 0.2, middle: 0.2, high: 0.2 });
    expect([low! / 0.2, middle! / 0.2, high! / 0.2].map((share) => Number(share.toFixed(9)))).toEqual([
      0.8, 1, 1.2,
    ]);
  });

  test("what the whole field saves pays a part of what is bought for it", () => {
    const tool = cost(1000, { per: "field", once: { years: 10, interest: 0 } });
    const saved = cost(40, { per: "field", part: "reducedCosts" });
    const { payBack } = moneyOfExtraYield(Float64Array.of(50), plan([tool, saved]), sure(1), 10);
    expect(payBack).toEqual({ yearly: 60, gainPerHa: 10, haPerYear: 6, haOverLife: 100 });
  });
});

describe("annual recovery", () => {
  test("pays back price and interest, year by year", () => {
    const draws = stream(6, "recovery");
    for (let i = 0; i < 100; i++) {
      const years = 1 + Math.floor(30 * draws.uniform());
      const interest = 0.3 * draws.uniform();
      let owed = 1000;
      for (let y = 0; y < years; y++) owed = owed * (1 + interest) - annualRecovery(1000, years, interest);
      expect(owed).toBeCloseTo(0, 6);
    }
    expect(annualRecovery(1000, 10, 0)).toBe(100);
    expect(annualRecovery(1000, 10, 1e-12)).toBeCloseTo(100, 6);
  });

  test("nothing that cannot be told is told", () => {
    expect(breakEvenAreaHa(1000, 0)).toBeNull();
    expect(breakEvenYieldKgPerHa(partsPerHa(plan([cost(1)])), 0)).toBeNull();
  });
});

describe("money of an ensemble", () => {
  let ensemble: Ensemble;
  beforeAll(() => {
    ensemble = runEnsemble(someScenario());
  });

  test("each run has its own price, from a stream of its own", () => {
    const range = { low: 0.1, middle: 0.2, high: 0.25 };
    const prices = drawPrices(500, 7, range);
    expect(Math.min(...prices)).toBeGreaterThanOrEqual(0.1);
    expect(Math.max(...prices)).toBeLessThanOrEqual(0.25);
    expect(new Set(prices).size).toBe(500);
    expect(drawPrices(600, 7, range).slice(0, 500)).toEqual(prices);
  });

  test("two cases that are one net their costs, and never pay", () => {
    const scenario = someScenario();
    const [first] = scenario.cases;
    const same = runEnsemble({ ...scenario, cases: [first, { ...first, name: "again" }] });
    const [pair] = moneyOf(same, plan([cost(12)])).pairs;
    expect(pair!.netPerHa).toEqual({ p10: -12, p50: -12, p90: -12 });
    expect(pair!.chanceItPays).toBe(0);
  });

  test("is told for the pair, at every rainfall total, in plain finite numbers", () => {
    const range = { low: 0.1, middle: 0.2, high: 0.25 };
    const money = moneyOf(
      ensemble,
      plan([cost(3), cost(900, { per: "field", once: { years: 5, interest: 0.08 } })], { pricePerKg: range }),
    );
    expect(money.pairs.map(({ from, to }) => [from, to])).toEqual([["as dug", "two inches deeper"]]);
    expect(money.byRainTotal.length).toBe(ensemble.byRainTotal.length);
    expect(money.pairs[0]!.chanceItPays).toBeGreaterThanOrEqual(0);
    // JSON has no NaN or Infinity: they would come back as null.
    expect(JSON.parse(JSON.stringify(money))).toEqual(money);
  });
});
