import { refuse, InputError, type Problem } from "../../../../problem.ts";
import type { WeatherRecord } from "../../record.ts";
import { conversionFrom, unitExamples } from "../../units.ts";
import { dayFromNamedParts } from "../dateColumns.ts";
import type { Column } from "../dayRows.ts";
import { elements, fromHeight, type Element } from "../element.ts";
import { columnAt, eachLine, openTable, top, type Place } from "../lines.ts";
import type { ReadOptions } from "../options.ts";
import { elevationOf, latitudeOf, recordFromTable } from "../table.ts";

/**
 * NASA POWER daily CSV: a header block that names place, missing value and each parameter's unit, then a table with
 * YEAR and DOY, or YEAR, MO and DY. Gridded, so smoother than a gauge.
 * Source: two answers of the service 2.9.2 (read); parameters other than theirs from memory.
 */
export const formatName = "NASA POWER daily CSV";

interface Parameter {
  readonly name: string;
  readonly element: Element;
  readonly heightM?: number;
}

/** The first of two that give one element is taken. */
const parameters: readonly Parameter[] = [
  { name: "PRECTOTCORR", element: "rainMm" },
  { name: "PRECTOT", element: "rainMm" },
  { name: "T2M_MAX", element: "tMaxC" },
  { name: "T2M_MIN", element: "tMinC" },
  { name: "ALLSKY_SFC_SW_DWN", element: "solarMjPerM2" },
  { name: "RH2M", element: "rhMeanPercent" },
  { name: "T2MDEW", element: "dewPointC" },
  { name: "WS2M", element: "wind2mMPerS", heightM: 2 },
  { name: "WS10M", element: "wind2mMPerS", heightM: 10 },
];

export function knows(firstLines: readonly string[]): boolean {
  return firstLines[0]?.trim() === "-BEGIN HEADER-";
}

export function read(text: string, options: ReadOptions): WeatherRecord {
  const { fileName } = options;
  const block = headerBlock(text);
  const table = block.end === null ? null : openTable(text, block.end);
  const dates = table === null ? null : dayFromNamedParts(table.header);
  if (table === null || dates === null) {
    const expected = "-END HEADER- and below it columns YEAR and DOY, or YEAR, MO and DY";
    return refuse(fileName, expected, undefined, "give the file as the service sends it");
  }
  const columns = columnsOf(table.header, block.units, `${fileName} line ${table.headerLine}`);
  if (!columns.some(({ figure }) => figure === "rainMm")) {
    const mend = "order the file again with PRECTOTCORR";
    refuse(`${fileName} line ${table.headerLine}`, "rain (PRECTOTCORR)", table.header.join(","), mend);
  }
  const wind = columns.find(({ figure }) => figure === "wind2mMPerS");
  return recordFromTable(table, options, {
    plan: { ...dates, columns, missing: new Set([-999, -99, block.missing]), stationOf: null, skip: 0 },
    known: dates.used,
    station: {
      id: block.place,
      format: formatName,
      latitudeDeg: latitudeOf(block.latitude),
      elevationM: elevationOf(block.elevation),
    },
    notes: [
      ...(wind?.name === "WS10M" ? ["Wind at 10 m (WS10M) brought to 2 m (FAO-56 eq. 47)."] : []),
      ...(block.inUtc ? ["Days of this file run from midnight to midnight UTC, not local time."] : []),
      "Gridded weather: rain falls on more days and in smaller amounts than in a gauge.",
    ],
    marksDefined: true,
  });
}

interface HeaderBlock {
  /** Unit text by parameter. */
  readonly units: ReadonlyMap<string, string>;
  readonly latitude: number | null;
  readonly elevation: number | null;
  readonly place: string;
  readonly missing: number;
  readonly inUtc: boolean;
  /** First line below the block; null where it does not end. */
  readonly end: Place | null;
}

/** What a line of the header says stands well within this many letters. */
const longestHeaderLine = 400;

function headerBlock(text: string): HeaderBlock {
  const units = new Map<string, string>();
  let block = "";
  let end: Place | null = null;
  eachLine(text, top, (whole, number, nextOffset) => {
    const line = whole.slice(0, longestHeaderLine);
    if (line.trim() === "-END HEADER-") end = { offset: nextOffset, line: number + 1 };
    else if (number > 200) return false;
    const parameter = /^([A-Z0-9_]+)\s.*\(([^()]*)\)\s*$/.exec(line);
    if (parameter !== null) units.set(parameter[1]!, parameter[2]!);
    block += `${line}\n`;
    return end === null;
  });
  const number = (pattern: RegExp) => {
    const found = pattern.exec(block)?.[1];
    return found === undefined ? null : Number(found);
  };
  const latitude = number(/latitude\s+(-?\d+(?:\.\d+)?)/i);
  const longitude = number(/longitude\s+(-?\d+(?:\.\d+)?)/i);
  return {
    units,
    latitude,
    elevation: number(/elevation[^=\n]*=\s*(-?\d+(?:\.\d+)?)\s*meters/i),
    place: latitude === null || longitude === null ? "" : `${latitude}, ${longitude}`,
    missing: number(/missing[^\n]*:\s*(-?\d+(?:\.\d+)?)/i) ?? -999,
    inUtc: /\bin UTC\b/.test(block),
    end,
  };
}

/** Columns of the parameters that are used, each in the unit that the header block states. */
function columnsOf(header: readonly string[], units: ReadonlyMap<string, string>, field: string): Column[] {
  const columns: Column[] = [];
  const problems: Problem[] = [];
  for (const { name, element, heightM } of parameters) {
    const index = columnAt(header, name);
    if (index < 0 || columns.some(({ figure }) => figure === element)) continue;
    const { quantity } = elements[element];
    const unit = units.get(name);
    const conversion = unit === undefined ? null : conversionFrom(unit, quantity);
    if (conversion === null) {
      problems.push({
        field,
        expected: `the unit of ${name} in brackets in the header block (${unitExamples[quantity]})`,
        found: unit === undefined ? "none" : `"${unit}"`,
        mend: "give the file with the header block that the service sends",
      });
      continue;
    }
    columns.push({
      index,
      name,
      figure: element,
      conversion: fromHeight(conversion, heightM ?? 2),
      flags: -1,
    });
  }
  if (problems.length > 0) throw new InputError(problems);
  return columns;
}
