import { estimateOf, withoutInterval, type Estimate } from "./interval.ts";
import { meanInterval } from "./meanInterval.ts";
import { spreadOf } from "./spread.ts";

/** Two sets of values, and how far the second lies above the first. */
export interface Difference extends Estimate {
  /** Difference in standard errors; null where there is no interval. */
  readonly t: number | null;
}

/**
 * Sets that have nothing to do with each other and may differ in spread (Welch).
 *
 * Standard error: sqrt(s1^2/n1 + s2^2/n2); degrees of freedom after Welch and Satterthwaite (memory).
 */
export function welchDifference(
  first: readonly number[],
  second: readonly number[],
  confidence: number,
): Difference {
  return unpaired(first, second, confidence, (a, b) => {
    const [partA, partB] = [a.variance / a.n, b.variance / b.n];
    return [partA + partB, welchFreedom(partA, a.n, partB, b.n)];
  });
}

/** @param partA variance of the mean: s^2/n */
export function welchFreedom(partA: number, nA: number, partB: number, nB: number): number {
  // As shares of the sum, so that very small spreads do not come to 0/0.
  const shareA = partA / (partA + partB);
  return 1 / (shareA ** 2 / (nA - 1) + (1 - shareA) ** 2 / (nB - 1));
}

/** As textbooks do it: both sets share one spread; n1 + n2 - 2 degrees of freedom. Kept to be checked against them. */
export function pooledDifference(
  first: readonly number[],
  second: readonly number[],
  confidence: number,
): Difference {
  return unpaired(first, second, confidence, (a, b) => {
    const freedom = a.n + b.n - 2;
    const shared = ((a.n - 1) * a.variance + (b.n - 1) * b.variance) / freedom;
    return [shared * (1 / a.n + 1 / b.n), freedom];
  });
}

interface Sample {
  readonly n: number;
  readonly variance: number;
}

/** @param errorOf variance of the difference and its degrees of freedom */
function unpaired(
  first: readonly number[],
  second: readonly number[],
  confidence: number,
  errorOf: (a: Sample, b: Sample) => readonly [variance: number, freedom: number],
): Difference {
  const [a, b] = [spreadOf(first), spreadOf(second)];
  if (a.mean === null || b.mean === null) return none(null, "no values", confidence);
  const value = b.mean - a.mean;
  if (a.sd === null || b.sd === null) return none(value, "one value", confidence);
  const [variance, freedom] = errorOf({ n: a.n, variance: a.sd ** 2 }, { n: b.n, variance: b.sd ** 2 });
  if (variance === 0) return none(value, "all equal", confidence);
  return withT(estimateOf(value, Math.sqrt(variance), freedom, confidence));
}

/**
 * Sets whose n-th values belong together: the mean of their differences.
 *
 * @param pairs first and second value of each
 */
export function pairedDifference(
  pairs: readonly (readonly [first: number, second: number])[],
  confidence: number,
): Difference {
  const estimate = meanInterval(
    pairs.map(([first, second]) => second - first),
    confidence,
    pairs.reduce((most, [first, second]) => Math.max(most, Math.abs(first), Math.abs(second)), 0),
  );
  const why = estimate.why === null ? null : inPairs[estimate.why];
  return withT({ ...estimate, why });
}

const inPairs = {
  "no values": "no pairs",
  "one value": "one pair",
  "all equal": "all differences equal",
  "no pairs": "no pairs",
  "one pair": "one pair",
  "all differences equal": "all differences equal",
} as const;

function withT(estimate: Estimate): Difference {
  const { value, standardError } = estimate;
  return { ...estimate, t: value === null || standardError === null ? null : value / standardError };
}

function none(
  value: number | null,
  why: "no values" | "one value" | "all equal",
  confidence: number,
): Difference {
  return { ...withoutInterval(value, why, confidence), t: null };
}
