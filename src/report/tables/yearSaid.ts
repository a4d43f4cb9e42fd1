import { firstGeneratedYear } from "../../answer/runs/weatherYears.ts";

/** Generated years are counted, so that nobody takes one for a year that was or will be. */

/**
 * The number of a generated year, from 1; files and `--year` have it as a calendar year from 2001 on.
 * @example generatedYear(2012) // 12
 */
export function generatedYear(year: number): number {
  return year - firstGeneratedYear + 1;
}

/** @example yearSaid(2012, true) // "generated year 12" */
export function yearSaid(year: number, isGenerated: boolean): string {
  return isGenerated ? `generated ${yearBriefly(year, true)}` : String(year);
}

/** Where it is said beside it that years are generated, as on an axis. @example yearBriefly(2012, true) // "year 12" */
export function yearBriefly(year: number, isGenerated: boolean): string {
  return isGenerated ? `year ${generatedYear(year)}` : String(year);
}
