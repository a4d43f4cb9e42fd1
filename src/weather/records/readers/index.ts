import { refuse } from "../../../problem.ts";
import type { WeatherRecord } from "../record.ts";
import * as ghcnCsv from "./formats/ghcnCsv.ts";
import * as ghcnDly from "./formats/ghcnDly.ts";
import * as gridmet from "./formats/gridmet.ts";
import { firstLines, openTable, plainText } from "./lines.ts";
import * as nasaPower from "./formats/nasaPower.ts";
import type { ReadOptions } from "./options.ts";
import * as plain from "./formats/plain.ts";
import * as uscrn from "./formats/uscrn.ts";

export type { ReadOptions, WeatherUnits } from "./options.ts";

/** Formats known by their first lines. */
const textReaders = [
  { knows: ghcnDly.knows, read: ghcnDly.read },
  { knows: uscrn.knowsFixed, read: uscrn.readFixed },
  { knows: nasaPower.knows, read: nasaPower.read },
];

/** Formats known by their header; the plain table last, since it takes what names its columns. */
const tableReaders = [
  { knows: ghcnCsv.knows, read: ghcnCsv.read, asksUnits: true },
  { knows: uscrn.knowsCsv, read: uscrn.readCsv, asksUnits: false },
  { knows: gridmet.knows, read: gridmet.read, asksUnits: false },
  { knows: plain.knows, read: plain.read, asksUnits: true },
];

/** The formats that are read, in words. */
export const weatherFormats: readonly string[] = [
  ghcnCsv.formatName,
  ghcnDly.formatName,
  uscrn.fixedName,
  uscrn.csvName,
  nasaPower.formatName,
  gridmet.formatName,
  `${plain.formatName} (such as date,rain_mm,tmax_C,tmin_C)`,
];

/**
 * Daily weather from the text of a file. The format is told by the content, never by the file's name.
 *
 * Every figure is in the units of `WeatherRecord`; NaN where missing. What was done on the way stands in `notes`.
 * Throws an InputError that names lines, up to twelve and the number of the rest.
 */
export function readWeather(text: string, options: ReadOptions): WeatherRecord {
  const clean = plainText(text, options.fileName);
  const lines = firstLines(clean, 3);
  const textReader = textReaders.find(({ knows }) => knows(lines));
  if (textReader !== undefined)
    return withListedNote(withUnitsNote(textReader.read(clean, options), options), options);
  const table = openTable(clean);
  const tableReader = table === null ? undefined : tableReaders.find(({ knows }) => knows(table));
  if (table !== null && tableReader !== undefined) {
    const record = tableReader.read(table, options);
    return tableReader.asksUnits ? record : withUnitsNote(record, options);
  }
  return refuse(
    options.fileName,
    `a daily weather record in one of these formats: ${weatherFormats.join("; ")}`,
    (lines[0] ?? "").slice(0, 200),
    "give one of them, or name the columns as in the last",
  );
}

/** Says that days without a line were told of for a format that has one for every day. */
function withListedNote(record: WeatherRecord, { daysNotListed }: ReadOptions): WeatherRecord {
  if (daysNotListed !== "dry") return record;
  const note = `${record.station.format} lists every day: weather.daysNotListed (dry) is not used.`;
  return { ...record, notes: [...record.notes, note] };
}

/** Says that units were stated for a format that has its own. */
function withUnitsNote(record: WeatherRecord, { units }: ReadOptions): WeatherRecord {
  if (units === undefined) return record;
  const note = `${record.station.format} has units of its own: weather.units (${units}) is not used.`;
  return { ...record, notes: [...record.notes, note] };
}
