import type { Units } from "../../quantity/kinds.ts";
import { shownIn } from "./formatters.ts";
import { yearSaid } from "./yearSaid.ts";

/**
 * Which run a ledger is of, as a CSV has no place for it: `run 12: sown in 1931, rain scaled to 13 in`. A generated year is told
 * with the calendar year that stands for it in the ledger's dates and in `--year`: `generated year 12 (2012)`.
 *
 * @param run counted from 0
 * @param note behind its number, such as ", one near the middle"
 */
export function runSaid(
  run: number,
  { year, isGenerated }: { readonly year: number; readonly isGenerated: boolean },
  rainTotalMm: number | null,
  units: Units,
  note = "",
): string {
  const shown = shownIn(units);
  const rain =
    rainTotalMm === null ? "rain as it came" : `rain scaled to ${shown.total(rainTotalMm)} ${shown.length}`;
  const sown = yearSaid(year, isGenerated) + (isGenerated ? ` (${year})` : "");
  return `run ${run + 1}${note}: sown in ${sown}, ${rain}`;
}
