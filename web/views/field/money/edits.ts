import { tableOfRows, type Column, type Table } from "../../../forms/edits/cells.ts";
import { formOf } from "../../../forms/formOf.ts";
import type { Json, JsonGroup } from "../../../state/json.ts";

/** Changes to the money of a scenario: what is written in, what is to be written out. */

/**
 * A first price to write over, in round figures of no market.
 * @example firstPrice("bu/ac", "us") // "5 USD/bu"
 */
export function firstPrice(unit: "bu/ac" | "lb/ac", units: "us" | "metric"): string {
  if (units === "metric") return "0.2 USD/kg";
  return unit === "bu/ac" ? "5 USD/bu" : "0.2 USD/lb";
}

/** A further item of a list. */
export function newItem(what: "costs" | "returns", count: number, each: string): JsonGroup {
  const name = what === "costs" ? "cost" : "return";
  return { name: count === 0 ? `a ${name}` : `${name} ${count + 1}`, amount: `10 ${each}` };
}

/**
 * Costs or returns, a row each.
 *
 * @param each `USD/ac`, for amounts pasted without a unit
 */
export function itemsTable(what: "costs" | "returns", each: string): Table {
  const path = `money.${what}`;
  const choice = (key: string) =>
    ({ key, kind: "word", choices: formOf(`${path}[0].${key}`).choices ?? [] }) as const;
  const columns: readonly Column[] = [
    { key: "name", word: "Name", kind: "word" },
    { key: "amount", word: "Amount", pastedUnit: each },
    { ...choice("kind"), word: "Added or reduced", none: "added" },
    { ...choice("per"), word: "For each", none: "as written" },
    { key: "years", word: "Years it lasts", kind: "number" },
    { key: "interest", word: "Interest", unit: "%" },
  ];
  return { ...tableOfRows(path, columns, (row) => newItem(what, row, each)), keepsEmpty: true };
}

/** A range of which one end may still be missing; without both it is left out. */
export function rangeWith(written: readonly string[], end: 0 | 1, text: string): Json | undefined {
  const both = [written[0] ?? "", written[1] ?? ""];
  both[end] = text;
  return both.every((one) => one.trim() === "") ? undefined : both;
}
