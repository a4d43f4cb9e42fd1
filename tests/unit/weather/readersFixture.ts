import { readFileSync } from "node:fs";
import { InputError } from "../../../src/problem.ts";
import { dayNumber } from "../../../src/weather/calendar.ts";
import type { Element } from "../../../src/weather/readers/element.ts";
import { readWeather, type ReadOptions } from "../../../src/weather/readers/index.ts";
import type { WeatherRecord } from "../../../src/weather/record.ts";

/** Text of an invented file in tests/fixtures/weather. */
export function fixture(name: string): string {
  return readFileSync(new URL(`../../fixtures/weather/${name}`, import.meta.url), "utf8");
}

/** Reads text under a name that says nothing. */
export function read(text: string, options: Partial<ReadOptions> = {}): WeatherRecord {
  return readWeather(text, { fileName: "file", ...options });
}

/** The lines that a person would see. */
export function complaintsOf(act: () => unknown): string[] {
  try {
    act();
  } catch (error) {
    if (error instanceof InputError) return error.message.split("\n");
    throw error;
  }
  return [];
}

/** A record from figures by day, NaN where missing. Starts on 2020-01-01 unless said. */
export function recordOf(
  arrays: Partial<Record<Element, readonly number[]>> & { readonly rainMm: readonly number[] },
  firstDay = dayNumber(2020, 1, 1),
): WeatherRecord {
  const array = (element: Element) =>
    arrays[element] === undefined ? null : Float64Array.from(arrays[element]);
  return {
    firstDay,
    days: arrays.rainMm.length,
    rainMm: Float64Array.from(arrays.rainMm),
    tMaxC: array("tMaxC"),
    tMinC: array("tMinC"),
    solarMjPerM2: array("solarMjPerM2"),
    rhMaxPercent: array("rhMaxPercent"),
    rhMinPercent: array("rhMinPercent"),
    rhMeanPercent: array("rhMeanPercent"),
    dewPointC: array("dewPointC"),
    wind2mMPerS: array("wind2mMPerS"),
    referenceEtMm: array("referenceEtMm"),
    station: { id: "X", name: "Invented", format: "made by a test", latitudeDeg: null, elevationM: null },
    notes: [],
  };
}
