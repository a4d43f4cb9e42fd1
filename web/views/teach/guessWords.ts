import type { Comparison, DifferenceAnswer } from "../../../src/answer/comparison/comparison.ts";
import { differenceDigits } from "../../../src/report/tables/differenceDigits.ts";
import { rangeWithUnit } from "../../../src/report/tables/rangeSaid.ts";
import type { Spread } from "../../../src/statistics/quantiles.ts";
import type { Formatters } from "../../../src/report/tables/formatters.ts";

/** A guess so near is as good as the typical year itself: within this share of it, or this much, mm. */
const asGoodAs = { share: 0.1, mm: 1 } as const;
/** Within this share of the rule of thumb the guess is taken to be it. */
const nearRule = 0.15;

/** `0.6 in more`, `0.3 in less`, `no difference`. */
export function saidMore(mm: number, say: (mm: number) => string, unit: string): string {
  const amount = say(Math.abs(mm));
  if (Number(amount) === 0) return "no difference";
  return `${amount} ${unit} ${mm > 0 ? "more" : "less"}`;
}

interface Truth {
  readonly water: Spread;
  readonly ruleOfThumbMm: number;
  readonly runs: number;
}

/** How close a guess came, and what may have led it astray. No marks are given. */
export function guessSaid(
  guessMm: number,
  { water, ruleOfThumbMm, runs }: Truth,
  say: (mm: number) => string,
  { length }: Pick<Formatters, "length">,
): string[] {
  const { p10, p50, p90 } = water;
  const off = guessMm - p50;
  const isNear = Math.abs(off) <= Math.max(asGoodAs.mm, asGoodAs.share * Math.abs(p50));
  const apart = `${say(Math.abs(off))} ${length}`;
  const which = runs === 1 ? "the one season run" : "a typical year";
  if (isNear) return [`The guess is as good as ${which} itself.`];
  const side = off > 0 ? "above" : "below";
  const where = `The guess lies ${apart} ${side} ${which}`;
  const said =
    runs === 1
      ? `${where}.`
      : guessMm >= p10 && guessMm <= p90
        ? `${where}, and within the range: there are such years.`
        : `${where}: ${off > 0 ? "fewer than one year in ten brings so much" : "nine years in ten or more bring more"}.`;
  const isRule =
    Math.abs(ruleOfThumbMm) > asGoodAs.mm &&
    Math.abs(guessMm - ruleOfThumbMm) <= nearRule * Math.abs(ruleOfThumbMm);
  return isRule
    ? [
        said,
        "It is close to the rule of thumb, extra depth times what the soil can hold: what does that leave out?",
      ]
    : [said];
}

/** The answer in two short lines, for the back row. */
export function shortAnswer(
  { extraWaterUsedMm: water, extraYield }: DifferenceAnswer,
  comparison: Comparison,
  d: number,
  shown: Formatters,
): string[] {
  const say = differenceDigits(comparison, d, shown);
  const { unit, p50 } = extraYield;
  const bushels = say.yield(Math.abs(p50));
  const yieldSaid =
    Number(bushels) === 0
      ? "no difference in yield"
      : `about ${bushels} ${unit} ${p50 > 0 ? "more" : "less"}`;
  const more = saidMore(water.p50, say.water, shown.length);
  const which = comparison.method.runs === 1 ? "The one season run" : "A typical year";
  const first = `${which}: ${/^\d/.test(more) ? `${more} water` : "no difference in water"}, ${yieldSaid}.`;
  if (comparison.method.runs === 1) return [first];
  return [
    first,
    `8 years of 10: ${rangeWithUnit(water, say.water, shown.length)} and ${rangeWithUnit(extraYield, say.yield, unit)}.`,
  ];
}

/** Ends of the slider, mm: mostly more, or mostly less where the other roots are told to be the shallower. */
export function guessRange(isOtherShallower: boolean): readonly [number, number] {
  return isOtherShallower ? [-127, 50.8] : [-50.8, 127];
}
