import type { Problem } from "../problem.ts";
import { tryQuantity } from "./readQuantity.ts";

type Wrong = Pick<Problem, "expected" | "mend">;

const wrong: Wrong = {
  expected: 'rainfall totals such as "13 in", "12..14 in" or ["12 in", "13 in"]',
  mend: "give one total, a range with its unit at the end, or a list",
};

/**
 * Rainfall totals, mm, in the order given. A range `12..14 in` means its low end, middle and high end.
 * @example tryRainTotals("12..14 in") // [304.8, 330.2, 355.6]
 */
export function tryRainTotals(found: unknown): readonly number[] | Wrong {
  if (Array.isArray(found)) {
    const totals = found.map((one) => tryQuantity(one, "rain"));
    return totals.length > 0 && totals.every((one) => typeof one === "number") ? totals : wrong;
  }
  const range = typeof found === "string" ? /^(.+?)\s*(?:\.{2,3}|\u2026)\s*(.+)$/.exec(found.trim()) : null;
  if (range === null) {
    const total = tryQuantity(found, "rain");
    return typeof total === "number" ? [total] : wrong;
  }
  const [, from = "", to = ""] = range;
  const high = tryQuantity(to, "rain");
  const unit = to.replace(/^[\d.,\s]+/, "");
  const low = tryQuantity(/[a-z"']/i.test(from) ? from : `${from} ${unit}`, "rain");
  if (typeof low !== "number" || typeof high !== "number") return wrong;
  if (low > high) return { ...wrong, mend: "put the smaller total first" };
  return low === high ? [low] : [low, Number(((low + high) / 2).toPrecision(13)), high];
}
