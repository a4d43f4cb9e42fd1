// The page is type-checked from its own folder, which does not see this file by itself.
// oxlint-disable-next-line typescript/triple-slash-reference
/// <reference path="./jstat.d.ts" />
import jstat from "jstat";

/** Above these degrees of freedom t is taken as normal: they differ by less than 3 in 100,000. */
const asGoodAsNormal = 100_000;

/**
 * Student's t below which a share `p` lies.
 *
 * @param p above 0 and below 1
 * @param freedom degrees of freedom, >= 1; fractions as Welch's, Infinity for the normal
 * @returns good to 1 in 5,000,000: the library ends its series there
 * @example tQuantile(0.975, 5) // 2.571
 */
export function tQuantile(p: number, freedom: number): number {
  if (p === 0.5) return 0;
  return freedom > asGoodAsNormal ? jstat.normal.inv(p, 0, 1) : jstat.studentt.inv(p, Math.max(1, freedom));
}

/**
 * How many standard errors a two-sided interval reaches to either side.
 * @example twoSidedT(0.95, 2) // 4.303
 */
export function twoSidedT(confidence: number, freedom: number): number {
  return tQuantile((1 + confidence) / 2, freedom);
}

/**
 * Chance that a two-sided t test tells a difference that is there: noncentral t, both tails.
 *
 * @param shift the difference in standard errors, >= 0
 * @returns 0 to 1
 */
export function chanceToTell(shift: number, freedom: number, confidence: number): number {
  // Past this the test cannot miss; the library's series does not reach further.
  if (shift > 30) return 1;
  const t = twoSidedT(confidence, freedom);
  const chance = 1 - jstat.noncentralt.cdf(t, freedom, shift) + jstat.noncentralt.cdf(-t, freedom, shift);
  return Math.min(1, Math.max(0, chance));
}
