import type { AnswerAtRain, Comparison, DifferenceAnswer } from "../answer/comparison.ts";
import type { Spread } from "../answer/quantiles.ts";
import { fixed, type Shown } from "./shownUnits.ts";

/** Below this a median difference in water is not worth a number, mm. */
const hardlyAnyMm = 1;
/** Differences that all stay below this are told a digit finer, mm. */
const smallMm = 12.7;
/** From this difference in depth on, roots are called deeper or shallower, mm. */
const tellingDepthMm = 5;

/**
 * The answer in plain words: a sentence for each case against the first, at the middle total,
 * then one for what it is at the other totals.
 */
export function firstLines(comparison: Comparison, shown: Shown): string[] {
  const { differences, byRainTotal, rainTotalMm } = comparison;
  if (differences.length === 0) return [singleCase(comparison, shown)];
  const alone = differences.length === 1;
  return differences.flatMap((difference, d) => {
    const said = `${whereSaid(comparison, shown)} ${differenceSaid(difference, alone, shown)}`;
    const others = byRainTotal.filter((at) => at.rainTotalMm !== rainTotalMm);
    return others.length === 0 ? [said] : [said, otherTotals(others, d, shown)];
  });
}

function singleCase(comparison: Comparison, shown: Shown): string {
  const { finalRootDepthMm, waterUseMm, yield: grown } = comparison.cases[0]!;
  return (
    `${whereSaid(comparison, shown)} the roots reached ${shown.depth(finalRootDepthMm)} ${shown.length} and the crop used ` +
    `${shown.water(waterUseMm)} ${shown.length} of water in the middle season, for about ${fixed(grown.p50, 0)} ${grown.unit} ` +
    `(${fixed(grown.p10, 0)} to ${fixed(grown.p90, 0)}). There is only one case: nothing to compare it with.`
  );
}

/** `At 13 in of rain` */
function whereSaid({ rainTotalMm, annualRainMm, method }: Comparison, shown: Shown): string {
  if (rainTotalMm !== null) {
    const season = method.rainTotalOver === "season" ? " in the season" : "";
    return `At ${shown.total(rainTotalMm)} ${shown.length} of rain${season}`;
  }
  if (annualRainMm === null) return "With the rain as it came";
  const { p10, p50, p90 } = annualRainMm;
  return p10 === p90
    ? `With ${shown.total(p50)} ${shown.length} of rain in the year, as it came,`
    : `With the rain as it came (${shown.total(p50)} ${shown.length} in the middle year, ${shown.total(p10)} to ${shown.total(p90)})`;
}

function differenceSaid(difference: DifferenceAnswer, alone: boolean, shown: Shown): string {
  const { extraWaterUsedMm: water, extraYield, to, from, extraDepthMm } = difference;
  const who = alone ? subjectOf(extraDepthMm, to) : `"${to}"`;
  if (water.p10 === 0 && water.p90 === 0) {
    return `${who} used exactly as much water as "${from}": no difference in water or yield.`;
  }
  const unit = shown.length;
  if (Math.abs(water.p50) < hardlyAnyMm) {
    return (
      `${who} used about as much water as "${from}" in the middle season (${rangeWithUnit(water, shown.fineWater, unit)}), ` +
      `worth ${nextToNothing(extraYield)}.`
    );
  }
  const more = water.p50 > 0 ? "more" : "less";
  const say = waterWriter(water, shown);
  return (
    `${who} used ${say(Math.abs(water.p50))} ${unit} ${more} water in the middle season ` +
    `(${rangeSaid(water, say)}), ${worthSaid(extraYield)}.`
  );
}

function subjectOf(extraDepthMm: number, name: string): string {
  if (extraDepthMm >= tellingDepthMm) return "the deeper roots";
  if (extraDepthMm <= -tellingDepthMm) return "the shallower roots";
  return `"${name}"`;
}

function worthSaid(spread: DifferenceAnswer["extraYield"]): string {
  const say = yieldWriter(spread);
  const middle = say(Math.abs(spread.p50));
  if (Number(middle) === 0) return `worth ${nextToNothing(spread)}`;
  const verb = spread.p50 > 0 ? "worth" : "which costs";
  return `${verb} about ${middle} ${spread.unit} (${rangeSaid(spread, say)})`;
}

function nextToNothing(spread: DifferenceAnswer["extraYield"]): string {
  const say = yieldWriter(spread);
  if (Number(say(spread.p10)) === 0 && Number(say(spread.p90)) === 0) return "nothing in yield";
  return `next to nothing in yield (${rangeWithUnit(spread, say, spread.unit)})`;
}

function waterWriter({ p10, p90 }: Spread, shown: Shown): (mm: number) => string {
  return Math.max(Math.abs(p10), Math.abs(p90)) < smallMm ? shown.fineWater : shown.water;
}

/** A digit after the point where bushels are few. */
export function yieldWriter({
  unit,
  p10,
  p90,
}: Spread & { readonly unit: string }): (value: number) => string {
  const few = unit === "bu/ac" && Math.max(Math.abs(p10), Math.abs(p90)) < 3;
  return (value) => fixed(value, few ? 1 : 0);
}

/** `0.1 to 0.8`, `0.2 less to 0.8 more`, `0.1 to 0.5 less`. */
function rangeSaid({ p10, p50, p90 }: Spread, say: (value: number) => string): string {
  const low = say(Math.abs(p10));
  const high = say(Math.abs(p90));
  const lowIsLess = p10 < 0 && Number(low) !== 0;
  const highIsMore = p90 > 0 && Number(high) !== 0;
  if (!lowIsLess) return `${low} to ${high}`;
  if (highIsMore) return `${low} less to ${high} more`;
  return p50 < 0 ? `${high} to ${low}` : `${low} less to ${high}`;
}

/** The same where the sentence does not say more or less: `0.00 to 0.20 in`, `0.01 to 0.18 in less`. */
function rangeWithUnit(spread: Spread, say: (value: number) => string, unit: string): string {
  const allLess =
    Number(say(Math.abs(spread.p10))) !== 0 &&
    spread.p10 < 0 &&
    !(spread.p90 > 0 && Number(say(spread.p90)) !== 0);
  if (!allLess) return `${rangeSaid(spread, say)} ${unit}`;
  return `${say(Math.abs(spread.p90))} to ${say(Math.abs(spread.p10))} ${unit} less`;
}

/** `At 12 in it is 0.2 in and 2 bu/ac; at 14 in 0.7 in and 7 bu/ac.` */
function otherTotals(others: readonly AnswerAtRain[], d: number, shown: Shown): string {
  const parts = others.map((at, i) => {
    const { extraWaterUsedMm, extraYield } = at.differences[d]!;
    const total = `${i === 0 ? "At" : "at"} ${shown.total(at.rainTotalMm ?? 0)} ${shown.length}${i === 0 ? " it is" : ""}`;
    return `${total} ${waterWriter(extraWaterUsedMm, shown)(extraWaterUsedMm.p50)} ${shown.length} and ${yieldWriter(extraYield)(extraYield.p50)} ${extraYield.unit}`;
  });
  return `${parts.join("; ")}.`;
}
