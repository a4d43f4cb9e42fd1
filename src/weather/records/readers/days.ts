import { isoDate } from "../../../quantity/calendar.ts";
import { complain, counted, refuseIfAny, type Complaints } from "./complaints.ts";
import type { DayRows } from "./dayRows.ts";
import type { Figure } from "./element.ts";

/** Figures by day, NaN where missing. */
export interface Days {
  readonly firstDay: number;
  readonly days: number;
  readonly byFigure: ReadonlyMap<Figure, Float64Array>;
  /** Line that a day stands on, 0 where it stands on none. */
  readonly lineByDay: Float64Array;
  readonly notes: readonly string[];
}

/** Longest span of days believed, 300 years: a slip in a year must not cost the memory of centuries. */
const longestSpan = 109_575;

/**
 * Rows in the order of the calendar. Rows out of order are sorted; a day given twice alike is taken once; both are
 * said. A day given twice with different figures is a complaint.
 */
export function daysFrom(rows: DayRows, complaints: Complaints): Days {
  const { count, dayByRow, lineByRow, valuesByRow } = rows;
  let firstDay = Infinity;
  let lastDay = -Infinity;
  let firstBackward = -1;
  for (let row = 0; row < count; row++) {
    const day = dayByRow[row]!;
    if (firstBackward < 0 && row > 0 && day < dayByRow[row - 1]!) firstBackward = row;
    if (day < firstDay) firstDay = day;
    if (day > lastDay) lastDay = day;
  }
  const days = lastDay - firstDay + 1;
  refuseLongSpan(firstDay, lastDay, complaints);
  const byFigure = new Map(
    [...valuesByRow.keys()].map((figure) => [figure, new Float64Array(days).fill(NaN)]),
  );
  const pairs = [...valuesByRow].map(([figure, values]) => [values, byFigure.get(figure)!] as const);
  const lineByDay = new Float64Array(days);
  let repeated = 0;
  let firstRepeat = "";
  for (let row = 0; row < count; row++) {
    const at = dayByRow[row]! - firstDay;
    if (lineByDay[at] === 0) {
      lineByDay[at] = lineByRow[row]!;
      for (const [values, byDay] of pairs) byDay[at] = values[row]!;
    } else if (pairs.every(([values, byDay]) => isAlike(values[row]!, byDay[at]!))) {
      if (repeated++ === 0) firstRepeat = repeatSaid(lineByRow[row]!, lineByDay[at]!);
    } else {
      const found = `${isoDate(firstDay + at)} again, with other figures than on line ${lineByDay[at]}`;
      complain(complaints, lineByRow[row]!, "each day once", found, "keep the line that is right", true);
    }
  }
  const notes: string[] = [];
  if (firstBackward >= 0) {
    const first = `${isoDate(dayByRow[firstBackward]!)} on line ${lineByRow[firstBackward]!}`;
    notes.push(`Days were not in order: sorted. The first out of order is ${first}.`);
  }
  if (repeated > 0) {
    notes.push(`${counted(repeated, "line")} repeated a day with the same figures: dropped. ${firstRepeat}`);
  }
  return { firstDay, days, byFigure, lineByDay, notes };
}

/** The first line that repeats, and what it repeats. */
export function repeatSaid(line: number, firstLine: number): string {
  return `The first is line ${line}, which repeats line ${firstLine}.`;
}

function isAlike(a: number, b: number): boolean {
  return a === b || (Number.isNaN(a) && Number.isNaN(b));
}

/** Refuses a record of more than 300 years, before memory is taken for it. */
export function refuseLongSpan(firstDay: number, lastDay: number, complaints: Complaints): void {
  if (lastDay - firstDay < longestSpan) return;
  const found = `${isoDate(firstDay)} to ${isoDate(lastDay)}`;
  complain(complaints, 0, "a record of at most 300 years", found, "mend the years", true);
  refuseIfAny(complaints);
}
