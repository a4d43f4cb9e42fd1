import type { LayerDescription } from "./layerDescription.ts";
import { percent } from "./layerRanges.ts";
import { refuseSaying } from "../../problem.ts";
import { gPerCm3, porosity } from "../equations/waterLimits.ts";

/** By whole volume, stones included; wilting point < field capacity < saturation. */
interface Limits {
  readonly wiltingPoint: number;
  readonly fieldCapacity: number;
  readonly saturation: number;
}

export interface SettledLimits extends Limits {
  /** Nothing of them was estimated. */
  readonly allStated: boolean;
  readonly notes: readonly string[];
}

/** Water by volume of the fine earth that must lie between two neighbouring limits for them to be believed. */
const leastApart = 0.005;
/** How far a stated saturation may be above the pores that a stated density leaves: both are measured with error. */
const poreError = 0.03;
/** Drainable water given to a layer whose field capacity fills the pores of its estimate. */
const leastDrainable = 0.02;

/**
 * Stated limits over estimated ones. Stated ones that cannot be true together, or with the stated density, are refused.
 *
 * @param estimate of the fine earth, at the layer's density
 * @param fine share of the whole volume that is not stones
 * @param field path of a property, for the error
 */
export function settleLimits(
  stated: LayerDescription,
  estimate: Limits,
  fine: number,
  field: (key: keyof LayerDescription) => string,
): SettledLimits {
  const notes: string[] = [];
  const known = statedPair(stated, field);
  const wiltingPoint = known.wiltingPoint ?? estimate.wiltingPoint * fine;
  let fieldCapacity = known.fieldCapacity ?? estimate.fieldCapacity * fine;
  if (stated.availableWater !== undefined && known.fieldCapacity === undefined) {
    fieldCapacity = wiltingPoint + stated.availableWater;
    if (known.wiltingPoint === undefined) {
      notes.push("field capacity is the estimated wilting point plus the stated available water");
    }
  }

  if (wiltingPoint < leastApart * fine || fieldCapacity - wiltingPoint < leastApart * fine) {
    const from = (value: number | undefined): string => (value === undefined ? "estimated" : "stated");
    const key = stated.wiltingPoint !== undefined ? "wiltingPoint" : "fieldCapacity";
    refuseSaying(
      field(stated[key] === undefined ? "availableWater" : key),
      "a wilting point above 0 and below field capacity",
      `wilting point ${percent(wiltingPoint)} (${from(known.wiltingPoint)}), ` +
        `field capacity ${percent(fieldCapacity)} (${from(known.fieldCapacity)})`,
      "correct them, or give both",
    );
  }
  return {
    wiltingPoint,
    fieldCapacity,
    saturation: settleSaturation(stated, fieldCapacity, estimate.saturation * fine, fine, field, notes),
    allStated:
      known.wiltingPoint !== undefined &&
      known.fieldCapacity !== undefined &&
      stated.saturation !== undefined,
    notes,
  };
}

/** Wilting point and field capacity as stated; the one left out follows from the other and the available water. */
function statedPair(
  { wiltingPoint, fieldCapacity, availableWater }: LayerDescription,
  field: (key: keyof LayerDescription) => string,
): { readonly wiltingPoint: number | undefined; readonly fieldCapacity: number | undefined } {
  if (availableWater === undefined) return { wiltingPoint, fieldCapacity };
  if (wiltingPoint === undefined) {
    return {
      wiltingPoint: fieldCapacity === undefined ? undefined : fieldCapacity - availableWater,
      fieldCapacity,
    };
  }
  if (fieldCapacity === undefined) return { wiltingPoint, fieldCapacity: wiltingPoint + availableWater };
  if (Math.abs(fieldCapacity - wiltingPoint - availableWater) > leastApart) {
    refuseSaying(
      field("availableWater"),
      `field capacity less wilting point (${percent(fieldCapacity - wiltingPoint)})`,
      percent(availableWater),
      "leave one of the three out",
    );
  }
  return { wiltingPoint, fieldCapacity };
}

function settleSaturation(
  stated: LayerDescription,
  fieldCapacity: number,
  estimated: number,
  fine: number,
  field: (key: keyof LayerDescription) => string,
  notes: string[],
): number {
  const { bulkDensityKgPerM3, saturation } = stated;
  const pores = bulkDensityKgPerM3 === undefined ? null : porosity(bulkDensityKgPerM3) * fine;
  const density = gPerCm3(bulkDensityKgPerM3 ?? 0);
  if (saturation !== undefined) {
    if (pores !== null && saturation > pores + poreError) {
      refuseSaying(
        field("bulkDensityKgPerM3"),
        `a density that leaves pores for the stated saturation of ${percent(saturation)}`,
        `${density}, which leaves ${percent(pores)}`,
        "correct one of the two, or leave saturation out",
      );
    }
    if (saturation - fieldCapacity < leastApart * fine) {
      refuseSaying(
        field("saturation"),
        `more water than at field capacity (${percent(fieldCapacity)})`,
        percent(saturation),
        "correct one of the two, or leave saturation out",
      );
    }
    return saturation;
  }
  if (estimated - fieldCapacity >= leastApart * fine) return estimated;

  const key = stated.fieldCapacity === undefined ? "availableWater" : "fieldCapacity";
  if (pores !== null) {
    refuseSaying(
      field(key),
      `a field capacity below what the pores hold at ${density} (${percent(pores)})`,
      percent(fieldCapacity),
      "correct it or the bulk density",
    );
  }
  const raised = fieldCapacity + leastDrainable * fine;
  if (raised >= 0.9 * fine) {
    refuseSaying(
      field(key),
      "a field capacity that fits between the stones and the grains",
      percent(fieldCapacity),
      "correct it",
    );
  }
  notes.push(`estimated saturation is raised to ${percent(raised)}, just above the stated field capacity`);
  return raised;
}
