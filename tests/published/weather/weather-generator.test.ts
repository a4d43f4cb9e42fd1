/**
 * The rain and temperature generator against its published forms, and its output against the chain's and the mixed
 * exponential's own properties. Rows, sources and tolerances: data-reference/rain-generator.json.
 */
import { describe, expect, test } from "vitest";
import generator from "../../../data-reference/rain-generator.json" with { type: "json" };
import { stream } from "../../../src/randomness.ts";
import { dayOfYear, monthOf } from "../../../src/quantity/calendar.ts";
import { generateYears } from "../../../src/weather/generate/generate.ts";
import {
  amountShape,
  relativeVariance,
  shapeFrom,
  shareAboveTimes,
  wetDayAmounts,
  wetDayRainMm,
  type WetDayAmounts,
} from "../../../src/weather/generate/rainAmounts.ts";
import { isWet, wetChances, wetFromMm } from "../../../src/weather/generate/rainChain.ts";
import type { Site } from "../../../src/weather/records/record.ts";
import { residualMatrices, residualWalk } from "../../../src/weather/generate/temperatureResiduals.ts";
import { lindonNormals as lindon } from "../../support/lindon.ts";
import { tablesOf } from "./weather-tables.ts";

const { check, noneLeft } = tablesOf(generator.checks);
const draws = 200_000;

/** The one persistence that the source has for every place. */
const gengs = 0.25;
check("geng-wet-after-dry", (wetShare: number) => wetChances(wetShare, gengs).afterDry);
check("geng-wet-after-wet", (wetShare: number) => wetChances(wetShare, gengs).afterWet);
check("richardson-a", (row: number, column: number) => residualMatrices().a[2 * row + column]!);
check("richardson-b", (row: number, column: number) => residualMatrices().b[2 * row + column]!);

check("chain-wet-share", (afterDry: number, afterWet: number) => mean(drawnChain(afterDry, afterWet)));
check("chain-wet-spell", (afterDry: number, afterWet: number) => {
  const days = drawnChain(afterDry, afterWet);
  const spells = days.filter((wet, day) => wet === 1 && days[day - 1] !== 1).length;
  return days.reduce((sum, wet) => sum + wet, 0) / spells;
});
check("chain-lag-one", (afterDry: number, afterWet: number) => {
  const days = drawnChain(afterDry, afterWet);
  return correlation(days.slice(1), days.slice(0, -1));
});

check("mixed-exponential-mean", (meanMm: number, monthMeanC: number) =>
  mean(drawnAmounts(wetDayAmounts(meanMm, amountShape(monthMeanC)))),
);
check("mixed-exponential-spread", (smallShare: number, smallMm: number, largeMm: number) =>
  spread(drawnAmounts({ smallShare, smallMm, largeMm })),
);
check("mixed-exponential-above", (smallShare: number, times: number) =>
  shareAboveTimes(shapeFrom(smallShare, 1), times),
);

noneLeft();

describe.each([-5, 10, 25])("amounts drawn in a month of %d C", (monthMeanC) => {
  const shape = amountShape(monthMeanC);
  const excess = drawnAmounts(wetDayAmounts(8, shape)).map((mm) => mm - wetFromMm);
  const meanExcess = mean(excess);

  test.each([0.5, 2, 4, 8])(
    "bring on days above %d times the mean the share that the form's integral says (within 0.01: four standard errors)",
    (times) => {
      const above = mean(excess.map((mm) => (mm > times * meanExcess ? mm : 0))) / meanExcess;
      expect(Math.abs(above - shareAboveTimes(shape, times))).toBeLessThan(0.01);
    },
  );

  test("have the spread of the form, more than a plain exponential (within 3 %)", () => {
    const drawn = (spread(excess) / meanExcess) ** 2;
    expect(Math.abs(drawn / relativeVariance(shape) - 1)).toBeLessThan(0.03);
    expect(relativeVariance(shape)).toBeGreaterThan(1.4);
  });
});

/** The matrices' own terms come back from a long walk: 4 / sqrt(200,000), somewhat more for days that hang together. */
describe("Richardson 1981: residuals of 200,000 days (memory; within 0.02)", () => {
  const walk = residualWalk(stream(7, "residuals"));
  const days = Array.from({ length: draws }, () => walk());
  const [high, low] = [days.map(({ tMax }) => tMax), days.map(({ tMin }) => tMin)];
  const { m0, m1 } = generator.residuals;
  test.each([
    ["sd of the highest", spread(high), 1],
    ["sd of the lowest", spread(low), 1],
    ["highest with lowest", correlation(high, low), m0[0]![1]!],
    ["highest with yesterday's highest", correlation(high.slice(1), high.slice(0, -1)), m1[0]![0]!],
    ["highest with yesterday's lowest", correlation(high.slice(1), low.slice(0, -1)), m1[0]![1]!],
    ["lowest with yesterday's highest", correlation(low.slice(1), high.slice(0, -1)), m1[1]![0]!],
    ["lowest with yesterday's lowest", correlation(low.slice(1), low.slice(0, -1)), m1[1]![1]!],
  ])("%s: %d is %d", (_what, drawn, given) => expect(Math.abs(drawn - given)).toBeLessThan(0.02));
});

/**
 * Lindon 5 WNW, Colorado, 1971-2000 (NCDC monthly normals; read; crop-sites.json, CL-01): 14.4 in a year. Its wet days are not printed, so the
 * assumed ones serve. Tolerance: four standard errors of 2,000 years (from the drawn years themselves), and never more than
 * 10 % of a month's rain or 0.5 C, so that a wide spread cannot hide a wrong mean.
 */
describe("2,000 generated years bring the normals back", () => {
  const site: Site = { latitudeDeg: 40, elevationM: 1470, setting: "inland" };
  const years = 2000;
  const record = generateYears(lindon, site, { years, firstYear: 2001, seed: 20 });
  const byMonth = monthlyValues(record.firstDay, record.days, {
    rain: record.rainMm,
    tMax: record.tMaxC!,
    tMin: record.tMinC!,
  });

  test.each(lindon.rainMm.map((mm, month) => [month, mm]))("rain of month %d: %d mm", (month, mm) => {
    const totals = byMonth[month]!.rain;
    expect(totals).toHaveLength(years);
    const error = Math.abs(mean(totals) - mm);
    expect(error).toBeLessThan(4 * (spread(totals) / Math.sqrt(years)));
    expect(error).toBeLessThan(0.1 * mm);
  });

  test("rain of the year: 365.8 mm within 1.5 %", () => {
    const yearly = record.rainMm.reduce((sum, mm) => sum + mm, 0) / years;
    expect(Math.abs(yearly / 365.8 - 1)).toBeLessThan(0.015);
  });

  test.each(lindon.tMaxC.map((highC, month) => [month, highC, lindon.tMinC[month]!]))(
    "temperatures of month %d: %d and %d C",
    (month, highC, lowC) => {
      const days = byMonth[month]!.days;
      expect(Math.abs(mean(byMonth[month]!.tMax.map((sum) => sum / days)) - highC)).toBeLessThan(0.5);
      expect(Math.abs(mean(byMonth[month]!.tMin.map((sum) => sum / days)) - lowC)).toBeLessThan(0.5);
    },
  );

  test("the lowest never stands above the highest", () => {
    expect(record.tMaxC!.findIndex((high, day) => high < record.tMinC![day]!)).toBe(-1);
  });
});

/** Sums of each month of each year; `days` is the mean length of the month. */
function monthlyValues(
  firstDay: number,
  days: number,
  series: { rain: Float64Array; tMax: Float64Array; tMin: Float64Array },
) {
  const months = Array.from({ length: 12 }, () => ({
    rain: [] as number[],
    tMax: [] as number[],
    tMin: [] as number[],
    days: 0,
  }));
  let month = -1;
  for (let day = 0; day < days; day++) {
    if (month !== monthOf(firstDay + day) - 1) {
      month = monthOf(firstDay + day) - 1;
      for (const name of ["rain", "tMax", "tMin"] as const) months[month]![name].push(0);
    }
    const into = months[month]!;
    for (const name of ["rain", "tMax", "tMin"] as const)
      into[name][into[name].length - 1]! += series[name][day]!;
    into.days++;
  }
  expect(dayOfYear(firstDay)).toBe(1);
  return months.map((each) => ({ ...each, days: each.days / each.rain.length }));
}

function drawnChain(afterDry: number, afterWet: number): number[] {
  const chain = stream(11, "chain");
  let wet = false;
  return Array.from({ length: draws }, () => {
    wet = isWet(wet, { afterDry, afterWet }, chain.uniform());
    return wet ? 1 : 0;
  });
}

function drawnAmounts(amounts: WetDayAmounts): number[] {
  const { uniform } = stream(5, "amounts");
  return Array.from({ length: draws }, () => wetDayRainMm(amounts, uniform()));
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

function spread(values: readonly number[]): number {
  const centre = mean(values);
  return Math.sqrt(mean(values.map((value) => (value - centre) ** 2)));
}

function correlation(a: readonly number[], b: readonly number[]): number {
  const [meanA, meanB] = [mean(a), mean(b)];
  return mean(a.map((value, index) => (value - meanA) * (b[index]! - meanB))) / (spread(a) * spread(b));
}
