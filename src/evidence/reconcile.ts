import { quantile } from "../statistics/quantiles.ts";

/** A measured difference in yield beside the one that water explains. */

export interface Reach {
  readonly middle: number;
  /** Null where the data give no interval. */
  readonly low: number | null;
  readonly high: number | null;
}

export interface Reconciliation {
  /** Both in kg/ha, second case less first. */
  readonly measured: Reach;
  readonly explained: Reach & { readonly low: number; readonly high: number };
  /** Middle of what water explains over the measured difference; null where that cannot be told from nothing. */
  readonly share: number | null;
  readonly verdict: Verdict;
}

export type Verdict =
  /** The measurement cannot be told from no difference. */
  | "nothing sure to explain"
  | "all"
  /** It could be all, but so could half of it or twice as much: nothing measured could speak against it. */
  | "too wide to tell"
  | "part"
  | "little"
  /** Water would have made the difference go the other way. */
  | "none";

/** From this share of the measured difference on, water can be all of it; below the other, little. Ours. */
export const allFrom = 0.8;
export const littleBelow = 0.25;

/**
 * How much of a measured difference in yield can be water.
 *
 * @param measured kg/ha; without an interval it is taken as it is, and the words must say so
 * @param explainedByRun the difference that water explains, kg/ha, run by run, at least one
 * @param confidence of both intervals, above 0 and below 1
 */
export function reconcile(measured: Reach, explainedByRun: Float64Array, confidence: number): Reconciliation {
  const sorted = Float64Array.from(explainedByRun).sort();
  const tail = (1 - confidence) / 2;
  const explained = {
    middle: quantile(sorted, 0.5),
    low: quantile(sorted, tail),
    high: quantile(sorted, 1 - tail),
  };
  const { low, high, middle } = measured;
  const unsure = middle === 0 || (low !== null && high !== null && low <= 0 && high >= 0);
  if (unsure) return { measured, explained, share: null, verdict: "nothing sure to explain" };
  const share = explained.middle / middle;
  const verdict = verdictOf(share);
  const isOpen = verdict === "all" && fitsAnything(explained, middle);
  return { measured, explained, share, verdict: isOpen ? "too wide to tell" : verdict };
}

/**
 * Whether what water explains reaches from half of the measured difference or less to twice of it or more: then "all of it can
 * be water" is a statement that no measurement could contradict. Ours.
 */
function fitsAnything(
  { low, high }: { readonly low: number; readonly high: number },
  measured: number,
): boolean {
  const shares = [low / measured, high / measured];
  return Math.min(...shares) <= 0.5 && Math.max(...shares) >= 2;
}

function verdictOf(share: number): Verdict {
  if (share <= 0) return "none";
  if (share < littleBelow) return "little";
  return share < allFrom ? "part" : "all";
}
