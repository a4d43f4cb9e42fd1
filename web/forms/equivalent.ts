import { kinds, type QuantityKind, type Units } from "../../src/quantity/kinds.ts";
import { splitNumber } from "../../src/quantity/numberText.ts";
import { sayQuantity } from "../../src/quantity/sayQuantity.ts";
import { convertByTable } from "../../src/quantity/unitTable.ts";
import { spellUnit } from "../../src/quantity/unitText.ts";

/** Other units of length that belong to one system only. */
const lengthsOf: Readonly<Record<Units, readonly string[]>> = {
  us: ["in", "ft"],
  metric: ["mm", "cm", "m"],
};

/**
 * What was typed in the other system's units, in those that are shown; null where it is in these, or cannot be told here.
 * @example equivalent("14 in", "depth", "metric") // "356 mm"
 */
export function equivalent(text: string, kind: QuantityKind, units: Units): string | null {
  const split = splitNumber(text);
  const other = units === "us" ? "metric" : "us";
  const [shown, unshown] = [kinds[kind][units].unit, kinds[kind][other].unit];
  if (split === null || shown === unshown) return null;
  const unit = spellUnit(split.unit);
  const isLength = lengthsOf[units].includes(shown);
  const isOther = unit === spellUnit(unshown) || (isLength && lengthsOf[other].includes(unit));
  if (!isOther) return null;
  const inside = convertByTable(split.value, unit, kinds[kind].inside);
  return typeof inside === "number" && Number.isFinite(inside) ? sayQuantity(inside, kind, units) : null;
}
