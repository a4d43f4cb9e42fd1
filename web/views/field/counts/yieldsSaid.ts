import { shownYield } from "../../../../src/answer/comparison/yieldUnits.ts";
import { measuredYield, type MeasuredYield } from "../../../../src/report/sentences/field/measuredYield.ts";
import type { Answer } from "../../../worker/protocol.ts";

/** Measured yields as they are written, and as numbers for a picture. */
export interface YieldsSaid extends MeasuredYield {
  readonly of: (kgPerHa: number) => number;
}

/** Null where nothing was measured. */
export function yieldsSaid({ field, units }: Answer): YieldsSaid | null {
  if (field.yields === null) return null;
  const { unit } = field.yields;
  const { factor } = shownYield(unit, units);
  return { ...measuredYield(unit, units), of: (kgPerHa) => kgPerHa * factor };
}
