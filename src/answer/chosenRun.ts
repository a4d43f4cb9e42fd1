import { InputError } from "../problem.ts";
import { middleOf } from "./middleTotal.ts";
import type { Ensemble, Preparation } from "./ensemble.ts";
import { middleIndex } from "./quantiles.ts";

/**
 * The middle run at the middle rainfall total: middle in the extra water of the second case against the first,
 * or, with one case only, in the water it used.
 */
export function middleRun({ byRainTotal }: Ensemble): number {
  const { cases } = middleOf(byRainTotal);
  const [first, second] = cases;
  const used = first!.byRun.transpirationMm;
  return middleIndex(
    second === undefined ? used : second.byRun.transpirationMm.map((mm, run) => mm - used[run]!),
  );
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
