import { isList, type Json } from "../state/json.ts";

/** A list in one line of text, as it is typed: a comma and a space stand between its items. */

/** @example listText(["12 in", "13 in"]) // "12 in, 13 in" */
export function listText(value: Json | undefined): string {
  if (isList(value)) return value.map((one) => (typeof one === "object" ? "" : String(one))).join(", ");
  return typeof value === "string" || typeof value === "number" ? String(value) : "";
}

/**
 * One item stays a text of its own. Every text comes back from `listText` as it was typed; a comma without a space, as in
 * "1,300 mm", does not part.
 * @example textList("12 in, 13 in") // ["12 in", "13 in"]
 */
export function textList(text: string): Json {
  const items = text.split(", ");
  return items.length === 1 ? text : items;
}
