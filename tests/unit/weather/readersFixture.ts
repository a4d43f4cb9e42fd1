import { readFileSync } from "node:fs";
import { InputError } from "../../../src/problem.ts";
import { dayNumber } from "../../../src/quantity/calendar.ts";
import type { Element } from "../../../src/weather/records/readers/element.ts";
import { readWeather, type ReadOptions } from "../../../src/weather/records/readers/index.ts";
import { emptyRecord, type WeatherRecord } from "../../../src/weather/records/record.ts";

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
  const station = {
    id: "X",
    name: "Invented",
    format: "made by a test",
    latitudeDeg: null,
    elevationM: null,
  };
  const given = Object.entries(arrays).map(([element, values]) => [element, Float64Array.from(values)]);
  return { ...emptyRecord(firstDay, arrays.rainMm.length, station), ...Object.fromEntries(given) };
}
