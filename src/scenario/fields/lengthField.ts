import { isTooLong, tryQuantity } from "../../quantity/index.ts";
import type { Within } from "./facts/limits.ts";
import { loose } from "./fields.ts";

/** A length along or across rows, mm; feet and inches may stand together, as on a tape. */
export function length(means: string, example: string, within: Within) {
  const expected = `a length such as "${example}"`;
  return loose((found) => {
    const mm = lengthMm(found);
    if (mm === null) return { fault: { expected, mend: "write the unit as ft, in, m or cm" } };
    return mm >= within.from && mm <= within.to
      ? { value: mm }
      : { fault: { expected: within.says, mend: "check the number and its unit" } };
  }).describe(`${means}. Text with its unit, such as "${example}"; ${within.says}.`);
}

/** @example lengthMm("17 ft 5 in") // 5308.6 */
export function lengthMm(found: string | number): number | null {
  // A bare number could be feet, inches or metres.
  if (typeof found === "number" || isTooLong(found)) return null;
  const both = /^([^a-z']+(?:ft|feet|foot|'))([^a-z'"]+(?:in|inch|inches|"))$/i.exec(found.trim());
  const parts = both === null ? [found] : [both[1]!, both[2]!];
  let mm = 0;
  for (const part of parts) {
    if (!/[a-z'"]/i.test(part)) return null;
    const read = tryQuantity(part.replace("'", " ft").replace('"', " in"), "depth");
    if (typeof read !== "number") return null;
    mm += read;
  }
  return mm;
}
