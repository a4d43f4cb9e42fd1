import { units } from "../state/view.ts";

/**
 * A default that is told in both systems, `4 in (100 mm)`, in the one that is chosen.
 * @example sayDefault("4 in (100 mm)") // "4 in" with US units
 */
export function sayDefault(value: string): string {
  const both = /^([+-]?\.?\d.*\S) \(([^()]*)\)$/.exec(value);
  if (both === null || !/\d/.test(both[2]!)) return value;
  return (units.value === "us" ? both[1] : both[2]) ?? value;
}
