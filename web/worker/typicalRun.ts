import type { Ensemble } from "../../src/answer/ensemble.ts";
import { medianOf } from "../../src/answer/quantiles.ts";

/** The season on show is one of the first: only those years have to be generated before it can be shown again. */
const among = 40;

/**
 * The run to show when nobody has chosen one: of the first forty, the one nearest to the middle of all runs in the extra water
 * of the second case against the first; with one case only, in the water it used. At the ensemble's first total.
 */
export function typicalRun({ byRainTotal }: Ensemble): number {
  const [first, second] = byRainTotal[0]!.cases;
  const used = first!.byRun.transpirationMm;
  const values = second === undefined ? used : second.byRun.transpirationMm.map((mm, run) => mm - used[run]!);
  const middle = medianOf(values);
  let nearest = 0;
  for (let run = 1; run < Math.min(among, values.length); run++) {
    if (Math.abs(values[run]! - middle) < Math.abs(values[nearest]! - middle)) nearest = run;
  }
  return nearest;
}
