import type { LayerDescription } from "../../src/soil/layers/layerDescription.ts";
import { defaultOrganicMatterPercent } from "../../src/soil/layers/resolveLayer.ts";
import { estimateWaterLimits } from "../../src/soil/equations/waterLimits.ts";

/** Estimated less measured, as water by volume (0 to 1). */
export interface Misfit {
  readonly count: number;
  readonly bias: number;
  readonly rmse: number;
}

export interface LimitsBias {
  readonly wiltingPoint: Misfit | null;
  readonly fieldCapacity: Misfit | null;
  readonly availableWater: Misfit | null;
}

/**
 * How far estimated limits are from measured ones, over horizons that give both texture and a limit.
 * Density, organic matter and stones are taken from the horizon where it has them, else as for a layer. Horizons without sand
 * and clay are passed over; null where no horizon has the limit.
 */
export function limitsBias(horizons: readonly LayerDescription[]): LimitsBias {
  const wiltingPoint: number[] = [];
  const fieldCapacity: number[] = [];
  const availableWater: number[] = [];
  for (const horizon of horizons) {
    const { sandFraction, clayFraction } = horizon;
    if (sandFraction === undefined || clayFraction === undefined) continue;
    const estimate = estimateWaterLimits({
      sandFraction,
      clayFraction,
      organicMatterPercent:
        horizon.organicMatterPercent ?? defaultOrganicMatterPercent((horizon.topMm + horizon.bottomMm) / 2),
      bulkDensityKgPerM3: horizon.bulkDensityKgPerM3 ?? null,
      gravelVolumeFraction: horizon.gravelVolumeFraction ?? 0,
    });
    const { wiltingPoint: wp, fieldCapacity: fc } = horizon;
    if (wp !== undefined) wiltingPoint.push(estimate.wiltingPoint - wp);
    if (fc !== undefined) fieldCapacity.push(estimate.fieldCapacity - fc);
    const available = horizon.availableWater ?? (wp !== undefined && fc !== undefined ? fc - wp : undefined);
    if (available !== undefined)
      availableWater.push(estimate.fieldCapacity - estimate.wiltingPoint - available);
  }
  return {
    wiltingPoint: misfit(wiltingPoint),
    fieldCapacity: misfit(fieldCapacity),
    availableWater: misfit(availableWater),
  };
}

function misfit(errors: readonly number[]): Misfit | null {
  const count = errors.length;
  if (count === 0) return null;
  const bias = errors.reduce((sum, error) => sum + error, 0) / count;
  return { count, bias, rmse: Math.sqrt(errors.reduce((sum, error) => sum + error * error, 0) / count) };
}
