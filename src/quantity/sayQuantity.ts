import { kgPerPound } from "./constants.ts";
import { kinds, type QuantityKind, type UnitFormat, type Units } from "./kinds.ts";

/** A number for people: at most `significant` figures and `decimals` places, no trailing zeros, no exponent. */
export function sayNumber(value: number, decimals = 2, significant = 3): string {
  if (!Number.isFinite(value)) throw new Error("only finite numbers are shown");
  const magnitude = value === 0 ? 0 : Math.floor(Math.log10(Math.abs(value))) + 1;
  const places = Math.min(Math.max(significant - magnitude, 0), decimals);
  const text = value.toFixed(places);
  const trimmed = places > 0 ? text.replace(/\.?0+$/, "") : text;
  return trimmed === "-0" ? "0" : trimmed;
}

/**
 * A quantity for people, with its unit.
 * @example sayQuantity(355.6, "depth", "us") // "14 in"
 */
export function sayQuantity(value: number, kind: QuantityKind, units: Units): string {
  const { unit, decimals } = shownAs(kind, units);
  return `${sayNumber(inUnits(value, kind, units), decimals)} ${unit}`;
}

/**
 * In both systems; once where they say the same.
 * @example sayBoth(100, "depth") // "3.9 in (100 mm)"
 */
export function sayBoth(value: number, kind: QuantityKind): string {
  const us = sayQuantity(value, kind, "us");
  const metric = sayQuantity(value, kind, "metric");
  return us === metric ? us : `${us} (${metric})`;
}

/** The number alone, in the unit `shownAs` names: for tables with the unit in their head. */
export function inUnits(value: number, kind: QuantityKind, units: Units): number {
  const converted = value * shownAs(kind, units).perInside;
  return kind === "temperature" && units === "us" ? converted + 32 : converted;
}

export function shownAs(kind: QuantityKind, units: Units): UnitFormat {
  return kinds[kind][units];
}

/** A yield in the crop's own unit (bu/ac or lb/ac) with US units, kg/ha otherwise. */
export function sayYield(kgPerHa: number, unit: { us: string; kgPerUsUnit: number }, units: Units): string {
  if (units === "metric") return sayQuantity(kgPerHa, "yieldPerArea", "metric");
  const perUnit = inUnits(kgPerHa, "yieldPerArea", "us") * (kgPerPound / unit.kgPerUsUnit);
  return `${sayNumber(perUnit, unit.us === "bu/ac" ? 1 : 0)} ${unit.us}`;
}
