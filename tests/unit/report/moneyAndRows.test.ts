import { describe, expect, test } from "vitest";
import type { FieldAverage, FieldNumbers } from "../../../src/answer/comparison/fieldAverage.ts";
import { moneyOfExtraYield, type MoneyAnswer } from "../../../src/answer/money/money.ts";
import type { MoneyItem, MoneyPlan } from "../../../src/scenario/moneyPlan.ts";
import { bushelsPerAcre, kgPerHaOfUs, slopeOfUsPerInch } from "../../../src/crop/yield/yieldLine.ts";
import { haPerAcre } from "../../../src/quantity/constants.ts";
import { moneyCaution, moneyLines } from "../../../src/report/sentences/field/moneyText.ts";
import { fieldAverageLines } from "../../../src/report/sentences/field/rowPositionsText.ts";
import {
  coresLines,
  penetrometerLines,
  probeLines,
} from "../../../src/report/sentences/field/soilSamplesText.ts";
import { shownIn } from "../../../src/report/tables/formatters.ts";
import { textWidth } from "../../../src/wrap.ts";

/** Words about money, rows and samples; the figures belong to nothing. */
const bushel = bushelsPerAcre(56);
const us = shownIn("us");
const joined = (lines: readonly string[]) => lines.map((line) => line.trim()).join(" ");
const fits = (lines: readonly string[]) =>
  expect(Math.max(...lines.map((line) => line.length))).toBeLessThanOrEqual(textWidth);

function answer(
  bushels: readonly number[],
  items: readonly MoneyItem[],
  areaAcres: number | null,
): MoneyAnswer {
  const price = 3 / bushel.kgPerUsUnit;
  const pricePerKg = { low: price, middle: price, high: price };
  const plan: MoneyPlan = {
    currency: "USD",
    pricePerKg,
    areaHa: areaAcres === null ? null : areaAcres * haPerAcre,
    items,
  };
  const extra = Float64Array.from(bushels, (one) => kgPerHaOfUs(one, bushel));
  const slope = slopeOfUsPerInch(5.5, bushel);
  const pair = {
    from: "as it is",
    to: "deeper",
    ...moneyOfExtraYield(
      extra,
      plan,
      extra.map(() => price),
      slope,
    ),
  };
  const { currency, areaHa } = plan;
  return {
    currency,
    areaHa,
    pricePerKg,
    alikeForYears: null,
    pairs: [pair],
    byRainTotal: [{ rainTotalMm: 330.2, pairs: [pair] }],
  };
}
const perAcre = (amount: number): MoneyItem => ({
  name: "pass",
  part: "addedCosts",
  amount: amount / haPerAcre,
  per: "hectare",
  once: null,
});

describe("money in words", () => {
  test("11 bu/ac at $3 is $33/ac, less a pass of $11", () => {
    const lines = moneyLines(answer([11, 11, 11], [perAcre(11)], 160), bushel, us);
    fits(lines);
    const said = joined(lines);
    expect(said).toMatch(/added returns\s+33\.00/);
    expect(said).toMatch(/added costs\s+-11\.00/);
    expect(said).toMatch(/left\s+22\.00/);
    expect(said).toContain(
      "A typical year leaves 22.00 USD/ac, or 3520 USD on 160 ac. It pays in 100 % of the seasons.",
    );
    expect(said).toContain(
      "At 3.00 USD/bu it breaks even at 3.7 bu/ac more, which takes 0.67 in more water, or at 1.00 USD/bu with the extra yield of a typical year.",
    );
    expect(said).toContain(moneyCaution);
  });

  test("a loss, and a tool that nothing pays back", () => {
    const tool: MoneyItem = {
      ...perAcre(0),
      name: "tool",
      amount: 1000,
      per: "field",
      once: { years: 5, interest: 0 },
    };
    const said = joined(moneyLines(answer([-2, -1, 0], [tool], 100), bushel, us));
    expect(said).toContain(
      "A typical year loses 5.00 USD/ac (P10 to P90: 2.60 to 7.40), or 500 USD (P10 to P90: 260 to 740) on 100 ac.",
    );
    expect(said).toContain("It pays in 0 % of the seasons.");
    expect(said).toContain("there is no extra yield, so no price breaks even");
    expect(said).toContain("comes to 200 USD a year; with no gain per ac no area pays it back.");
  });

  test("without costs nothing breaks even, and no line says so; metric has no bushels", () => {
    const free = answer([1, 2, 3], [], null);
    expect(free.pairs[0]!.breakEven).toEqual({
      extraYieldKgPerHa: null,
      pricePerKg: null,
      extraWaterMm: null,
    });
    expect(joined(moneyLines(free, bushel, us))).not.toMatch(/break|paid back/i);
    const metric = joined(moneyLines(free, bushel, shownIn("metric")));
    expect(metric).toContain("USD/kg");
    expect(metric).not.toMatch(/bu\/ac|USD\/ac|USD on/);
  });

  test("what lasts is spread over its years as if all were alike, and that is said", () => {
    const lasting = { ...answer([2, 2, 2], [perAcre(3)], null), alikeForYears: 4 };
    const said = joined(moneyLines(lasting, bushel, us));
    expect(said).toContain("spread over 4 years as if each were like these seasons");
    expect(joined(moneyLines({ ...lasting, alikeForYears: null }, bushel, us))).not.toContain("as if each");
  });

  test("a change that saves", () => {
    const saves: MoneyItem = { ...perAcre(6), part: "reducedCosts" };
    const said = joined(moneyLines(answer([1, 1, 1], [saves], null), bushel, us));
    expect(said).toContain("It pays for itself without extra yield, and with up to 2.0 bu/ac less.");
  });
});

describe("rows in words", () => {
  const same = (value: number) => ({ p10: value, p50: value, p90: value });
  const numbers = (mm: number, bushels: number): FieldNumbers => ({
    transpirationMm: same(mm),
    waterUseMm: same(mm),
    yieldKgPerHa: same(kgPerHaOfUs(bushels, bushel)),
    worthPerHa: null,
  });
  const field: FieldAverage = {
    positions: [
      { name: "wheel track", caseIndex: 0, afterIndex: null, share: 0.125, rows: 2 },
      { name: "other", caseIndex: 1, afterIndex: null, share: 0.875, rows: 14 },
    ],
    rowsInAll: 16,
    currency: null,
    firstCase: "as it is",
    byRainTotal: [
      {
        rainTotalMm: 330.2,
        field: numbers(254, 40),
        allAsFirst: numbers(241.3, 36.5),
        againstAllAsFirst: numbers(12.7, 3.5),
        changes: [
          {
            from: "as it is",
            to: "deeper",
            rows: {
              share: 0.125,
              rowsInAll: 16,
              positions: [
                { name: "wheel track", share: 0.125, rows: 2, before: "as it is", after: "deeper" },
                { name: "other", share: 0.875, rows: 14, before: "deeper", after: "deeper" },
              ],
            },
            difference: numbers(12.7, 3.5),
          },
        ],
        steps: [
          {
            position: "wheel track",
            plain: "other",
            rows: 1,
            share: 1 / 16,
            oneMore: numbers(-0.9, -0.25),
            oneFewer: numbers(0.9, 0.25),
          },
        ],
      },
    ],
  };

  test("counts, averages, and one row more or fewer", () => {
    const lines = fieldAverageLines(field, bushel, us);
    fits(lines);
    const said = joined(lines);
    expect(said).toContain("Of 16 rows of one pass: wheel track 2 (12.5 %), other 14 (87.5 %).");
    expect(said).toContain(
      '"deeper" against "as it is": 2 of 16 rows change: wheel track from "as it is" to "deeper"; other stays "deeper". Only they earn; amounts, costs too, are for the whole field. The field then uses 0.50 in more of water and yields 3.5 bu/ac more.',
    );
    expect(said).toContain(
      'One more row in "wheel track" in place of "other": 0.25 bu/ac less over the field; one fewer does the opposite.',
    );
    expect(said).not.toContain("worth");
  });
});

describe("samples in words", () => {
  const mean = (value: number, sd: number | null = null) => ({
    cores: sd === null ? 1 : 3,
    mean: value,
    sd,
    interval: sd === null || sd === 0 ? null : { low: value - sd, high: value + sd },
  });
  test("cores: a table, the sum, and intervals where there are several", () => {
    const layer = {
      topMm: 0,
      bottomMm: 254,
      cores: 3,
      densityKgPerM3: mean(1420, 40),
      gravimetricPercent: mean(18, 1),
      volumeFraction: mean(0.25, 0.01),
      stoneVolumeFraction: mean(0, 0),
      storedMm: mean(63.5, 2.54),
      availableMm: mean(38.1, 2.54),
    };
    const sampled = {
      layers: [{ ...layer, name: "plough layer" }],
      storedMm: 63.5,
      availableMm: 38.1,
      waterOverMm: 254,
    };
    const lines = coresLines(sampled, 0.9, us);
    fits(lines);
    const said = joined(lines);
    expect(said).toMatch(/plough layer\s+3\s+1\.42\s+18\.0 %\s+25\.0 %\s+2\.50\s+1\.50/);
    expect(said).toContain("Together 2.5 in of water, 1.5 in of it available, in 10.0 in of soil.");
    expect(said).toContain(
      'Density of "plough layer": 1.42 g/cm^3, 90 % interval 1.38 to 1.46 (3 cores, standard deviation 0.04).',
    );
    expect(coresLines({ ...sampled, layers: [] }, 0.9, us)).toEqual([]);
  });

  test("a probe and a log", () => {
    expect(
      joined(probeLines({ moistDepthMm: 609.6, availableMm: 101.6, belowMm: 25.4, storedMm: 150 }, us)),
    ).toContain(
      "moist to 24.0 in, which holds 4.0 in of available water at field capacity; below it another 1.0 in",
    );
    const said = joined(
      penetrometerLines(
        [
          { fromMm: 127, toMm: 228.6 },
          { fromMm: 508, toMm: null },
        ],
        0.2,
        us,
      ),
    );
    expect(said).toContain("above 300 psi from 5.0 to 9.0 in and from 20.0 in down to where the log ends.");
    expect(said).toContain("too dry to tell a dense layer from a dry one, so density decides");
    expect(joined(penetrometerLines([], 0.6, us))).toContain(
      "nowhere above 300 psi. The soil held about 60 %",
    );
  });
});
