import type { Draws } from "../randomness.ts";
import { quantile } from "./quantiles.ts";

/**
 * Values of one answer over a sample of two independent matrices, each row a setting of all factors: in the rows of A, in those
 * of B, and, factor by factor, in those of A with that factor's columns taken from B.
 */
export interface PairedSample {
  readonly inA: Float64Array;
  readonly inB: Float64Array;
  readonly inAWithB: readonly Float64Array[];
}

/** Of the variance of an answer, what one factor brings. */
export interface VarianceShare {
  /** By itself. */
  readonly first: WithInterval;
  /** With all that it does together with others. */
  readonly total: WithInterval;
}

export interface WithInterval {
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

export interface Bootstrap {
  readonly resamples: number;
  /** Of each interval, above 0 and below 1. */
  readonly confidence: number;
  readonly draws: Draws;
}

/**
 * First-order and total shares of the variance, factor by factor, each with a bootstrap interval over the rows.
 *
 * A factor that does nothing has exactly 0 in both; so has every factor where the answer does not vary. An estimate may pass a
 * little below 0 or above 1: it is left so, as a cut one would be biased.
 *
 * Source: Saltelli et al. 2010, Comput. Phys. Commun. 181:259-270, Table 2: first order (b), total (f), Jansen 1999 (memory).
 * Intervals: percentiles of resampled rows, Archer, Saltelli & Sobol 1997, J. Stat. Comput. Simul. 58:99-120 (memory).
 */
export function varianceShares(sample: PairedSample, bootstrap: Bootstrap): VarianceShare[] {
  const { inA, inB, inAWithB } = sample;
  const rows = inA.length;
  const all = Array.from({ length: rows }, (_, i) => i);
  const values = sharesOver(all, sample);
  const tries = Array.from({ length: isOneValue(inA, inB) ? 0 : bootstrap.resamples }, () =>
    sharesOver(
      all.map(() => Math.floor(bootstrap.draws.uniform() * rows)),
      sample,
    ),
  );
  const interval = (value: number, of: (shares: Shares) => number): WithInterval => {
    if (tries.length === 0) return { value, low: value, high: value };
    const sorted = Float64Array.from(tries, of).sort();
    const tail = (1 - bootstrap.confidence) / 2;
    return { value, low: quantile(sorted, tail), high: quantile(sorted, 1 - tail) };
  };
  return inAWithB.map((_, i) => ({
    first: interval(values.first[i]!, ({ first }) => first[i]!),
    total: interval(values.total[i]!, ({ total }) => total[i]!),
  }));
}

interface Shares {
  readonly first: Float64Array;
  readonly total: Float64Array;
}

function sharesOver(rows: readonly number[], { inA, inB, inAWithB }: PairedSample): Shares {
  const first = new Float64Array(inAWithB.length);
  const total = new Float64Array(inAWithB.length);
  const { mean, variance } = momentsOf(rows, inA, inB);
  if (variance <= 0) return { first, total };
  inAWithB.forEach((mixed, i) => {
    let [together, apart] = [0, 0];
    for (const row of rows) {
      const change = mixed[row]! - inA[row]!;
      // Centered: the sum is the same, its scatter less.
      together += (inB[row]! - mean) * change;
      apart += change * change;
    }
    first[i] = together / rows.length / variance;
    total[i] = apart / (2 * rows.length) / variance;
  });
  return { first, total };
}

/** Mean and variance of A and B together. */
function momentsOf(
  rows: readonly number[],
  inA: Float64Array,
  inB: Float64Array,
): { readonly mean: number; readonly variance: number } {
  let sum = 0;
  for (const row of rows) sum += inA[row]! + inB[row]!;
  const mean = sum / (2 * rows.length);
  let squares = 0;
  let isVaried = false;
  const one = inA[rows[0]!]!;
  for (const row of rows) {
    squares += (inA[row]! - mean) ** 2 + (inB[row]! - mean) ** 2;
    isVaried ||= inA[row] !== one || inB[row] !== one;
  }
  // Of equal values the mean may differ from them in its last bit.
  return { mean, variance: isVaried ? squares / (2 * rows.length) : 0 };
}

function isOneValue(inA: Float64Array, inB: Float64Array): boolean {
  return inA.every((value) => value === inA[0]) && inB.every((value) => value === inA[0]);
}
