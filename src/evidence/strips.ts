import { pairedDifference, type Difference } from "../statistics/differenceOfMeans.ts";
import { chanceAt, neededToTell, neededToHalve, type Layout, type Needed } from "../statistics/howMany.ts";
import { tellsApart } from "../statistics/interval.ts";
import { meanOf } from "../statistics/spread.ts";
import { twoSidedT } from "../statistics/studentT.ts";

/** Strips harvested side by side, pair by pair, as plain values. */
export interface Strips {
  /** Index among the scenario's cases: first and second of each pair. */
  readonly caseIndexes: readonly [number, number];
  /** kg/ha; null where a strip's yield is missing. */
  readonly pairs: readonly (readonly [number | null, number | null])[];
  /** Calendar year of harvest; null where it is not told. */
  readonly year: number | null;
  /** Of every interval, above 0 and below 1. */
  readonly confidence: number;
  /** A difference that one would want to see, kg/ha; null where none is asked for. */
  readonly detectKgPerHa: number | null;
  /** Chance with which to see it. */
  readonly chance: number;
}

export interface StripsAnswer {
  /** Pairs with both yields. */
  readonly pairs: number;
  readonly missing: readonly MissingYield[];
  /** Over whole pairs, kg/ha; null without any. */
  readonly meansKgPerHa: readonly [number, number] | null;
  /** kg/ha that the second yields more than the first. */
  readonly difference: Difference;
  readonly tellsApart: boolean | null;
  /** Least difference that these pairs could tell from nothing, kg/ha; null below two pairs or without spread. */
  readonly leastSignificantKgPerHa: number | null;
  /** Of a strip within its pair, share of the mean yield; null where it cannot be told. */
  readonly variation: number | null;
  readonly trust: TrialTrust | null;
  /** Standard deviation of the differences, kg/ha. */
  readonly differenceSdKgPerHa: number | null;
  readonly pairsToHalve: Needed;
  /** Of the difference wanted; null where none is, or there is no spread to go by. */
  readonly detect: {
    readonly differenceKgPerHa: number;
    readonly chance: number;
    readonly pairsNeeded: Needed;
    /** Chance that as many pairs as these tell it. */
    readonly chanceNow: number;
  } | null;
}

/** Number of a pair, counted from 1, and which case's yield it lacks. */
export interface MissingYield {
  readonly pair: number;
  readonly lacks: "first" | "second" | "both";
}

export type TrialTrust = "close" | "acceptable" | "questionable";

/**
 * How trustworthy a trial is by its coefficient of variation: below 10 % close, 10 to 15 % acceptable, above questionable.
 * Source: Whitney 2012, Kansas State Univ. River Valley Extension (read).
 */
export function trustOf(variation: number): TrialTrust {
  if (variation > 0.15) return "questionable";
  return variation >= 0.1 ? "acceptable" : "close";
}

/**
 * Least significant difference: t x standard error of the difference.
 * Source: Baldwin 2004, SARE field guide (method read).
 */
export function leastSignificant(standardError: number, freedom: number, confidence: number): number {
  return twoSidedT(confidence, freedom) * standardError;
}

/** Pairs that lack a yield are left out, and told. */
export function answerStrips({ pairs, confidence, detectKgPerHa, chance }: Strips): StripsAnswer {
  const whole = pairs.filter(
    (pair): pair is readonly [number, number] => pair[0] !== null && pair[1] !== null,
  );
  const difference = pairedDifference(whole, confidence);
  const { standardError, freedom } = difference;
  const n = whole.length;
  const meansKgPerHa =
    n === 0 ? null : ([meanOf(whole.map(([a]) => a)), meanOf(whole.map(([, b]) => b))] as const);
  const sd = standardError === null ? null : standardError * Math.sqrt(n);
  const layout: Layout | null = sd === null ? null : { kind: "one set", sd };
  const variation = sd === null || meansKgPerHa === null ? null : variationOf(sd, meansKgPerHa);
  return {
    pairs: n,
    missing: missingOf(pairs),
    meansKgPerHa,
    difference,
    tellsApart: tellsApart(difference),
    leastSignificantKgPerHa:
      standardError === null ? null : leastSignificant(standardError, freedom!, confidence),
    variation,
    trust: variation === null ? null : trustOf(variation),
    differenceSdKgPerHa: sd,
    pairsToHalve: layout === null ? null : neededToHalve(layout, n, confidence),
    detect:
      layout === null || detectKgPerHa === null
        ? null
        : {
            differenceKgPerHa: detectKgPerHa,
            chance,
            pairsNeeded: neededToTell(layout, detectKgPerHa, confidence, chance),
            chanceNow: chanceAt(layout, n, detectKgPerHa, confidence),
          },
  };
}

/** Within pairs, the error mean square of two treatments is half the variance of their differences. */
function variationOf(differenceSd: number, [first, second]: readonly [number, number]): number | null {
  const mean = (first + second) / 2;
  return mean > 0 ? differenceSd / Math.SQRT2 / mean : null;
}

function missingOf(pairs: Strips["pairs"]): MissingYield[] {
  return pairs.flatMap(([first, second], p): MissingYield[] => {
    if (first !== null && second !== null) return [];
    const lacks = first === null && second === null ? "both" : first === null ? "first" : "second";
    return [{ pair: p + 1, lacks }];
  });
}
