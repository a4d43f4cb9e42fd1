import { movedCurveNumber } from "./curveNumber.ts";
import { zoneDepletionMm } from "./evaporation/evaporation.ts";
import type { Field } from "./field.ts";
import { shedMeltMm } from "./frozenGround.ts";
import type { Today } from "./today.ts";

/**
 * Runoff of one day's rain by the curve-number method.
 *
 * @param rainMm rain and melt reaching the ground, mm, >= 0 (the source's P)
 * @param curveNumber 30 to 100, already moved for today's wetness (CN)
 * @returns mm, 0 to rainMm; 0 while rain is within the initial loss
 * @example runoffMm(50.8, 80) // 14.29
 * Source: [NRCS 1986, TR-55] ch. 2; Table 2-1 read, equation numbers from memory. Written for inches; S is in mm here.
 */
export function runoffMm(rainMm: number, curveNumber: number): number {
  const retentionMm = 25400 / curveNumber - 254; // eq 2-4
  const initialLossMm = 0.2 * retentionMm; // eq 2-2
  if (rainMm <= initialLossMm) return 0;
  return (rainMm - initialLossMm) ** 2 / (rainMm + 0.8 * retentionMm); // eq 2-3
}

/**
 * Step 2: runoff by the curve number of the ground, moved with this morning's topsoil water. Frozen ground sheds melt by its own
 * rule, rain by the curve number, and never less than if it were not frozen (ours). Writes runoff.
 */
export function runOff(today: Today, field: Field): void {
  today.runoffMm = 0;
  if (today.reachingMm <= 0) return;
  const { input, workspace, zone, curveNumbers, readilyEvaporableMm, totalEvaporableMm, frost } = field;
  const { dry, average, wet } = today.inCrop ? curveNumbers.crop : curveNumbers.fallow;
  const depletionMm = zoneDepletionMm(zone, workspace.waterMmBySlice, input.slices.fieldCapacityMm);
  const curveNumber = movedCurveNumber(
    dry,
    average,
    wet,
    depletionMm,
    readilyEvaporableMm.crop,
    totalEvaporableMm.crop,
  );
  today.runoffMm = runoffMm(today.reachingMm, curveNumber);
  if (frost.isFrozen && today.meltMm > 0) {
    const frozenMm = shedMeltMm(today.meltMm, frost) + runoffMm(today.rainMm, curveNumber);
    if (frozenMm > today.runoffMm) today.runoffMm = frozenMm;
  }
}
