import type { StageLengths } from "./stages.ts";

/**
 * Depth of the roots as a share of their greatest depth, at a share of the time they take to reach it.
 *
 * @param x 0 to 1; held within
 * @returns 0.0025 at sowing, 1 at the end, never falling
 * @example borgGrimesShare(0.5) // 0.5225
 * Source: [Borg & Grimes 1986] Trans. ASAE 29:194-197, sine equation (memory). Radians.
 */
export function borgGrimesShare(x: number): number {
  return 0.5 + 0.5 * Math.sin(3.03 * Math.min(1, Math.max(0, x)) - 1.47);
}

/**
 * How far the roots have come in the time they go down: 0 at sowing, 1 at maturity, as Borg & Grimes count it.
 *
 * On thermal time this is ours. Fronts measured since slow down nearer to flowering (Stone et al. 2001, sorghum and
 * sunflower), so late in the season the curve is the faster one; its pace before flowering is theirs within a third.
 */
export function rootingProgress(progress: number, [initial, development, mid, late]: StageLengths): number {
  const span = initial + development + mid + late;
  return span > 0 ? Math.min(1, progress / span) : 1;
}

/** Depth of an unhindered front, mm: the sowing depth until the curve has passed it. */
export function potentialDepthMm(x: number, maxRootDepthMm: number, sowingDepthMm: number): number {
  return Math.max(sowingDepthMm, maxRootDepthMm * borgGrimesShare(x));
}

/**
 * A day's descent at a stated velocity: while the roots still go down and have depth left.
 *
 * @param depthMm depth of the unhindered front last night
 */
export function descentAtVelocityMm(
  x: number,
  depthMm: number,
  maxRootDepthMm: number,
  velocityMmPerDay: number,
): number {
  if (x >= 1) return 0;
  return Math.max(0, Math.min(velocityMmPerDay, maxRootDepthMm - depthMm));
}
