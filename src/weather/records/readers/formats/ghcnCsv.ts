import { InputError, type Problem } from "../../../../problem.ts";
import type { WeatherRecord } from "../../record.ts";
import { conversionFrom, type Conversion } from "../../units.ts";
import { dayFromDate } from "../dateColumns.ts";
import { numberFrom, type Column } from "../dayRows.ts";
import { factsOf, fromHeight, type Figure } from "../element.ts";
import { ghcnElements, windNote } from "./ghcnDly.ts";
import { cellsOf, columnAt, eachLine, isAside, type Table } from "../lines.ts";
import { spreadMultiDayRain } from "../multiDayRain.ts";
import { howToStateUnits, type ReadOptions, type WeatherUnits } from "../options.ts";
import { isWanted, stationProblem, type Stations } from "../stations.ts";
import { elevationOf, latitudeOf, missingMarks, recordFromTable } from "../table.ts";

/**
 * NOAA GHCN-Daily "daily summaries" CSV. The file does not state its units: the web order gives metric or US units, the
 * archive of one file a station tenths. `..._ATTRIBUTES` columns hold measurement, quality and source flags.
 * Source: columns seen in files as ordered (read); tenths in the archive from memory.
 */
export const formatName = 'NOAA GHCN-Daily "daily summaries" CSV';

export function knows({ header }: Table): boolean {
  const measured = Object.keys(ghcnElements).some((name) => header.includes(name));
  return measured && header.includes("STATION") && header.includes("DATE");
}

const unitTexts: Readonly<Record<WeatherUnits, Readonly<Record<string, string>>>> = {
  metric: { depth: "mm", temperature: "C", wind: "m/s" },
  us: { depth: "in", temperature: "F", wind: "mph" },
  tenths: { depth: "0.1 mm", temperature: "0.1 C", wind: "0.1 m/s" },
};

export function read(table: Table, options: ReadOptions): WeatherRecord {
  const { header } = table;
  const { units } = options;
  const at = (name: string) => columnAt(header, name);
  const nameAt = at("NAME");
  const looked = lookThrough(table, options, at("STATION"), nameAt);
  if (units === undefined) return askFor(looked, options);
  const columns = columnsOf(header, units);
  const places = ["STATION", "NAME", "DATE", "LATITUDE", "LONGITUDE", "ELEVATION"].map(at);
  const flags = header.map((name, index) => (name.endsWith("_ATTRIBUTES") ? index : -1));
  return recordFromTable(table, options, {
    plan: {
      ...dayFromDate(table, at("DATE"), 0, options.fileName),
      columns,
      missing: missingMarks,
      stationOf: (cells) => [cells[at("STATION")]!, nameAt < 0 ? "" : cells[nameAt]!],
      skip: 0,
    },
    known: [...places, ...flags],
    station: {
      format: `${formatName}, read in ${unitWords[units]} as stated`,
      latitudeDeg: latitudeOf(looked.latitude),
      // With US units the web order may write feet: not taken.
      elevationM: units === "us" ? null : elevationOf(looked.elevation),
    },
    notes: [...unitDoubts(looked, units), ...(columns.some(isWind) ? [windNote] : [])],
    marksDefined: true,
    adjust: ({ byFigure }) => spreadMultiDayRain(byFigure),
  });
}

const isWind = ({ figure }: Column) => figure === "wind2mMPerS";

const unitWords: Readonly<Record<WeatherUnits, string>> = {
  metric: "mm and °C",
  us: "inches and °F",
  tenths: "tenths of mm and °C",
};

function columnsOf(header: readonly string[], units: WeatherUnits): Column[] {
  return Object.entries(ghcnElements).flatMap(([name, { figure }]) => {
    const index = header.indexOf(name);
    if (index < 0) return [];
    const conversion = conversionOf(figure, units);
    return [{ index, name, figure, conversion, flags: header.indexOf(`${name}_ATTRIBUTES`) }];
  });
}

function conversionOf(figure: Figure, units: WeatherUnits): Conversion {
  if (figure === "multiDayRainDays") return { scale: 1, offset: 0 };
  const { quantity } = factsOf(figure);
  const conversion = conversionFrom(unitTexts[units][quantity] ?? "", quantity);
  if (conversion === null) throw new Error(`no ${units} unit of ${figure}`);
  return figure === "wind2mMPerS" ? fromHeight(conversion, 10) : conversion;
}

/** What a first look at the wanted station's rows shows. */
interface Looked {
  readonly stations: Stations;
  readonly latitude: number | null;
  readonly elevation: number | null;
  readonly highestTMax: number;
  /** Temperatures, and those of them that are whole numbers. */
  readonly temperatures: number;
  readonly whole: number;
}

function lookThrough(table: Table, { station }: ReadOptions, stationAt: number, nameAt: number): Looked {
  const { header, delimiter } = table;
  const [tMaxAt, tMinAt, latitudeAt, elevationAt] = ["TMAX", "TMIN", "LATITUDE", "ELEVATION"].map((name) =>
    columnAt(header, name),
  ) as [number, number, number, number];
  const stations: Stations = new Map();
  const looked = { latitude: NaN, elevation: NaN, highestTMax: -Infinity, temperatures: 0, whole: 0 };
  const numberAt = (cells: readonly string[], index: number) => numberFrom(cells[index] ?? "");
  eachLine(table.text, table.body, (line) => {
    if (isAside(line)) return;
    const cells = cellsOf(line, delimiter);
    const id = cells[stationAt] ?? "";
    const name = cells[nameAt] ?? "";
    const seen = stations.get(id);
    if (seen === undefined) stations.set(id, { name, lines: 1 });
    else seen.lines++;
    if (station !== undefined && !isWanted(station, id, name)) return;
    if (Number.isNaN(looked.latitude)) looked.latitude = numberAt(cells, latitudeAt);
    if (Number.isNaN(looked.elevation)) looked.elevation = numberAt(cells, elevationAt);
    const tMax = numberAt(cells, tMaxAt);
    if (tMax > looked.highestTMax) looked.highestTMax = tMax;
    for (const value of [tMax, numberAt(cells, tMinAt)]) {
      if (Number.isNaN(value)) continue;
      looked.temperatures++;
      if (Number.isInteger(value)) looked.whole++;
    }
  });
  return {
    ...looked,
    stations,
    latitude: Number.isNaN(looked.latitude) ? null : looked.latitude,
    elevation: Number.isNaN(looked.elevation) ? null : looked.elevation,
  };
}

/** Asks for the units, and for the station too where that is open: both in one go. */
function askFor({ stations, highestTMax }: Looked, { fileName, station }: ReadOptions): never {
  const which = stationProblem(stations, station, fileName);
  const hint = Number.isFinite(highestTMax) ? ` (its highest TMAX is ${highestTMax})` : "";
  const units: Problem = {
    field: "weather.units",
    expected: `the units of ${fileName}, which does not state them${hint}`,
    found: "no units",
    mend: howToStateUnits,
  };
  throw new InputError(which === null ? [units] : [which, units]);
}

/** A warning where the figures look like those of other units than stated. */
function unitDoubts({ temperatures, whole }: Looked, units: WeatherUnits): string[] {
  if (temperatures < 60) return [];
  if (units === "metric" && whole === temperatures) {
    return [
      "Units: metric was stated, but all temperatures are whole numbers, as in files of US units. Check weather.units.",
    ];
  }
  if (units !== "metric" && whole < temperatures / 2) {
    const said = `Units: ${units} was stated, but most temperatures have decimals, as in metric files.`;
    return [`${said} Check weather.units.`];
  }
  return [];
}
