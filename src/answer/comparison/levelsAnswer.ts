import type { CountsAnswer, GroupYield } from "../../evidence/counts/countsAnswer.ts";
import { disagreementsOf, type Disagreement, type Level } from "../../evidence/levels.ts";
import type { Reach } from "../../evidence/reconcile.ts";
import type { Strips } from "../../evidence/strips.ts";
import { meanInterval } from "../../statistics/meanInterval.ts";
import { quantile } from "../../statistics/quantiles.ts";
import type { EnsembleAtRain } from "../runs/ensemble.ts";

/** Yields of each case as counted, harvested and modeled, and which of them cannot both be right. kg/ha. */
export interface LevelsAnswer {
  readonly levels: readonly Level[];
  readonly disagreements: readonly Disagreement[];
  /** Calendar year of harvest that was measured in, as told; null where it is not. */
  readonly year: number | null;
  /** The same where the model's levels are those of its season; null where they are of all seasons. */
  readonly inYear: number | null;
}

/** The seasons to hold measurements against: that of their year where the record has it, else all at the middle total. */
export interface Season {
  readonly year: number | null;
  readonly isOfYear: boolean;
  readonly at: EnsembleAtRain;
}

export function levelsAnswer(
  counts: CountsAnswer | null,
  strips: Strips | null,
  { at, year, isOfYear }: Season,
  confidence: number,
): LevelsAnswer {
  const measured: Level[] = [
    ...(counts?.groups ?? []).map((group): Level => {
      const { caseIndex, rowPosition } = group;
      return { by: "counts", caseIndex, rowPosition, range: rangeOfCounts(group) };
    }),
    ...stripLevels(strips, confidence),
  ];
  const modeled = at.cases.flatMap(({ yieldKgPerHaByRun }, caseIndex): Level[] =>
    measured.some((one) => one.caseIndex === caseIndex)
      ? [{ by: "model", caseIndex, rowPosition: null, range: rangeOfRuns(yieldKgPerHaByRun, confidence) }]
      : [],
  );
  const levels = [...measured, ...modeled];
  return { levels, disagreements: disagreementsOf(levels), year, inYear: isOfYear ? year : null };
}

/** Spots and kernel weight are unsure each for itself: half widths add as squares. One spot has the weight's range alone. */
function rangeOfCounts({ estimate, byWeight }: GroupYield): Reach {
  const middle = estimate.value!;
  const { interval } = estimate;
  if (interval === null && byWeight === null) return { middle, low: null, high: null };
  const below = Math.hypot(middle - (interval?.low ?? middle), middle - (byWeight?.lowKgPerHa ?? middle));
  const above = Math.hypot((interval?.high ?? middle) - middle, (byWeight?.highKgPerHa ?? middle) - middle);
  return { middle, low: Math.max(0, middle - below), high: middle + above };
}

/** Each case's strips by themselves, also those whose neighbor was lost. */
function stripLevels(strips: Strips | null, confidence: number): Level[] {
  if (strips === null) return [];
  return strips.caseIndexes.flatMap((caseIndex, side): Level[] => {
    const yields = strips.pairs.map((pair) => pair[side]!).filter((one) => one !== null);
    const { value, interval } = meanInterval(yields, confidence);
    if (value === null) return [];
    const low = interval === null ? null : Math.max(0, interval.low);
    return [
      {
        by: "strips",
        caseIndex,
        rowPosition: null,
        range: { middle: value, low, high: interval?.high ?? null },
      },
    ];
  });
}

function rangeOfRuns(yieldKgPerHaByRun: Float64Array, confidence: number): Reach {
  const sorted = Float64Array.from(yieldKgPerHaByRun).sort();
  const tail = (1 - confidence) / 2;
  return { middle: quantile(sorted, 0.5), low: quantile(sorted, tail), high: quantile(sorted, 1 - tail) };
}
