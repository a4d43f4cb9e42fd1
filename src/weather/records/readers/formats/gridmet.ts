import { refuse } from "../../../../problem.ts";
import type { WeatherRecord } from "../../record.ts";
import { conversionFrom } from "../../units.ts";
import { dayFromDate } from "../dateColumns.ts";
import { numberFrom, type Column } from "../dayRows.ts";
import { elements, fromHeight, type Element } from "../element.ts";
import { cellsOf, columnAt, eachLine, isAside, type Table } from "../lines.ts";
import type { ReadOptions } from "../options.ts";
import { latitudeOf, missingMarks, recordFromTable } from "../table.ts";

/**
 * Daily gridded weather under the names of gridMET: `pr` mm, `rmax` `rmin` %, `vs` m/s at 10 m, `eto` mm always;
 * `tmmx` `tmmn` in K and `srad` in W/m2 as published, or °C and MJ/m2 a day as often passed on. Which of the two, the
 * figures show beyond doubt (no day of 100 °C, no daily 45 MJ/m2), and it is said.
 * Source: [Abatzoglou 2013, gridMET] (names and units from memory, checked on one ten-year file).
 */
export const formatName = "gridMET daily columns";

const elementByName: Readonly<Record<string, Element>> = {
  pr: "rainMm",
  tmmx: "tMaxC",
  tmmn: "tMinC",
  rmax: "rhMaxPercent",
  rmin: "rhMinPercent",
  srad: "solarMjPerM2",
  vs: "wind2mMPerS",
  eto: "referenceEtMm",
};

/** Below so many days even W/m2 may stay under 45 all winter. */
const daysToTellSolar = 90;

export function knows({ header }: Table): boolean {
  const has = (name: string) => columnAt(header, name) >= 0;
  return has("pr") && has("tmmx") && has("tmmn") && dateAt(header) >= 0;
}

const dateAt = (header: readonly string[]) => columnAt(header, "timestamp", "date", "day", "time");

export function read(table: Table, options: ReadOptions): WeatherRecord {
  const { header } = table;
  const units = unitsShown(table, options.fileName);
  const columns = Object.entries(elementByName).flatMap(([name, element]): Column[] => {
    const index = columnAt(header, name);
    if (index < 0) return [];
    const conversion = conversionFrom(units[name] ?? elements[element].unit, elements[element].quantity)!;
    return [
      { index, name, figure: element, conversion: fromHeight(conversion, name === "vs" ? 10 : 2), flags: -1 },
    ];
  });
  const latitudeAt = columnAt(header, "latitude", "lat");
  const longitudeAt = columnAt(header, "longitude", "lon");
  const pointOf = (cells: readonly string[]) => [`${cells[latitudeAt]}, ${cells[longitudeAt]}`, ""] as const;
  const record = recordFromTable(table, options, {
    plan: {
      ...dayFromDate(table, dateAt(header), 0, options.fileName),
      columns,
      missing: missingMarks,
      stationOf: latitudeAt < 0 || longitudeAt < 0 ? null : pointOf,
      skip: 0,
    },
    known: [latitudeAt, longitudeAt, dateAt(header), columnAt(header, "id"), columnAt(header, "doy")],
    station: { format: formatName, latitudeDeg: null, elevationM: null },
    notes: [
      `Temperatures read in ${units.tmmx === "K" ? "K" : "°C"}${units.srad === undefined ? "" : `, radiation in ${units.srad}`}, which the figures show.`,
      ...(columnAt(header, "vs") < 0 ? [] : ["Wind at 10 m (vs) brought to 2 m (FAO-56 eq. 47)."]),
    ],
    marksDefined: true,
  });
  const latitudeDeg = latitudeAt < 0 ? null : latitudeOf(numberFrom(record.station.id.split(",")[0]!));
  return { ...record, station: { ...record.station, latitudeDeg } };
}

/** Units of temperature and radiation from their highest figures. */
function unitsShown(
  table: Table,
  fileName: string,
): { tmmx: string; tmmn: string; srad?: string } & Record<string, string | undefined> {
  const { header, delimiter } = table;
  const sradAt = columnAt(header, "srad");
  const tMaxAt = columnAt(header, "tmmx");
  let warmest = -Infinity;
  let brightest = -Infinity;
  let days = 0;
  eachLine(table.text, table.body, (line) => {
    if (isAside(line)) return;
    const cells = cellsOf(line, delimiter);
    warmest = Math.max(warmest, numberFrom(cells[tMaxAt] ?? "") || -Infinity);
    brightest = Math.max(brightest, numberFrom(cells[sradAt] ?? "") || -Infinity);
    days++;
  });
  const inKelvin = warmest > 100;
  const temperature = inKelvin ? "K" : "C";
  if (sradAt < 0) return { tmmx: temperature, tmmn: temperature };
  if (brightest > 45 || inKelvin) return { tmmx: temperature, tmmn: temperature, srad: "W/m2" };
  if (days < daysToTellSolar) {
    const expected = `${daysToTellSolar} days or more, to tell W/m2 from MJ/m2 in srad`;
    refuse(
      fileName,
      expected,
      days,
      "rename the columns with their units, such as pr_mm, tmmx_C, srad_MJ/m2",
    );
  }
  return { tmmx: temperature, tmmn: temperature, srad: "MJ/m2" };
}
