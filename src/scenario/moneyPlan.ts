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

/** The four parts of a partial budget, each >= 0 as people write them, though none is held to that. */
export interface BudgetParts {
  readonly addedReturns: number;
  readonly reducedCosts: number;
  readonly addedCosts: number;
  readonly reducedReturns: number;
}
