import { stream } from "../randomness.ts";
import { residualWalk } from "./temperatureResiduals.ts";

/**
 * What generated weather draws each day whatever the normals are, so that the same draws serve when only the normals change.
 * Draws of the first days are the same however many are asked.
 */
export interface GeneratorDraws {
  readonly seed: number;
  /** The state before the first day; 0 to 1, wet below the wet share. */
  readonly wetBefore: number;
  /** Indexed by day. 0 to 1: wet below the day's chance. */
  readonly wet: Float64Array;
  /** Residuals of the highest and lowest temperature, in standard deviations. */
  readonly tMax: Float64Array;
  readonly tMin: Float64Array;
}

export function drawDays(seed: number, days: number): GeneratorDraws {
  const occurrence = stream(seed, "wet days");
  const wetBefore = occurrence.uniform();
  const walk = residualWalk(stream(seed, "temperature"));
  const [wet, tMax, tMin] = [new Float64Array(days), new Float64Array(days), new Float64Array(days)];
  for (let day = 0; day < days; day++) {
    wet[day] = occurrence.uniform();
    const away = walk();
    tMax[day] = away.tMax;
    tMin[day] = away.tMin;
  }
  return { seed, wetBefore, wet, tMax, tMin };
}

/** Whether draws made before are those of this seed, and reach as far as is asked. */
export function serves(draws: GeneratorDraws | null, seed: number, days: number): draws is GeneratorDraws {
  return draws !== null && Object.is(draws.seed, seed) && draws.wet.length >= days;
}
