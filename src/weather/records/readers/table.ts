import type { StationInfo, WeatherRecord } from "../record.ts";
import { noComplaints } from "./complaints.ts";
import { readRows, type RowPlan } from "./dayRows.ts";
import { daysFrom, type Days } from "./days.ts";
import { withDryDays } from "./dryDays.ts";
import { countNotes, finishRecord, unusedNote } from "./finish.ts";
import type { Table } from "./lines.ts";
import type { ReadOptions } from "./options.ts";

/** What a format adds to the common way from a table to a record. */
export interface TableReading {
  readonly plan: Omit<RowPlan, "wanted">;
  /** Columns that are known and used otherwise: not listed as unused. */
  readonly known: readonly number[];
  readonly station: Omit<StationInfo, "id" | "name"> & { readonly id?: string };
  readonly notes: readonly string[];
  /** Missing marks are the format's own and need no mention. */
  readonly marksDefined: boolean;
  /** Changes figures by day before they are checked against each other; says what it did. */
  readonly adjust?: (days: Days) => string[];
}

/** Markers of missing values that are impossible as values of any element. */
export const missingMarks: ReadonlySet<number> = new Set([-9999, -9999.9, -999, -999.9, -99, -99.9, -99.99]);

export function recordFromTable(table: Table, options: ReadOptions, reading: TableReading): WeatherRecord {
  const { plan, known, station, notes, marksDefined, adjust } = reading;
  const complaints = noComplaints(options.fileName);
  const rows = readRows(
    table,
    { ...plan, wanted: plan.stationOf === null ? undefined : options.station },
    complaints,
  );
  const listed = daysFrom(rows, complaints);
  const dry =
    options.daysNotListed === "dry" ? withDryDays(listed, options.from, options.to, complaints) : null;
  const days = dry?.days ?? listed;
  const adjusted = [...(dry === null ? [] : [dry.note]), ...(adjust?.(days) ?? [])];
  const used = new Set([...known, ...plan.columns.flatMap(({ index, flags }) => [index, flags])]);
  const unused = unusedNote(table.header.filter((_, index) => !used.has(index)));
  const { id = "", ...place } = station;
  const [stationId, name] = rows.station ?? [id, ""];
  if (plan.stationOf === null && options.station !== undefined) {
    adjusted.push("The file does not name its stations: weather.station is not used.");
  }
  return finishRecord(
    days,
    { id: stationId, name: name === "" ? stationId : name, ...place },
    [...notes, ...adjusted, ...countNotes(rows.counts, !marksDefined), ...unused],
    complaints,
    options.site,
  );
}

/** A latitude, or null where the number is none. */
export function latitudeOf(value: number | null): number | null {
  return value !== null && Math.abs(value) <= 90 ? value : null;
}

/** An elevation in m, or null where the number is none (missing marks are far below the lowest land). */
export function elevationOf(value: number | null): number | null {
  return value !== null && value > -500 && value < 9000 ? value : null;
}
