import { describe, expect, test } from "vitest";

/** How closely, in which unit, and why that close: said once for a table. */
export interface Closeness {
  readonly unit: string;
  readonly tolerance: number;
  readonly because: string;
  /** Read in the source, recalled, or a rule of the trade. */
  readonly mark: "read" | "memory" | "common practice, no source";
}

/**
 * A published table as a test: each row is the inputs followed by the expected value.
 * Fails on an empty table, so a case cannot be dropped in silence.
 */
export function published(
  source: string,
  { unit, tolerance, because, mark }: Closeness,
  rows: readonly (readonly (number | string)[])[],
  ours: (...inputs: never[]) => number,
): void {
  describe(`${source} (${mark}; within ${tolerance} ${unit}: ${because})`, () => {
    test("the table has rows", () => expect(rows.length).toBeGreaterThan(0));
    test.each(rows.map((row) => [row.slice(0, -1), row.at(-1)] as const))(
      "%j gives %j",
      (inputs, expected) => {
        const value = ours(...(inputs as never[]));
        expect(Number.isFinite(value)).toBe(true);
        expect(Math.abs(value - Number(expected))).toBeLessThanOrEqual(tolerance);
      },
    );
  });
}
