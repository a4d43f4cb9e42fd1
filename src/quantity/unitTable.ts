import { lookUp } from "../lookUp.ts";
import table from "./unitTable.json" with { type: "json" };

/**
 * What the units of the trade are worth, written down from mathjs by `npm run units` so that a page need not fetch the library
 * for them: it takes longer to start than the model. A test holds every figure, and what is read with them, against mathjs.
 */
type Dimension = "mass" | "length" | "time" | "temperature";

interface UnitWorth {
  /** In SI units, and the factor of the prefix. */
  readonly value: number;
  readonly prefix: number;
  /** Where a scale of temperature begins, K from 0 C. */
  readonly zero: number;
  readonly dimensions: Partial<Readonly<Record<Dimension, number>>>;
}

const units: Readonly<Record<string, UnitWorth | undefined>> = table;
const dimensions: readonly Dimension[] = ["mass", "length", "time", "temperature"];

interface UnitPower {
  readonly unit: UnitWorth;
  readonly power: number;
}

/**
 * Converts as mathjs does, step by step, so that the last bit is the same too.
 *
 * @param from, to units with whole powers, one beside or below the other: `kg/hectare/mm`, `kg m^-3`
 * @returns null where the two are not of the same dimensions; undefined where it is for mathjs to say: a unit that is not in
 * the table, brackets, numbers
 */
export function convertByTable(value: number, from: string, to: string): number | null | undefined {
  const [source, target] = [unitsOf(from), unitsOf(to)];
  if (source === null || target === null) return undefined;
  if (dimensions.some((one) => powerOf(source, one) !== powerOf(target, one))) return null;
  let si = value;
  for (const { unit, power } of source) si *= (unit.value * unit.prefix) ** power;
  if (!isDerived(source)) si += zeroOf(source[0]!.unit) - zeroOf(target[0]!.unit);
  for (const { unit, power } of target) si /= (unit.value * unit.prefix) ** power;
  return si;
}

/** What is no temperature begins where kelvins do: at nothing. */
function zeroOf({ zero, dimensions: { temperature } }: UnitWorth): number {
  return temperature === undefined ? table.K.zero : zero;
}

/** Units that are multiplied in a row, those after a slash with the power below 0; null for anything else. */
function unitsOf(text: string): UnitPower[] | null {
  const found: UnitPower[] = [];
  const next = /(\s*\/\s*|\s+|^)([a-z]+)(?:\s*\^\s*(-?\d))?/giy;
  while (next.lastIndex < text.length) {
    const match = next.exec(text);
    if (match === null) return null;
    const [, before = "", name = "", power = "1"] = match;
    const unit = lookUp(units, name);
    if (unit === undefined || (found.length === 0) !== (before === "")) return null;
    found.push({ unit, power: before.includes("/") ? -Number(power) : Number(power) });
  }
  return found.length === 0 ? null : found;
}

function powerOf(row: readonly UnitPower[], dimension: Dimension): number {
  return row.reduce((sum, { unit, power }) => sum + (unit.dimensions[dimension] ?? 0) * power, 0);
}

/** More than one plain unit: then a degree is a step of temperature, not a place on its scale. */
function isDerived(row: readonly UnitPower[]): boolean {
  return row.length > 1 || row[0]?.power !== 1;
}
