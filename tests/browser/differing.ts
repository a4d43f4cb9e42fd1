/**
 * Places where the page's answer is not the command line's. A number may be off by a billionth of itself, or of 1 mm or bushel,
 * as differences are of numbers of tens: the two runtimes' exp and log differ in the last bit. The balance's residual is
 * nothing but such bits.
 */
export function differing(page: unknown, line: unknown, place = "answer"): string[] {
  if (typeof line === "number" && typeof page === "number") {
    const most = place.endsWith(".balanceErrorMm") ? 1e-9 : 1e-9 * Math.max(1, Math.abs(line));
    return Math.abs(page - line) <= most ? [] : [`${place}: ${page}, not ${line}`];
  }
  if (typeof line !== "object" || line === null || typeof page !== "object" || page === null) {
    return page === line ? [] : [`${place}: ${String(page)}, not ${String(line)}`];
  }
  const keys = [...new Set([...Object.keys(page), ...Object.keys(line)])];
  const inside = (one: object, key: string): unknown => (one as Record<string, unknown>)[key];
  return keys.flatMap((key) => differing(inside(page, key), inside(line, key), `${place}.${key}`));
}
