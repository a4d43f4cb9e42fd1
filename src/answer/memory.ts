import type { CropCourse } from "../crop/course.ts";
import type { Case } from "../scenario/scenario.ts";
import { drawDays, serves, type GeneratorDraws } from "../weather/generatorDraws.ts";
import type { DailyWeather, WeatherRecord } from "../weather/record.ts";

/**
 * What is worth keeping from one answer to the next: while only the soil is changed, weather with its reference ET and the
 * crop's course in each year; while the normals are changed, what generated days draw whatever the normals are. The caller
 * owns it; answers are the same with a new one.
 */
export interface Memory {
  weather: KnownWeather | null;
  /** Courses by sowing index, on a shelf for each crop and length of fallow. All belong to `weather`. */
  shelves: Map<string, CourseShelf>;
  draws: GeneratorDraws | null;
  /** Generated years before their reference ET. */
  generated: { readonly key: string; readonly record: WeatherRecord } | null;
}

export interface KnownWeather {
  /** All but the record that the weather is worked out from. */
  readonly key: string;
  /** Null where the weather is generated from what the key tells. */
  readonly record: WeatherRecord | null;
  readonly weather: DailyWeather;
}

export type CourseShelf = Map<number, CropCourse>;

export function newMemory(): Memory {
  return { weather: null, shelves: new Map(), draws: null, generated: null };
}

/** The weather remembered, or worked out and remembered; other weather makes the courses void. */
export function recallWeather(
  memory: Memory,
  key: string,
  record: WeatherRecord | null,
  workOut: () => DailyWeather,
): DailyWeather {
  const known = memory.weather;
  if (known !== null && known.key === key && sameRecord(known.record, record)) return known.weather;
  const weather = workOut();
  memory.weather = { key, record, weather };
  memory.shelves = new Map();
  return weather;
}

/** The generated years remembered, or generated and remembered. */
export function recallGenerated(memory: Memory, key: string, generate: () => WeatherRecord): WeatherRecord {
  if (memory.generated?.key !== key) memory.generated = { key, record: generate() };
  return memory.generated.record;
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
  if (a.length !== b.length) return false;
  for (let i = 0; i < a.length; i++) if (!Object.is(a[i], b[i])) return false;
  return true;
}
