import { InputError } from "../../problem.ts";
import type { Scenario } from "../../scenario/scenario.ts";
import { sumOver } from "../../season/ledger.ts";
import { medianOf } from "../../statistics/quantiles.ts";
import { scaleToTotals } from "../../weather/generate/scaleRain.ts";
import type { DailyWeather } from "../../weather/records/record.ts";
import { annualRain } from "../runs/ensemble.ts";
import { middleTotalIndex } from "../runs/middleTotal.ts";
import { prepare, type Preparation } from "../runs/prepare.ts";
import type { AnswerCache } from "../runs/answerCache.ts";

/** What stands for all settings: the weather years, and the rain that they are moved about. */
export interface SensitivityGround {
  readonly preparation: Preparation;
  /** The runs whose years are run at every setting. */
  readonly runs: readonly number[];
  /** At the middle of the rain. */
  readonly weather: DailyWeather;
  readonly rain: RainRange;
}

/** How the rain may be moved. */
export type RainRange =
  /** Evenly between the least and the most of the totals asked. */
  | { readonly kind: "totals"; readonly lowMm: number; readonly middleMm: number; readonly highMm: number }
  /** As the years' own totals lie, each year's days scaled to them. */
  | { readonly kind: "years"; readonly sortedMm: Float64Array; readonly middleMm: number }
  | { readonly kind: "none"; readonly why: string };

/** A rainfall below this cannot be told as times another, mm. */
const leastMiddleMm = 1;

/** @param years how many of the scenario's are run at every setting, at most */
export function sensitivityGround(scenario: Scenario, years: number, cache?: AnswerCache): SensitivityGround {
  const preparation = prepare(scenario, cache);
  const { weatherByTotal } = preparation.weatherYears;
  const t = middleTotalIndex(preparation.rainTotalsMm);
  const atMiddle = weatherByTotal[t]!;
  const { weather, rain } = rainOf(preparation, t, atMiddle);
  return { preparation, runs: yearsFromDryToWet(preparation, atMiddle, years), weather, rain };
}

function rainOf(
  preparation: Preparation,
  t: number,
  weather: DailyWeather,
): { readonly weather: DailyWeather; readonly rain: RainRange } {
  const { rainTotalsMm, rainTotalIs } = preparation.scenario.weather;
  if (rainTotalsMm.length > 0 && rainTotalIs === "each year") {
    const [lowMm, highMm] = [Math.min(...rainTotalsMm), Math.max(...rainTotalsMm)];
    const middleMm = rainTotalsMm[t]!;
    if (lowMm === highMm)
      return {
        weather,
        rain: { kind: "none", why: "every year is scaled to one total; give a range, such as 12..14 in" },
      };
    if (middleMm < leastMiddleMm) return { weather, rain: { kind: "none", why: "the middle total is 0" } };
    return { weather, rain: { kind: "totals", lowMm, middleMm, highMm } };
  }
  const annual = annualRain(preparation, t);
  if (annual === null)
    return {
      weather,
      rain: { kind: "none", why: "the record does not hold the whole year of every season" },
    };
  const middleMm = medianOf(annual);
  if (annual.every((mm) => mm === middleMm))
    return { weather, rain: { kind: "none", why: "all its years bring the same rain" } };
  try {
    const scaled = scaleToTotals(weather, Math.max(middleMm, leastMiddleMm), "year");
    return { weather: scaled, rain: { kind: "years", sortedMm: annual.slice().sort(), middleMm } };
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    return { weather, rain: { kind: "none", why: "the record has no whole year with rain to scale" } };
  }
}

/** The rain by which years are put in order falls in so many days from sowing. */
const orderedByDays = 120;

/** Runs of different years, evenly chosen by their rain after sowing, in the order of the runs. */
function yearsFromDryToWet(
  { yearByRun }: Preparation,
  { rainMm, days }: DailyWeather,
  atMost: number,
): number[] {
  const sown = yearByRun.map(({ sowingIndexByCase }) => sowingIndexByCase[0]!);
  const rainAfter = (run: number) =>
    sumOver(rainMm, sown[run]!, Math.min(days, sown[run]! + orderedByDays) - 1);
  const different = sown.flatMap((index, run) => (sown.indexOf(index) === run ? [run] : []));
  const ordered = different
    .map((run) => ({ run, mm: rainAfter(run) }))
    .sort((a, b) => a.mm - b.mm || a.run - b.run);
  const count = Math.min(atMost, ordered.length);
  return Array.from(
    { length: count },
    (_, i) => ordered[Math.floor(((i + 0.5) / count) * ordered.length)]!.run,
  ).sort((a, b) => a - b);
}
