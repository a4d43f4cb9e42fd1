import { mmPerInch } from "../quantity/constants.ts";
import { multiplesWithin, roundUp } from "./axis.ts";

export interface DepthTick {
  readonly mm: number;
  readonly text: string;
}

/** Steps of inches as a rule is read: by hands, then by feet. */
const inchSteps = [1, 2, 3, 6, 12, 24, 36, 60, 120] as const;

/**
 * Round depths from the surface down, in the unit on show.
 *
 * @param depthMm that the height stands for, above 0
 * @param leastPx from one to the next
 */
export function depthTicks(depthMm: number, heightPx: number, inInches: boolean, leastPx = 34): DepthTick[] {
  const mmPerUnit = inInches ? mmPerInch : 1;
  const depth = depthMm / mmPerUnit;
  const least = (leastPx / heightPx) * depth;
  const step = (inInches ? inchSteps.find((one) => one >= least) : undefined) ?? Math.max(1, roundUp(least));
  return multiplesWithin(0, depth, step).map((value) => ({ mm: value * mmPerUnit, text: String(value) }));
}

/**
 * As deep as needed, in whole steps, so that a drawing seldom moves.
 *
 * @param leastSteps fewer are never shown
 */
export function inWholeSteps(depthMm: number, stepMm: number, leastSteps: number): number {
  return Math.max(leastSteps, Math.ceil(depthMm / stepMm)) * stepMm;
}
