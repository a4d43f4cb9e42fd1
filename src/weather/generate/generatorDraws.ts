import { stream } from "../../randomness.ts";
import { residualWalk } from "./temperatureResiduals.ts";

/**
 * What generated weather draws whatever the normals are, so that the same draws serve when only the normals change.
 * Draws of the first days are the same however many are asked.
 */
export interface GeneratorDraws {
  readonly seed: number;
  /** The state before the first day; 0 to 1, wet below the wet share. */
  readonly wetBefore: number;
  /** Indexed by day. 0 to 1: wet below the day's chance. */
  readonly wet: Float64Array;
  /** 0 to 1: where among its wet days a day's rain stands. Drawn for dry days too. */
  readonly amount: Float64Array;
  /** Residuals of the highest and lowest temperature, in standard deviations. */
  readonly tMax: Float64Array;
  readonly tMin: Float64Array;
  /** Indexed by year. How wet a year is, in standard deviations. */
  readonly wetnessByYear: Float64Array;
}

export function drawDays(seed: number, days: number): GeneratorDraws {
  const occurrence = stream(seed, "wet days");
  const amounts = stream(seed, "rain amounts");
  const wetness = stream(seed, "wetness of years");
  const wetBefore = occurrence.uniform();
  const walk = residualWalk(stream(seed, "temperature"));
  const byDay = () => new Float64Array(days);
  const [wet, amount, tMax, tMin] = [byDay(), byDay(), byDay(), byDay()];
  for (let day = 0; day < days; day++) {
    wet[day] = occurrence.uniform();
    amount[day] = amounts.uniform();
    const away = walk();
    tMax[day] = away.tMax;
    tMin[day] = away.tMin;
  }
  const wetnessByYear = Float64Array.from({ length: Math.ceil(days / 365) }, () => wetness.normal());
  return { seed, wetBefore, wet, amount, tMax, tMin, wetnessByYear };
}

/** Whether draws made before are those of this seed, and reach as far as is asked. */
export function serves(draws: GeneratorDraws | null, seed: number, days: number): draws is GeneratorDraws {
  return draws !== null && Object.is(draws.seed, seed) && draws.wet.length >= days;
}
