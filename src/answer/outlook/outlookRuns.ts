import type { CropCourse } from "../../crop/course.ts";
import { refuseSaying } from "../../problem.ts";
import { dayOfMonth, isoDate, monthOf } from "../../quantity/calendar.ts";
import { yearsWithin } from "../../scenario/fields/facts/limits.ts";
import type { Scenario } from "../../scenario/scenario.ts";
import type { DailyWeather } from "../../weather/records/record.ts";
import { newAnswerCache } from "../runs/answerCache.ts";
import { emptyEnsemble, runInto, type Ensemble } from "../runs/ensemble.ts";
import { prepareOn, type Preparation } from "../runs/prepare.ts";
import { readyRun } from "../runs/readyRun.ts";
import { makeRunBuffers, type CaseAfterRun } from "../runs/run.ts";
import { weatherOf, type WeatherYears } from "../runs/weatherYears.ts";
import { foundInSeason, foundOnMornings, type FoundInSeason } from "./foundInSeason.ts";
import { seasonUnderWay, type SeasonUnderWay } from "./seasonUnderWay.ts";
import { emptyStates, noteState, type StateRuns } from "./stateNow.ts";

/** All runs of an outlook: the season under way, ended by each other year, with the draws of a comparison. */
export interface OutlookRuns {
  readonly season: SeasonUnderWay;
  /** Whole seasons; its sowing years are the other years. */
  readonly ensemble: Ensemble;
  readonly stateByCase: readonly StateRuns[];
  /** Transpiration after the last known day, `[case][run]`. */
  readonly takenUpAfterMmByCase: readonly Float64Array[];
  readonly foundByCase: readonly FoundInSeason[];
  /** Of each other year, in their order: the course of each case and the weather. */
  readonly byYear: readonly { readonly courses: readonly CropCourse[]; readonly weather: DailyWeather }[];
  /** The last known day, by case: day of its run. */
  readonly lastDayByCase: readonly number[];
}

/** More runs than any ensemble may have are not made. */
const [, mostRuns] = yearsWithin;

/**
 * Runs the season under way once for each other year and draw. Every year is met as often as every other; a run's draws are
 * the same in every case.
 *
 * @param asked day number, and the field or flag that it was told by; null: what the scenario says, or the record's last day
 * @param onRun sees each run day by day before the next one
 * @throws InputError without a record, for a day that lies in no season, for too few other years
 */
export function runOutlook(
  scenario: Scenario,
  asked: { readonly day: number; readonly field: string } | null,
  onProgress?: (done: number, total: number) => void,
  onRun?: (after: readonly CaseAfterRun[], season: SeasonUnderWay, lastDayByCase: readonly number[]) => void,
): OutlookRuns {
  const { source } = scenario.weather;
  if (source.kind !== "record")
    refuseSaying(
      "weather.record",
      "a station record up to the day of the outlook, with other years before or after",
      "weather generated from normals",
      "name a record: no generated year is the one under way",
    );
  const day = scenario.outlook?.day ?? null;
  const { weather, workOut } = weatherOf(
    scenario.weather,
    scenario.site,
    scenario.cases,
    scenario.ensemble,
    newAnswerCache(),
  );
  workOut(0, weather.days);
  const season = seasonUnderWay(
    scenario,
    weather,
    asked ?? (day === null ? null : { day, field: "outlook.date" }),
  );
  const { others } = season;
  const perYear = Math.max(
    1,
    Math.min(Math.round(scenario.ensemble.years / others.length), Math.floor(mostRuns / others.length)),
  );
  const runs = perYear * others.length;
  const plan: Scenario = {
    ...scenario,
    ensemble: { ...scenario.ensemble, years: runs },
    weather: { ...scenario.weather, rainTotalsMm: [] },
    money: null,
    rowPositions: null,
  };
  const middle = season.weatherWith(others[others.length >> 1]!);
  const base = prepareOn(plan, yearsOf(middle, season, scenario));
  const empty = emptyEnsemble(base);
  // The calendar year of sowing is no year that was.
  const byRainTotal = empty.byRainTotal.map((at) => ({ ...at, annualRainMmByRun: null }));
  const firstIndexes = plan.cases.map(({ fallowDays }, c) => season.sowingIndexByCase[c]! - fallowDays);
  const lastDayByCase = firstIndexes.map((first) => season.dayIndex - first);
  const foundByCase = plan.cases.map((_, c) =>
    foundInSeason(
      plan,
      c,
      weather.firstDay + firstIndexes[c]!,
      weather.firstDay + season.sowingIndexByCase[c]!,
      season.day,
    ),
  );
  const stateByCase = plan.cases.map(({ layers }) => emptyStates(runs, layers.length));
  const takenUpAfterMmByCase = plan.cases.map(() => new Float64Array(runs));
  const buffers = makeRunBuffers();
  const byYear = others.map((other, y) => {
    const preparation = inWeather(base, season.weatherWith(other));
    let courses: CropCourse[] = [];
    for (let draw = 0; draw < perYear; draw++) {
      const run = draw * others.length + y;
      const ready = readyRun(preparation, run).map((one, c) => ({
        ...one,
        found: foundOnMornings(
          foundByCase[c]!,
          one,
          plan,
          c,
          base.drawsByRun[run]!,
          weather.firstDay + firstIndexes[c]!,
        ),
      }));
      const after = runInto({ preparation, runs, byRainTotal }, run, 0, ready, buffers);
      after.forEach((one, c) => {
        const states = stateByCase[c]!;
        noteState(states, run, one, ready[c]!.found, lastDayByCase[c]!);
        takenUpAfterMmByCase[c]![run] = one.totals.transpirationMm - states.takenUpMm[run]!;
      });
      onRun?.(after, season, lastDayByCase);
      courses = after.map(({ course }) => course);
      onProgress?.(y * perYear + draw + 1, runs);
    }
    return { courses, weather: preparation.weatherYears.weather };
  });
  const { weatherYears } = base;
  const sowingYears = others.map(({ year }) => ({ year, sowingIndexByCase: season.sowingIndexByCase }));
  return {
    season,
    ensemble: { preparation: { ...base, weatherYears: { ...weatherYears, sowingYears } }, runs, byRainTotal },
    stateByCase,
    takenUpAfterMmByCase,
    foundByCase,
    byYear,
    lastDayByCase,
  };
}

/** One sowing year, the one under way, in weather that is all worked out. */
function yearsOf(weather: DailyWeather, season: SeasonUnderWay, { cases }: Scenario): WeatherYears {
  const { year, sowingIndexByCase, others, day } = season;
  const { sowing } = cases[0].crop;
  return {
    weather,
    workOut: () => undefined,
    weatherByTotal: [weather],
    sowingYears: [{ year, sowingIndexByCase }],
    // Nothing is scaled over it.
    window: { from: sowing, to: { month: monthOf(day), day: dayOfMonth(day) } },
    rain: `the record up to ${isoDate(day)}, then the rest of the season from each of ${others.length} other years of it`,
    notes: weather.notes,
  };
}

/** The same preparation in other weather: courses are worked out anew, soils and dig stay. */
function inWeather(base: Preparation, weather: DailyWeather): Preparation {
  return {
    ...base,
    weatherYears: { ...base.weatherYears, weather, weatherByTotal: [weather] },
    courseCacheByCase: base.courseCacheByCase.map(() => new Map()),
    fullStand: base.fullStand === null ? null : { ...base.fullStand, courseCache: new Map() },
  };
}
