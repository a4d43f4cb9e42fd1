import { chanceToTell, tQuantile, twoSidedT } from "./studentT.ts";

/** How many plants, spots or pairs it takes. Each takes the spread as now seen, which itself is known badly from few. */

/** More than this is told as "more than". */
export const mostAdvised = 10_000;

/** How many of each kind; null where it would take more than `mostAdvised`. */
export type Needed = number | null;

/** What is compared, for the errors of a difference from `n` of each. */
export type Layout =
  /** One set: a mean, or differences within pairs. */
  | { readonly kind: "one set"; readonly sd: number }
  /** Two sets of `n` each, each with its own spread. */
  | { readonly kind: "two sets"; readonly sds: readonly [number, number] };

/**
 * Fewest values by their standard error alone, the start of the search.
 *
 * n = (t x s / E)^2, [Colorado sample-adequacy formula] (form from memory).
 * @param reach the half width wanted, in the unit of `sd` (or both in percent of the mean)
 * @example valuesForReach(2.0, 20, 10) // 16
 */
export function valuesForReach(t: number, sd: number, reach: number): number {
  return ((t * sd) / reach) ** 2;
}

/**
 * Replicates of each of two treatments by the normal formula: r = 2 (z_confidence + z_chance)^2 (s/d)^2; pairs drop the factor 2
 * and take the spread of their differences (memory). The start of the search.
 * @example replicatesByNormal(2.8, 8, 10, 2) // 10.0
 */
export function replicatesByNormal(z: number, sd: number, difference: number, factor: 1 | 2): number {
  return factor * ((z * sd) / difference) ** 2;
}

/** Of each kind, so that the interval reaches no further than `reach` to either side; t changes with n. */
export function neededForReach(layout: Layout, reach: number, confidence: number): Needed {
  const start = valuesForReach(tQuantile((1 + confidence) / 2, Infinity), typicalSd(layout), reach);
  return smallest(start, (n) => reachOf(layout, n, confidence) <= reach * (1 + 1e-9));
}

/** Of each kind, to halve the interval that `n` of each give. */
export function neededToHalve(layout: Layout, n: number, confidence: number): Needed {
  return neededForReach(layout, reachOf(layout, n, confidence) / 2, confidence);
}

/**
 * Of each kind, to tell a difference of that size from nothing with that chance, by a two-sided t test at 1 - confidence. The chance
 * is that of the noncentral t, worked out for each n until it suffices.
 *
 * @param difference true difference, not 0; its sign does not matter
 * @param chance above 0 and below 1; 0.8 is usual
 */
export function neededToTell(layout: Layout, difference: number, confidence: number, chance = 0.8): Needed {
  const z = tQuantile((1 + confidence) / 2, Infinity) + tQuantile(chance, Infinity);
  const start =
    layout.kind === "one set"
      ? replicatesByNormal(z, layout.sd, difference, 1)
      : replicatesByNormal(z, typicalSd(layout) / Math.SQRT2, difference, 2);
  return smallest(start, (n) => chanceAt(layout, n, difference, confidence) >= chance);
}

/** Chance that `n` of each tell a difference of that size from nothing; 0 below two. */
export function chanceAt(layout: Layout, n: number, difference: number, confidence: number): number {
  if (n < 2) return 0;
  const error = errorOf(layout, n);
  return error === 0 ? 1 : chanceToTell(Math.abs(difference) / error, freedomOf(layout, n), confidence);
}

/** How far the interval that `n` of each give reaches to either side; `n` at least two. */
export function reachOf(layout: Layout, n: number, confidence: number): number {
  return twoSidedT(confidence, freedomOf(layout, n)) * errorOf(layout, n);
}

function errorOf(layout: Layout, n: number): number {
  return typicalSd(layout) / Math.sqrt(n);
}

/** Of one value, or of a difference of one value of each set. */
function typicalSd(layout: Layout): number {
  return layout.kind === "one set" ? layout.sd : Math.hypot(...layout.sds);
}

/** Two sets of the same size: Welch's degrees of freedom. */
function freedomOf(layout: Layout, n: number): number {
  if (layout.kind === "one set") return n - 1;
  const [a, b] = layout.sds.map((sd) => sd ** 2) as [number, number];
  return a + b === 0 ? 2 * (n - 1) : ((n - 1) * (a + b) ** 2) / (a ** 2 + b ** 2);
}

/** The smallest n >= 2 that is enough; more never does worse. Begins below the normal formula's, which is always too few. */
function smallest(start: number, isEnough: (n: number) => boolean): Needed {
  if (!(start <= mostAdvised)) return null;
  for (let n = Math.max(2, Math.floor(start)); n <= mostAdvised; n++) if (isEnough(n)) return n;
  return null;
}
