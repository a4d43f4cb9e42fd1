/** Values seen, in short; null where there are too few to say. */
export interface Spread {
  readonly n: number;
  readonly mean: number | null;
  readonly median: number | null;
  /** Of the sample: divided by n - 1. */
  readonly sd: number | null;
  /** Standard deviation as a share of the mean; null for a mean of 0 as well. */
  readonly variation: number | null;
  readonly smallest: number | null;
  readonly largest: number | null;
}

/** Values that differ by less than this share of their size are equal: units turned to and fro leave such traces. */
const trace = 1e-11;

/**
 * @param values finite
 * @param size what `values` came from, where they are small differences of larger numbers
 * @example spreadOf([2.1, 4.0, 1.2, 3.1, 0.9, 3.7]).sd // 1.3008
 */
export function spreadOf(values: readonly number[], size = 0): Spread {
  const n = values.length;
  if (n === 0)
    return { n, mean: null, median: null, sd: null, variation: null, smallest: null, largest: null };
  const sorted = values.toSorted((a, b) => a - b);
  const smallest = sorted[0]!;
  const largest = sorted[n - 1]!;
  const median = (sorted[(n - 1) >> 1]! + sorted[n >> 1]!) / 2;
  const mean = meanOf(values);
  const equal = largest - smallest <= trace * Math.max(size, Math.abs(smallest), Math.abs(largest));
  const sd = n === 1 ? null : equal ? 0 : Math.sqrt(squaresAbout(mean, values) / (n - 1));
  return {
    n,
    mean,
    median,
    sd,
    variation: sd === null || mean === 0 ? null : sd / Math.abs(mean),
    smallest,
    largest,
  };
}

export function meanOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

function squaresAbout(mean: number, values: readonly number[]): number {
  return values.reduce((sum, value) => sum + (value - mean) ** 2, 0);
}
