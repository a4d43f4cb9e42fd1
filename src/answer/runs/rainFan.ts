import type { Preparation } from "./prepare.ts";
import { scaledTo } from "./weatherYears.ts";

/**
 * The first runs of a preparation at other rainfall totals: same years, same draws, so that the answer at each total can be
 * set beside the others and beside the whole ensemble.
 *
 * @param totalsMm one or more totals, over the year or the season as the scenario has it
 * @param mostRuns fewer where the preparation has fewer
 * @throws InputError where no year can be scaled
 */
export function atOtherTotals(
  preparation: Preparation,
  totalsMm: readonly number[],
  mostRuns: number,
): Preparation {
  const { scenario, weatherYears, yearByRun, drawsByRun } = preparation;
  const weatherByTotal = scaledTo(totalsMm, weatherYears.weather, scenario.weather, weatherYears.window);
  return {
    ...preparation,
    rainTotalsMm: totalsMm,
    yearByRun: yearByRun.slice(0, mostRuns),
    drawsByRun: drawsByRun.slice(0, mostRuns),
    weatherYears: { ...weatherYears, weatherByTotal },
  };
}

/**
 * Totals from `fromMm` to `toMm` in steps, those nearest to the totals asked first, so that a fan opens from the middle out.
 *
 * @param askedMm the user's own totals; empty: from the middle of the range
 */
export function fanTotals(
  fromMm: number,
  toMm: number,
  stepMm: number,
  askedMm: readonly number[],
): number[] {
  const totals = Array.from(
    { length: Math.round((toMm - fromMm) / stepMm) + 1 },
    (_, i) => fromMm + i * stepMm,
  );
  const asked = askedMm.length === 0 ? [(fromMm + toMm) / 2] : askedMm;
  const away = (total: number): number => Math.min(...asked.map((mm) => Math.abs(mm - total)));
  return totals.sort((a, b) => away(a) - away(b) || a - b);
}
