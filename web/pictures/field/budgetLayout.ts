import type { MoneyOfPair } from "../../../src/answer/money/money.ts";

/** A partial budget as bars that stand against each other: what a change takes to the left, what it brings to the right. */
export interface BudgetBar {
  readonly name: string;
  readonly perHa: number;
  /** Where it is drawn, px; from the middle outward. */
  readonly x: number;
  readonly width: number;
}

export interface BudgetLayout {
  readonly middle: number;
  /** Two lines of two bars that stand against each other. */
  readonly lines: readonly { readonly takes: BudgetBar; readonly brings: BudgetBar }[];
  readonly left: BudgetBar;
  /** Ends of the range over the seasons, px; null where all are alike. */
  readonly whisker: readonly [low: number, high: number] | null;
}

/** Room at each side for a figure, px. */
const edge = 4;

export function budgetLayout(
  { budgetPerHa, netPerHa }: Pick<MoneyOfPair, "budgetPerHa" | "netPerHa">,
  width: number,
): BudgetLayout {
  const { addedReturns, reducedCosts, addedCosts, reducedReturns, net } = budgetPerHa;
  const { p10, p90 } = netPerHa;
  const middle = width / 2;
  const most = Math.max(
    ...[addedReturns, reducedCosts, addedCosts, reducedReturns, net, p10, p90].map(Math.abs),
  );
  const scale = most > 0 ? (middle - edge) / most : 0;
  const bar = (name: string, perHa: number, drawn: number): BudgetBar => ({
    name,
    perHa,
    x: drawn < 0 ? middle + drawn * scale : middle,
    width: Math.abs(drawn) * scale,
  });
  return {
    middle,
    lines: [
      {
        takes: bar("Added costs", addedCosts, -addedCosts),
        brings: bar("Added returns", addedReturns, addedReturns),
      },
      {
        takes: bar("Reduced returns", reducedReturns, -reducedReturns),
        brings: bar("Reduced costs", reducedCosts, reducedCosts),
      },
    ],
    left: bar("Left", net, net),
    whisker: p10 === p90 ? null : [middle + p10 * scale, middle + p90 * scale],
  };
}
