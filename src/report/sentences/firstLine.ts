import type {
  AnswerAtRain,
  CaseAnswer,
  Comparison,
  DifferenceAnswer,
} from "../../answer/comparison/comparison.ts";
import type { Spread } from "../../statistics/quantiles.ts";
import { differenceDigits } from "../tables/differenceDigits.ts";
import { fixed, percent, type Formatters } from "../tables/formatters.ts";
import { differenceSaid, hardlyAnyMm, seasonSaid, tailsOf, type Telling } from "./differenceSaid.ts";
import { doubtsSaid, rangeOfReadings } from "./field/digReadingsText.ts";

/** From this share of unripe seasons on, what the crop yields is no answer without it. */
const mostlyUnripe = 0.5;

/** The answer about one case against the first. */
export interface DifferenceTold {
  /** Where the plants dug leave two readings: the answer by both. Comes before the sentence, which is of one of them. */
  readonly range: string | null;
  /** One short sentence: what it is in a typical year, the median of the runs. */
  readonly sentence: string;
  /** `In 8 years of 10: 0.1 to 0.8 in, 1 to 5 bu/ac.`: from P10 to P90; null where there is none or the sentence says it. */
  readonly odds: string | null;
  /** What the answer must not be read without: where dig and model disagree, what stopped the roots, seasons too short. */
  readonly besides: readonly string[];
  /** What it is at the other totals of rain; null where there are none. */
  readonly otherTotals: string | null;
}

/** The answer in plain words, a part for each case against the first, at the middle total of rain; of one case, that case. */
export function differencesTold(comparison: Comparison, shown: Formatters): DifferenceTold[] {
  const { differences, byRainTotal, rainTotalMm, method, cases } = comparison;
  if (differences.length === 0) return [singleCase(comparison, shown)];
  const alone = differences.length === 1;
  const others = byRainTotal.filter((at) => at.rainTotalMm !== rainTotalMm);
  return differences.map((difference, d) => {
    const telling: Telling = { ...differenceDigits(comparison, d, shown), shown, method };
    const { sentence, odds } = differenceSaid(difference, alone, telling);
    const ended = rootsEndSaid(
      cases.find(({ name }) => name === difference.to),
      shown,
    );
    const pair = cases.filter(({ name }) => name === difference.from || name === difference.to);
    const { range, doubts } = readingsOf(comparison, d, telling);
    return {
      range,
      sentence: `${whereSaid(comparison, shown)} ${sentence}`,
      odds,
      besides: [doubts, ended, unripeSaid(pair)].filter((one) => one !== null),
      otherTotals: others.length === 0 ? null : otherTotals(others, d, difference, telling),
    };
  });
}

/** The same in paragraphs: what is doubtful, then for each case the answer and what it is at the other totals. */
export function firstLines(comparison: Comparison, shown: Formatters): string[] {
  const told = differencesTold(comparison, shown).flatMap((one) => [
    answerInFull(one),
    ...(one.otherTotals === null ? [] : [one.otherTotals]),
  ]);
  return [...doubtLines(comparison), ...told];
}

/** The sentence with all that belongs to it, in a paragraph. */
export function answerInFull({ range, sentence, odds, besides }: DifferenceTold): string {
  return [range, sentence, odds, ...besides].filter((one) => one !== null).join(" ");
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

function singleCase(comparison: Comparison, shown: Formatters): DifferenceTold {
  const one = comparison.cases[0]!;
  const { finalRootDepthMm, waterUseMm, yield: grown } = one;
  const single = comparison.method.runs === 1;
  const besides = [
    rootsEndSaid(one, shown),
    unripeSaid([one]),
    "There is only one case: nothing to compare it with.",
  ];
  return {
    range: null,
    sentence:
      `${whereSaid(comparison, shown)} the roots reached ${shown.depth(finalRootDepthMm)} ${shown.length} and crop and soil used ` +
      `${shown.water(waterUseMm)} ${shown.length} of water ${seasonSaid(comparison.method)}, for about ${fixed(grown.p50, 0)} ${grown.unit}.`,
    odds: single ? null : `In 8 years of 10: ${fixed(grown.p10, 0)} to ${fixed(grown.p90, 0)} ${grown.unit}.`,
    besides: besides.filter((part) => part !== null),
    otherTotals: null,
  };
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
    : `With the rain as it came (about ${shown.total(p50)} ${shown.length} a year; ${shown.total(p10)} to ${shown.total(p90)} in 8 years of 10),`;
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
    : `But in ${percent(share)} of the years the crop ran out of time before it was ripe: check the sowing date and the crop first.`;
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
    return `${total} ${figures}${isNothing ? "" : sideOf(extraWaterUsedMm, middle.extraWaterUsedMm)}${tails === null ? "" : ` in most years, but ${tails}`}`;
  });
  return `${parts.join("; ")}.`;
}

/** Said where the reader cannot know it from the sentence before. */
function sideOf(here: Spread, before: Spread): string {
  if (here.p50 < 0) return " less";
  return before.p50 < 0 && here.p50 > 0 ? " more" : "";
}
