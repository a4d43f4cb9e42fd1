import { withoutHead } from "../../../forms/edits/pasted.ts";
import { withPoint } from "../../../forms/withUnit.ts";
import { isGroup, type Json, type JsonGroup } from "../../../state/json.ts";

/** Changes to the money of a scenario: what is written in, what is to be written out. */

/** What an item is told by, in the order of the table's columns. */
export const itemKeys = ["name", "amount", "kind", "per", "years", "interest"] as const;
export type ItemKey = (typeof itemKeys)[number];

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

interface Pasted {
  /** The items so far. */
  readonly items: readonly Json[];
  /** The cell they were pasted into. */
  readonly at: number;
  readonly key: ItemKey;
  /** Copied from a spreadsheet: rows of cells. */
  readonly cells: readonly (readonly string[])[];
  readonly what: "costs" | "returns";
  /** `USD/ac`, for amounts without a unit. */
  readonly each: string;
}

/** Items with what was pasted written over them; more rows than there are items make more items. Empty cells change nothing, a head is left out. */
export function withPasted({ items, at, key, cells, what, each }: Pasted): Json[] {
  const from = itemKeys.indexOf(key);
  const after = [...items];
  for (const [r, row] of withoutHead(cells).entries()) {
    const i = at + r;
    const before = after[i];
    let item: JsonGroup = isGroup(before) ? before : newItem(what, i, each);
    for (const [c, cell] of row.entries()) {
      const into = itemKeys[from + c];
      if (into !== undefined && cell !== "") item = { ...item, [into]: cellValue(into, cell, each) };
    }
    after[i] = item;
  }
  return after;
}

const plainNumber = /^-?\d+(?:\.\d+)?$/;

function cellValue(key: ItemKey, cell: string, each: string): Json {
  if (key === "name") return cell;
  if (key === "kind" || key === "per") return cell.toLowerCase();
  const plain = withPoint(cell);
  if (!plainNumber.test(plain)) return plain;
  if (key === "years") return Number(plain);
  return key === "amount" ? `${plain} ${each}` : `${plain} %`;
}

/** A range of which one end may still be missing; without both it is left out. */
export function rangeWith(written: readonly string[], end: 0 | 1, text: string): Json | undefined {
  const both = [written[0] ?? "", written[1] ?? ""];
  both[end] = text;
  return both.every((one) => one.trim() === "") ? undefined : both;
}
