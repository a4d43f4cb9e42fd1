import { stream } from "../../randomness.ts";
import type { Ensemble, EnsembleAtRain } from "../runs/ensemble.ts";
import { middleOf } from "../runs/middleTotal.ts";
import {
  averageByRun,
  rowsThatChange,
  weightsOfChange,
  type RowsThatChange,
} from "../runs/rowsThatChange.ts";
import type { RowPositions } from "../../scenario/rowPositions.ts";
import type { MoneyOverYears } from "./moneyOverYears.ts";
import type { BudgetParts, MoneyPlan } from "../../scenario/moneyPlan.ts";
import {
  breakEvenAreaHa,
  breakEvenPricePerKg,
  breakEvenYieldKgPerHa,
  netChange,
  withExtraYield,
} from "./partialBudget.ts";
import { partsPerHa, yearly } from "./yearlyItems.ts";
import { medianOf, spreadOf, type Spread } from "../../statistics/quantiles.ts";

/** What the difference between two cases is worth, run by run: each run has its own weather, yield line and price. */
export interface MoneyAnswer {
  readonly currency: string;
  readonly areaHa: number | null;
  readonly pricePerKg: MoneyPlan["pricePerKg"];
  /** Longest life of what is bought once, where it is spread as if every year of it were like these; else null. */
  readonly alikeForYears: number | null;
  /** At the middle one of the rainfall totals asked. */
  readonly pairs: readonly MoneyOfPair[];
  readonly byRainTotal: readonly MoneyAtRain[];
}

export interface MoneyAtRain {
  /** Null = years as they were. */
  readonly rainTotalMm: number | null;
  /** One for each case after the first. */
  readonly pairs: readonly MoneyOfPair[];
}

export interface MoneyOfPair {
  readonly from: string;
  readonly to: string;
  /** Which rows change; only where the row positions are told. All amounts are then of the field, rows that stay counted in. */
  readonly rows?: RowsThatChange;
  /** With a rotation: the path of the gains. A run is then a chain of years, and its extra yield the level of them. */
  readonly overYears?: MoneyOverYears;
  readonly extraYieldKgPerHa: Spread;
  /** Over the runs, each with its own price. */
  readonly netPerHa: Spread;
  /** Null where the field's area is not told. */
  readonly netForField: Spread | null;
  /** Share of the runs with a net above 0. */
  readonly chanceItPays: number;
  /** At the median extra yield and the middle price, for each hectare; `net` is of these parts. */
  readonly budgetPerHa: BudgetParts & { readonly net: number };
  readonly breakEven: BreakEven;
  /** Null where nothing is spent on the field as a whole. */
  readonly payBack: PayBack | null;
  readonly byPrice: readonly MoneyAtPrice[];
}

export interface BreakEven {
  /** At the middle price. Below 0: the change pays even with some yield lost. All null where nothing is costed. */
  readonly extraYieldKgPerHa: number | null;
  /** At the median extra yield; null where there is none. */
  readonly pricePerKg: number | null;
  /** That break-even yield at the middle slope of the yield line. */
  readonly extraWaterMm: number | null;
}

export interface PayBack {
  /** Money each year: what is bought once, with its interest, and what the whole field costs every year. */
  readonly yearly: number;
  /** Gain for each hectare before that, at the median extra yield and middle price. */
  readonly gainPerHa: number;
  /** Null where there is no gain. */
  readonly haPerYear: number | null;
  /** Hectares worked in all over its life; null likewise, or where nothing is bought once. */
  readonly haOverLife: number | null;
}

export interface MoneyAtPrice {
  readonly pricePerKg: number;
  readonly netPerHa: Spread;
  readonly chanceItPays: number;
}

/** Of the middle price, where no range is given: prices of the table. Ours. */
const tableShares = [0.8, 1, 1.2] as const;

/** Draws of the price, one a run, the same for every pair and rainfall total. */
export function drawPrices(
  runs: number,
  seed: number,
  { low, middle, high }: MoneyPlan["pricePerKg"],
): Float64Array {
  const prices = stream(seed, "price");
  return Float64Array.from({ length: runs }, () => prices.triangle(low, middle, high));
}

/** The money of an ensemble of seasons by themselves. */
export function moneyOf(ensemble: Ensemble, plan: MoneyPlan, rows: RowPositions | null = null): MoneyAnswer {
  const { scenario } = ensemble.preparation;
  const prices = drawPrices(ensemble.runs, scenario.ensemble.seed, plan.pricePerKg);
  const slope = scenario.yieldLine.slopeKgPerHaPerMm.middle;
  const byRainTotal = ensemble.byRainTotal.map((at) => moneyAtRain(at, plan, prices, slope, rows));
  const lives = plan.items.flatMap(({ once }) => once?.years ?? []);
  return {
    currency: plan.currency,
    areaHa: plan.areaHa,
    pricePerKg: plan.pricePerKg,
    alikeForYears: lives.length === 0 ? null : Math.max(...lives),
    pairs: middleOf(byRainTotal).pairs,
    byRainTotal,
  };
}

function moneyAtRain(
  { rainTotalMm, cases }: EnsembleAtRain,
  plan: MoneyPlan,
  pricesByRun: Float64Array,
  slopeKgPerHaPerMm: number,
  rows: RowPositions | null,
): MoneyAtRain {
  const yields = cases.map(({ yieldKgPerHaByRun }) => yieldKgPerHaByRun);
  const pairs = cases.slice(1).map(({ name }, p): MoneyOfPair => ({
    ...namesOf(
      cases.map((one) => one.name),
      name,
      p,
      rows,
    ),
    ...moneyOfExtraYield(
      averageByRun(yields, weightsOfChange(rows, p)),
      plan,
      pricesByRun,
      slopeKgPerHaPerMm,
    ),
  }));
  return { rainTotalMm, pairs };
}

/** Which two cases, and which rows of the field change. */
export function namesOf(
  caseNames: readonly string[],
  to: string,
  p: number,
  rows: RowPositions | null,
): Pick<MoneyOfPair, "from" | "to" | "rows"> {
  return {
    from: caseNames[0]!,
    to,
    ...(rows === null ? {} : { rows: rowsThatChange(rows, caseNames, p) }),
  };
}

/**
 * What an extra yield is worth, run by run.
 *
 * @param extraKgPerHaByRun one more yield than the other in each run; below 0 = less
 * @param slopeKgPerHaPerMm of the yield line, for the water that breaks even; <= 0 leaves that out
 */
export function moneyOfExtraYield(
  extraKgPerHaByRun: Float64Array,
  plan: MoneyPlan,
  pricesByRun: Float64Array,
  slopeKgPerHaPerMm: number,
): Omit<MoneyOfPair, "from" | "to"> {
  const parts = partsPerHa(plan);
  const fixed = netChange(parts);
  const net = extraKgPerHaByRun.map((extra, run) => extra * pricesByRun[run]! + fixed);
  const netPerHa = spreadOf(net);
  const { middle } = plan.pricePerKg;
  const extra = medianOf(extraKgPerHaByRun);
  const budget = withExtraYield(parts, extra, middle);
  // What costs nothing has nothing to break even.
  const isCosted = plan.items.length > 0;
  const evenYield = isCosted ? breakEvenYieldKgPerHa(parts, middle) : null;
  return {
    extraYieldKgPerHa: spreadOf(extraKgPerHaByRun),
    netPerHa,
    netForField: plan.areaHa === null ? null : times(netPerHa, plan.areaHa),
    chanceItPays: shareAbove0(net),
    budgetPerHa: { ...budget, net: netChange(budget) },
    breakEven: {
      extraYieldKgPerHa: evenYield,
      pricePerKg: isCosted ? breakEvenPricePerKg(parts, extra) : null,
      extraWaterMm: evenYield === null || slopeKgPerHaPerMm <= 0 ? null : evenYield / slopeKgPerHaPerMm,
    },
    payBack: payBackOf(plan, extra * middle),
    byPrice: tablePrices(plan).map((pricePerKg) => {
      const atPrice = extraKgPerHaByRun.map((one) => one * pricePerKg + fixed);
      return { pricePerKg, netPerHa: spreadOf(atPrice), chanceItPays: shareAbove0(atPrice) };
    }),
  };
}

/** Low, middle and high; without a range a fifth less and more. */
function tablePrices({ pricePerKg: { low, middle, high } }: MoneyPlan): number[] {
  return low < high ? [low, middle, high] : tableShares.map((share) => share * middle);
}

/** Acres that pay back what is spent as a whole: [break-even use, agricultural engineering textbook] (read). */
function payBackOf({ items }: MoneyPlan, yieldWorthPerHa: number): PayBack | null {
  const spent = items.filter(({ per, part }) => per === "field" && part === "addedCosts");
  if (spent.length === 0) return null;
  const others = items.filter((item) => !spent.includes(item));
  const wholes = others.filter(({ per }) => per === "field");
  const perHa = netChange(partsPerHa({ items: others.filter(({ per }) => per === "hectare"), areaHa: null }));
  const gainPerHa = yieldWorthPerHa + perHa;
  // What the whole field saves or earns besides pays a part of it.
  const asWhole = netChange(partsPerHa({ items: wholes, areaHa: 1 }));
  const sum = (of: (item: (typeof items)[number]) => number) =>
    spent.reduce((total, one) => total + of(one), 0);
  const yearlySum = sum(yearly) - asWhole;
  const bought = spent.filter(({ once }) => once !== null);
  const overLife = bought.reduce((total, item) => total + yearly(item) * item.once!.years, 0);
  return {
    yearly: yearlySum,
    gainPerHa,
    haPerYear: breakEvenAreaHa(yearlySum, gainPerHa),
    haOverLife: bought.length === 0 ? null : breakEvenAreaHa(overLife, gainPerHa),
  };
}

export function shareAbove0(values: Float64Array): number {
  let above = 0;
  for (const value of values) if (value > 0) above++;
  return values.length === 0 ? 0 : above / values.length;
}

function times({ p10, p50, p90 }: Spread, factor: number): Spread {
  return { p10: p10 * factor, p50: p50 * factor, p90: p90 * factor };
}
