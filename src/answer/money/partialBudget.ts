/** A partial budget: only what a change changes, in money for each hectare and year, or for a whole field. */
import type { BudgetParts } from "../../scenario/moneyPlan.ts";

export const noChange: BudgetParts = { addedReturns: 0, reducedCosts: 0, addedCosts: 0, reducedReturns: 0 };

/**
 * What a change leaves.
 *
 * Source: partial budget form, [Colorado State Univ. Extension fact sheet 3.761] (read).
 */
export function netChange({ addedReturns, reducedCosts, addedCosts, reducedReturns }: BudgetParts): number {
  return addedReturns + reducedCosts - (addedCosts + reducedReturns);
}

/** Extra yield as a part of the budget: worth more, or worth less. */
export function withExtraYield(
  parts: BudgetParts,
  extraYieldKgPerHa: number,
  pricePerKg: number,
): BudgetParts {
  const worth = extraYieldKgPerHa * pricePerKg;
  return worth >= 0
    ? { ...parts, addedReturns: parts.addedReturns + worth }
    : { ...parts, reducedReturns: parts.reducedReturns - worth };
}

/**
 * What a one-off costs each year of its life, so that its price with interest is recovered.
 *
 * @param years of life, > 0
 * @param interest a year, >= 0; at 0 the price is spread evenly
 * @example annualRecovery(1000, 10, 0.08) // 149.03
 * Source: capital recovery A = P i (1 + i)^n / ((1 + i)^n - 1), textbooks on engineering economy (memory).
 */
export function annualRecovery(price: number, years: number, interest: number): number {
  if (interest <= 0) return price / years;
  return (price * interest) / -Math.expm1(-years * Math.log1p(interest));
}

/** Extra yield at which a change pays for itself, kg/ha; below 0 where it may even cost yield. Null at a price of 0. */
export function breakEvenYieldKgPerHa(parts: BudgetParts, pricePerKg: number): number | null {
  return pricePerKg > 0 ? finite(-netChange(parts) / pricePerKg) : null;
}

/** Price at which an extra yield pays for the change; null where there is no extra yield to sell. */
export function breakEvenPricePerKg(parts: BudgetParts, extraYieldKgPerHa: number): number | null {
  return extraYieldKgPerHa > 0 ? finite(Math.max(0, -netChange(parts)) / extraYieldKgPerHa) : null;
}

/** Area each year on which a gain for each hectare pays what is spent as a whole; null where there is no gain. */
export function breakEvenAreaHa(spent: number, gainPerHa: number): number | null {
  return gainPerHa > 0 ? finite(Math.max(0, spent) / gainPerHa) : null;
}

function finite(value: number): number | null {
  return Number.isFinite(value) ? value : null;
}
