import type {
  AnswerAtRain,
  CaseAnswer,
  Comparison,
  DifferenceAnswer,
} from "../../answer/comparison/comparison.ts";
import type { Spread } from "../../statistics/quantiles.ts";
import { differenceDigits, type DifferenceDigits } from "../tables/differenceDigits.ts";
import { rangeSaid, rangeWithUnit, tailsSaid, tailsToSay } from "../tables/rangeSaid.ts";
import { fixed, percent, type Formatters } from "../tables/formatters.ts";
import { doubtsSaid, rangeOfReadings } from "./field/digReadingsText.ts";

/** Below this a median difference in water is not worth a number, mm. */
const hardlyAnyMm = 1;
/** From this difference in depth on, roots are called deeper or shallower, mm. */
const tellingDepthMm = 5;
/** From this share of seasons on, a difference that the middle season does not show is said. */
const tellingShare = 0.1;

/** From this share of unripe seasons on, what the crop yields is no answer without it. */
const mostlyUnripe = 0.5;

/** What the sentences about one difference need beside it. */
interface Telling extends DifferenceDigits {
  readonly shown: Formatters;
  readonly method: Comparison["method"];
}

/**
 * The answer in plain words: a sentence for each case against the first, at the middle total,
 * then what stopped its roots, then what it is at the other totals.
 */
export function firstLines(comparison: Comparison, shown: Formatters): string[] {
  const { differences, byRainTotal, rainTotalMm, method, cases } = comparison;
  const doubted = doubtLines(comparison);
  if (differences.length === 0) return [...doubted, singleCase(comparison, shown)];
  const alone = differences.length === 1;
  const answered = differences.flatMap((difference, d) => {
    const telling: Telling = { ...differenceDigits(comparison, d, shown), shown, method };
    const said = `${whereSaid(comparison, shown)} ${differenceSaid(difference, alone, telling)}`;
    const ended = rootsEndSaid(
      cases.find(({ name }) => name === difference.to),
      shown,
    );
    const pair = cases.filter(({ name }) => name === difference.from || name === difference.to);
    const { range, doubts } = readingsOf(comparison, d, telling);
    const first = [range, said, doubts, ended, unripeSaid(pair)].filter((one) => one !== null).join(" ");
    const others = byRainTotal.filter((at) => at.rainTotalMm !== rainTotalMm);
    return [first, ...(others.length === 0 ? [] : [otherTotals(others, d, difference, telling)])];
  });
  return [...doubted, ...answered];
}

/** What of the input is hard to believe comes before what follows from it. */
export function doubtLines({ doubts }: Pick<Comparison, "doubts">): string[] {
  return doubts.map((doubt) => `Doubtful: ${doubt}`);
}

/** What else the answer could be by the plants dug, of each difference, without the answer itself. */
export function readingsSaid(comparison: Comparison, shown: Formatters): string[] {
  return comparison.differences.flatMap((_, d) => {
    const { range, doubts } = readingsOf(comparison, d, {
      ...differenceDigits(comparison, d, shown),
      shown,
    });
    return [range, doubts].filter((one) => one !== null);
  });
}

function readingsOf(
  { digReadings: readings, evidence }: Comparison,
  d: number,
  telling: Pick<Telling, "shown" | "water" | "yield">,
): { readonly range: string | null; readonly doubts: string | null } {
  if (readings === undefined) return { range: null, doubts: null };
  const told = { ...telling, readings, d };
  return { range: rangeOfReadings(told), doubts: doubtsSaid(told, evidence?.dig?.fit ?? null) };
}

function singleCase(comparison: Comparison, shown: Formatters): string {
  const one = comparison.cases[0]!;
  const { finalRootDepthMm, waterUseMm, yield: grown } = one;
  const ended = rootsEndSaid(one, shown);
  const unripe = unripeSaid([one]);
  const single = comparison.method.runs === 1;
  return (
    `${whereSaid(comparison, shown)} the roots reached ${shown.depth(finalRootDepthMm)} ${shown.length} and crop and soil used ` +
    `${shown.water(waterUseMm)} ${shown.length} of water ${single ? "in the one season run" : "in the middle season"}, for about ${fixed(grown.p50, 0)} ${grown.unit}` +
    `${single ? "" : ` (${fixed(grown.p10, 0)} to ${fixed(grown.p90, 0)})`}. ${ended === null ? "" : `${ended} `}${unripe === null ? "" : `${unripe} `}There is only one case: nothing to compare it with.`
  );
}

/** `At 13 in of rain` */
function whereSaid({ rainTotalMm, annualRainMm, method }: Comparison, shown: Formatters): string {
  if (rainTotalMm !== null) {
    const season = method.rainTotalOver === "season" ? " in the season" : "";
    if (method.rainTotalIs !== undefined)
      return `At a mean of ${shown.total(rainTotalMm)} ${shown.length} of rain ${season === "" ? "a year" : "a season"}`;
    return `At ${shown.total(rainTotalMm)} ${shown.length} of rain${season}`;
  }
  if (annualRainMm === null) return "With the rain as it came";
  const { p10, p50, p90 } = annualRainMm;
  return p10 === p90
    ? `With ${shown.total(p50)} ${shown.length} of rain in the year, as it came,`
    : `With the rain as it came, ${shown.total(p50)} ${shown.length} of it in the middle year (P10 ${shown.total(p10)} to P90 ${shown.total(p90)}),`;
}

/** Roots that would have gone on: that they were stopped belongs to the answer. */
function rootsEndSaid(one: CaseAnswer | undefined, shown: Formatters): string | null {
  if (one === undefined || one.rootsEndAt === null) return null;
  const { name, finalRootDepthMm, rootsEndAt } = one;
  const depth = `${shown.depth(finalRootDepthMm)} ${shown.length}`;
  return rootsEndAt === "described soil"
    ? `The roots of "${name}" could not go deeper: the soil is described to ${depth}.`
    : `The roots of "${name}" could not go deeper: ${rootsEndAt} at ${depth} ends them.`;
}

/** A season too short for the crop, such as one sown in the wrong half of the year, makes all cases alike. */
function unripeSaid(cases: readonly CaseAnswer[]): string | null {
  const share = Math.max(...cases.map(({ unripeShare }) => unripeShare));
  return share < mostlyUnripe
    ? null
    : `But in ${percent(share)} of the seasons the crop ran out of time before it was ripe: check the sowing date and the crop first.`;
}

function differenceSaid(difference: DifferenceAnswer, alone: boolean, telling: Telling): string {
  const { extraWaterUsedMm: water, from } = difference;
  const { shown, method } = telling;
  const who = subjectOf(difference, alone);
  const season = method.runs === 1 ? "in the one season run" : "in the middle season";
  if (isNothing(difference))
    return `${who} took up exactly as much water as "${from}": no difference in water or yield.`;
  const asMuch = `${who} took up about as much water as "${from}"`;
  const unit = shown.length;
  if (Math.abs(water.p50) < hardlyAnyMm) {
    const tails = tailsOf(difference, telling);
    if (tails !== null) return `${asMuch} in most seasons, worth next to nothing, but ${tails}.`;
    return `${asMuch} ${season}${inBrackets(rangeWithUnit(water, telling.water, unit), method)}, worth ${nextToNothing(difference, telling)}.`;
  }
  const more = water.p50 > 0 ? "more" : "less";
  return (
    `${who} took up ${telling.water(Math.abs(water.p50))} ${unit} ${more} water ${season}` +
    `${inBrackets(rangeSaid(water, telling.water), method)}, ${worthSaid(difference, telling)}.`
  );
}

/** One run has no range. */
function inBrackets(range: string, { runs }: Comparison["method"]): string {
  return runs === 1 ? "" : ` (${range})`;
}

/** Whether every run was the same, as far as its results tell. */
function isNothing({ extraWaterUsedMm, extraYield, shareOfSeasonsItMattered }: DifferenceAnswer): boolean {
  const all = [extraWaterUsedMm, extraYield].flatMap(({ p10, p50, p90 }) => [p10, p50, p90]);
  return shareOfSeasonsItMattered === 0 && all.every((value) => value === 0);
}

/** "The deeper roots" only where nothing else could have made the difference. */
function subjectOf({ extraDepthMm, onlyRootsDiffer, to }: DifferenceAnswer, alone: boolean): string {
  if (alone && onlyRootsDiffer && extraDepthMm >= tellingDepthMm) return "the deeper roots";
  if (alone && onlyRootsDiffer && extraDepthMm <= -tellingDepthMm) return "the shallower roots";
  return `"${to}"`;
}

function worthSaid(difference: DifferenceAnswer, telling: Telling): string {
  const { extraYield } = difference;
  const middle = telling.yield(Math.abs(extraYield.p50));
  if (Number(middle) === 0) {
    const tails = tailsToSay(extraYield, telling.yield, extraYield.unit, tellingYield(telling.method));
    return tails.length > 0
      ? `worth nothing in most seasons, but ${tailsSaid(tails)}`
      : `worth ${nextToNothing(difference, telling)}`;
  }
  const verb = extraYield.p50 > 0 ? "worth" : "which costs";
  return `${verb} about ${middle} ${extraYield.unit}${inBrackets(rangeSaid(extraYield, telling.yield), telling.method)}`;
}

function nextToNothing({ extraYield }: DifferenceAnswer, { yield: say, method }: Telling): string {
  const { p10, p50, p90, unit } = extraYield;
  if ([p10, p50, p90].every((value) => Number(say(value)) === 0)) return "nothing in yield";
  return `next to nothing in yield${inBrackets(rangeWithUnit(extraYield, say, unit), method)}`;
}

/** The yield of the least water that counts as a difference, by the middle of the yield line's slope. */
function tellingYield({ yieldLine, matteredFromMm }: Comparison["method"]): number {
  return (matteredFromMm * yieldLine.slopeKgPerHaPerMm.middle) / yieldLine.kgPerHaPerUnit;
}

/** What a middle season of nothing hides; null where that is nothing either. */
function tailsOf(difference: DifferenceAnswer, telling: Telling): string | null {
  const { extraWaterUsedMm, extraYield, shareOfSeasonsItMattered } = difference;
  const { shown, method } = telling;
  const tails = tailsToSay(extraWaterUsedMm, telling.water, shown.length, method.matteredFromMm);
  const grown = tailsToSay(extraYield, telling.yield, extraYield.unit, tellingYield(method));
  const together = [...tails, ...grown.filter(({ side }) => !tails.some((one) => one.side === side))].map(
    (tail) => {
      const also = grown.find((one) => one !== tail && one.side === tail.side);
      return also === undefined ? tail : { ...tail, amount: `${tail.amount} and ${also.amount}` };
    },
  );
  if (together.length > 0) return tailsSaid(together);
  if (shareOfSeasonsItMattered < tellingShare) return null;
  return `the difference was ${shown.water(method.matteredFromMm)} ${shown.length} or more in ${percent(shareOfSeasonsItMattered)} of them`;
}

/** `At 12 in it is 0.2 in and 2 bu/ac; at 14 in 0.7 in and 7 bu/ac.` */
function otherTotals(
  others: readonly AnswerAtRain[],
  d: number,
  middle: DifferenceAnswer,
  telling: Telling,
): string {
  const { shown } = telling;
  const parts = others.map((at, i) => {
    const difference = at.differences[d]!;
    const { extraWaterUsedMm, extraYield } = difference;
    const total = `${i === 0 ? "At" : "at"} ${shown.total(at.rainTotalMm ?? 0)} ${shown.length}${i === 0 ? " it is" : ""}`;
    const figures = `${telling.water(Math.abs(extraWaterUsedMm.p50))} ${shown.length} and ${telling.yield(Math.abs(extraYield.p50))} ${extraYield.unit}`;
    const tails = Math.abs(extraWaterUsedMm.p50) < hardlyAnyMm ? tailsOf(difference, telling) : null;
    const isNothing =
      Number(telling.water(extraWaterUsedMm.p50)) === 0 && Number(telling.yield(extraYield.p50)) === 0;
    return `${total} ${figures}${isNothing ? "" : sideOf(extraWaterUsedMm, middle.extraWaterUsedMm)}${tails === null ? "" : ` in most seasons, but ${tails}`}`;
  });
  return `${parts.join("; ")}.`;
}

/** Said where the reader cannot know it from the sentence before. */
function sideOf(here: Spread, before: Spread): string {
  if (here.p50 < 0) return " less";
  return before.p50 < 0 && here.p50 > 0 ? " more" : "";
}
