import type { WeatherPlan } from "../../scenario/scenario.ts";

/** The total that stands for a sweep: the middle one by size, the lower of two. */
export function middleTotalIndex(totals: readonly (number | null)[]): number {
  const order = totals
    .map((total, i) => ({ total: total ?? 0, i }))
    .sort((a, b) => a.total - b.total || a.i - b.i);
  return order[(order.length - 1) >> 1]?.i ?? 0;
}

/** Of those with results: the entry of the middle total. */
export function middleOf<T extends { readonly rainTotalMm: number | null }>(byRainTotal: readonly T[]): T {
  return byRainTotal[middleTotalIndex(byRainTotal.map(({ rainTotalMm }) => rainTotalMm))]!;
}

/** What a total is, told only where it is not that every year is scaled to it. */
export function meaningOfTotal({
  rainTotalIs,
  rainTotalsMm,
}: Pick<WeatherPlan, "rainTotalIs" | "rainTotalsMm">): { readonly rainTotalIs?: "long-run mean" } {
  return rainTotalIs === "each year" || rainTotalsMm.length === 0 ? {} : { rainTotalIs };
}
