import { mostWent, type DugGroup, type MiddleDepth, type Reading } from "../../evidence/dig/dig.ts";
import type { SoilLayer } from "../../soil/layers/layer.ts";

/** Whether roots go on slowly after the dig or stay where they were dug, and what tells so. */
export interface ReadingTold {
  readonly reading: Reading;
  readonly by: "what was seen" | "two dates" | "their depth";
  /** Of two dates: how likely it is that the roots stopped, 0 to 1, if nothing was known before; null of one. */
  readonly stoppedShare: number | null;
}

/** One case's dig, as the reading needs it. */
export interface DugCase {
  readonly groups: readonly DugGroup[];
  readonly middles: readonly MiddleDepth[];
  /** How deep roots would be on each group's day with the layer open, in the middle of the soils tried, mm. */
  readonly openMm: readonly number[];
  /** The case's layers that what is fitted belongs to, and nothing else. */
  readonly fittedLayers: readonly SoilLayer[];
  /** See `shareStopped`; null where all were dug on one day. */
  readonly stoppedShare: number | null;
  readonly confidence: number;
}

/** Roots count as held back where an open layer would have let them this much deeper, mm. Ours: an inch. */
const heldFromMm = 25;
/** A layer is named as one that slows from this loss of pace on, in the usual reading. Ours. */
const tellingPace = 0.9;

/**
 * Roots seen to stop do so. Else two dates decide, where they are sure enough; else roots seen to go straight or through a crack
 * go on. Else, roots in or above the dense layer that an open one would have let deeper may do either.
 */
export function readingOf(dug: DugCase): ReadingTold {
  const { groups, stoppedShare, confidence } = dug;
  const last = groups.reduce((best, one, g) => (one.day > groups[best]!.day ? g : best), 0);
  const seen = mostWent(groups[last]!);
  const told = (reading: Reading, by: ReadingTold["by"]): ReadingTold => ({ reading, by, stoppedShare });
  if (seen === "stopped") return told("stopped", "what was seen");
  if (stoppedShare !== null && stoppedShare >= confidence) return told("stopped", "two dates");
  if (stoppedShare !== null && stoppedShare <= 1 - confidence) return told("slowed", "two dates");
  if (seen === "straight" || seen === "through a crack") return told("slowed", "what was seen");
  const { depthMm } = dug.middles[last]!;
  if (dug.openMm[last]! - depthMm < heldFromMm) return told("slowed", "their depth");
  if (seen === "turned aside") return told("either", "what was seen");
  return told(endsInLayer(depthMm, dug.fittedLayers) ? "either" : "slowed", "their depth");
}

/** Whether roots of this depth end in a layer that slows, or above the first one. */
function endsInLayer(depthMm: number, layers: readonly SoilLayer[]): boolean {
  if (layers.length === 1) return depthMm <= layers[0]!.bottomMm;
  return layers.some(
    ({ topMm, bottomMm, hindrance }) =>
      depthMm > topMm && depthMm <= bottomMm && hindrance.usual < tellingPace,
  );
}

/** One soil, at both readings' best: the fronts that they would have on each day, mm. */
export interface BothReadings {
  readonly slowedMm: readonly number[];
  readonly stoppedMm: readonly number[];
}

/**
 * How likely it is that roots stopped, from depths on two dates or more: either reading before the dig as likely as the other
 * (ours), each with one value fitted, so that only how well they meet the depths counts. Errors of few plants have the tails of
 * Student's t.
 */
export function shareStopped(bySoil: readonly BothReadings[], middles: readonly MiddleDepth[]): number {
  const least = 1e-9;
  const meets = (fronts: readonly number[]) =>
    Math.exp(middles.reduce((sum, middle, g) => sum + logT(fronts[g]! - middle.depthMm, middle), 0));
  const sums = bySoil.reduce(
    (sum, { slowedMm, stoppedMm }) => ({
      slowed: sum.slowed + meets(slowedMm),
      stopped: sum.stopped + meets(stoppedMm),
    }),
    { slowed: 0, stopped: 0 },
  );
  // Where neither comes near the depths, nothing is told.
  if (sums.slowed + sums.stopped < least) return 0.5;
  return sums.stopped / (sums.slowed + sums.stopped);
}

/** An error is no smaller than this, mm: a front is not measured finer. */
const leastErrorMm = 5;

/** Logarithm of Student's t at a distance, less its constant, which both readings share. */
function logT(offMm: number, { errorMm, freedom }: MiddleDepth): number {
  const z = offMm / Math.max(errorMm, leastErrorMm);
  return freedom === Infinity ? -(z * z) / 2 : (-(freedom + 1) / 2) * Math.log1p((z * z) / freedom);
}

/** The depth that roots which stopped have on every date: the mean, each group by how well it is known, mm. */
export function stopDepthMm(depthsMm: readonly number[], middles: readonly MiddleDepth[]): number {
  const weights = middles.map(({ errorMm }) => 1 / Math.max(errorMm, leastErrorMm) ** 2);
  const all = weights.reduce((sum, weight) => sum + weight, 0);
  return depthsMm.reduce((sum, depth, g) => sum + depth * weights[g]!, 0) / all;
}
