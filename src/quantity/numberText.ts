import { isTooLong } from "./longest.ts";

/** A number and what stands behind it; null when the text does not start with a number. */
export interface NumberAndUnit {
  readonly value: number;
  readonly unit: string;
}

const leading =
  /^([+-]?)(?:(\d{1,3}(?:,\d{3})+(?:\.\d+)?)|(?:(\d+) +)?(\d+)\/(\d+)(?![\d.])|(\d+(?:\.\d*)?(?:e[+-]?\d+)?|\.\d+))/i;

/**
 * Splits `14 in`, `1.5e3 kg/ha`, `24,000 plants/ac`, `2 1/2 in`, `+2 in` into number and unit.
 * Null for a text of more than `longestQuantity` letters, as for any that is no number and unit.
 * A comma is only ever a thousands mark: `1,42` is refused, for it may mean two things.
 */
export function splitNumber(text: string): NumberAndUnit | null {
  if (isTooLong(text)) return null;
  const trimmed = text.trim().replace(/^\u2212/, "-");
  const match = leading.exec(trimmed);
  if (match === null) return null;
  const [all, sign, grouped, whole, over, under, plain] = match;
  const rest = trimmed.slice(all.length);
  let value: number;
  if (grouped !== undefined) value = Number(grouped.replaceAll(",", ""));
  else if (over !== undefined) value = Number(whole ?? 0) + Number(over) / Number(under);
  else value = Number(plain);
  // "1,42 g/cm^3", "1.2.3 in" and "5-6 in" go on with something that is no unit.
  // "1 000 mm" may be one thousand, or a slip.
  if (!Number.isFinite(value) || /^(?:[\d.,+-]|\s+\d{3}\b)|[\n\r]/.test(rest)) return null;
  return { value: sign === "-" ? -value : value, unit: rest.trim() };
}
