/** The range of an ensemble: one value in ten lies below `p10`, half below `p50`, nine in ten below `p90`. */
export interface Spread {
  readonly p10: number;
  readonly p50: number;
  readonly p90: number;
}

/**
 * Quantile by straight-line interpolation between the order statistics at (n - 1) x share.
 *
 * @param sorted ascending, at least one value
 * @param share 0 to 1
 * @example quantile(Float64Array.of(1, 2, 3, 4), 0.5) // 2.5
 * Source: [Hyndman & Fan 1996, Am. Stat. 50:361-365] definition 7 (memory).
 */
export function quantile(sorted: Float64Array, share: number): number {
  if (sorted.length === 0) throw new Error("quantile of nothing");
  const place = (sorted.length - 1) * share;
  const below = Math.floor(place);
  const low = sorted[below] ?? 0;
  const high = sorted[Math.min(below + 1, sorted.length - 1)] ?? 0;
  // Equal neighbours give that very value, so identical cases stay at exactly 0.
  return low === high ? low : low + (place - below) * (high - low);
}

/** P10, P50, P90 of values in any order; the values stay as they are. */
export function spreadOf(values: Float64Array): Spread {
  const sorted = Float64Array.from(values).sort();
  return { p10: quantile(sorted, 0.1), p50: quantile(sorted, 0.5), p90: quantile(sorted, 0.9) };
}

export function medianOf(values: Float64Array): number {
  return quantile(Float64Array.from(values).sort(), 0.5);
}

/** Where each value stands among all, 0 to 1: (rank - 1/2) / n, equal values sharing their middle rank. */
export function rankShares(values: Float64Array): Float64Array {
  const sorted = Float64Array.from(values).sort();
  const { length } = values;
  const shares = new Map<number, number>();
  for (let from = 0; from < length;) {
    let to = from;
    while (to < length && sorted[to] === sorted[from]) to++;
    shares.set(sorted[from]!, (from + to) / 2 / length);
    from = to;
  }
  return values.map((value) => shares.get(value)!);
}

/** Index of the run whose value stands in the middle (the lower of two); ties go to the earlier run. */
export function middleIndex(values: Float64Array): number {
  const order = Array.from(values, (_, i) => i).sort((a, b) => (values[a] ?? 0) - (values[b] ?? 0) || a - b);
  return order[(order.length - 1) >> 1] ?? 0;
}
