import { drawPrices } from "../money/money.ts";
import type { MoneyPlan } from "../../scenario/moneyPlan.ts";
import type { CaseRuns, Ensemble, EnsembleAtRain } from "../runs/ensemble.ts";
import { spreadOf, type Spread } from "../../statistics/quantiles.ts";
import type { RowPosition, RowPositions } from "../../scenario/rowPositions.ts";
import {
  averageByRun,
  rowsThatChange,
  weightsOfChange,
  type CaseWeight,
  type RowsThatChange,
} from "../runs/rowsThatChange.ts";

/** The field as its rows are: the mean of their cases, weighted by their shares, run by run. */
export interface FieldAverage {
  readonly positions: readonly RowPosition[];
  readonly rowsInAll: number | null;
  /** Null where the scenario has no money. */
  readonly currency: string | null;
  readonly firstCase: string;
  readonly byRainTotal: readonly FieldAverageAtRain[];
}

export interface FieldAverageAtRain {
  readonly rainTotalMm: number | null;
  readonly field: FieldNumbers;
  readonly allAsFirst: FieldNumbers;
  /** The field as it is, less a field with all rows as the first case. */
  readonly againstAllAsFirst: FieldNumbers;
  /** One for each case after the first: what changing the rows between the two does to the field. */
  readonly changes: readonly FieldChange[];
  /** One for each position of another case than the plain one. */
  readonly steps: readonly RowStep[];
}

export interface FieldNumbers {
  /** What the crop transpired. */
  readonly transpirationMm: Spread;
  readonly waterUseMm: Spread;
  readonly yieldKgPerHa: Spread;
  /** Yield times the run's price, without any costs; null where there is no price. */
  readonly worthPerHa: Spread | null;
}

/** The field after a change less the field before it: what water, yield and money of the change are told by. */
export interface FieldChange {
  readonly from: string;
  readonly to: string;
  readonly rows: RowsThatChange;
  readonly difference: FieldNumbers;
}

/** What it does to the field average when rows of the plain position become rows of this one. */
export interface RowStep {
  readonly position: string;
  readonly plain: string;
  /** 1 row of the pass; null where only shares are known and the step is a hundredth of the rows. */
  readonly rows: 1 | null;
  /** Of all rows. */
  readonly share: number;
  /** Null where the plain position has no row left to give. */
  readonly oneMore: FieldNumbers | null;
  /** Null where the position has no row to lose. */
  readonly oneFewer: FieldNumbers | null;
}

/** The field average at every rainfall total. */
export function fieldAverage(
  { byRainTotal, runs, preparation }: Ensemble,
  rows: RowPositions,
  money: MoneyPlan | null,
): FieldAverage {
  const { seed } = preparation.scenario.ensemble;
  const prices = money === null ? null : drawPrices(runs, seed, money.pricePerKg);
  return {
    positions: rows.positions,
    rowsInAll: rows.rowsInAll,
    currency: money?.currency ?? null,
    firstCase: preparation.scenario.cases[0].name,
    byRainTotal: byRainTotal.map((at) => fieldAverageAtRain(at, rows, prices)),
  };
}

/** @param pricesByRun for each kg; null leaves the worth out */
export function fieldAverageAtRain(
  { rainTotalMm, cases }: EnsembleAtRain,
  rows: RowPositions,
  pricesByRun: Float64Array | null,
): FieldAverageAtRain {
  const { positions } = rows;
  const names = cases.map(({ name }) => name);
  const numbers = (weights: readonly CaseWeight[]) => fieldNumbers(cases, weights, pricesByRun);
  return {
    rainTotalMm,
    field: numbers(positions),
    allAsFirst: numbers([{ caseIndex: 0, share: 1 }]),
    againstAllAsFirst: numbers([...positions, { caseIndex: 0, share: -1 }]),
    changes: names.slice(1).map((to, p) => ({
      from: names[0]!,
      to,
      rows: rowsThatChange(rows, names, p),
      difference: numbers(weightsOfChange(rows, p)),
    })),
    steps: rowSteps(rows, numbers),
  };
}

function rowSteps(
  { positions, rowsInAll, plainIndex }: RowPositions,
  numbers: (weights: readonly CaseWeight[]) => FieldNumbers,
): RowStep[] {
  const plain = positions[plainIndex];
  if (plain === undefined) return [];
  const share = rowsInAll === null ? 0.01 : 1 / rowsInAll;
  const enough = share - 1e-9;
  return positions.flatMap((position, p): RowStep[] => {
    if (p === plainIndex || position.caseIndex === plain.caseIndex) return [];
    const change = (sign: 1 | -1) =>
      numbers([
        { caseIndex: position.caseIndex, share: sign * share },
        { caseIndex: plain.caseIndex, share: -sign * share },
      ]);
    return [
      {
        position: position.name,
        plain: plain.name,
        rows: rowsInAll === null ? null : 1,
        share,
        oneMore: plain.share >= enough ? change(1) : null,
        oneFewer: position.share >= enough ? change(-1) : null,
      },
    ];
  });
}

function fieldNumbers(
  cases: readonly CaseRuns[],
  weights: readonly CaseWeight[],
  pricesByRun: Float64Array | null,
): FieldNumbers {
  const average = (of: (one: CaseRuns) => Float64Array) => averageByRun(cases.map(of), weights);
  const yields = average(({ yieldKgPerHaByRun }) => yieldKgPerHaByRun);
  return {
    transpirationMm: spreadOf(average(({ byRun }) => byRun.transpirationMm)),
    waterUseMm: spreadOf(average(({ byRun }) => byRun.waterUseMm)),
    yieldKgPerHa: spreadOf(yields),
    worthPerHa: pricesByRun === null ? null : spreadOf(yields.map((value, run) => value * pricesByRun[run]!)),
  };
}
