import { sayBoth } from "../../quantity/index.ts";
import type { Scenario } from "../../scenario/scenario.ts";
import { drylandRainMm, unitDoubts } from "./unitDoubts.ts";

/**
 * What of the input is hard to believe but cannot be called wrong: told before the answer, which is worth
 * no more than it.
 */
export function doubtsOf({ weather, doubts }: Scenario): string[] {
  const { source } = weather;
  return [...rainDoubts(weather), ...(source.kind === "record" ? unitDoubts(source.record) : []), ...doubts];
}

/** Totals that no dryland crop meets: 130 in for 13, or inches for centimeters. */
function rainDoubts({ rainTotalsMm, rainTotalOver }: Scenario["weather"]): string[] {
  const { least, most } = drylandRainMm;
  // A season is a part of its year: only too much of it is odd.
  const odd = rainTotalsMm.filter((mm) => mm > most || (rainTotalOver === "year" && mm < least));
  if (odd.length === 0) return [];
  const said = odd.map((mm) => sayBoth(mm, "rain")).join(", ");
  const range = `${sayBoth(least, "rain")} to ${sayBoth(most, "rain")}`;
  return [
    `Rain of ${said} a ${rainTotalOver} is asked for, which is hard to believe of a dryland field, where a year has ${range}: check the number and its unit.`,
  ];
}
