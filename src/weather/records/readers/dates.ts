import { dayNumber, daysInMonth, isLeapYear } from "../../../quantity/calendar.ts";

/** Which of a slashed date comes first. A date that begins with a four-digit year is year, month, day in either. */
export type DateOrder = "month first" | "day first";

/** Years believed; a slip of the pen outside them would stretch a record over centuries. */
const firstYear = 1700;
const lastYear = 2200;

const yearFirst = /^(\d{4})([-/.]?)(\d{1,2})\2(\d{1,2})(?:[T ].*)?$/;
const yearLast = /^(\d{1,2})[-/.](\d{1,2})[-/.](\d{4})(?:[T ].*)?$/;

/** Day number of a date text, its time of day left aside; NaN where it names no day: then ask `explainDate`. */
export function readDate(text: string, order: DateOrder | null): number {
  const parts = partsOf(text, order);
  return parts === null ? NaN : dayOf(...parts);
}

/** Day number, or NaN where there is no such day. */
export function dayOf(year: number, month: number, day: number): number {
  const known = year >= firstYear && year <= lastYear && month >= 1 && month <= 12;
  if (!known || day < 1 || !Number.isInteger(year + month + day)) return NaN;
  if (day > 28 && day > daysInMonth(year, month)) return NaN;
  return dayNumber(year, month, day);
}

/** Day number from the day of the year, 1 to 365 or 366; NaN outside. */
export function dayOfYearIn(year: number, dayOfYear: number): number {
  const known = year >= firstYear && year <= lastYear && Number.isInteger(year + dayOfYear);
  if (!known || dayOfYear < 1 || dayOfYear > (isLeapYear(year) ? 366 : 365)) return NaN;
  return dayNumber(year, 1, 1) + dayOfYear - 1;
}

function partsOf(text: string, order: DateOrder | null): [number, number, number] | null {
  const first = yearFirst.exec(text);
  if (first !== null) {
    const bare = first[2] === "" && !/^\d{8}(?:[T ].*)?$/.test(text);
    return bare ? null : [Number(first[1]), Number(first[3]), Number(first[4])];
  }
  const last = yearLast.exec(text);
  if (last === null || order === null) return null;
  const [a, b, year] = [Number(last[1]), Number(last[2]), Number(last[3])];
  return order === "month first" ? [year, a, b] : [year, b, a];
}

/** What a date such as 13/5/2020 says about the order of its column; null where it says nothing. */
export function orderShownBy(text: string): DateOrder | null {
  const match = yearLast.exec(text);
  if (match === null) return null;
  const [a, b] = [Number(match[1]), Number(match[2])];
  if (a > 12 && b <= 12) return "day first";
  if (b > 12 && a <= 12) return "month first";
  return null;
}

export function isYearLast(text: string): boolean {
  return yearLast.test(text);
}

/** Why a text is no date, and how to mend it. */
export function explainDate(text: string, order: DateOrder | null): { expected: string; mend: string } {
  const parts = partsOf(text, order);
  if (parts === null) {
    const shortYear = /^\d{1,2}[-/.]\d{1,2}[-/.]\d{2}$/.test(text);
    return {
      expected: "a date such as 2020-05-14 or 20200514",
      mend: shortYear ? "write the year with four digits" : "write it so",
    };
  }
  const [year, month, day] = parts;
  if (year < firstYear || year > lastYear) {
    return { expected: `a year from ${firstYear} to ${lastYear}`, mend: "mend the year" };
  }
  if (month === 2 && day === 29) {
    return {
      expected: `a day of the calendar (${year} is no leap year)`,
      mend: "remove the line or mend the date",
    };
  }
  const slashed = order !== null && isYearLast(text) ? `, read ${order} as the other dates are` : "";
  return { expected: `a day of the calendar${slashed}`, mend: "mend the date" };
}
