import type { Conversion } from "../units.ts";
import { complain, refuseIfAny, type Complaints } from "./complaints.ts";
import { factsOf, rareRainMm, type Figure } from "./element.ts";
import { cellsOf, eachLine, isAside, longestLine, type Table } from "./lines.ts";
import { chooseStation, isWanted, type Stations } from "./stations.ts";

/** A column that is read, and as what. */
export interface Column {
  readonly index: number;
  readonly name: string;
  readonly figure: Figure;
  readonly conversion: Conversion;
  /** Column with NOAA's flags of the figure (measurement, quality, source), or -1. */
  readonly flags: number;
}

/** How rows of a table become days. */
export interface RowPlan {
  /** Day number, or NaN. */
  readonly dayOf: (cells: readonly string[]) => number;
  /** Why there is no day. */
  readonly explainDay: (cells: readonly string[]) => { expected: string; found: string; mend: string };
  readonly columns: readonly Column[];
  readonly missing: ReadonlySet<number>;
  /** Station of a row: its identifier and its name; null where the table has one station only. */
  readonly stationOf: ((cells: readonly string[]) => readonly [id: string, name: string]) | null;
  readonly wanted: string | undefined;
  /** Lines to pass over between header and data, such as a row of units. */
  readonly skip: number;
}

/** What was read, in the order of the file. */
export interface DayRows {
  readonly count: number;
  readonly dayByRow: Float64Array;
  readonly lineByRow: Float64Array;
  readonly valuesByRow: ReadonlyMap<Figure, Float64Array>;
  readonly station: readonly [id: string, name: string] | null;
  readonly counts: Counts;
}

/** Everything done to single figures, to be said in the result. */
export interface Counts {
  missingMarks: number;
  traces: number;
  failedQuality: number;
  setToLimit: number;
  decimalCommas: number;
  /** Days of more rain than most places ever see: the first few, and how many there are. */
  readonly rareRains: { readonly line: number; readonly mm: number }[];
  rareRainDays: number;
}

/** So many days of rare rain are named. */
const mostNamed = 5;

export const noCounts = (): Counts => ({
  missingMarks: 0,
  traces: 0,
  failedQuality: 0,
  setToLimit: 0,
  decimalCommas: 0,
  rareRains: [],
  rareRainDays: 0,
});

/** Texts that mean "no value": nothing, R's NA, the weather service's M, a dash. */
const noValue = new Set(["", "NA", "N/A", "na", "n/a", "M", "-", "--", "null", "NULL", "None"]);
/** The weather service's letter for rain too little to measure. */
const trace = new Set(["T", "t", "Trace", "trace"]);

/** Reads a table row by row. Throws when its stations have to be chosen from; other faults go to `complaints`. */
export function readRows(table: Table, plan: RowPlan, complaints: Complaints): DayRows {
  const { header, delimiter } = table;
  const { columns, stationOf } = plan;
  const widest = header.at(-1) === "" ? header.length - 1 : header.length;
  const counts = noCounts();
  const stations: Stations = new Map();
  let size = 4096;
  let dayByRow = new Float64Array(size);
  let lineByRow = new Float64Array(size);
  let values = columns.map(() => new Float64Array(size));
  let count = 0;
  let toSkip = plan.skip;

  eachLine(table.text, table.body, (line, number) => {
    if (isAside(line)) return;
    if (toSkip > 0) {
      toSkip--;
      return;
    }
    if (line.length > longestLine) {
      complain(
        complaints,
        number,
        `a line of at most ${longestLine} characters`,
        line,
        "put each day on its own line",
      );
      return;
    }
    const cells = cellsOf(line, delimiter);
    if (cells.length < widest) {
      complain(
        complaints,
        number,
        `${widest} cells, one for each column`,
        `${cells.length}`,
        "complete the row",
        true,
      );
      return;
    }
    if (cells.length > header.length && cells.slice(header.length).some((cell) => cell !== "")) {
      const mend = "write numbers with a decimal point, and put text with a delimiter in quotes";
      complain(
        complaints,
        number,
        `${header.length} cells, one for each column`,
        `${cells.length}`,
        mend,
        true,
      );
      return;
    }
    if (stationOf !== null) {
      const [id, name] = stationOf(cells);
      const seen = stations.get(id);
      if (seen === undefined) stations.set(id, { name, lines: 1 });
      else seen.lines++;
      if (plan.wanted === undefined ? stations.size > 1 : !isWanted(plan.wanted, id, name)) return;
    }
    const day = plan.dayOf(cells);
    if (Number.isNaN(day)) {
      const { expected, found, mend } = plan.explainDay(cells);
      complain(complaints, number, expected, found, mend);
      return;
    }
    if (count === size) {
      size *= 2;
      dayByRow = grown(dayByRow, size);
      lineByRow = grown(lineByRow, size);
      values = values.map((array) => grown(array, size));
    }
    dayByRow[count] = day;
    lineByRow[count] = number;
    for (let c = 0; c < columns.length; c++) {
      values[c]![count] = readCell(cells, columns[c]!, plan.missing, number, delimiter, complaints, counts);
    }
    count++;
  });

  const station = stationOf === null ? null : chooseStation(stations, plan.wanted, complaints.fileName);
  if (count === 0) {
    refuseIfAny(complaints);
    complain(complaints, 0, "daily rows below the header", "none", "give a file with data", true);
    refuseIfAny(complaints);
  }
  return {
    count,
    dayByRow,
    lineByRow,
    valuesByRow: new Map(columns.map((column, c) => [column.figure, values[c]!])),
    station,
    counts,
  };
}

function grown(array: Float64Array<ArrayBuffer>, size: number): Float64Array<ArrayBuffer> {
  const larger = new Float64Array(size);
  larger.set(array);
  return larger;
}

function readCell(
  cells: readonly string[],
  column: Column,
  missing: ReadonlySet<number>,
  line: number,
  delimiter: string,
  complaints: Complaints,
  counts: Counts,
): number {
  const text = cells[column.index]!;
  if (column.flags >= 0 && text !== "") {
    const [measurement, quality] = (cells[column.flags] ?? "").split(",");
    if (quality !== undefined && quality.trim() !== "") {
      counts.failedQuality++;
      return NaN;
    }
    if (measurement?.trim() === "T" && column.figure === "rainMm") counts.traces++;
  }
  const value = numberFrom(text);
  if (!Number.isNaN(value)) {
    if (!missing.has(value)) return believed(value, text, column, line, complaints, counts);
    counts.missingMarks++;
    return NaN;
  }
  if (noValue.has(text)) return NaN;
  if (column.figure === "rainMm" && trace.has(text)) {
    counts.traces++;
    return 0;
  }
  const decimalComma = /^-?\d*,\d+$/.test(text);
  if (decimalComma && delimiter !== ",") {
    counts.decimalCommas++;
    return believed(Number(text.replace(",", ".")), text, column, line, complaints, counts);
  }
  const mend = decimalComma
    ? "write it with a decimal point"
    : "write a number, or nothing where it is missing";
  complain(complaints, line, `a number in column ${column.name}`, text, mend);
  return NaN;
}

/** A finite number, or NaN for any other text, "Infinity" and "0x10" among them. */
export function numberFrom(text: string): number {
  const last = text.charCodeAt(text.length - 1);
  const digitOrPoint = (last >= 48 && last <= 57) || last === 46;
  if (!digitOrPoint || (text.charCodeAt(0) === 48 && text.charCodeAt(1) > 57 && !/^0e/i.test(text)))
    return NaN; // 0x10, 0b1, 0o7
  const value = Number(text);
  return Number.isFinite(value) ? value : NaN;
}

/** The figure in our unit, if it can be; otherwise NaN and a complaint. */
export function believed(
  value: number,
  text: string,
  { figure, name, conversion }: Pick<Column, "figure" | "name" | "conversion">,
  line: number,
  complaints: Complaints,
  counts: Counts,
): number {
  const { scale, offset } = conversion;
  const ours = value * scale + offset;
  const { min, max, slack = 0, unit, words } = factsOf(figure);
  if (ours >= min && ours <= max) {
    if (figure === "rainMm" && ours > rareRainMm) {
      if (counts.rareRainDays++ < mostNamed) counts.rareRains.push({ line, mm: ours });
    }
    return ours;
  }
  if (ours >= min - slack && ours <= max + slack) {
    counts.setToLimit++;
    return ours < min ? min : max;
  }
  if (min === 0 && ours < 0) {
    complain(complaints, line, `${words} of 0 or more in ${name}`, text, "mend it, or leave it empty");
    return NaN;
  }
  const asRead = scale === 1 && offset === 0 ? "" : ` (${round(ours)} ${unit})`;
  const range = `${words} from ${min} to ${max} ${unit} in ${name}`;
  complain(complaints, line, range, `"${text}"${asRead}`, "mend it, or state the unit it is in", true);
  return NaN;
}

function round(value: number): string {
  return String(Number(value.toPrecision(5)));
}
