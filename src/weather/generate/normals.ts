import { refuse } from "../../problem.ts";
import { daysInMonth, isLeapYear } from "../../quantity/calendar.ts";
import type { MonthlyAir, MonthlyNormals } from "../records/record.ts";

/** Throws an InputError unless there are twelve numbers each, no rain below 0, no highest below its lowest. */
export function checkNormals({ rainMm, wetDays, tMaxC, tMinC }: MonthlyNormals): void {
  checkTwelve({ rain: rainMm, ...(wetDays === null ? {} : { wetDays }) }, 0);
  checkMonthlyAir({ tMaxC, tMinC });
}

/** The same for temperatures alone. */
export function checkMonthlyAir({ tMaxC, tMinC }: MonthlyAir): void {
  checkTwelve({ tMax: tMaxC, tMin: tMinC }, -90);
  for (const [month, low] of tMinC.entries()) {
    if (low > tMaxC[month]!)
      refuse(
        `weather.monthlyNormals.tMin[${month}]`,
        `at most that month's mean highest, ${tMaxC[month]} C`,
        low,
        "swap or correct the two",
      );
  }
}

/** Lists named as in the scenario file. */
function checkTwelve(lists: Readonly<Record<string, readonly number[]>>, least: number): void {
  for (const [name, values] of Object.entries(lists)) {
    const field = `weather.monthlyNormals.${name}`;
    if (values.length !== 12)
      refuse(field, "twelve values, January first", values, "give one for each month");
    for (const [month, value] of values.entries()) {
      if (!(value >= least && Number.isFinite(value)))
        refuse(`${field}[${month}]`, `a number not below ${least}`, value, "correct it");
    }
  }
}

/** A smooth course through the year whose mean over each month is that month's value. */
export interface YearCourse {
  readonly ordinary: Float64Array;
  readonly leap: Float64Array;
}

/**
 * Daily values from twelve monthly means: a periodic cubic through mid-month nodes (Catmull and Rom), the
 * nodes moved until the months' means come back. May rise above the highest mean and fall below the lowest.
 *
 * @param monthly twelve means, January first
 * @returns by day of the year, 0 = 1 January: 365 and 366 values
 */
export function yearCourse(monthly: readonly number[]): YearCourse {
  return { ordinary: courseOf(monthly, 2001), leap: courseOf(monthly, 2004) };
}

/** The course laid over the days of a record. */
export function overDays(
  course: YearCourse,
  firstYear: number,
  firstDayOfYear: number,
  days: number,
): Float64Array {
  const values = new Float64Array(days);
  let [year, at] = [firstYear, firstDayOfYear - 1];
  for (let day = 0; day < days; day++) {
    const ofYear = isLeapYear(year) ? course.leap : course.ordinary;
    values[day] = ofYear[at]!;
    if (++at === ofYear.length) [year, at] = [year + 1, 0];
  }
  return values;
}

function courseOf(monthly: readonly number[], likeYear: number): Float64Array {
  const lengths = monthly.map((_, month) => daysInMonth(likeYear, month + 1));
  const places = placesOf(lengths);
  const nodes = Float64Array.from(monthly);
  const values = new Float64Array(places.node.length);
  // Each pass leaves at most three eighths of the misfit: months that alternate shrink most, to 5/8.
  for (let pass = 0; pass < 80; pass++) {
    throughNodes(nodes, places, values);
    if (!moveNodes(nodes, monthly, values, lengths)) return values;
  }
  return throughNodes(nodes, places, values);
}

/** Where each day of the year stands among the mid-month nodes: which node lies before it, and how far on it is, 0 to 1. */
interface Places {
  readonly node: Uint8Array;
  readonly past: Float64Array;
}

function placesOf(lengths: readonly number[]): Places {
  const [node, past]: [number[], number[]] = [[], []];
  for (const [month, length] of lengths.entries()) {
    for (let day = 0; day < length; day++) {
      const at = month + (day + 0.5) / length - 0.5; // node k stands in the middle of month k
      const from = Math.floor(at);
      node.push((from + 12) % 12);
      past.push(at - from);
    }
  }
  return { node: Uint8Array.from(node), past: Float64Array.from(past) };
}

function throughNodes(nodes: Float64Array, { node, past }: Places, values: Float64Array): Float64Array {
  for (let day = 0; day < values.length; day++) {
    const n = node[day]!;
    values[day] = cubic(
      past[day]!,
      nodes[(n + 11) % 12]!,
      nodes[n]!,
      nodes[(n + 1) % 12]!,
      nodes[(n + 2) % 12]!,
    );
  }
  return values;
}

/** Catmull and Rom's cubic between b (u = 0) and c (u = 1). */
function cubic(u: number, a: number, b: number, c: number, d: number): number {
  return b + (u / 2) * (c - a + u * (2 * a - 5 * b + 4 * c - d + u * (3 * (b - c) + d - a)));
}

/** Moves each node by its month's misfit; false where none moved, so that no further pass would change anything. */
function moveNodes(
  nodes: Float64Array,
  monthly: readonly number[],
  values: Float64Array,
  lengths: readonly number[],
): boolean {
  let moved = false;
  let day = 0;
  for (let month = 0; month < 12; month++) {
    let sum = 0;
    for (const end = day + lengths[month]!; day < end; day++) sum += values[day]!;
    const before = nodes[month]!;
    nodes[month] = before + (monthly[month]! - sum / lengths[month]!);
    if (nodes[month] !== before) moved = true;
  }
  return moved;
}
