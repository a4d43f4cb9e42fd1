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
