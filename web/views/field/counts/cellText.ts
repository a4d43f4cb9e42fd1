import { cellWithUnit, withPoint } from "../../../forms/withUnit.ts";
import type { Json } from "../../../state/json.ts";

/** What stands in a cell of a table of counts, as text and as the scenario writes it. */

export type CellKind = "whole" | "wholes" | "number" | "quantity" | "quantities" | "word";

/** Nothing typed is nothing written. Text that is no number stays as it was typed, to be told what is wrong with it. */
export function cellValue(text: string, kind: CellKind, unit = ""): Json | undefined {
  const plain = text.trim();
  if (plain === "") return undefined;
  switch (kind) {
    case "word":
      return text;
    case "whole":
    case "number":
      return asNumber(plain);
    case "wholes":
      return itemsOf(plain).map(asNumber);
    case "quantity":
      return cellWithUnit(plain, unit);
    case "quantities":
      return quantitiesOf(plain).map((one) => cellWithUnit(one, unit));
  }
}

/**
 * Numbers in a row, parted by blanks, semicolons or commas; "1,110" may be a thousand and stays one.
 * @example itemsOf("14, 16 16") // ["14", "16", "16"]
 */
export function itemsOf(text: string): string[] {
  return text
    .split(/[;\s]+|,\s+/)
    .flatMap((item) => (/^\d{1,3}(,\d{3})+$/.test(item) ? [item] : item.split(",")))
    .filter((item) => item !== "");
}

/** Quantities are parted by a comma and a blank, or a semicolon; bare numbers by blanks as well. */
function quantitiesOf(text: string): string[] {
  const parts = text
    .split(/;|,\s/)
    .map((part) => part.trim())
    .filter((part) => part !== "");
  return parts.flatMap((part) => (/^[\d.,]+(\s+[\d.,]+)+$/.test(part) ? part.split(/\s+/) : [part]));
}

function asNumber(text: string): Json {
  const plain = withPoint(text);
  return /^-?\d+(\.\d+)?$/.test(plain) ? Number(plain) : text;
}
