import type { Site } from "../record.ts";

/**
 * Units of a file that does not state them: `us` inches, °F, mph; `metric` mm, °C, m/s; `tenths` tenths of mm, of °C
 * and of m/s, as in NOAA's archive of one file a station.
 */
export const weatherUnits = ["us", "metric", "tenths"] as const;
export type WeatherUnits = (typeof weatherUnits)[number];

/** What days are that a record has no line for. */
export const daysNotListed = ["missing", "dry"] as const;
export type DaysNotListed = (typeof daysNotListed)[number];

export interface ReadOptions {
  /** For messages only; what a file is, its content says. */
  readonly fileName: string;
  /** Identifier or name of the station, where a file holds several. */
  readonly station?: string | undefined;
  readonly units?: WeatherUnits | undefined;
  /** What days without a line are; left out: missing. A rain book may list only days with rain. */
  readonly daysNotListed?: DaysNotListed | undefined;
  /** First and last day to use, day numbers: a book of rainy days is taken to cover them. */
  readonly from?: number | undefined;
  readonly to?: number | undefined;
  /** To warn when the station lies far from it. */
  readonly site?: Site | undefined;
}

/** How the units are stated, for messages. */
export const howToStateUnits =
  'set weather.units in the scenario, or --weather-units, to "us" (inches, °F, mph), "metric" (mm, °C, m/s) or "tenths" (tenths of mm and °C)';
