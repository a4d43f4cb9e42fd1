import { usOfKgPerHa } from "../../crop/yield/yieldLine.ts";
import { sayBoth } from "../../quantity/index.ts";
import type { Scenario } from "../../scenario/scenario.ts";
import { drylandRainMm, unitDoubts } from "./unitDoubts.ts";

/**
 * What of the input is hard to believe but cannot be called wrong: told before the answer, which is worth
 * no more than it.
 */
export function doubtsOf(scenario: Scenario): string[] {
  const { weather, doubts } = scenario;
  const { source } = weather;
  return [
    ...rainDoubts(weather),
    ...(source.kind === "record" ? unitDoubts(source.record) : []),
    ...stripsDoubts(scenario),
    ...doubts,
  ];
}

/** Strips whose best one yields less than this share of the crop's best published year: another unit was meant. Ours. */
const leastOfCap = 0.03;

/** 61 kg/ha where 61 bu/ac was meant. A crop that failed, 0, is believed; without a published best year nothing is doubted. */
function stripsDoubts({
  evidence,
  yieldLine: { capKgPerHa, unit },
}: Pick<Scenario, "evidence" | "yieldLine">): string[] {
  const best = Math.max(0, ...(evidence?.strips?.pairs ?? []).flat().map((kgPerHa) => kgPerHa ?? 0));
  if (capKgPerHa === null || best === 0 || best >= leastOfCap * capKgPerHa) return [];
  const us = usOfKgPerHa(best, unit);
  return [
    `The best strip is given ${us.toPrecision(2)} ${unit.us} (${best.toPrecision(2)} kg/ha), which is hard to believe of a crop worth harvesting: check the unit of evidence.strips.yields.`,
  ];
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
