import type { Units } from "../../quantity/kinds.ts";
import { usOfKgPerHa, type YieldUnit } from "../../crop/yield/yieldLine.ts";

/** How a yield in kg/ha is shown: `shown = kgPerHa x factor`. */
export interface ShownYield {
  readonly unit: "bu/ac" | "lb/ac" | "kg/ha";
  readonly factor: number;
}

/**
 * @example shownYield({ us: "bu/ac", kgPerUsUnit: 25.4012 }, "us").factor // 0.015932, as 62.77 kg/ha is 1 bu/ac
 */
export function shownYield(unit: YieldUnit, system: Units): ShownYield {
  if (system === "metric") return { unit: "kg/ha", factor: 1 };
  return { unit: unit.us, factor: usOfKgPerHa(1, unit) };
}
