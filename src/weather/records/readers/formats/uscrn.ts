import type { WeatherRecord } from "../../record.ts";
import { dayFromDate } from "../dateColumns.ts";
import { numberFrom, type Column } from "../dayRows.ts";
import type { Element } from "../element.ts";
import { cellsOf, columnAt, firstLines, type Delimiter, type Table } from "../lines.ts";
import type { ReadOptions } from "../options.ts";
import { latitudeOf, missingMarks, recordFromTable } from "../table.ts";

/**
 * U.S. Climate Reference Network daily01: fixed width (28 columns parted by blanks, no header) and CSV under the
 * network's names. °C, mm, MJ/m2, %; missing -9999 and -99. Holds soil moisture beside the weather; no wind.
 * Source: [NOAA, USCRN daily01 readme] (names and files read; order of columns from memory, checked on six files).
 */
export const fixedName = "NOAA USCRN daily01, fixed width";
export const csvName = "NOAA USCRN daily01, CSV";

const fixedNames = (
  "WBANNO LST_DATE CRX_VN LONGITUDE LATITUDE T_DAILY_MAX T_DAILY_MIN T_DAILY_MEAN T_DAILY_AVG P_DAILY_CALC " +
  "SOLARAD_DAILY SUR_TEMP_DAILY_TYPE SUR_TEMP_DAILY_MAX SUR_TEMP_DAILY_MIN SUR_TEMP_DAILY_AVG RH_DAILY_MAX " +
  "RH_DAILY_MIN RH_DAILY_AVG SOIL_MOISTURE_5_DAILY SOIL_MOISTURE_10_DAILY SOIL_MOISTURE_20_DAILY " +
  "SOIL_MOISTURE_50_DAILY SOIL_MOISTURE_100_DAILY SOIL_TEMP_5_DAILY SOIL_TEMP_10_DAILY SOIL_TEMP_20_DAILY " +
  "SOIL_TEMP_50_DAILY SOIL_TEMP_100_DAILY"
).split(" ");

const elementByName: Readonly<Record<string, Element>> = {
  P_DAILY_CALC: "rainMm",
  T_DAILY_MAX: "tMaxC",
  T_DAILY_MIN: "tMinC",
  SOLARAD_DAILY: "solarMjPerM2",
  RH_DAILY_MAX: "rhMaxPercent",
  RH_DAILY_MIN: "rhMinPercent",
  RH_DAILY_AVG: "rhMeanPercent",
};

const linePattern = /^ *\d{5} +\d{8} +-?[\d.]+ +-?\d+\.\d+ +-?\d+\.\d+ /;

export function knowsFixed(firstLines: readonly string[]): boolean {
  return firstLines.some((line) => linePattern.test(line));
}

export function knowsCsv({ header }: Table): boolean {
  return columnAt(header, "P_DAILY_CALC") >= 0 && dateAt(header) >= 0;
}

/** The fixed-width file is a table parted by blanks whose header is known. */
export function readFixed(text: string, options: ReadOptions): WeatherRecord {
  const body = { offset: 0, line: 1 };
  const table = { text, header: fixedNames, headerLine: 0, delimiter: " " as Delimiter, body, comments: [] };
  return read(table, options, fixedName);
}

export function readCsv(table: Table, options: ReadOptions): WeatherRecord {
  return read(table, options, csvName);
}

const dateAt = (header: readonly string[]) => columnAt(header, "LST_DATE", "DATE");

function read(table: Table, options: ReadOptions, format: string): WeatherRecord {
  const { text, body, header, delimiter } = table;
  const stationAt = columnAt(header, "WBANNO");
  const latitudeAt = columnAt(header, "LATITUDE");
  const columns = Object.entries(elementByName).flatMap(([name, figure]): Column[] => {
    const index = columnAt(header, name);
    return index < 0 ? [] : [{ index, name, figure, conversion: { scale: 1, offset: 0 }, flags: -1 }];
  });
  const comment = commentOf(table);
  const first = cellsOf(firstLines(text.slice(body.offset), 1)[0] ?? "", delimiter);
  const latitude = latitudeAt < 0 ? comment.latitude : numberFrom(first[latitudeAt] ?? "");
  const soil = header.some((name) => /^soil_/i.test(name));
  return recordFromTable(table, options, {
    plan: {
      ...dayFromDate(table, dateAt(header), 0, options.fileName),
      columns,
      missing: missingMarks,
      stationOf: stationAt < 0 ? null : (cells) => [cells[stationAt]!, ""],
      skip: 0,
    },
    known: header.map((_, index) => index), // the network's other columns are no news
    station: { id: comment.id, format, latitudeDeg: latitudeOf(latitude), elevationM: null },
    notes: soil ? ["Soil moisture and soil temperature in the file are not used."] : [],
    marksDefined: true,
  });
}

/** Station and latitude from a comment such as `# station 53182 latitude 36.57 longitude -101.61`. */
function commentOf({ comments }: Table): { id: string; latitude: number } {
  const all = comments.join(" ");
  const id = /\bstation\s+(\S+)/i.exec(all)?.[1] ?? "";
  return { id, latitude: Number(/\blatitude\s+(-?\d+(?:\.\d+)?)/i.exec(all)?.[1] ?? NaN) };
}
