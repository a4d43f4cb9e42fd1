/**
 * Numbers as they are printed: six significant digits, so that two runtimes whose exp and log differ in the last
 * bit print the same.
 * @example roundForPrint(1 / 3) // 0.333333
 */
export function roundForPrint(value: number): number {
  if (!Number.isFinite(value)) throw new Error(`a result is ${value}`);
  const rounded = Number(value.toPrecision(6));
  return rounded === 0 ? 0 : rounded; // no minus zero
}

/** A result as JSON text, every number rounded for print. */
export function jsonText(result: unknown): string {
  return `${JSON.stringify(result, rounded, 2)}\n`;
}

/** The same on one line, without the end of the line. */
export function jsonLine(result: unknown): string {
  return JSON.stringify(result, rounded);
}

function rounded(_key: string, value: unknown): unknown {
  return typeof value === "number" ? roundForPrint(value) : value;
}
