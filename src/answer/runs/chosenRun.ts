import { InputError } from "../../problem.ts";
import { middleOf } from "./middleTotal.ts";
import type { Ensemble } from "./ensemble.ts";
import type { Preparation } from "./prepare.ts";
import { rankShares } from "../../statistics/quantiles.ts";

/**
 * A season near the middle in all that it is looked at for: at the middle rainfall total, extra water of each later case
 * against the first (with one case only, the water it used) and how deep each case's roots come. The run whose worst rank
 * among them lies nearest to the middle; the earlier of equals. Middle in the water alone may be a season of freak roots.
 */
export function middleRun({ byRainTotal }: Ensemble): number {
  const { cases } = middleOf(byRainTotal);
  const used = cases[0]!.byRun.transpirationMm;
  const extra = cases.slice(1).map(({ byRun }) => byRun.transpirationMm.map((mm, run) => mm - used[run]!));
  const depths = cases.map(({ byRun }) => byRun.finalRootDepthMm);
  const ranks = [...(extra.length === 0 ? [used] : extra), ...depths].map(rankShares);
  let found = 0;
  let least = Infinity;
  for (let run = 0; run < used.length; run++) {
    const worst = Math.max(...ranks.map((shares) => Math.abs(shares[run]! - 0.5)));
    if (worst < least) [found, least] = [run, worst];
  }
  return found;
}

/** The first run sown in a year. */
export function runOfYear({ yearByRun, weatherYears }: Preparation, year: number): number {
  const run = yearByRun.findIndex((one) => one.year === year);
  if (run >= 0) return run;
  const years = weatherYears.sowingYears.map((one) => one.year).slice(0, yearByRun.length);
  const [first, last] = [years[0], years.at(-1)];
  throw new InputError([
    {
      field: "--year",
      expected: `a year that a run is sown in, ${first === last ? first : `${first} to ${last}`}`,
      found: String(year),
      mend: 'take one of these, or see with "rootfront weather" what the record holds',
    },
  ]);
}
