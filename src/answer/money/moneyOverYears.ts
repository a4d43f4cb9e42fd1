import type { MoneyItem, MoneyPlan } from "../../scenario/moneyPlan.ts";
import { spreadAndMean, type SpreadAndMean } from "../../statistics/spreadAndMean.ts";
import { isPaidAtStart, leftSoFar, worthToday, type LookAhead } from "./overYears.ts";
import { netChange, noChange } from "./partialBudget.ts";
import { partsPerHa } from "./yearlyItems.ts";

/** The gains of a change year by year, each year's own, with its costs. Money for each hectare of the field. */
export interface MoneyOverYears {
  /** How far ahead: the life of what is bought once and lasts longest, else the years of the path. */
  readonly years: number;
  /** A year; what is stated for it. */
  readonly interest: number;
  readonly isOfItem: boolean;
  /** Chains of years, each with a soil of its own draws and a price of its own. */
  readonly chains: number;
  /** Paid on the day of the change. */
  readonly paidAtStartPerHa: number;
  /** What every year costs beside that, less what it saves. */
  readonly yearlyCostPerHa: number;
  readonly path: readonly MoneyOfYear[];
  /** Years until what was paid at the start is earned back, at the stated interest; null where nothing was, or where it is not within its life. */
  readonly payBackYears: {
    readonly p10: number | null;
    readonly p50: number | null;
    readonly p90: number | null;
  } | null;
}

export interface MoneyOfYear {
  /** Since the change, from 1. */
  readonly year: number;
  /** Extra yield times price, before any cost; 0 in a year without harvest of the crop. */
  readonly gainPerHa: SpreadAndMean;
  /** All that is left up to this year, worth on the day of the change. */
  readonly leftSoFarPerHa: SpreadAndMean;
  /** Share of the chains in which that is above 0. */
  readonly chanceItIsPaid: number;
}

/**
 * @param gainsByChain extra yield in each year of each chain, kg/ha of the field, at least as many years as are looked ahead
 * @param pricesByChain for each kg
 */
export function moneyOverYears(
  gainsByChain: readonly Float64Array[],
  pricesByChain: Float64Array,
  plan: MoneyPlan,
  ahead: LookAhead,
): MoneyOverYears {
  const counts = worthToday(ahead.years, ahead.interest);
  const atStart = plan.items.filter((item) => isPaidAtStart(item, ahead));
  const later = plan.items.filter((item) => !atStart.includes(item));
  const paidAtStartPerHa = -netOf(
    atStart.map((item) => ({ ...item, once: null })),
    plan.areaHa,
  );
  const yearlyCostPerHa = -netOf(later, plan.areaHa);
  const worth = gainsByChain.map((gains, chain) => gains.map((kg) => kg * pricesByChain[chain]!));
  const left = worth.map((byYear) =>
    leftSoFar(
      paidAtStartPerHa,
      byYear.map((gain) => gain - yearlyCostPerHa),
      counts,
    ),
  );
  const path = Array.from(counts, (_, i): MoneyOfYear => {
    const now = Float64Array.from(left, (byYear) => byYear[i]!);
    return {
      year: i + 1,
      gainPerHa: spreadAndMean(Float64Array.from(worth, (byYear) => byYear[i]!)),
      leftSoFarPerHa: spreadAndMean(now),
      chanceItIsPaid: now.filter((value) => value > 0).length / Math.max(1, now.length),
    };
  });
  return {
    ...ahead,
    chains: gainsByChain.length,
    paidAtStartPerHa,
    yearlyCostPerHa,
    path,
    payBackYears: paidAtStartPerHa > 0 ? payBackYears(left) : null,
  };
}

function netOf(items: readonly MoneyItem[], areaHa: number | null): number {
  return items.length === 0 ? netChange(noChange) : netChange(partsPerHa({ items, areaHa }));
}

/** The first year at whose end nothing is owed any more and nothing is later; a chain that never gets there counts as later than all. */
function payBackYears(left: readonly Float64Array[]): NonNullable<MoneyOverYears["payBackYears"]> {
  const years = Float64Array.from(left, (byYear) => {
    const last = byYear.findLastIndex((value) => value < 0);
    return last + 1 < byYear.length ? last + 2 : Infinity;
  }).sort();
  const at = (share: number) => {
    // A whole year of one of the chains: no mean between a year and never.
    const year = years[Math.round((years.length - 1) * share)] ?? Infinity;
    return Number.isFinite(year) ? year : null;
  };
  return { p10: at(0.1), p50: at(0.5), p90: at(0.9) };
}
