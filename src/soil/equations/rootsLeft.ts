import type { Slices } from "../layers/layer.ts";

/**
 * Share of its water that a day's roots can still draw from soil that they reached through a layer of this passage, against
 * soil they reached freely.
 *
 * Not only does the front come later: fewer roots pass. A share of them that is as small as the passage itself would be too
 * harsh, since those that pass branch out beneath and little root is enough to dry a soil. The square root is ours. Root counts
 * beneath packed ground agree: a third of the density after 15 passes of a tractor (PA-12 in `data-reference/pan-losses.json`)
 * where the passage of such a pan would be 0.1 to 0.2.
 *
 * @param passage pace factor of the layer, cracks included, 0 to 1
 * @returns 0 to 1
 */
export function shareOfRootsThrough(passage: number): number {
  return Math.sqrt(passage);
}

/** Fills `rootsLeft` of a column from its passage: the least of what any slice down to and including this one lets through. */
export function setRootsLeft({ count, passage, rootsLeft }: Slices): void {
  let left = 1;
  for (let j = 0; j < count; j++) {
    left = Math.min(left, shareOfRootsThrough(passage[j]!));
    rootsLeft[j] = left;
  }
}
