import type { Problem } from "../problem.ts";
import { isTooLong, shortenIt } from "./longest.ts";
import { tryQuantity } from "./readQuantity.ts";

type Wrong = Pick<Problem, "expected" | "mend">;

const wrong: Wrong = {
  expected: 'rainfall totals such as "13 in", "12..14 in" or ["12 in", "13 in"]',
  mend: "give one total, a range with its unit at the end, or a list",
};

/** Stands between two numbers: dots, a dash, or "to". */
const rangeSigns = /(?:\.{2,3}|[\u2026\u2013\u2014-]|\bto\b)(?=\s*\d)/g;
const small = (word: string): string => word.toLowerCase();

/** What stands before and behind the last sign of a range; null where there is none, or no number before it. */
function endsOfRange(text: string): readonly [from: string, to: string] | null {
  const sign = [...text.matchAll(rangeSigns)].at(-1);
  if (sign === undefined) return null;
  const from = text.slice(0, sign.index);
  return /\d/.test(from) ? [from.trimEnd(), text.slice(sign.index + sign[0].length).trimStart()] : null;
}

/** What is wrong with one of the totals. */
function said({ mend }: Wrong): Wrong {
  return { expected: wrong.expected, mend };
}

/**
 * Rainfall totals, mm, in the order given. A range `12..14 in` means its low end, middle and high end.
 * @example tryRainTotals("12..14 in") // [304.8, 330.2, 355.6]
 */
export function tryRainTotals(found: unknown): readonly number[] | Wrong {
  if (Array.isArray(found)) {
    const totals = found.map((one) => tryQuantity(one, "rain"));
    const bad = totals.find((one) => typeof one !== "number");
    if (bad !== undefined && typeof bad !== "number") return said(bad);
    return totals.length > 0 ? (totals as number[]) : wrong;
  }
  if (isTooLong(found)) return { ...wrong, mend: shortenIt };
  // Capitals are no other unit, and a dash or "to" between two numbers is a range.
  const text = typeof found === "string" ? found.trim().replace(/\b(?:IN|MM|CM|FT)\b/, small) : found;
  const range = typeof text === "string" ? endsOfRange(text) : null;
  if (range === null) {
    const total = tryQuantity(text, "rain");
    return typeof total === "number" ? [total] : said(total);
  }
  const [from, to] = range;
  const high = tryQuantity(to, "rain");
  const unit = to.replace(/^[\d.,\s]+/, "");
  const low = tryQuantity(/[a-z"']/i.test(from) ? from : `${from} ${unit}`, "rain");
  if (typeof low !== "number") return said(low);
  if (typeof high !== "number") return said(high);
  if (low > high) return { ...wrong, mend: "put the smaller total first" };
  return low === high ? [low] : [low, Number(((low + high) / 2).toPrecision(13)), high];
}
