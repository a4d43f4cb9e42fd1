import type { CropCourse } from "../../crop/course.ts";
import { writtenOut } from "../../crop/crop.ts";
import { longestSeasonDays } from "../../crop/stages.ts";
import type { Case, Scenario } from "../../scenario/scenario.ts";
import { sumOver } from "../../season/ledger.ts";
import type { SeasonTotals } from "../../season/season.ts";
import type { Slices } from "../../soil/layers/layer.ts";
import { dayNumber } from "../../quantity/calendar.ts";
import type { Dig } from "../../evidence/dig/dig.ts";
import { fitFrom, type DigFit } from "../dig/digFit.ts";
import { responseTo, type FitGround } from "../dig/digResponse.ts";
import { hinderBy } from "../../evidence/dig/hinderBy.ts";
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
import {
  courseOf,
  makeRunBuffers,
  readySoil,
  runCases,
  type CaseAfterRun,
  type RunBuffers,
  type ReadyCase,
} from "./run.ts";
import { capacityBetweenMm, storedBetweenMm } from "./threeNumbers.ts";
import { weatherYears, type SowingYear, type WeatherYears } from "./weatherYears.ts";
import { yieldOfRun } from "./yieldOfRun.ts";

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

/** Results of all runs, kept apart by run, so that seasons can be told one by one. */
export interface Ensemble {
  readonly preparation: Preparation;
  readonly runs: number;
  readonly byRainTotal: readonly EnsembleAtRain[];
}

export interface EnsembleAtRain {
  /** What each year was scaled to; null = years as they were. */
  readonly rainTotalMm: number | null;
  /** Rain of the calendar year of sowing; null where one of those years is not whole in the record. */
  readonly annualRainMmByRun: Float64Array | null;
  readonly cases: readonly CaseRuns[];
  /** One for each case after the first, in their order: that case against the first. */
  readonly pairs: readonly PairRuns[];
}

export interface CaseRuns {
  readonly name: string;
  /** Season totals, each indexed by run. */
  readonly byRun: { readonly [K in keyof SeasonTotals]: Float64Array };
  readonly yieldKgPerHaByRun: Float64Array;
  /** 1 in runs whose season ended before the crop was ripe. */
  readonly unripeByRun: Uint8Array;
}

/** What of a pair can only be told while both soils are there; indexed by run. */
export interface PairRuns {
  readonly ruleOfThumbMmByRun: Float64Array;
  readonly storedInExtraDepthMmByRun: Float64Array;
}

export const totalNames: readonly (keyof SeasonTotals)[] = [
  "rainMm",
  "runoffMm",
  "drainageMm",
  "evaporationMm",
  "transpirationMm",
  "waterUseMm",
  "transpirationAfterFloweringMm",
  "transpirationDemandMm",
  "metBeforeFlowering",
  "metAtFlowering",
  "metAfterFlowering",
  "metAroundFlowering",
  "finalRootDepthMm",
  "storedAtSowingMm",
  "balanceErrorMm",
  "fallowRainMm",
  "fallowGainMm",
];

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

/** All runs of a scenario. `onProgress` hears of every run done. */
export function runEnsemble(
  scenario: Scenario,
  onProgress?: (done: number, total: number) => void,
): Ensemble {
  const ensemble = emptyEnsemble(prepare(scenario));
  const { preparation, runs, byRainTotal } = ensemble;
  const totals = byRainTotal.length;
  const buffers = makeRunBuffers("sums");
  for (let run = 0; run < runs; run++) {
    const ready = readyRun(preparation, run);
    for (let t = 0; t < totals; t++) {
      runInto(ensemble, run, t, ready, buffers);
      onProgress?.(run * totals + t + 1, runs * totals);
    }
  }
  return ensemble;
}

/** An ensemble before its first run, all results 0; `runInto` fills it in any order. */
export function emptyEnsemble(preparation: Preparation): Ensemble {
  const { scenario, rainTotalsMm, yearByRun } = preparation;
  const runs = yearByRun.length;
  const byRainTotal = rainTotalsMm.map((total, t) =>
    emptyResults(total, scenario.cases, runs, annualRain(preparation, t)),
  );
  return { preparation, runs, byRainTotal };
}

/** Runs every case of one run at one of the totals and writes the results down; what it returns is the buffers's. */
export function runInto(
  { preparation, byRainTotal }: Ensemble,
  run: number,
  totalIndex: number,
  ready: readonly ReadyCase[],
  buffers: RunBuffers,
): CaseAfterRun[] {
  const after = runAtRain(preparation, ready, totalIndex, buffers);
  note(byRainTotal[totalIndex]!, run, after, preparation.drawsByRun[run]!, preparation.scenario);
  return after;
}

/** More runs' soils are not worth the room they take. */
const soilsKept = 400;

/** One run's cases, cut and filled: the same for every rainfall total. */
export function readyRun(preparation: Preparation, run: number): ReadyCase[] {
  const { scenario, weatherYears, yearByRun, drawsByRun, courseCacheByCase, fullStand, soilCacheByCase } =
    preparation;
  const { sowingIndexByCase } = yearByRun[run]!;
  return scenario.cases.map((plan, c) => {
    const sowingIndex = sowingIndexByCase[c]!;
    const course = courseFrom(courseCacheByCase[c]!, plan, weatherYears, sowingIndex);
    const soils = soilCacheByCase[c]!;
    const soil = soils.get(run) ?? readySoil(plan, drawsByRun[run]!, scenario.ensemble.deepBelowMm);
    if (run < soilsKept) soils.set(run, soil);
    return {
      plan,
      course,
      firstIndex: sowingIndex - plan.fallowDays,
      startWaterMm: soil.startWaterMm,
      uptake: soil.uptake,
      slices: hinderedAsDug(preparation, c, run, soil.slices),
      fullStandCourse:
        c > 0 || fullStand === null
          ? null
          : courseFrom(fullStand.courseCache, fullStand.plan, weatherYears, sowingIndex),
    };
  });
}

function courseFrom(
  courseCache: CourseCache,
  plan: Case,
  weatherYears: WeatherYears,
  sowingIndex: number,
): CropCourse {
  const course = courseCache.get(sowingIndex) ?? workedOutCourse(plan, weatherYears, sowingIndex);
  courseCache.set(sowingIndex, course);
  return course;
}

/** The weather of a run is worked out first, for the course and for the run itself. */
function workedOutCourse(plan: Case, { weather, workOut }: WeatherYears, sowingIndex: number): CropCourse {
  workOut(
    sowingIndex - plan.fallowDays,
    sowingIndex + longestSeasonDays(plan.crop, weather.hasTemperature) + 1,
  );
  return courseOf(plan, weather, sowingIndex);
}

/**
 * Where a dig decides and can be met, its draw of this run takes the place of what density or penetrometer suggest. A case that
 * was not dug and leaves that layer as it is has the same soil there, and the same draw.
 */
export function hinderedAsDug(
  { scenario, digFit, drawsByRun }: Preparation,
  c: number,
  run: number,
  slices: Slices,
): Slices {
  if (scenario.evidence?.dig?.drives !== true) return slices;
  const found = digFit();
  const place = found?.servedBy[c] ?? null;
  if (found === null || place === null) return slices;
  // The soil is cached without the dig.
  const own = { ...slices, passage: slices.passage.slice(), rootsLeft: slices.rootsLeft.slice() };
  const { openness } = drawsByRun[run]!;
  hinderBy(own, scenario.cases[c]!.layers, found.fitted, found.cases[place]!.draws[run]!, openness);
  return own;
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

/** One run of every case at one of the rainfall totals. */
export function runAtRain(
  { weatherYears }: Preparation,
  ready: readonly ReadyCase[],
  totalIndex: number,
  buffers: RunBuffers = makeRunBuffers(),
): CaseAfterRun[] {
  return runCases(ready, weatherYears.weatherByTotal[totalIndex]!, buffers);
}

function emptyResults(
  rainTotalMm: number | null,
  cases: Scenario["cases"],
  runs: number,
  annualRainMmByRun: Float64Array | null,
): EnsembleAtRain {
  const column = () => new Float64Array(runs);
  return {
    rainTotalMm,
    annualRainMmByRun,
    cases: cases.map(({ name }: Case) => ({
      name,
      byRun: Object.fromEntries(totalNames.map((key) => [key, column()])) as CaseRuns["byRun"],
      yieldKgPerHaByRun: column(),
      unripeByRun: new Uint8Array(runs),
    })),
    pairs: cases.slice(1).map(() => ({ ruleOfThumbMmByRun: column(), storedInExtraDepthMmByRun: column() })),
  };
}

/** Rain of each run's calendar year of sowing, mm; null where one of those years is not whole. */
export function annualRain(
  { weatherYears, yearByRun }: Preparation,
  totalIndex: number,
): Float64Array | null {
  const { firstDay, days, rainMm } = weatherYears.weatherByTotal[totalIndex]!;
  const annual = new Float64Array(yearByRun.length);
  for (const [run, { year }] of yearByRun.entries()) {
    const from = dayNumber(year, 1, 1) - firstDay;
    const to = dayNumber(year + 1, 1, 1) - firstDay;
    if (from < 0 || to > days) return null;
    annual[run] = sumOver(rainMm, from, to - 1);
  }
  return annual;
}

function note(
  results: EnsembleAtRain,
  run: number,
  after: readonly CaseAfterRun[],
  { slope }: RunDraws,
  { yieldLine }: Scenario,
): void {
  const first = after[0]!.totals;
  after.forEach(({ totals, course, ordinaryEvaporationMm }, c) => {
    const kept = results.cases[c]!;
    for (const key of totalNames) kept.byRun[key][run] = totals[key];
    kept.unripeByRun[run] = course.ripe ? 0 : 1;
    kept.yieldKgPerHaByRun[run] = yieldOfRun(yieldLine, slope, totals, ordinaryEvaporationMm);
  });
  const from = first.finalRootDepthMm;
  after.slice(1).forEach((later, p) => {
    const pair = results.pairs[p]!;
    const to = later.totals.finalRootDepthMm;
    // The extra depth is soil of the case whose roots are in it.
    const deeper = to >= from ? later : after[0]!;
    pair.ruleOfThumbMmByRun[run] = capacityBetweenMm(deeper.slices, from, to);
    const { slices, waterAtSowingMmBySlice } = deeper;
    pair.storedInExtraDepthMmByRun[run] = storedBetweenMm(slices, waterAtSowingMmBySlice, from, to);
  });
}
