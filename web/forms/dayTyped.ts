import { sayMonthDay } from "../../src/quantity/dates.ts";
import type { Units } from "../../src/quantity/kinds.ts";

/**
 * A day as people of the chosen units type it, as the scenario wants it: 6/1 is June 1 in inches, January 6 in millimeters. What
 * is no such day stays as it was typed.
 * @example dayTyped("6/1", "us") // "Jun 1"
 * @example dayTyped("1.6.2024", "metric") // "2024-06-01"
 */
export function dayTyped(text: string, units: Units): string {
  const [, first = "", second = "", year = ""] =
    /^\s*(\d{1,2})[/.](\d{1,2})[/.]?(\d{4})?\s*$/.exec(text) ?? [];
  const [month, day] = units === "us" ? [Number(first), Number(second)] : [Number(second), Number(first)];
  if (month < 1 || month > 12 || day < 1 || day > 31) return text;
  const two = (value: number) => String(value).padStart(2, "0");
  return year === "" ? sayMonthDay({ month, day }) : `${year}-${two(month)}-${two(day)}`;
}

/** Places of the scenario that hold a day, of any year or of one. */
export function isDay(path: string): boolean {
  return /(?:^|\.)(?:sowing|ripe|harvest|springGrowth|waterMeasured|date)$/.test(path);
}

/** A fallow is told in months up to three years, in days above: 11 is not eleven days. */
export function fallowUnit(text: string): "months" | "days" {
  return Number(text.replace(",", "")) <= 36 ? "months" : "days";
}
