/**
 * Daily weather as arrays indexed by day, day 0 being `firstDay` (src/quantity/calendar.ts).
 * A record is what a file holds; `DailyWeather` is what a season runs on.
 */
export interface WeatherRecord {
  readonly firstDay: number;
  readonly days: number;
  /** mm a day; NaN where missing. */
  readonly rainMm: Float64Array;
  /** Every other element: null where the file has none of it, NaN on days it lacks. */
  readonly tMaxC: Float64Array | null;
  readonly tMinC: Float64Array | null;
  readonly solarMjPerM2: Float64Array | null;
  readonly rhMaxPercent: Float64Array | null;
  readonly rhMinPercent: Float64Array | null;
  readonly rhMeanPercent: Float64Array | null;
  readonly dewPointC: Float64Array | null;
  /** Wind at 2 m. */
  readonly wind2mMPerS: Float64Array | null;
  /** Grass reference ET that the file brings along. */
  readonly referenceEtMm: Float64Array | null;
  readonly station: StationInfo;
  /** What was done or noticed while reading, in plain words, for the result. */
  readonly notes: readonly string[];
  /** Gaps longer than are filled as usual, where the record was taken with them: seasons that touch one are no seasons. */
  readonly longGaps?: readonly LongGap[];
}

export interface LongGap {
  readonly firstDay: number;
  readonly days: number;
  /** `rain 2020-03-01 to 2020-03-20 (20 days)` */
  readonly said: string;
}

/** A record that holds nothing yet: rain missing on every day, no other element. */
export function emptyRecord(firstDay: number, days: number, station: StationInfo): WeatherRecord {
  return {
    firstDay,
    days,
    rainMm: new Float64Array(days).fill(NaN),
    tMaxC: null,
    tMinC: null,
    solarMjPerM2: null,
    rhMaxPercent: null,
    rhMinPercent: null,
    rhMeanPercent: null,
    dewPointC: null,
    wind2mMPerS: null,
    referenceEtMm: null,
    station,
    notes: [],
  };
}

export interface StationInfo {
  readonly id: string;
  readonly name: string;
  /** The format it was read as, in words. */
  readonly format: string;
  readonly latitudeDeg: number | null;
  readonly elevationM: number | null;
}

export interface Site {
  /** North positive. */
  readonly latitudeDeg: number;
  readonly elevationM: number;
  /** For radiation from temperature (FAO-56 eq. 50): inland 0.16, coastal 0.19 per square root of a degree. */
  readonly setting: "inland" | "coastal";
}

/** No gaps, no NaN: what the season runs on. */
export interface DailyWeather {
  readonly firstDay: number;
  readonly days: number;
  readonly rainMm: Float64Array;
  readonly tMaxC: Float64Array;
  readonly tMinC: Float64Array;
  readonly tMeanC: Float64Array;
  readonly et0Mm: Float64Array;
  readonly rhMinPercent: Float64Array;
  readonly wind2mMPerS: Float64Array;
  /** False when the record has no temperatures: then nothing is snow and stages run on days. */
  readonly hasTemperature: boolean;
  /** How reference ET came about, in words, stated on every result. */
  readonly referenceEt: string;
  readonly notes: readonly string[];
}

/** The same weather with other rain. */
export function withRain(
  weather: DailyWeather,
  rainMm: Float64Array,
  notes: readonly string[],
): DailyWeather {
  // Field by field: the daily loop is compiled for one layout of this object.
  return {
    firstDay: weather.firstDay,
    days: weather.days,
    rainMm,
    tMaxC: weather.tMaxC,
    tMinC: weather.tMinC,
    tMeanC: weather.tMeanC,
    et0Mm: weather.et0Mm,
    rhMinPercent: weather.rhMinPercent,
    wind2mMPerS: weather.wind2mMPerS,
    hasTemperature: weather.hasTemperature,
    referenceEt: weather.referenceEt,
    notes,
  };
}

/** Usual temperatures of a place: twelve values each, January first. */
export interface MonthlyAir {
  readonly tMaxC: readonly number[];
  readonly tMinC: readonly number[];
}

/** What years can be generated from. */
export interface MonthlyNormals extends MonthlyAir {
  readonly rainMm: readonly number[];
  /** Days with 0.25 mm or more, where known. */
  readonly wetDays: readonly number[] | null;
}
