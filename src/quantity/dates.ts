import type { Problem } from "../problem.ts";
import { dayNumber, isDate, type MonthDay } from "./calendar.ts";

type Wrong = Pick<Problem, "expected" | "mend">;

export const monthNames = [
  "Jan",
  "Feb",
  "Mar",
  "Apr",
  "May",
  "Jun",
  "Jul",
  "Aug",
  "Sep",
  "Oct",
  "Nov",
  "Dec",
] as const;
const fullNames = [
  "january",
  "february",
  "march",
  "april",
  "may",
  "june",
  "july",
  "august",
  "september",
  "october",
];
const monthWords = [...fullNames, "november", "december"];

/** A leap year, so that 29 February is a day of some year. */
const someLeapYear = 2020;

const wrongDay: Wrong = {
  expected: 'a day of the year such as "Jun 1" or "06-01"',
  mend: "write the month by name",
};
const wrongDate: Wrong = {
  expected: 'a date such as "2020-06-01"',
  mend: "write year, month and day, in that order",
};

/**
 * A day of any year: `Jun 1`, `1 June`, `06-01`. `6/1` is refused: it is June here and January there.
 * @example tryMonthDay("1 June") // { month: 6, day: 1 }
 */
export function tryMonthDay(found: unknown): MonthDay | Wrong {
  if (typeof found !== "string") return wrongDay;
  const text = found.trim();
  const numbers = /^(\d{2})-(\d{2})$/.exec(text);
  const words = /^([a-z]+)\.?\s+(\d{1,2})(?:st|nd|rd|th)?$/i.exec(text);
  const turned = /^(\d{1,2})(?:st|nd|rd|th)?\s+([a-z]+)\.?$/i.exec(text);
  const month = numbers ? Number(numbers[1]) : monthNamed(words?.[1] ?? turned?.[2] ?? "");
  const day = Number(numbers?.[2] ?? words?.[2] ?? turned?.[1] ?? 0);
  if (month < 1) return wrongDay;
  if (!isDate(someLeapYear, month, day)) return { ...wrongDay, mend: "give a day that the month has" };
  return { month, day };
}

/**
 * A date as a day number.
 * @example tryDate("1970-01-02") // 1
 */
export function tryDate(found: unknown): number | Wrong {
  const match = typeof found === "string" ? /^(\d{4})-(\d{2})-(\d{2})$/.exec(found.trim()) : null;
  if (match === null) return wrongDate;
  const [year, month, day] = [Number(match[1]), Number(match[2]), Number(match[3])];
  if (!isDate(year, month, day)) return { ...wrongDate, mend: "give a day that the month has" };
  return dayNumber(year, month, day);
}

/** `Jun 1`. */
export function sayMonthDay({ month, day }: MonthDay): string {
  return `${monthNames[month - 1]} ${day}`;
}

/** 1 to 12; 0 when it is no month. `Sept` and any start of three letters or more will do. */
function monthNamed(word: string): number {
  if (word.length < 3) return 0;
  return monthWords.findIndex((name) => name.startsWith(word.toLowerCase())) + 1;
}
