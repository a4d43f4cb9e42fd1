import { InputError, type Problem } from "../../../../problem.ts";
import type { WeatherRecord } from "../../record.ts";
import { conversionFrom, unitExamples, type Conversion, type Quantity } from "../../units.ts";
import { readColumnName, type ColumnName } from "../columnName.ts";
import { dayFromDate, dayFromNamedParts } from "../dateColumns.ts";
import { numberFrom, type Column } from "../dayRows.ts";
import { readDate } from "../dates.ts";
import { elements, fromHeight, type Element } from "../element.ts";
import { cellsOf, columnAt, eachLine, isAside, type Table } from "../lines.ts";
import type { ReadOptions, WeatherUnits } from "../options.ts";
import { missingMarks, recordFromTable } from "../table.ts";

/** Any CSV with a date, and columns that name their element and unit, in the header or in a row below it. */
export const formatName = "plain CSV with named columns and units";

const dateNames =
  "date day_date obs_date lst_date timestamp datetime date_time time yyyymmdd yyyy-mm-dd day".split(" ");
const stationNames = "station station_id stationid station_name wbanno site site_id location".split(" ");

export function knows({ header }: Table): boolean {
  const dated = columnAt(header, ...dateNames) >= 0 || dayFromNamedParts(header) !== null;
  return dated && header.some((name) => readColumnName(name) !== null);
}

export function read(table: Table, options: ReadOptions): WeatherRecord {
  const { header } = table;
  const unitRow = unitRowOf(table);
  const field = `${options.fileName} line ${table.headerLine}`;
  const columns = columnsOf(table, unitRow, options.units, field);
  const dateAt = columnAt(header, ...dateNames);
  const parts = dayFromNamedParts(header);
  const skip = unitRow === null ? 0 : 1;
  const byParts = parts !== null && (dateAt < 0 || parts.used.includes(dateAt));
  const days = byParts ? parts : dayFromDate(table, dateAt, skip, options.fileName);
  const stationAt = columnAt(header, ...stationNames);
  const stated = columns.filter(({ byOption }) => byOption).map(({ name }) => name);
  const from10m = columns.find(({ figure, heightM }) => figure === "wind2mMPerS" && heightM !== 2);
  return recordFromTable(table, options, {
    plan: {
      ...days,
      columns,
      missing: missingMarks,
      stationOf: stationAt < 0 ? null : (cells) => [cells[stationAt]!, ""],
      skip,
    },
    known: [dateAt, stationAt, ...(parts?.used ?? [])],
    station: { format: formatName, latitudeDeg: null, elevationM: null },
    notes: [
      ...(stated.length > 0
        ? [`Units of ${stated.join(", ")} are not in the file: ${options.units}, as stated.`]
        : []),
      ...(from10m === undefined ? [] : [`Wind at ${from10m.heightM} m brought to 2 m (FAO-56 eq. 47).`]),
    ],
    marksDefined: false,
  });
}

/** Cells of a row of units below the header; null where the first row holds data. */
function unitRowOf(table: Table): readonly string[] | null {
  let row: readonly string[] | null = null;
  eachLine(table.text, table.body, (line) => {
    if (isAside(line)) return true;
    row = cellsOf(line, table.delimiter);
    return false;
  });
  const cells: readonly string[] = row ?? [];
  const hasFigures = cells.some(
    (cell) => !Number.isNaN(numberFrom(cell)) || !Number.isNaN(readDate(cell, "day first")),
  );
  const hasUnit = table.header.some((name, index) => {
    const known = readColumnName(name);
    return known !== null && conversionFrom(cells[index] ?? "", elements[known.element].quantity) !== null;
  });
  return hasUnit && !hasFigures ? cells : null;
}

interface PlainColumn extends Column {
  readonly heightM: number;
  /** The unit comes from `weather.units`. */
  readonly byOption: boolean;
}

const statedUnits: Readonly<Record<WeatherUnits, Partial<Record<Quantity, string>>>> = {
  metric: { depth: "mm", temperature: "C", solar: "MJ/m2", humidity: "%", wind: "m/s" },
  us: { depth: "in", temperature: "F", humidity: "%", wind: "mph" },
  tenths: { depth: "0.1 mm", temperature: "0.1 C", humidity: "%" },
};

/** The columns that are read. Refuses, all in one go, those whose unit, height or choice is open. */
function columnsOf(
  { header }: Table,
  unitRow: readonly string[] | null,
  units: WeatherUnits | undefined,
  field: string,
): PlainColumn[] {
  const problems: Problem[] = [];
  const columns: PlainColumn[] = [];
  const read = header.map(readColumnName);
  for (const element of Object.keys(elements) as Element[]) {
    const candidates = read.flatMap((name, index) => (name?.element === element ? [{ index, name }] : []));
    const [first] = candidates;
    if (first === undefined) continue;
    if (candidates.length > 1) {
      const found = candidates.map(({ index }) => `"${header[index]}"`).join(" and ");
      problems.push({
        field,
        expected: `one column of ${elements[element].words}`,
        found,
        mend: "keep or rename one",
      });
      continue;
    }
    const column = columnOf(first.index, first.name, header[first.index]!, unitRow, units);
    if ("expected" in column) problems.push({ field, ...column });
    else columns.push(column);
  }
  if (problems.length > 0) throw new InputError(problems);
  if (!columns.some(({ figure }) => figure === "rainMm")) {
    const mend = "name it, for instance rain_mm or rain_in";
    const found = `the columns ${header.slice(0, 12).join(", ")}`;
    throw new InputError([{ field, expected: "a column of rain", found, mend }]);
  }
  return columns;
}

function columnOf(
  index: number,
  name: ColumnName,
  text: string,
  unitRow: readonly string[] | null,
  units: WeatherUnits | undefined,
): PlainColumn | Omit<Problem, "field"> {
  const { element } = name;
  const { quantity, words } = elements[element];
  const rowUnit = name.unit === "" ? (unitRow?.[index] ?? "") : "";
  const ownUnit = name.unit === "" ? rowUnit : name.unit;
  const stated = ownUnit === "" && units !== undefined ? (statedUnits[units][quantity] ?? "") : "";
  const conversion: Conversion | null = name.conversion ?? conversionFrom(rowUnit || stated, quantity);
  const plain = text.replace(/[^A-Za-z0-9]+/g, "_").replace(/^_+|_+$/g, "");
  if (conversion === null) {
    const example = `${name.unit === "" ? plain : plain.split("_")[0]}${suffix[quantity]}`;
    return {
      expected: `a unit of ${words} in the column's name (${unitExamples[quantity]})`,
      found: ownUnit === "" ? `"${text}"` : `"${text}" with unit "${ownUnit}"`,
      mend: `write it as, for instance, ${example}${mendWithOption(ownUnit, units)}`,
    };
  }
  const heightM = element === "wind2mMPerS" ? name.heightM : 2;
  if (heightM === null || heightM < 0.5 || heightM > 100) {
    return {
      expected: "the height of the wind in the column's name, 0.5 to 100 m",
      found: `"${text}"`,
      mend: "write it as, for instance, wind_10m_m/s or wind_2m_mph, or remove the column",
    };
  }
  return {
    index,
    name: text,
    figure: element,
    conversion: fromHeight(conversion, heightM),
    flags: -1,
    heightM,
    byOption: stated !== "",
  };
}

const suffix: Readonly<Record<Quantity, string>> = {
  depth: "_mm",
  temperature: "_C",
  solar: "_MJ/m2",
  humidity: "_%",
  wind: "_2m_m/s",
};

function mendWithOption(ownUnit: string, units: WeatherUnits | undefined): string {
  return ownUnit === "" && units === undefined
    ? ', or set weather.units or --weather-units to "us" or "metric"'
    : "";
}
