import type { BudgetParts, MoneyItem, MoneyPlan } from "../../scenario/moneyPlan.ts";
import { annualRecovery, noChange } from "./partialBudget.ts";

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
