import type { Slices } from "../soil/layers/layer.ts";
import type { Draining, Field } from "./field.ts";
import { measuredMm } from "./storage.ts";
import type { Today } from "./today.ts";

/**
 * Water left in one slice after draining for a day under unit gradient.
 *
 * dw/dt = -Ks (w / ws)^n has the closed form (w/ws)^(1-n) + (n-1) (Ks/ws) t; water above saturation first leaves at Ks.
 *
 * @param waterMm water in the slice with the day's inflow, mm; may exceed saturation
 * @param saturationMm ws, mm
 * @param conductivityMmPerDay Ks, mm a day
 * @param exponent n = 3 + 2 / lambda, > 1
 * @param days time to drain, 0 to 1
 * @returns mm, not above waterMm
 * Source: K(theta) of [Saxton & Rawls 2006] eq. 17 (memory); integration is ours, checked against a general ODE solver.
 */
export function drainedTo(
  waterMm: number,
  saturationMm: number,
  conductivityMmPerDay: number,
  exponent: number,
  days: number,
): number {
  let water = waterMm;
  let left = days;
  if (water > saturationMm) {
    const daysAbove = (water - saturationMm) / conductivityMmPerDay;
    if (!(daysAbove < left)) return water - conductivityMmPerDay * left;
    left -= daysAbove;
    water = saturationMm;
  }
  const power = exponent - 1;
  // exp(p log x) is x^p at half the price of Math.pow in Node. It overflows only for soil far drier than any that drains.
  const start = Math.exp(-power * Math.log(water / saturationMm));
  if (!(start < 1e300)) return water;
  const end = Math.exp(-Math.log(start + power * (conductivityMmPerDay / saturationMm) * left) / power);
  return Math.min(water, saturationMm * end);
}

/** Written by `soakAndDrain`: what could not enter, and what left the last slice, mm. */
export interface SoakResult {
  refusedMm: number;
  deepDrainageMm: number;
}

/** On the first day nobody knows yet. */
export function mayDrainAnywhere(count: number): Draining {
  return { from: 0, to: count - 1, reached: count };
}

/**
 * Infiltration and drainage of one day: a cascade from the top slice down, then back up where a slice could not take all.
 *
 * Reads slices and inflowMm; changes waterMmBySlice and draining; writes result. Water above field capacity moves on, as
 * much as a day allows; below it nothing moves (measured recessions stop within 1 % of it, see
 * data-reference/season-soil-moisture.json). Never leaves a slice above saturation: the surplus stays
 * in the slice above, and what saturates the surface is refused. Water in = storage change + refused + deep drainage, exactly.
 */
export function soakAndDrain(
  waterMmBySlice: Float64Array,
  inflowMm: number,
  slices: Slices,
  draining: Draining,
  result: SoakResult,
): void {
  const { count, fieldCapacityMm, saturationMm, saturatedConductivityMmPerDay, drainExponent } = slices;
  let inflow = inflowMm;
  let deepestOverfull = -1;
  const drainedBefore = draining.to;
  let from = count;
  let to = -1;
  const first = inflow > 0 ? 0 : draining.from;
  let j = first;
  for (; j < count; j++) {
    if (inflow <= 0 && j > drainedBefore) break;
    let water = waterMmBySlice[j]! + inflow;
    inflow = 0;
    const floor = fieldCapacityMm[j]!;
    if (water > floor) {
      const saturation = saturationMm[j]!;
      const left = drainedTo(water, saturation, saturatedConductivityMmPerDay[j]!, drainExponent[j]!, 1);
      const stays = left > floor ? left : floor;
      inflow = water - stays;
      water = stays;
      if (water > saturation) deepestOverfull = j;
      if (water > floor) {
        if (j < from) from = j;
        to = j;
      }
    }
    waterMmBySlice[j] = water;
  }
  draining.reached = j > first ? j : 0;
  result.deepDrainageMm = inflow;
  let surplus = 0;
  for (let j = deepestOverfull; j >= 0; j--) {
    if (surplus > 0 && j < from) from = j;
    const water = waterMmBySlice[j]! + surplus;
    const saturation = saturationMm[j]!;
    surplus = water > saturation ? water - saturation : 0;
    waterMmBySlice[j] = surplus > 0 ? saturation : water;
  }
  result.refusedMm = surplus;
  draining.from = from;
  draining.to = to;
}

/** Scratch of the step below: written and read within one call. */
const soak: SoakResult = { refusedMm: 0, deepDrainageMm: 0 };

/**
 * Step 3: what did not run off soaks in and drains; what saturates the surface runs off too. Writes infiltration (measured
 * in the soil, not by subtraction), deep drainage, and adds to runoff.
 */
export function soakIn(today: Today, { input, workspace, draining, storage }: Field): void {
  const { waterMmBySlice } = workspace;
  const { slices } = input;
  soakAndDrain(waterMmBySlice, today.reachingMm - today.runoffMm, slices, draining, soak);
  today.deepDrainageMm = soak.deepDrainageMm;
  today.runoffMm += soak.refusedMm;
  today.infiltrationMm =
    today.reachingMm > 0
      ? measuredMm(storage, waterMmBySlice, slices.count, draining.reached) -
        today.storedThisMorningMm +
        soak.deepDrainageMm
      : 0;
}
