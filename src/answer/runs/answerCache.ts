import type { CropCourse } from "../../crop/course.ts";
import type { FrontResponse } from "../dig/digResponse.ts";
import type { Case, EnsemblePlan } from "../../scenario/scenario.ts";
import { drawDays, serves, type GeneratorDraws } from "../../weather/generate/generatorDraws.ts";
import type { ReadySoil } from "./run.ts";
import type { WeatherOnDemand } from "../../weather/et/dailyWeather.ts";
import type { DailyWeather, WeatherRecord } from "../../weather/records/record.ts";

/**
 * What is worth keeping from one answer to the next: while only the soil is changed, weather with the reference ET worked out
 * so far and the crop's course in each year; while the normals are changed, what generated days draw whatever the normals are.
 * The caller owns it; answers are the same with a new one.
 */
export interface AnswerCache {
  weather: CachedWeather | null;
  /** Courses by sowing index, a map for each crop and length of fallow. All belong to `weather`. */
  courses: Map<string, CourseCache>;
  draws: GeneratorDraws | null;
  generated: Generated | null;
  /** Soils cut and filled, a map for each soil, rule of uptake and way of drawing; they do not depend on the weather. */
  soils: Map<string, SoilCache>;
  /** Sowing years that fit into the weather, with the window they make. */
  sown: OfWeather<unknown> | null;
  /** The weather at each total. */
  scaled: OfWeather<unknown> | null;
  /** How the front answers to what a dig fits. */
  response: CachedResponse | null;
}

/** Generated years before their reference ET, and what they were generated from. */
export interface Generated {
  readonly key: string;
  readonly record: WeatherRecord;
}

/** Worked out from this very weather, and from what the key tells. */
interface OfWeather<T> {
  readonly weather: DailyWeather;
  readonly key: string;
  readonly value: T;
}

interface CachedResponse {
  readonly key: string;
  readonly weather: DailyWeather;
  readonly response: FrontResponse | null;
}

export interface CachedWeather {
  /** All but the record that the weather is worked out from. */
  readonly key: string;
  /** Null where the weather is generated from what the key tells. */
  readonly record: WeatherRecord | null;
  readonly onDemand: WeatherOnDemand;
}

export type CourseCache = Map<number, CropCourse>;
/** By run. */
export type SoilCache = Map<number, ReadySoil>;

export function newAnswerCache(): AnswerCache {
  return {
    weather: null,
    courses: new Map(),
    draws: null,
    generated: null,
    soils: new Map(),
    sown: null,
    scaled: null,
    response: null,
  };
}

/** The weather cached, or made and cached; other weather makes the courses void. */
export function cachedWeather(
  cache: AnswerCache,
  key: string,
  record: WeatherRecord | null,
  make: () => WeatherOnDemand,
): WeatherOnDemand {
  const known = cache.weather;
  if (known !== null && known.key === key && sameRecord(known.record, record)) return known.onDemand;
  const onDemand = make();
  cache.weather = { key, record, onDemand };
  cache.courses = new Map();
  return onDemand;
}

/** The generated years cached, or generated and cached. */
export function cachedYears(cache: AnswerCache, key: string, generate: () => WeatherRecord): WeatherRecord {
  if (cache.generated?.key !== key) cache.generated = { key, record: generate() };
  return cache.generated.record;
}

/** The soils of each case; those of no case any more are cleared away. */
export function cachedSoils(cache: AnswerCache, cases: readonly Case[], plan: EnsemblePlan): SoilCache[] {
  const { years: _years, ...draws } = plan;
  const kept = new Map<string, SoilCache>();
  const soils = cases.map(({ layers, sliceThicknessMm, startingWater, ground, uptake }) => {
    const { evaporatingDepthMm } = ground;
    const key = JSON.stringify([layers, sliceThicknessMm, startingWater, evaporatingDepthMm, uptake, draws]);
    const own = kept.get(key) ?? cache.soils.get(key) ?? new Map<number, ReadySoil>();
    kept.set(key, own);
    return own;
  });
  cache.soils = kept;
  return soils;
}

/** What was worked out from the same weather, cached or worked out and cached. */
export function cachedOfWeather<T>(
  cache: AnswerCache,
  what: "sown" | "scaled",
  weather: DailyWeather,
  key: string,
  workOut: () => T,
): T {
  const known = cache[what] as OfWeather<T> | null;
  if (known !== null && known.weather === weather && known.key === key) return known.value;
  const value = workOut();
  cache[what] = { weather, key, value };
  return value;
}

/** The response cached, or worked out and cached. The weather's rain is compared, as it is scaled anew each time. */
export function cachedResponse(
  cache: AnswerCache,
  weather: DailyWeather,
  key: string,
  workOut: () => FrontResponse | null,
): FrontResponse | null {
  const known = cache.response;
  if (
    known?.key === key &&
    sameNumbers(known.weather.rainMm, weather.rainMm) &&
    sameNumbers(known.weather.et0Mm, weather.et0Mm)
  )
    return known.response;
  const response = workOut();
  cache.response = { key, weather, response };
  return response;
}

/** Draws for at least so many days, cached or made and cached. */
export function cachedDraws(cache: AnswerCache, seed: number, days: number): GeneratorDraws {
  if (!serves(cache.draws, seed, days)) cache.draws = drawDays(seed, days);
  return cache.draws;
}

/** The courses of each case; those of no case any more are cleared away. */
export function cachedCourses(cache: AnswerCache, cases: readonly Case[]): CourseCache[] {
  const kept = new Map<string, CourseCache>();
  const courses = cases.map(({ crop, fallowDays }) => {
    const key = JSON.stringify([crop, fallowDays]);
    const own = kept.get(key) ?? cache.courses.get(key) ?? new Map<number, CropCourse>();
    kept.set(key, own);
    return own;
  });
  cache.courses = kept;
  return courses;
}

/** Whether two readings hold the same, number for number. */
function sameRecord(a: WeatherRecord | null, b: WeatherRecord | null): boolean {
  if (a === b) return true;
  if (a === null || b === null) return false;
  return (Object.keys(a) as (keyof WeatherRecord)[]).every((key) => {
    const [left, right] = [a[key], b[key]];
    if (left instanceof Float64Array && right instanceof Float64Array) return sameNumbers(left, right);
    return JSON.stringify(left) === JSON.stringify(right);
  });
}

function sameNumbers(a: Float64Array, b: Float64Array): boolean {
  if (a === b) return true;
  if (a.length !== b.length) return false;
  for (let i = 0; i < a.length; i++) if (!Object.is(a[i], b[i])) return false;
  return true;
}
