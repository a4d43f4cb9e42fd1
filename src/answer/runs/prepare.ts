import { writtenOut } from "../../crop/crop.ts";
import type { Case, Scenario } from "../../scenario/scenario.ts";
import type { Dig } from "../../evidence/dig/dig.ts";
import { fitFrom, type DigFit } from "../dig/digFit.ts";
import { responseTo, type FitGround } from "../dig/digResponse.ts";
import { drawRuns, type RunDraws } from "./draws.ts";
import { middleTotalIndex } from "./middleTotal.ts";
import {
  newAnswerCache,
  cachedResponse,
  cachedCourses,
  cachedSoils,
  type CourseCache,
  type AnswerCache,
  type SoilCache,
} from "./answerCache.ts";
import { weatherYears, type SowingYear, type WeatherYears } from "./weatherYears.ts";

/** Everything of a scenario that stands before the first run: weather, which years, the draws. */
export interface Preparation {
  readonly scenario: Scenario;
  readonly weatherYears: WeatherYears;
  /** The sowing year of each run; a short record is gone through again. */
  readonly yearByRun: readonly SowingYear[];
  readonly drawsByRun: readonly RunDraws[];
  /** The totals run, mm; [null] = years as they are. */
  readonly rainTotalsMm: readonly (number | null)[];
  /** What the dig tells of the soil, worked out when first asked for; null where nothing was dug or nothing is fitted. */
  readonly digFit: () => DigFit | null;
  /** Courses of each case's crop already worked out, by sowing index. */
  readonly courseCacheByCase: readonly CourseCache[];
  /** The first case with a full stand, where its own is thin, and its courses. */
  readonly fullStand: { readonly plan: Case; readonly courseCache: CourseCache } | null;
  /** Soils of each case already cut and filled, by run. */
  readonly soilCacheByCase: readonly SoilCache[];
}

/**
 * Weather, sowing years and draws of a scenario.
 * Throws InputError where the record is too short for a single run.
 *
 * @param cache of an earlier preparation, where there is one: saves time, changes nothing
 */
export function prepare(scenario: Scenario, cache: AnswerCache = newAnswerCache()): Preparation {
  const { ensemble, weather, site, cases } = scenario;
  return prepareOn(scenario, weatherYears(weather, site, cases, ensemble, cache), cache);
}

/** The same in weather that is there already. */
export function prepareOn(
  scenario: Scenario,
  years: WeatherYears,
  cache: AnswerCache = newAnswerCache(),
): Preparation {
  const { ensemble, yieldLine, weather, cases } = scenario;
  const rainTotalsMm = weather.rainTotalsMm.length === 0 ? [null] : weather.rainTotalsMm;
  const yearByRun = Array.from(
    { length: ensemble.years },
    (_, run) => years.sowingYears[run % years.sowingYears.length]!,
  );
  const drawsByRun = drawRuns(ensemble.years, ensemble, yieldLine);
  const ground: FitGround = {
    scenario,
    weather: years.weather,
    middleWeather: years.weatherByTotal[middleTotalIndex(rainTotalsMm)]!,
    yearByRun,
    drawsByRun,
  };
  const fullFirst = withFullStand(cases[0]);
  const courseCaches = cachedCourses(cache, fullFirst === null ? cases : [...cases, fullFirst]);
  return {
    scenario,
    weatherYears: years,
    yearByRun,
    drawsByRun,
    rainTotalsMm,
    digFit: once(() => {
      years.workOut(0, years.weather.days);
      return digFitOf(ground, cache);
    }),
    courseCacheByCase: courseCaches,
    fullStand: fullFirst === null ? null : { plan: fullFirst, courseCache: courseCaches[cases.length]! },
    soilCacheByCase: cachedSoils(cache, cases, ensemble),
  };
}

/** A case with thin plants as it would be with a full stand; null for a full one. */
export function withFullStand(plan: Case): Case | null {
  return plan.crop.standShare < 1 ? { ...plan, crop: writtenOut({ ...plan.crop, standShare: 1 }) } : null;
}

/** How the front answers to what is fitted is cached: it takes many runs, and most changes leave it as it was. */
function digFitOf(ground: FitGround, cache: AnswerCache): DigFit | null {
  const { scenario, drawsByRun } = ground;
  const dig = scenario.evidence?.dig ?? null;
  if (dig === null) return null;
  const response = cachedResponse(cache, ground.middleWeather, responseKey(dig, scenario), () =>
    responseTo(dig, ground),
  );
  return response === null ? null : fitFrom(response, dig, scenario, drawsByRun.length);
}

/** All that the response depends on but the weather. */
function responseKey({ groups, fitted }: Dig, { cases, ensemble }: Scenario): string {
  return JSON.stringify([groups, fitted, ensemble, cases.map((plan) => ({ ...plan, name: null }))]);
}

function once<T>(workOut: () => T): () => T {
  let known: { readonly value: T } | null = null;
  return () => (known ??= { value: workOut() }).value;
}
