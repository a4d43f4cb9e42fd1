import type { Comparison, DifferenceAnswer } from "../../answer/comparison/comparison.ts";
import type { DifferenceDigits } from "../tables/differenceDigits.ts";
import { rangeWithUnit, tailsSaid, tailsToSay } from "../tables/rangeSaid.ts";
import { percent, type Formatters } from "../tables/formatters.ts";

/** Below this a median difference in water is not worth a number, mm. */
export const hardlyAnyMm = 1;
/** From this difference in depth on, roots are called deeper or shallower, mm. */
const tellingDepthMm = 5;
/** From this share of seasons on, a difference that a typical year does not show is said. */
const tellingShare = 0.1;

/** What the sentences about one difference need beside it. */
export interface Telling extends DifferenceDigits {
  readonly shown: Formatters;
  readonly method: Comparison["method"];
}

/** Medians are told as what a typical year brings. */
export function seasonSaid({ runs }: Pick<Comparison["method"], "runs">): string {
  return runs === 1 ? "in the one season run" : "in a typical year";
}

/** What one case brings against another in a typical year, in a sentence; and what it brings in eight years of ten. */
export function differenceSaid(
  difference: DifferenceAnswer,
  alone: boolean,
  telling: Telling,
): { readonly sentence: string; readonly odds: string | null } {
  const { extraWaterUsedMm: water, from } = difference;
  const { shown, method } = telling;
  const who = subjectOf(difference, alone);
  const season = seasonSaid(method);
  if (isNothing(difference))
    return {
      sentence: `${who} took up exactly as much water as "${from}": no difference in water or yield.`,
      odds: null,
    };
  const asMuch = `${who} took up about as much water as "${from}"`;
  const unit = shown.length;
  if (Math.abs(water.p50) < hardlyAnyMm) {
    const tails = tailsOf(difference, telling);
    if (tails !== null)
      return { sentence: `${asMuch} in most years, worth next to nothing, but ${tails}.`, odds: null };
    return {
      sentence: `${asMuch} ${season}, worth ${nextToNothing(difference, telling)}.`,
      odds: oddsSaid(difference, telling),
    };
  }
  const more = water.p50 > 0 ? "more" : "less";
  return {
    sentence: `${who} took up ${telling.water(Math.abs(water.p50))} ${unit} ${more} water ${season}, ${worthSaid(difference, telling)}.`,
    odds: oddsSaid(difference, telling),
  };
}

/** `In 8 years of 10: 0.1 to 0.8 in, 1 to 5 bu/ac.` */
function oddsSaid(
  { extraWaterUsedMm, extraYield }: DifferenceAnswer,
  { shown, water, yield: grown, method }: Telling,
): string | null {
  const parts = [
    [extraWaterUsedMm, water, shown.length] as const,
    [extraYield, grown, extraYield.unit] as const,
  ].filter(([{ p10, p50, p90 }, say]) => [p10, p50, p90].some((value) => Number(say(value)) !== 0));
  if (method.runs === 1 || parts.length === 0) return null;
  const said = parts.map(([spread, say, unit]) => rangeWithUnit(spread, say, unit));
  return `In 8 years of 10: ${said.join(", ")}.`;
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
      ? `worth nothing in most years, but ${tailsSaid(tails)}`
      : `worth ${nextToNothing(difference, telling)}`;
  }
  return `${extraYield.p50 > 0 ? "worth" : "which costs"} about ${middle} ${extraYield.unit}`;
}

function nextToNothing({ extraYield: { p10, p50, p90 } }: DifferenceAnswer, { yield: say }: Telling): string {
  return [p10, p50, p90].every((value) => Number(say(value)) === 0)
    ? "nothing in yield"
    : "next to nothing in yield";
}

/** The yield of the least water that counts as a difference, by the middle of the yield line's slope. */
function tellingYield({ yieldLine, matteredFromMm }: Comparison["method"]): number {
  return (matteredFromMm * yieldLine.slopeKgPerHaPerMm.middle) / yieldLine.kgPerHaPerUnit;
}

/** What a typical year of nothing hides; null where that is nothing either. */
export function tailsOf(difference: DifferenceAnswer, telling: Telling): string | null {
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
