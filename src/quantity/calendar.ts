/** Days as whole numbers: 0 is 1970-01-01, in the proleptic Gregorian calendar, without time zones. */

const msPerDay = 86_400_000;

/** Day number of a date; month 1 to 12. Does not check the date: see `isDate`. */
export function dayNumber(year: number, month: number, day: number): number {
  const date = new Date(0);
  date.setUTCFullYear(year, month - 1, day);
  return Math.round(date.getTime() / msPerDay);
}

/** Whether year, month, day name a real day (29 February only in leap years). */
export function isDate(year: number, month: number, day: number): boolean {
  return month >= 1 && month <= 12 && day >= 1 && day <= daysInMonth(year, month);
}

export function daysInMonth(year: number, month: number): number {
  return (
    dayNumber(month === 12 ? year + 1 : year, month === 12 ? 1 : month + 1, 1) - dayNumber(year, month, 1)
  );
}

export function isLeapYear(year: number): boolean {
  return (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;
}

export function yearOf(day: number): number {
  return new Date(day * msPerDay).getUTCFullYear();
}

/** 1 to 12. */
export function monthOf(day: number): number {
  return new Date(day * msPerDay).getUTCMonth() + 1;
}

/** 1 to 31. */
export function dayOfMonth(day: number): number {
  return new Date(day * msPerDay).getUTCDate();
}

/** 1 to 366. */
export function dayOfYear(day: number): number {
  return day - dayNumber(yearOf(day), 1, 1) + 1;
}

/** `2020-05-14`. */
export function isoDate(day: number): string {
  return new Date(day * msPerDay).toISOString().slice(0, 10);
}

/** Month and day in a year; 29 February becomes 28 in other years. */
export function dayInYear(year: number, monthDay: MonthDay): number {
  return dayNumber(year, monthDay.month, Math.min(monthDay.day, daysInMonth(year, monthDay.month)));
}

/** A day of any year, such as a sowing date. */
export interface MonthDay {
  /** 1 to 12 */
  readonly month: number;
  /** 1 to 31 */
  readonly day: number;
}
