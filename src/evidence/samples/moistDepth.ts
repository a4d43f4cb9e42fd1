import type { SoilLayer } from "../../soil/layers/layer.ts";

/** Water that a push probe's moist depth stands for. */
export interface ProbedWater {
  readonly moistDepthMm: number;
  /** Available water down to the moist depth, taken as moist to field capacity. */
  readonly availableMm: number;
  /** Available water below it, down to the end of the soil described. */
  readonly belowMm: number;
  /** All water down to the moist depth. */
  readonly storedMm: number;
}

/**
 * A push probe stops where the soil is too dry to let it in: above, the soil holds what it can, and below it holds the share
 * stated. A moist depth beyond the soil described counts to its end.
 *
 * @param shareBelow of the available water, 0 to 1
 * @example a medium loam that holds 2 in/ft, moist to 2 ft: 4 in available
 * Source: moist-depth rule, [Wentz, after Brown], worked example (read).
 */
export function probedWater(
  layers: readonly SoilLayer[],
  moistDepthMm: number,
  shareBelow: number,
): ProbedWater {
  let availableMm = 0;
  let storedMm = 0;
  let belowMm = 0;
  for (const { topMm, bottomMm, fieldCapacity, wiltingPoint } of layers) {
    const moistMm = Math.max(0, Math.min(bottomMm, moistDepthMm) - topMm);
    availableMm += (fieldCapacity - wiltingPoint) * moistMm;
    storedMm += fieldCapacity * moistMm;
    belowMm += shareBelow * (fieldCapacity - wiltingPoint) * (bottomMm - topMm - moistMm);
  }
  return { moistDepthMm, availableMm, belowMm, storedMm };
}
