import { dayNumber, daysInMonth } from "../../../../quantity/calendar.ts";
import type { WeatherRecord } from "../../record.ts";
import { complain, noComplaints, refuseIfAny, type Complaints } from "../complaints.ts";
import { believed, noCounts, type Column, type Counts } from "../dayRows.ts";
import { counted } from "../complaints.ts";
import { refuseLongSpan, repeatSaid, type Days } from "../days.ts";
import { fromHeight, type Figure } from "../element.ts";
import { countNotes, finishRecord } from "../finish.ts";
import { eachLine, isAside, top } from "../lines.ts";
import { spreadMultiDayRain } from "../multiDayRain.ts";
import type { ReadOptions } from "../options.ts";
import { chooseStation, isWanted, type Stations } from "../stations.ts";

/**
 * NOAA GHCN-Daily, fixed width: a line a month and element, 31 times value (5), measurement, quality, source flag.
 * Source: [NOAA, GHCN-Daily readme 3.26] section III (read).
 */
export const formatName = "NOAA GHCN-Daily, fixed width (.dly)";

const tenths = { scale: 0.1, offset: 0 };

/** Elements used. Wind of first-order stations is taken as measured at 10 m (memory; the format does not say). */
export const ghcnElements: Readonly<Record<string, Pick<Column, "figure" | "conversion">>> = {
  PRCP: { figure: "rainMm", conversion: tenths },
  TMAX: { figure: "tMaxC", conversion: tenths },
  TMIN: { figure: "tMinC", conversion: tenths },
  AWND: { figure: "wind2mMPerS", conversion: fromHeight(tenths, 10) },
  MDPR: { figure: "multiDayRainMm", conversion: tenths },
  DAPR: { figure: "multiDayRainDays", conversion: { scale: 1, offset: 0 } },
};

const linePattern = /^[A-Z]{2}[A-Z0-9_-]{9}\d{4}(?:0[1-9]|1[0-2])[A-Z0-9]{4}/;
const wholeLine = /^[A-Z]{2}[A-Z0-9_-]{9}\d{4}(?:0[1-9]|1[0-2])[A-Z0-9]{4}[ \d-]{5}/;

export function knows(firstLines: readonly string[]): boolean {
  return firstLines.some((line) => wholeLine.test(line));
}

/** One month of one element, by where it stands. */
interface MonthLine {
  readonly line: string;
  readonly number: number;
  readonly year: number;
  readonly month: number;
  readonly element: string;
}

export function read(text: string, options: ReadOptions): WeatherRecord {
  const complaints = noComplaints(options.fileName);
  const stations: Stations = new Map();
  const months: MonthLine[] = [];
  const unused = new Set<string>();
  const failedUnused = { values: 0 };
  eachLine(text, top, (line, number) => {
    if (isAside(line)) return;
    if (!linePattern.test(line)) {
      const expected = "station, year, month, element and 31 values in fixed columns";
      complain(complaints, number, expected, line, "give the file as the agency sends it");
      return;
    }
    const id = line.slice(0, 11);
    const seen = stations.get(id);
    if (seen === undefined) stations.set(id, { name: "", lines: 1 });
    else seen.lines++;
    if (options.station === undefined ? stations.size > 1 : !isWanted(options.station, id, "")) return;
    const element = line.slice(17, 21);
    if (Object.hasOwn(ghcnElements, element)) {
      months.push({
        line,
        number,
        year: Number(line.slice(11, 15)),
        month: Number(line.slice(15, 17)),
        element,
      });
    } else {
      unused.add(element);
      failedUnused.values += failedIn(line);
    }
  });
  const station = chooseStation(stations, options.station, options.fileName);
  if (months.length === 0) {
    complain(complaints, 0, "months of PRCP, TMAX or TMIN", "none", "give a file that has them", true);
  }
  refuseIfAny(complaints);
  const counts = noCounts();
  const days = daysOf(months, counts, complaints);
  const multiDay = spreadMultiDayRain(days.byFigure);
  const id = station?.[0] ?? "";
  const notes = [...multiDay, ...countNotes(counts, false)];
  if (failedUnused.values > 0) {
    notes.push(
      `${counted(failedUnused.values, "value")} with a failed quality check in elements not used here.`,
    );
  }
  if (days.byFigure.has("wind2mMPerS")) notes.push(windNote);
  if (unused.size > 0) notes.push(`Elements not used: ${[...unused].join(", ")}.`);
  const info = { id, name: id, format: formatName, latitudeDeg: null, elevationM: null };
  return finishRecord(days, info, notes, complaints, options.site);
}

export const windNote = "Wind (AWND) taken as measured at 10 m and brought to 2 m (FAO-56 eq. 47).";

function daysOf(months: readonly MonthLine[], counts: Counts, complaints: Complaints): Days {
  const monthIndex = ({ year, month }: MonthLine) => year * 12 + month - 1;
  const first = months.reduce((least, next) => Math.min(least, monthIndex(next)), Infinity);
  const last = months.reduce((most, next) => Math.max(most, monthIndex(next)), -Infinity);
  const firstDay = dayNumber(Math.floor(first / 12), (first % 12) + 1, 1);
  const days = dayNumber(Math.floor((last + 1) / 12), ((last + 1) % 12) + 1, 1) - firstDay;
  refuseLongSpan(firstDay, firstDay + days - 1, complaints);
  const byFigure = new Map<Figure, Float64Array>();
  const lineByDay = new Float64Array(days);
  const seen = new Map<string, MonthLine>();
  let repeated = 0;
  let firstRepeat = "";
  for (const at of months) {
    const { line, number, year, month, element } = at;
    const before = seen.get(`${element}${year}-${month}`);
    if (before !== undefined) {
      if (before.line.trimEnd() === line.trimEnd()) {
        if (repeated++ === 0) firstRepeat = repeatSaid(number, before.number);
      } else {
        const found = `${element} of ${year}-${String(month).padStart(2, "0")} again, with other values than on line ${before.number}`;
        complain(
          complaints,
          number,
          "each month of an element once",
          found,
          "keep the line that is right",
          true,
        );
      }
      continue;
    }
    seen.set(`${element}${year}-${month}`, at);
    const column = ghcnElements[element]!;
    let values = byFigure.get(column.figure);
    if (values === undefined) byFigure.set(column.figure, (values = new Float64Array(days).fill(NaN)));
    const start = dayNumber(year, month, 1) - firstDay;
    readMonth(at, { ...column, name: element }, values, start, counts, complaints);
    for (let day = 0; day < daysInMonth(year, month); day++) {
      if (lineByDay[start + day] === 0 || element === "TMIN") lineByDay[start + day] = number;
    }
  }
  const notes =
    repeated > 0
      ? [`${counted(repeated, "line")} repeated a month with the same values: dropped. ${firstRepeat}`]
      : [];
  return { firstDay, days, byFigure, lineByDay, notes };
}

/** Number of values with a failed quality check. */
function failedIn(line: string): number {
  let failed = 0;
  for (let at = 27; at < line.length; at += 8) if (line[at] !== " ") failed++;
  return failed;
}

function readMonth(
  { line, number, year, month }: MonthLine,
  column: Pick<Column, "figure" | "name" | "conversion">,
  values: Float64Array,
  start: number,
  counts: Counts,
  complaints: Complaints,
): void {
  const length = daysInMonth(year, month);
  for (let day = 0; day < 31; day++) {
    const at = 21 + 8 * day;
    const text = line.slice(at, at + 5).trim();
    if (text === "" && day >= length) continue; // editors cut blanks at the end of a line
    if (!/^-?\d+$/.test(text)) {
      const expected = `${column.name} of day ${day + 1} as a whole number in columns ${at + 1} to ${at + 5}`;
      complain(
        complaints,
        number,
        expected,
        text === "" ? "nothing" : `"${text}"`,
        "mend it, or write -9999",
        true,
      );
      return;
    }
    const value = Number(text);
    if (value === -9999) continue;
    if (day >= length) {
      const expected = `-9999 on day ${day + 1}, which ${year}-${String(month).padStart(2, "0")} does not have`;
      complain(complaints, number, expected, text, "mend the year, the month or the value");
      continue;
    }
    const [measurement, quality] = [line[at + 5], line[at + 6]];
    if (quality !== undefined && quality !== " ") {
      counts.failedQuality++;
      continue;
    }
    if (measurement === "T" && column.figure === "rainMm") counts.traces++;
    values[start + day] = believed(value, text, column, number, complaints, counts);
  }
}
