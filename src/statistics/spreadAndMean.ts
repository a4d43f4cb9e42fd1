import { spreadOf, type Spread } from "./quantiles.ts";

/** A range with its mean: where a few years hold most of it, the median does not show it. */
export interface SpreadAndMean extends Spread {
  readonly mean: number;
}

/** All 0 of nothing. */
export function spreadAndMean(values: Float64Array): SpreadAndMean {
  if (values.length === 0) return { mean: 0, p10: 0, p50: 0, p90: 0 };
  return { mean: values.reduce((sum, one) => sum + one, 0) / values.length, ...spreadOf(values) };
}
