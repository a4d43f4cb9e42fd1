import type { CountedGroup, CountedSpot, Counts } from "./counts.ts";
import { yieldOfKernels } from "./countsKernels.ts";
import { sunflowerYield } from "./countsSunflower.ts";
import { pairedDifference, welchDifference, type Difference } from "../../statistics/differenceOfMeans.ts";
import type { Layout } from "../../statistics/howMany.ts";
import type { Estimate } from "../../statistics/interval.ts";
import { meanInterval } from "../../statistics/meanInterval.ts";
import { spreadOf, type Spread } from "../../statistics/spread.ts";

/** Yield from counts, group by group, and how far each case lies off the first. */
export interface CountsAnswer {
  readonly groups: readonly GroupYield[];
  readonly differences: readonly CountsDifference[];
}

export interface GroupYield {
  readonly caseIndex: number;
  readonly rowPosition: string | null;
  readonly spotsKgPerHa: readonly number[];
  readonly spread: Spread;
  /** Mean over spots at the middle kernel weight, kg/ha. */
  readonly estimate: Estimate;
  readonly byWeight: WeightRange | null;
}

/** What the kernel weight, not weighed, does alone. */
export interface WeightRange {
  /** At the lowest and the highest weight, kg/ha. */
  readonly lowKgPerHa: number;
  readonly highKgPerHa: number;
  /**
   * Its part of what is not known: half its range squared, of that and half the interval squared. null where spots give no interval.
   * The range is taken as being as sure as the interval: ours.
   */
  readonly share: number | null;
}

export interface CountsDifference {
  readonly caseIndex: number;
  readonly againstIndex: number;
  readonly rowPosition: string | null;
  readonly paired: boolean;
  /** kg/ha more than the other case. */
  readonly difference: Difference;
  /** How far the kernel weight alone moves it, kg/ha. */
  readonly byWeight: WeightRange | null;
  /** Both cases take the same weight, none of them weighed: what roots did to kernel weight is not in it. */
  readonly sharedWeight: boolean;
  /** For how many more; null where spots tell no spread. */
  readonly layout: Layout | null;
}

/** @param counts with at least one group */
export function answerCounts({ groups, paired, confidence }: Counts): CountsAnswer {
  const yields = groups.map((group) => groupYield(group, confidence));
  const firstCase = Math.min(...groups.map(({ caseIndex }) => caseIndex));
  const differences = groups.flatMap((group, g): CountsDifference[] => {
    if (group.caseIndex === firstCase) return [];
    const a = groups.findIndex((one) => one.caseIndex === firstCase && one.rowPosition === group.rowPosition);
    return a < 0 ? [] : [differenceBetween(groups[a]!, yields[a]!, group, yields[g]!, paired, confidence)];
  });
  return { groups: yields, differences };
}

/**
 * Yield of one spot.
 *
 * @param weight one of the group's weights: g, or the seed-size multiplier
 * @returns kg/ha at trade moisture
 */
export function spotYieldKgPerHa(
  { areaM2, heads, per }: CountedSpot,
  weight: number,
  moistureFactor: number,
): number {
  const perM2 = heads / areaM2;
  switch (per.kind) {
    case "kernels":
      return (
        yieldOfKernels(perM2 * per.kernelsPerHead + per.secondEarKernels / areaM2, weight) * moistureFactor
      );
    case "heads":
      return yieldOfKernels(perM2, weight) * moistureFactor;
    case "sunflower":
      return sunflowerYield(perM2, per.heads) * weight * moistureFactor;
  }
}

function groupYield(group: CountedGroup, confidence: number): GroupYield {
  const { caseIndex, rowPosition, weight, moistureFactor, spots } = group;
  const spotsKgPerHa = spots.map((spot) => spotYieldKgPerHa(spot, weight.middle, moistureFactor));
  const estimate = meanInterval(spotsKgPerHa, confidence);
  const mean = estimate.value!;
  const byWeight = hasRange(group)
    ? weightRange((mean * weight.low) / weight.middle, (mean * weight.high) / weight.middle, estimate)
    : null;
  return { caseIndex, rowPosition, spotsKgPerHa, spread: spreadOf(spotsKgPerHa), estimate, byWeight };
}

function differenceBetween(
  first: CountedGroup,
  firstYield: GroupYield,
  second: CountedGroup,
  secondYield: GroupYield,
  paired: boolean,
  confidence: number,
): CountsDifference {
  const [a, b] = [firstYield.spotsKgPerHa, secondYield.spotsKgPerHa];
  const pairs = a.map((value, i) => [value, b[i]!] as const);
  const difference = paired ? pairedDifference(pairs, confidence) : welchDifference(a, b, confidence);
  const sharedWeight = sameWeight(first, second) && !first.weight.weighed;
  return {
    caseIndex: second.caseIndex,
    againstIndex: first.caseIndex,
    rowPosition: second.rowPosition,
    paired,
    difference,
    byWeight: weightOfDifference(first, firstYield, second, secondYield, sharedWeight, difference),
    sharedWeight,
    layout:
      difference.why === null
        ? layoutOf(paired, firstYield.spread, secondYield.spread, difference, a.length)
        : null,
  };
}

function weightOfDifference(
  first: CountedGroup,
  { estimate: a }: GroupYield,
  second: CountedGroup,
  { estimate: b }: GroupYield,
  shared: boolean,
  difference: Difference,
): WeightRange | null {
  if (!hasRange(first) && !hasRange(second)) return null;
  const at = (own: CountedGroup, mean: number, end: "low" | "high") =>
    (mean * own.weight[end]) / own.weight.middle;
  const [low, high] = shared
    ? [at(second, difference.value!, "low"), at(second, difference.value!, "high")]
    : [
        at(second, b.value!, "low") - at(first, a.value!, "high"),
        at(second, b.value!, "high") - at(first, a.value!, "low"),
      ];
  return weightRange(Math.min(low, high), Math.max(low, high), difference);
}

function weightRange(lowKgPerHa: number, highKgPerHa: number, { interval }: Estimate): WeightRange {
  const fromWeight = (highKgPerHa - lowKgPerHa) ** 2;
  const fromSpots = interval === null ? 0 : (interval.high - interval.low) ** 2;
  const share =
    interval === null || fromWeight + fromSpots === 0 ? null : fromWeight / (fromWeight + fromSpots);
  return { lowKgPerHa, highKgPerHa, share };
}

function layoutOf(paired: boolean, a: Spread, b: Spread, { standardError }: Difference, n: number): Layout {
  return paired
    ? { kind: "one set", sd: standardError! * Math.sqrt(n) }
    : { kind: "two sets", sds: [a.sd!, b.sd!] };
}

function hasRange({ weight }: CountedGroup): boolean {
  return weight.high > weight.low;
}

function sameWeight({ weight: a }: CountedGroup, { weight: b }: CountedGroup): boolean {
  return a.per === b.per && a.low === b.low && a.middle === b.middle && a.high === b.high;
}
