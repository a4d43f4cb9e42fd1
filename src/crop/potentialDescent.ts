import { endStageOf, progressAt, shareBetween, stageReading, type RootDescent } from "./rootDescent.ts";
import type { StageLengths } from "./stageLengths.ts";

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
 * How far the roots have come in the time they go down, 0 at sowing, 1 where descent ends. On thermal time this is ours: Borg &
 * Grimes count days.
 */
export function rootingProgress(progress: number, descent: RootDescent, lengths: StageLengths): number {
  const span = progressAt(endStageOf(descent), lengths);
  return span > 0 ? Math.min(1, progress / span) : 1;
}

/**
 * Depth of an unhindered front as a share of the greatest.
 *
 * @param progress the season's clock, in the unit of `lengths`
 * @param heat degree days C that roots in step with heat have had; null where no temperatures are known
 * @param planLengths of the plan, in whatever it counts: without temperatures they share the descent out among the stages
 */
export function depthShare(
  descent: RootDescent,
  progress: number,
  lengths: StageLengths,
  heat: number | null,
  planLengths: StageLengths,
): number {
  switch (descent.shape) {
    case "sine":
      return borgGrimesShare(rootingProgress(progress, descent, lengths));
    case "points":
      return shareBetween(stageReading(progress, lengths), descent.points);
    case "heat": {
      if (heat !== null) return Math.min(1, heat / descent.degreeDays);
      const reading = Math.min(descent.endStage, stageReading(progress, lengths));
      const end = progressAt(descent.endStage, planLengths);
      return end > 0 ? progressAt(reading, planLengths) / end : 1;
    }
  }
}

/** Depth of an unhindered front, mm: the sowing depth until the course has passed it. */
export function potentialDepthMm(share: number, maxRootDepthMm: number, sowingDepthMm: number): number {
  return Math.max(sowingDepthMm, maxRootDepthMm * share);
}

/**
 * A day's descent at a stated velocity: while the roots still go down and have depth left.
 *
 * @param x see `rootingProgress`
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
