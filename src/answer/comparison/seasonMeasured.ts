import { dayInYear, yearOf } from "../../quantity/calendar.ts";
import { usualSeasonDays } from "../../crop/stages.ts";
import type { Scenario } from "../../scenario/scenario.ts";
import { emptyEnsemble, runInto, type Ensemble, type EnsembleAtRain } from "../runs/ensemble.ts";
import { prepare } from "../runs/prepare.ts";
import { readyRun } from "../runs/readyRun.ts";
import { makeRunBuffers } from "../runs/run.ts";

/** Enough draws for an interval of 95 % with both ends between runs. Ours. */
const runsOfYear = 80;

/**
 * The season that counts and strips were taken in, with all the draws but that one year's weather as it came.
 *
 * @param harvestYear calendar year of harvest
 * @returns null where the scenario's record does not hold that season
 */
export function seasonMeasured({ preparation }: Ensemble, harvestYear: number): EnsembleAtRain | null {
  const { scenario } = preparation;
  if (scenario.weather.source.kind !== "record") return null;
  const asItCame: Scenario = {
    ...scenario,
    weather: { ...scenario.weather, rainTotalsMm: [] },
    ensemble: { ...scenario.ensemble, years: Math.min(runsOfYear, scenario.ensemble.years) },
  };
  const own = prepare(asItCame);
  const sowingYear = ripensInNextYear(scenario) ? harvestYear - 1 : harvestYear;
  const season = own.weatherYears.sowingYears.find(({ year }) => year === sowingYear);
  if (season === undefined) return null;
  const ensemble = emptyEnsemble({
    ...own,
    yearByRun: own.yearByRun.map(() => season),
    digFit: preparation.digFit,
  });
  const buffers = makeRunBuffers("sums");
  for (let run = 0; run < ensemble.runs; run++)
    runInto(ensemble, run, 0, readyRun(ensemble.preparation, run), buffers);
  return ensemble.byRainTotal[0]!;
}

/** A winter crop is harvested in the calendar year after its sowing. */
function ripensInNextYear({ cases: [{ crop }] }: Scenario): boolean {
  const someYear = 2003;
  return yearOf(dayInYear(someYear, crop.sowing) + usualSeasonDays(crop) - 1) > someYear;
}
