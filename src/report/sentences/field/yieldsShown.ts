import type { YieldUnit } from "../../../crop/yield/yieldLine.ts";
import type { CountsAnswer, CountsDifference } from "../../../evidence/counts/countsAnswer.ts";
import type { EvidenceAnswer } from "../../../answer/comparison/evidenceAnswer.ts";
import type { Estimate } from "../../../statistics/interval.ts";
import type { StripsAnswer } from "../../../evidence/strips.ts";
import type { Scenario } from "../../../scenario/scenario.ts";
import { narrowing, type Narrowed } from "../../tables/narrowing.ts";
import { reconcileVerdict } from "./reconcileText.ts";

/** What pictures of measured yields need besides the answer: kg/ha. */
export interface YieldsShown {
  /** How people count this yield. */
  readonly unit: YieldUnit;
  /** One for each of `evidence.counts.differences`; null where spots tell no spread. */
  readonly countsNarrowing: readonly (readonly Narrowed[] | null)[];
  readonly strips: StripsShown | null;
  /** The verdict alone for each of `evidence.reconciliations`. */
  readonly verdicts: readonly string[];
}

export interface StripsShown {
  readonly caseIndexes: readonly [number, number];
  /** null where a strip's yield is missing. */
  readonly pairsKgPerHa: readonly (readonly [number | null, number | null])[];
  readonly narrowing: readonly Narrowed[] | null;
}

export function yieldsShown(
  { counts, strips, reconciliations, confidence }: EvidenceAnswer,
  { evidence, yieldLine }: Scenario,
): YieldsShown {
  const written = evidence?.strips ?? null;
  return {
    unit: yieldLine.unit,
    countsNarrowing:
      counts === null ? [] : counts.differences.map((one) => countsNarrowing(counts, one, confidence)),
    strips:
      strips === null || written === null
        ? null
        : {
            caseIndexes: written.caseIndexes,
            pairsKgPerHa: written.pairs,
            narrowing: stripsNarrowing(strips, confidence),
          },
    verdicts: reconciliations.map(reconcileVerdict),
  };
}

function countsNarrowing(
  { groups }: CountsAnswer,
  { layout, difference, caseIndex, againstIndex, rowPosition }: CountsDifference,
  confidence: number,
): Narrowed[] | null {
  if (layout === null) return null;
  const spots = groups
    .filter((one) => one.rowPosition === rowPosition && [caseIndex, againstIndex].includes(one.caseIndex))
    .map(({ spread }) => spread.n);
  return narrowing(layout, Math.min(...spots), reachOfInterval(difference), confidence);
}

function stripsNarrowing(
  { differenceSdKgPerHa, pairs, difference }: StripsAnswer,
  confidence: number,
): Narrowed[] | null {
  if (differenceSdKgPerHa === null) return null;
  const layout = { kind: "one set", sd: differenceSdKgPerHa } as const;
  return narrowing(layout, pairs, reachOfInterval(difference), confidence);
}

/** Where there is a spread there is an interval. */
function reachOfInterval({ interval }: Estimate): number {
  return (interval!.high - interval!.low) / 2;
}
