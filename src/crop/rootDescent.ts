import type { StageLengths } from "./stageLengths.ts";

/**
 * How an unhindered front goes down: the depth as a share of the greatest, and the stage in which that is reached. Stages are
 * read on one scale: 0 sowing, 1, 2, 3 the ends of the initial stage, of development (flowering begins) and of mid-season, 4 ripe;
 * 2.4 lies 40 % into mid-season.
 */
export type RootDescent =
  /** Borg & Grimes (1986), stretched over the time to `endStage`. */
  | { readonly shape: "sine"; readonly endStage: number }
  /** Straight lines between published points: stage, share of the greatest depth. From 0 at sowing; both rise. */
  | { readonly shape: "points"; readonly points: readonly (readonly [stage: number, share: number])[] }
  /** In step with the heat since sowing, winter's warm days too: so many degree days to the greatest depth, none after `endStage`. */
  | { readonly shape: "heat"; readonly degreeDays: number; readonly endStage: number };

/** Stage at which the roots stop going down. */
export function endStageOf(descent: RootDescent): number {
  return descent.shape === "points" ? (descent.points.at(-1)?.[0] ?? 0) : descent.endStage;
}

/** The same descent, ended at another stage: drawn out or together, but for roots in step with heat, whose pace stays. */
export function endedAt(descent: RootDescent, endStage: number): RootDescent {
  if (descent.shape !== "points") return { ...descent, endStage };
  const factor = endStage / endStageOf(descent);
  return { shape: "points", points: descent.points.map(([stage, share]) => [stage * factor, share]) };
}

/**
 * Where the season's clock stands on the scale of stages, 0 to 4.
 *
 * @param progress days or degree days since sowing
 * @example stageReading(40, [20, 40, 40, 30]) // 1.5
 */
export function stageReading(progress: number, lengths: StageLengths): number {
  let left = progress;
  for (let stage = 0; stage < 4; stage++) {
    const length = lengths[stage]!;
    if (left < length) return stage + Math.max(0, left) / length;
    left -= length;
  }
  return 4;
}

/**
 * The clock at a stage: the other way round.
 *
 * @example progressAt(1.5, [20, 40, 40, 30]) // 40
 */
export function progressAt(stage: number, lengths: StageLengths): number {
  let progress = 0;
  for (let s = 0; s < 4; s++) progress += lengths[s]! * Math.min(1, Math.max(0, stage - s));
  return progress;
}

/**
 * Share of the greatest depth between published points: straight lines, so that a change of pace is no step in depth.
 *
 * @returns 0 to 1; the last point's share from there on
 */
export function shareBetween(
  reading: number,
  points: readonly (readonly [stage: number, share: number])[],
): number {
  let [fromStage, fromShare] = [0, 0];
  for (const [stage, share] of points) {
    if (reading < stage)
      return fromShare + ((reading - fromStage) / (stage - fromStage)) * (share - fromShare);
    [fromStage, fromShare] = [stage, share];
  }
  return fromShare;
}
