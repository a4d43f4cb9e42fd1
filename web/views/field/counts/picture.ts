import type {
  CountsAnswer,
  CountsDifference,
  GroupYield,
} from "../../../../src/evidence/counts/countsAnswer.ts";
import type { CountedShown } from "../../../pictures/field/countedYieldLayout.ts";
import type { BesideRow } from "../../../pictures/field/measuredBesideLayout.ts";
import type { YieldsSaid } from "./yieldsSaid.ts";

/** Counts as their pictures take them: in the unit on show. */

export function countedGroups(
  { groups }: CountsAnswer,
  names: readonly string[],
  said: YieldsSaid,
): CountedShown[] {
  return groups.map(({ caseIndex, rowPosition, spotsKgPerHa, estimate, byWeight }: GroupYield) => ({
    title: titled(names[caseIndex]!, rowPosition),
    caseIndex,
    spots: spotsKgPerHa.map(said.of),
    mean: said.of(estimate.value!),
    interval:
      estimate.interval === null
        ? null
        : { low: said.of(Math.max(0, estimate.interval.low)), high: said.of(estimate.interval.high) },
    byWeight:
      byWeight === null ? null : { low: said.of(byWeight.lowKgPerHa), high: said.of(byWeight.highKgPerHa) },
  }));
}

/** A row for each difference: by the spots, and what the kernel weight alone would do. */
export function countedDifferences(
  { differences }: CountsAnswer,
  names: readonly string[],
  said: YieldsSaid,
): BesideRow[] {
  return differences.map((one) => {
    const { difference, byWeight, caseIndex, againstIndex, rowPosition } = one;
    const { value, interval } = difference;
    return {
      title: `“${titled(names[caseIndex]!, rowPosition)}” against “${names[againstIndex]!}”`,
      marks: [
        {
          kind: "measured" as const,
          what: one.paired ? "By the spots, in pairs" : "By the spots",
          said: reachSaid(one, said),
          middle: said.of(value!),
          low: interval === null ? null : said.of(interval.low),
          high: interval === null ? null : said.of(interval.high),
        },
        ...(byWeight === null
          ? []
          : [
              {
                kind: "weight" as const,
                what: "Kernel weight alone",
                said: said.moreRange(byWeight.lowKgPerHa, byWeight.highKgPerHa),
                middle: said.of(value!),
                low: said.of(byWeight.lowKgPerHa),
                high: said.of(byWeight.highKgPerHa),
              },
            ]),
      ],
    };
  });
}

function reachSaid({ difference: { value, interval } }: CountsDifference, said: YieldsSaid): string {
  return interval === null
    ? `${said.more(value!)}, no interval`
    : `${said.more(value!)} (${said.moreRange(interval.low, interval.high)})`;
}

function titled(name: string, rowPosition: string | null): string {
  return rowPosition === null ? name : `${name}, ${rowPosition}`;
}
