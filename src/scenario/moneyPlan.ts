import { annualRecovery, noChange, type BudgetParts } from "../answer/money/partialBudget.ts";

/** Money of a scenario, resolved: one currency, for each kg, ha or as a whole. */
export interface MoneyPlan {
  /** `USD`, `EUR`, ... */
  readonly currency: string;
  /** Of the crop; a triangle in the ensemble, all three the same where no range is given. */
  readonly pricePerKg: { readonly low: number; readonly middle: number; readonly high: number };
  /** Null where the field is not told. */
  readonly areaHa: number | null;
  /** What the change brings and costs beside the yield. */
  readonly items: readonly MoneyItem[];
}

export interface MoneyItem {
  readonly name: string;
  readonly part: keyof BudgetParts;
  /** For each hectare, or for the whole field; >= 0. */
  readonly amount: number;
  readonly per: "hectare" | "field";
  /** What is bought once and lasts; null = every year. */
  readonly once: { readonly years: number; readonly interest: number } | null;
}

/** Each year, for a hectare or the field as the item is. */
export function yearly({ amount, once }: MoneyItem): number {
  return once === null ? amount : annualRecovery(amount, once.years, once.interest);
}

/**
 * The parts of the budget without the yield, for each hectare and year.
 *
 * @param items those for the field need the area and are left out without it; the scenario's reader refuses that
 */
export function partsPerHa({ items, areaHa }: Pick<MoneyPlan, "items" | "areaHa">): BudgetParts {
  const parts = { ...noChange };
  for (const item of items) {
    if (item.per === "hectare") parts[item.part] += yearly(item);
    else if (areaHa !== null) parts[item.part] += yearly(item) / areaHa;
  }
  return parts;
}
