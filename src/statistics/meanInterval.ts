import { estimateOf, withoutInterval, type Estimate } from "./interval.ts";
import { spreadOf } from "./spread.ts";

/**
 * Mean with its two-sided t interval.
 *
 * @param values finite; none, one, or all equal give no interval, and say why
 * @param size what `values` came from, where they are small differences of larger numbers
 */
export function meanInterval(values: readonly number[], confidence: number, size = 0): Estimate {
  const { n, mean, sd } = spreadOf(values, size);
  if (mean === null) return withoutInterval(null, "no values", confidence);
  if (sd === null) return withoutInterval(mean, "one value", confidence);
  if (sd === 0) return withoutInterval(mean, "all equal", confidence);
  return estimateOf(mean, sd / Math.sqrt(n), n - 1, confidence);
}
