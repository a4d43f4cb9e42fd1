import { existsSync, readFileSync } from "node:fs";
import table from "../../data-reference/rain-gauges.json" with { type: "json" };
import type { MonthSpan } from "../../src/weather/generate/rainCharacter.ts";
import { readWeather } from "../../src/weather/records/readers/index.ts";
import type { MonthlyNormals, WeatherRecord } from "../../src/weather/records/record.ts";
import { filledNormals, recordNormals } from "../../src/weather/generate/recordNormals.ts";
import { lindonNormals } from "./lindon.ts";

const folder = "../shared/data";
export const gaugesAbsent = !existsSync(folder);
export const orSkipped = gaugesAbsent ? ` (skipped: ${folder} is absent)` : "";

/** An open gauge, as data-reference/rain-gauges.json lists it. */
export type Gauge = (typeof table.gauges)[number];

export const gauges: readonly Gauge[] = table.gauges;

/** Checked, and long enough for means of years. */
export const longGauge = ({ checked, measured }: Gauge): boolean => checked && measured.wholeYears >= 8;

export const spanOf = ({ fromMonth, toMonth }: Gauge): MonthSpan => ({ fromMonth, toMonth });

/** Its record. Needs the folder of open data. */
export function gaugeRecord({ file }: Gauge): WeatherRecord {
  return readWeather(withoutTurnedTemperatures(readFileSync(`${folder}/${file}`, "utf8")), {
    fileName: file,
    ...(file.includes("us-units") ? { units: "us" as const } : {}),
  });
}

/** Two days of the Dubois record have the lowest temperature above the highest: left empty, as the reader advises. */
function withoutTurnedTemperatures(text: string): string {
  if (!text.startsWith("date,rain_mm,tmax_c,tmin_c")) return text;
  return text.replace(
    /^(\d{4}-\d\d-\d\d,[^,\n]*),([^,\n]*),([^,\n]*)$/gm,
    (line, rain: string, high: string, low: string) =>
      high !== "" && low !== "" && Number(low) > Number(high) ? `${rain},,` : line,
  );
}

/** Its own normals; what it never measured stands in from Lindon, Colorado (see lindon.ts). */
export function gaugeNormals(record: WeatherRecord): MonthlyNormals {
  return filledNormals(recordNormals(record), lindonNormals);
}
