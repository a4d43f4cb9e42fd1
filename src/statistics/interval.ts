import { twoSidedT } from "./studentT.ts";

/** Why there is no interval: said rather than shown as nothing. */
export type NoInterval =
  | "no values"
  | "one value"
  | "all equal"
  | "no pairs"
  | "one pair"
  | "all differences equal";

/** A mean or a difference of means, and how well it is known. */
export interface Estimate {
  /** null where there is not even one value. */
  readonly value: number | null;
  readonly standardError: number | null;
  readonly freedom: number | null;
  readonly interval: { readonly low: number; readonly high: number } | null;
  /** Set exactly where `interval` is null. */
  readonly why: NoInterval | null;
  /** Of the interval, above 0 and below 1. */
  readonly confidence: number;
}

/** Two-sided: value -+ t x standard error. */
export function estimateOf(
  value: number,
  standardError: number,
  freedom: number,
  confidence: number,
): Estimate {
  const reach = twoSidedT(confidence, freedom) * standardError;
  return {
    value,
    standardError,
    freedom,
    interval: { low: value - reach, high: value + reach },
    why: null,
    confidence,
  };
}

export function withoutInterval(value: number | null, why: NoInterval, confidence: number): Estimate {
  return { value, standardError: null, freedom: null, interval: null, why, confidence };
}

/** Whether the interval lies to one side of nothing; null where there is none. */
export function tellsApart({ interval }: Estimate): boolean | null {
  return interval === null ? null : interval.low > 0 || interval.high < 0;
}
