/**
 * A number typed alone gets the unit that the page shows for its kind, so that it is kept with the unit and seen with it. What
 * has a unit already, or is no number, stays as it was typed.
 * @example withUnit("6", "in") // "6 in"
 * @example withUnit("24,000", "plants/ac") // "24,000 plants/ac"
 * @example withUnit("0.35", "%") // "0.35"
 */
export function withUnit(text: string, unit: string): string {
  const plain = text.trim();
  // 0.35 may be a third or a third of a percent: it stays as it is typed, and what it counts as is said.
  if (unit === "%" && /^0?\.\d+$/.test(plain)) return text;
  return unit !== "" && isBare(plain) ? `${plain} ${unit}` : text;
}

/**
 * A number as a spreadsheet may write it, with a decimal point: in a table "12,5" is twelve and a half, with or without a unit.
 * A comma before three digits stays what it is in the trade, a mark of thousands; elsewhere than in a table a decimal comma is
 * refused by the engine, for there a comma may part a list.
 * @example withPoint("12,5 mm") // "12.5 mm"
 * @example withPoint("1,110") // "1,110"
 */
export function withPoint(text: string): string {
  const [, before, whole = "", part = "", after] =
    /^(\s*[+\u2212-]?)(\d+),(\d+)(\s*(?:[^\d\s,.][^,]*)?)$/.exec(text) ?? [];
  if (before === undefined || (/^[1-9]\d{0,2}$/.test(whole) && part.length === 3)) return text;
  return `${before}${whole}.${part}${after}`;
}

/**
 * As `withUnit`, for a list in one line and for a range.
 * @example listWithUnits("12, 15 in", "in") // "12 in, 15 in"
 * @example listWithUnits("12..14", "in") // "12..14 in"
 */
export function listWithUnits(text: string, unit: string): string {
  return text
    .split(", ")
    .map((item) => {
      const [low = "", high = ""] = item.split("..");
      const isRange = item.includes("..") && isBare(low.trim()) && isBare(high.trim());
      return isRange ? `${item.trim()} ${unit}` : withUnit(item, unit);
    })
    .join(", ");
}

function isBare(plain: string): boolean {
  return /^[+\u2212-]?(?:\d{1,3}(?:,\d{3})+|\d+)(?:\.\d+)?$|^[+\u2212-]?\.\d+$/.test(plain);
}
