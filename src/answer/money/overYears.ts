/** Gains of years that differ, against what is bought once: worth on the day of the change, and as a level yearly amount. */
import type { MoneyItem, MoneyPlan } from "../../scenario/moneyPlan.ts";

/** How long money looks ahead. */
export interface LookAhead {
  /** The longest that anything bought once lasts; where nothing is bought, the years of the path. */
  readonly years: number;
  /** A year, on what lasts longest; 0 where none is stated. */
  readonly interest: number;
  /** Whether something is bought that lasts so long. */
  readonly isOfItem: boolean;
}

export function lookAhead({ items }: Pick<MoneyPlan, "items">, pathYears: number): LookAhead {
  const bought = items.flatMap(({ once, amount }) => (once === null ? [] : [{ ...once, amount }]));
  const [longest] = bought.sort((a, b) => b.years - a.years || b.amount - a.amount);
  return longest === undefined
    ? { years: pathYears, interest: 0, isOfItem: false }
    : { years: longest.years, interest: longest.interest, isOfItem: true };
}

/**
 * What an amount at the end of each year counts on the day of the change; less of a last year that is not whole.
 *
 * @param years > 0
 * @param interest a year, >= 0
 * @returns one a year, the first first; their sum is what 1 each year is worth
 * Source: present value (1 + i)^-k, textbooks on engineering economy (memory). Paid at the end of each year, as
 * `annualRecovery` has it.
 */
export function worthToday(years: number, interest: number): Float64Array {
  return Float64Array.from(
    { length: Math.ceil(years) },
    (_, i) => Math.min(1, years - i) * Math.exp(-(i + 1) * Math.log1p(interest)),
  );
}

/**
 * The amount that, each year alike, is worth as much as these: gains that come once are spread with interest, and counted once.
 *
 * @param byYear of each year, the first first
 * @param counts `worthToday` of as many years
 * @example levelAmount(Float64Array.of(100, 0, 0, 0), worthToday(4, 0)) // 25
 */
export function levelAmount(byYear: Float64Array, counts: Float64Array): number {
  let [all, of] = [0, 0];
  for (let i = 0; i < counts.length; i++) {
    all += counts[i]!;
    of += counts[i]! * byYear[i]!;
  }
  return of / all;
}

/** Whether it is paid on the day of the change; what lasts less long, or has another interest, is a yearly charge. */
export function isPaidAtStart({ once }: MoneyItem, { years, interest, isOfItem }: LookAhead): boolean {
  return isOfItem && once !== null && once.years === years && once.interest === interest;
}

/**
 * What is left after each year, worth on the day of the change.
 *
 * @param paidAtStart for a hectare, >= 0
 * @param byYear what each year leaves beside that
 */
export function leftSoFar(paidAtStart: number, byYear: Float64Array, counts: Float64Array): Float64Array {
  let left = -paidAtStart;
  return byYear.map((amount, i) => (left += counts[i]! * amount));
}
