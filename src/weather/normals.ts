import { refuse } from "../problem.ts";
import { daysInMonth, isLeapYear } from "./calendar.ts";
import type { MonthlyAir, MonthlyNormals } from "./record.ts";

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
  const nodes = Float64Array.from(monthly);
  // Each pass leaves at most three eighths of the misfit: months that alternate shrink most, to 5/8.
  for (let pass = 0; pass < 80; pass++) {
    const means = monthMeans(throughNodes(nodes, lengths), lengths);
    for (let month = 0; month < 12; month++) nodes[month]! += monthly[month]! - means[month]!;
  }
  return throughNodes(nodes, lengths);
}

function throughNodes(nodes: Float64Array, lengths: readonly number[]): Float64Array {
  const values: number[] = [];
  for (const [month, length] of lengths.entries()) {
    for (let day = 0; day < length; day++) {
      const at = month + (day + 0.5) / length - 0.5; // node k stands in the middle of month k
      const from = Math.floor(at);
      const node = (offset: number) => nodes[(from + offset + 12) % 12]!;
      values.push(cubic(at - from, node(-1), node(0), node(1), node(2)));
    }
  }
  return Float64Array.from(values);
}

/** Catmull and Rom's cubic between b (u = 0) and c (u = 1). */
function cubic(u: number, a: number, b: number, c: number, d: number): number {
  return b + (u / 2) * (c - a + u * (2 * a - 5 * b + 4 * c - d + u * (3 * (b - c) + d - a)));
}

function monthMeans(values: Float64Array, lengths: readonly number[]): number[] {
  let start = 0;
  return lengths.map((length) => {
    const month = values.subarray(start, (start += length));
    return month.reduce((sum, value) => sum + value, 0) / length;
  });
}
