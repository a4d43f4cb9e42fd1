import type { Units } from "../../quantity/kinds.ts";
import { shownIn } from "./formatters.ts";

/**
 * Which run a ledger is of, as a CSV has no place for it: `run 12: sown in 1931, rain scaled to 13 in`.
 *
 * @param run counted from 0
 * @param note behind its number, such as ", one near the middle"
 */
export function runSaid(
  run: number,
  year: number,
  rainTotalMm: number | null,
  units: Units,
  note = "",
): string {
  const shown = shownIn(units);
  const rain =
    rainTotalMm === null ? "rain as it came" : `rain scaled to ${shown.total(rainTotalMm)} ${shown.length}`;
  return `run ${run + 1}${note}: sown in ${year}, ${rain}`;
}
