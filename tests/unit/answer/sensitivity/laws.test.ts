/** What moves the answer: laws that hold whatever the scenario. */
import { describe, expect, test } from "vitest";
import type { MoneyPlan } from "../../../../src/scenario/moneyPlan.ts";
import type { Scenario } from "../../../../src/scenario/scenario.ts";
import { sensitivityGround } from "../../../../src/answer/sensitivity/ground.ts";
import {
  planSensitivity,
  sensitivityOf,
  sensitivitySteps,
  type Sensitivity,
} from "../../../../src/answer/sensitivity/sensitivity.ts";
import { asDug, someScenario } from "../someScenario.ts";

const money: MoneyPlan = {
  currency: "USD",
  pricePerKg: { low: 0.12, middle: 0.16, high: 0.22 },
  areaHa: null,
  items: [],
};
const rain = { ...someScenario().weather, rainTotalsMm: [300, 330, 360] };

const planOf = (change: Partial<Scenario>, budget: number | null) =>
  planSensitivity(sensitivityGround(someScenario(change), 2), budget);
const effects = ({ pairs }: Sensitivity) =>
  pairs.flatMap(({ answers }) => answers.flatMap((one) => one.factors));

describe("factors", () => {
  test("those that the scenario has, and the others with a reason", () => {
    const { factors, leftOut } = planOf({ weather: rain, money }, null);
    expect(factors.map(({ name }) => name)).toEqual([
      "water at the start",
      "available water",
      "dense layer",
      "extra depth",
      "rain",
      "residue",
      "yield slope",
      "price",
    ]);
    expect(leftOut.map(({ name }) => name)).toEqual(["uptake at depth", "stand"]);
  });

  test("where all is known exactly there is none", () => {
    const { ensemble, yieldLine, weather } = someScenario();
    const slope = yieldLine.slopeKgPerHaPerMm.middle;
    const layers = asDug.layers.map((layer) => ({
      ...layer,
      availableWaterSd: 0,
      openShare: { low: 0, middle: 0, high: 0 },
    }));
    const known = {
      ...asDug,
      layers,
      ground: { ...asDug.ground, residueCoverFallow: 0, residueCoverCrop: 0 },
    };
    const { factors } = planOf(
      {
        cases: [known, { ...known, name: "the same" }],
        ensemble: { ...ensemble, deepWaterSd: 0, densityReading: "usual" },
        yieldLine: { ...yieldLine, slopeKgPerHaPerMm: { low: slope, middle: slope, high: slope } },
        weather: { ...weather, rainTotalsMm: [330] },
      },
      null,
    );
    expect(factors).toEqual([]);
  });
});

describe("swings", () => {
  const found = sensitivityOf(planOf({ weather: rain, money }, null));
  const [pair] = found.pairs;
  const swing = (kind: string, name: string) =>
    pair!.answers.find((one) => one.kind === kind)!.factors.find((one) => one.name === name)!;

  test("are sorted, and go from the low to the high end", () => {
    for (const { factors } of pair!.answers) {
      const swings = factors.map((one) => one.swing);
      expect(swings).toEqual([...swings].sort((a, b) => b - a));
      for (const { atLow, atHigh, swing: width } of factors) expect(width).toBe(Math.abs(atHigh - atLow));
    }
  });
  test("slope and price move no water, the price no yield: exactly 0", () => {
    expect(swing("extraWaterUsed", "yield slope").swing).toBe(0);
    expect(swing("extraWaterUsed", "price").swing).toBe(0);
    expect(swing("extraYield", "price").swing).toBe(0);
  });
  test("of the price is the extra yield times the price's range", () => {
    const yieldKgPerHa = pair!.answers.find(({ kind }) => kind === "extraYield")!.middle;
    const { range, swing: width } = swing("net", "price");
    expect(width).toBeCloseTo(Math.abs(yieldKgPerHa) * (range.high - range.low), 9);
  });
  test("deeper roots reach more water: more extra depth never brings less", () => {
    const { atLow, atHigh, range } = swing("extraWaterUsed", "extra depth");
    expect(range.low).toBeCloseTo(25.4, 6);
    expect(range.high).toBeCloseTo(76.2, 6);
    expect(atHigh).toBeGreaterThan(atLow);
  });
});

describe("equal cases", () => {
  test("nothing moves them apart: 0 everywhere", () => {
    const found = sensitivityOf(planOf({ cases: [asDug, { ...asDug, name: "the same" }], money }, 2500));
    expect(found.rows).toBeGreaterThan(0);
    const zero = { value: 0, low: 0, high: 0 };
    for (const { swing, atLow, share } of effects(found)) {
      expect(swing).toBe(0);
      expect(atLow).toBe(0);
      expect(share).toEqual({ first: zero, total: zero });
    }
  });
});

describe("shares", () => {
  const change = { weather: rain, money };
  const found = sensitivityOf(planOf(change, 2000));
  test("a factor that does nothing to an answer has none of it, and every other has some", () => {
    const still = effects(found).filter(({ swing }) => swing === 0);
    expect(still.length).toBeGreaterThan(0);
    for (const { share } of still) expect(share!.total).toEqual({ value: 0, low: 0, high: 0 });
    const moving = effects(found).filter(({ swing }) => swing > 0);
    for (const { share } of moving) expect(share!.total.value).toBeGreaterThan(0);
  });
  test("the same seed gives the same, another does not", () => {
    expect(sensitivityOf(planOf(change, 2000))).toEqual(found);
    const { ensemble } = someScenario();
    expect(sensitivityOf(planOf({ ...change, ensemble: { ...ensemble, seed: 8 } }, 2000))).not.toEqual(found);
  });
});

describe("the budget", () => {
  test("what is planned is what is run, and no more than was asked", () => {
    const plan = planOf({ weather: rain }, 2000);
    const steps = sensitivitySteps(plan);
    let last = { done: 0, total: 0 };
    for (let next = steps.next(); next.done !== true; next = steps.next()) {
      expect(next.value.done).toBeGreaterThan(last.done);
      last = next.value;
    }
    expect(last).toEqual({ done: plan.seasons, total: plan.seasons });
    expect(plan.seasons).toBeLessThanOrEqual(2000);
  });
  test("too small a one makes no sample, and the least one does", () => {
    const { leastSeasons } = planOf({ weather: rain }, 10);
    expect(planOf({ weather: rain }, leastSeasons - 1).rows).toBe(0);
    expect(planOf({ weather: rain }, leastSeasons).rows).toBeGreaterThan(0);
  });
});
