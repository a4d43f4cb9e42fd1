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
export interface Memory {
  weather: KnownWeather | null;
  /** Courses by sowing index, on a shelf for each crop and length of fallow. All belong to `weather`. */
  shelves: Map<string, CourseShelf>;
  draws: GeneratorDraws | null;
  generated: Generated | null;
  /** Soils cut and filled, on a shelf for each soil, rule of uptake and way of drawing; they do not depend on the weather. */
  soils: Map<string, SoilShelf>;
  /** Sowing years that fit into the weather, with the window they make. */
  sown: OfWeather<unknown> | null;
  /** The weather at each total. */
  scaled: OfWeather<unknown> | null;
  /** How the front answers to what a dig fits. */
  response: KnownResponse | null;
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

interface KnownResponse {
  readonly key: string;
  readonly weather: DailyWeather;
  readonly response: FrontResponse | null;
}

export interface KnownWeather {
  /** All but the record that the weather is worked out from. */
  readonly key: string;
  /** Null where the weather is generated from what the key tells. */
  readonly record: WeatherRecord | null;
  readonly onDemand: WeatherOnDemand;
}

export type CourseShelf = Map<number, CropCourse>;
/** By run. */
export type SoilShelf = Map<number, ReadySoil>;

export function newMemory(): Memory {
  return {
    weather: null,
    shelves: new Map(),
    draws: null,
    generated: null,
    soils: new Map(),
    sown: null,
    scaled: null,
    response: null,
  };
}

/** The weather remembered, or made and remembered; other weather makes the courses void. */
export function recallWeather(
  memory: Memory,
  key: string,
  record: WeatherRecord | null,
  make: () => WeatherOnDemand,
): WeatherOnDemand {
  const known = memory.weather;
  if (known !== null && known.key === key && sameRecord(known.record, record)) return known.onDemand;
  const onDemand = make();
  memory.weather = { key, record, onDemand };
  memory.shelves = new Map();
  return onDemand;
}

/** The generated years remembered, or generated and remembered. */
export function recallGenerated(memory: Memory, key: string, generate: () => WeatherRecord): WeatherRecord {
  if (memory.generated?.key !== key) memory.generated = { key, record: generate() };
  return memory.generated.record;
}

/** The shelf of each case's soils; those of no case any more are cleared away. */
export function recallSoils(memory: Memory, cases: readonly Case[], plan: EnsemblePlan): SoilShelf[] {
  const { years: _years, ...draws } = plan;
  const kept = new Map<string, SoilShelf>();
  const shelves = cases.map(({ layers, sliceThicknessMm, startingWater, ground, uptake }) => {
    const { evaporatingDepthMm } = ground;
    const key = JSON.stringify([layers, sliceThicknessMm, startingWater, evaporatingDepthMm, uptake, draws]);
    const shelf = kept.get(key) ?? memory.soils.get(key) ?? new Map<number, ReadySoil>();
    kept.set(key, shelf);
    return shelf;
  });
  memory.soils = kept;
  return shelves;
}

/** What was worked out from the same weather, remembered or worked out and remembered. */
export function recallOfWeather<T>(
  memory: Memory,
  what: "sown" | "scaled",
  weather: DailyWeather,
  key: string,
  workOut: () => T,
): T {
  const known = memory[what] as OfWeather<T> | null;
  if (known !== null && known.weather === weather && known.key === key) return known.value;
  const value = workOut();
  memory[what] = { weather, key, value };
  return value;
}

/** The response remembered, or worked out and remembered. The weather's rain is compared, as it is scaled anew each time. */
export function recallResponse(
  memory: Memory,
  weather: DailyWeather,
  key: string,
  workOut: () => FrontResponse | null,
): FrontResponse | null {
  const known = memory.response;
  if (
    known?.key === key &&
    sameNumbers(known.weather.rainMm, weather.rainMm) &&
    sameNumbers(known.weather.et0Mm, weather.et0Mm)
  )
    return known.response;
  const response = workOut();
  memory.response = { key, weather, response };
  return response;
}

/** Draws for at least so many days, remembered or made and remembered. */
export function recallDraws(memory: Memory, seed: number, days: number): GeneratorDraws {
  if (!serves(memory.draws, seed, days)) memory.draws = drawDays(seed, days);
  return memory.draws;
}

/** The shelf of each case; those of no case any more are cleared away. */
export function recallShelves(memory: Memory, cases: readonly Case[]): CourseShelf[] {
  const kept = new Map<string, CourseShelf>();
  const shelves = cases.map(({ crop, fallowDays }) => {
    const key = JSON.stringify([crop, fallowDays]);
    const shelf = kept.get(key) ?? memory.shelves.get(key) ?? new Map<number, CropCourse>();
    kept.set(key, shelf);
    return shelf;
  });
  memory.shelves = kept;
  return shelves;
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
