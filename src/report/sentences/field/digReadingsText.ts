import type { DigFitAnswer } from "../../../answer/dig/digAnswer.ts";
import type {
  DigDoubt,
  DigReadings,
  ReadingAnswer,
  ReadingDifference,
  UndecidedCase,
} from "../../../answer/dig/readings.ts";
import type { YieldUnit } from "../../../crop/yield/yieldLine.ts";
import type { DifferenceDigits } from "../../tables/differenceDigits.ts";
import { percent, type Formatters } from "../../tables/formatters.ts";
import { shownMoney } from "./moneyText.ts";
import { valueSaid } from "./digText.ts";

/** What the sentences about one difference need beside it. */
export interface ReadingsTold extends DifferenceDigits {
  readonly readings: DigReadings;
  /** Which difference, counted from 0. */
  readonly d: number;
  readonly shown: Formatters;
}

/**
 * The answer as a range, where the dig cannot tell whether roots stopped or go on slowly; what follows is of roots that go on.
 * Null where it can.
 */
export function rangeOfReadings(told: ReadingsTold): string | null {
  const { readings, d, shown } = told;
  const goingOn = readings.answers[0].differences[d]!;
  const stopped = by(readings, "stopped")?.differences[d];
  const cases = readings.undecided.filter((one) => isOf(one.case, goingOn));
  if (stopped === undefined || cases.length === 0) return null;
  const [a, b] = [goingOn.extraYield.p50, stopped.extraYield.p50];
  const names = cases.map(({ case: name }) => `"${name}"`).join(" and ");
  const depth = (mm: number) => `${shown.depth(mm)} ${shown.length}`;
  const each = (of: (one: UndecidedCase) => number) => cases.map((one) => depth(of(one))).join(" and ");
  const on = `the roots of ${names} go on slowly (to ${each((one) => one.goingOnMm)} when ripe)`;
  const stay = `they stopped where they were dug (${each((one) => one.dugMm)}, ${cases[0]!.date})`;
  const whose = `"${goingOn.to}" against "${goingOn.from}"`;
  const why = whySaid(cases[0]!);
  if (told.yield(a) === told.yield(b))
    return `${whose}: ${yieldRange(a, a, told, goingOn)} whether ${on} or ${stay}: ${why}.`;
  return (
    `${whose}: ${yieldRange(Math.min(a, b), Math.max(a, b), told, goingOn)}, the ${a < b ? "lower" : "higher"} if ${on}, ` +
    `the ${a < b ? "higher" : "lower"} if ${stay}: ${why}. What follows is of roots that go on.`
  );
}

function whySaid({ stoppedShare }: UndecidedCase): string {
  return stoppedShare === null
    ? "one day's dig cannot tell, a second some weeks later can"
    : `the days they were dug on cannot tell (stopped: ${percent(stoppedShare)} likely)`;
}

/** `21 to 44 bu/ac more`, `3 bu/ac less to 10 bu/ac more` */
function yieldRange(
  low: number,
  high: number,
  { yield: say }: ReadingsTold,
  { extraYield: { unit } }: ReadingDifference,
): string {
  const [least, most] = [say(Math.abs(low)), say(Math.abs(high))];
  if (low < 0 && high > 0 && Number(least) > 0) return `${least} ${unit} less to ${most} ${unit} more`;
  const word = high > 0 ? "more" : "less";
  const [first, second] = high > 0 ? [least, most] : [most, least];
  return first === second ? `about ${first} ${unit} ${word}` : `${first} to ${second} ${unit} ${word}`;
}

/** Where dig and model contradict each other: what each says, side by side, and how to choose. Null where they agree. */
export function doubtsSaid(told: ReadingsTold, fit: DigFitAnswer | null): string | null {
  const { readings, d, shown } = told;
  const [given] = readings.answers;
  const doubts = readings.doubts.filter((one) => isOf(one.case, given.differences[d]!));
  if (doubts.length === 0) return null;
  const pace = doubts.some(({ kind }) => kind === "deeper than the front when ripe")
    ? " Suspect first the model's own pace for this crop, or a depth stated for it."
    : "";
  const why = `Dig and model do not agree: ${doubts.map((one) => doubtSaid(one, fit, shown)).join("; ")}.${pace}`;
  const other = by(readings, readings.decides ? "not" : "fitted");
  if (other === undefined)
    return `${why} Nothing is fitted to the dig; to go by it, state the depth as rootingDepth.`;
  const [dug, density] = readings.decides ? [given, other] : [other, given];
  const choose = readings.decides
    ? 'The answer goes by the dig; for density set "The dig decides in the answer" (evidence.digDecides) to no.'
    : 'The answer goes by density; for the dig set "The dig decides in the answer" (evidence.digDecides) to yes.';
  return `${why} By the dig ${bothSaid(dug, told)}; by density or penetrometer ${bothSaid(density, told)}. ${choose}`;
}

function doubtSaid(one: DigDoubt, fit: DigFitAnswer | null, shown: Formatters): string {
  if (one.kind === "deeper than the front when ripe")
    return `"${one.case}" was dug to ${shown.depth(one.dugMm)} ${shown.length} (mean), deeper than the model's roots when ripe, ${shown.depth(one.frontMm)} ${shown.length}`;
  const say = valueSaid(fit?.what ?? "passage");
  const what =
    fit?.layer == null
      ? `the usual limit is ${say(one.density)}`
      : `density or reading lets ${say(one.density)} through "${fit.layer}"`;
  return `${what}, the roots of "${one.case}" say ${say(one.low)} to ${say(one.high)}`;
}

/** `3.1 in of water and 21 bu/ac` */
function bothSaid({ differences }: ReadingAnswer, told: ReadingsTold): string {
  const { extraWaterUsedMm, extraYield } = differences[told.d]!;
  const sign = (text: string, value: number) => (value < 0 && Number(text) !== 0 ? `-${text}` : text);
  const water = sign(told.water(Math.abs(extraWaterUsedMm.p50)), extraWaterUsedMm.p50);
  const grown = sign(told.yield(Math.abs(extraYield.p50)), extraYield.p50);
  return `${water} ${told.shown.length} of water and ${grown} ${extraYield.unit}`;
}

/** What each reading of the dig leaves in money, for the d-th difference; nothing where there is but one. */
export function readingsInMoney(
  readings: DigReadings | undefined,
  d: number,
  currency: string,
  unit: YieldUnit,
  shown: Formatters,
): string[] {
  if (readings === undefined || readings.answers.length < 2) return [];
  const nets = readings.answers.flatMap(({ use, differences }) => {
    const net = differences[d]?.netPerHa ?? null;
    return net === null ? [] : [{ use, net: net.p50 }];
  });
  if (nets.length < 2) return [];
  const money = shownMoney(currency, unit, shown);
  const say = money.perLand(nets.map(({ net }) => net));
  const told = nets.map(({ use, net }) => `${say(net)} ${useSaid(use, readings)}`);
  const { from, to } = readings.answers[0].differences[d]!;
  return [
    `"${to}" against "${from}", ${money.currency}/${money.land} in a typical year, each way to read the dig: ${told.join("; ")}.`,
  ];
}

/** Which reading of the dig an answer goes by: ends a sentence. */
export function useSaid(use: ReadingAnswer["use"], { undecided, decides }: DigReadings): string {
  switch (use) {
    case "stopped":
      return "if the roots stopped where they were dug";
    case "not":
      return "by density or penetrometer";
    case "fitted":
      return "by the dig";
    case "as decided":
      if (undecided.length > 0) return "if the roots go on slowly";
      return decides ? "by the dig" : "by density or penetrometer";
  }
}

function by({ answers }: DigReadings, use: ReadingAnswer["use"]): ReadingAnswer | undefined {
  return answers.find((one) => one.use === use);
}

function isOf(name: string, { from, to }: ReadingDifference): boolean {
  return name === from || name === to;
}
