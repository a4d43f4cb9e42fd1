import { middleTotalIndex } from "../../../src/answer/runs/middleTotal.ts";
import type { MoneyAnswer, MoneyAtPrice } from "../../../src/answer/money/money.ts";
import type { ShownMoney } from "../../../src/report/sentences/field/moneyText.ts";
import type { Formatters } from "../../../src/report/tables/formatters.ts";

/** What stands in the sheet of what is left. */
export interface Cells {
  readonly prices: readonly string[];
  readonly rows: readonly {
    readonly rain: string;
    readonly cells: readonly MoneyAtPrice[];
    readonly isMiddle: boolean;
  }[];
  readonly perLand: (perHa: number) => string;
  /** The largest gain or loss, for the depth of the ink. */
  readonly most: number;
}

/** Prices across, totals down, dry ones first. */
export function priceByRainCells(
  { byRainTotal }: MoneyAnswer,
  p: number,
  say: ShownMoney,
  shown: Formatters,
): Cells {
  const middle = middleTotalIndex(byRainTotal.map(({ rainTotalMm }) => rainTotalMm));
  const rows = byRainTotal
    .map(({ rainTotalMm, pairs }, t) => ({
      rainTotalMm,
      rain: rainTotalMm === null ? "as it came" : shown.total(rainTotalMm),
      cells: pairs[p]!.byPrice,
      isMiddle: t === middle,
    }))
    .sort((a, b) => (a.rainTotalMm ?? 0) - (b.rainTotalMm ?? 0));
  const nets = rows.flatMap(({ cells }) => cells.map(({ netPerHa }) => netPerHa.p50));
  return {
    prices: rows[0]!.cells.map(({ pricePerKg }) => say.price(pricePerKg)),
    rows,
    perLand: say.perLand(nets),
    most: Math.max(...nets.map(Math.abs)),
  };
}
