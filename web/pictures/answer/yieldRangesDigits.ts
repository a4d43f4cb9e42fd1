import { fixed } from "../../../src/report/tables/formatters.ts";

/** A difference in yield: a digit finer where the unit is as large as a bushel. */
export function sayExtraYield(value: number, unit: string): string {
  return fixed(value, unit === "bu/ac" ? 1 : 0);
}
