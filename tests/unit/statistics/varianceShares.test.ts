import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { stream } from "../../../src/randomness.ts";
import { latinHypercube } from "../../../src/statistics/latinHypercube.ts";
import { varianceShares, type PairedSample } from "../../../src/statistics/varianceShares.ts";

/** The scheme over `rows` rows of a function of shares 0 to 1. */
function sampleOf(
  rows: number,
  columns: number,
  seed: number,
  f: (x: readonly number[]) => number,
): PairedSample {
  const matrix = (name: string) => latinHypercube(rows, columns, (column) => stream(seed, name, column));
  const [a, b] = [matrix("A"), matrix("B")];
  const over = (of: readonly Float64Array[]) =>
    Float64Array.from({ length: rows }, (_, row) => f(of.map((column) => column[row]!)));
  return {
    inA: over(a),
    inB: over(b),
    inAWithB: a.map((_, i) => over(a.map((column, j) => (i === j ? b[j]! : column)))),
  };
}

const bootstrap = (seed: number) => ({ resamples: 300, confidence: 0.99, draws: stream(seed, "bootstrap") });

/** A share within its interval, and the interval no wider than tells something. */
function holds(
  { low, high }: { readonly low: number; readonly high: number },
  share: number,
  widest: number,
): void {
  expect(low).toBeLessThanOrEqual(share);
  expect(high).toBeGreaterThanOrEqual(share);
  expect(high - low).toBeLessThan(widest);
}

/**
 * Ishigami & Homma 1990, sin x1 + a sin^2 x2 + b x3^4 sin x1 over -pi to pi, a = 7, b = 0.1; its variance parts in closed form
 * (memory; worked out again below by plain sums over a grid).
 */
const [a, b] = [7, 0.1];
const ishigami = ([u1, u2, u3]: readonly number[]): number => {
  const [x1, x2, x3] = [u1, u2, u3].map((u) => Math.PI * (2 * u! - 1)) as [number, number, number];
  return Math.sin(x1) + a * Math.sin(x2) ** 2 + b * x3 ** 4 * Math.sin(x1);
};
const parts = {
  one: 0.5 * (1 + (b * Math.PI ** 4) / 5) ** 2,
  two: a ** 2 / 8,
  oneWithThree: (8 * b ** 2 * Math.PI ** 8) / 225,
};
const whole = parts.one + parts.two + parts.oneWithThree;

describe("Ishigami & Homma 1990", () => {
  test("the closed form is that of the function", () => {
    const n = 60;
    let [sum, squares] = [0, 0];
    const at = (i: number) => (i + 0.5) / n;
    for (let i = 0; i < n; i++)
      for (let j = 0; j < n; j++)
        for (let k = 0; k < n; k++) {
          const y = ishigami([at(i), at(j), at(k)]);
          sum += y;
          squares += y * y;
        }
    const variance = squares / n ** 3 - (sum / n ** 3) ** 2;
    expect(variance / whole).toBeCloseTo(1, 2);
  });

  const shares = varianceShares(sampleOf(2000, 3, 11, ishigami), bootstrap(11));
  test.each([
    // factor, first order, total
    [0, parts.one / whole, (parts.one + parts.oneWithThree) / whole],
    [1, parts.two / whole, parts.two / whole],
    [2, 0, parts.oneWithThree / whole],
  ])("factor %d: its shares lie within their intervals", (i, first, total) => {
    holds(shares[i]!.first, first, 0.25);
    holds(shares[i]!.total, total, 0.25);
  });
});

describe("Sobol's g-function", () => {
  // Product of (|4 u - 2| + a) / (1 + a): shares in closed form, Saltelli & Sobol 1995 (memory).
  const flat = [0, 1, 4.5, 9];
  const g = (u: readonly number[]) =>
    flat.reduce((product, one, i) => (product * (Math.abs(4 * u[i]! - 2) + one)) / (1 + one), 1);
  const own = flat.map((one) => 1 / (3 * (1 + one) ** 2));
  const variance = own.reduce((product, v) => product * (1 + v), 1) - 1;
  const shares = varianceShares(sampleOf(2000, 4, 5, g), bootstrap(5));
  test.each(flat.map((_, i) => i))("factor %d: its shares lie within their intervals", (i) => {
    holds(shares[i]!.first, own[i]! / variance, 0.25);
    const others = own.reduce((product, v, j) => (i === j ? product : product * (1 + v)), 1);
    holds(shares[i]!.total, (own[i]! * others) / variance, 0.25);
  });
});

describe("laws", () => {
  test("shares of a sum add up to 1, and no factor does more with others than by itself", () => {
    const shares = varianceShares(
      sampleOf(1500, 3, 2, ([x, y, z]) => 3 * x! + 2 * y! ** 2 - z!),
      bootstrap(2),
    );
    const sum = (of: "first" | "total") => shares.reduce((all, one) => all + one[of].value, 0);
    expect(sum("first")).toBeCloseTo(1, 1);
    expect(sum("total")).toBeCloseTo(1, 1);
    for (const { first, total } of shares) {
      expect(first.low).toBeLessThan(total.high);
      expect(total.low).toBeLessThan(first.high);
    }
  });

  test("a factor that does nothing has exactly 0", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1e6 }), (seed) => {
        const shares = varianceShares(
          sampleOf(64, 2, seed, ([x]) => Math.exp(x!)),
          { ...bootstrap(seed), resamples: 20 },
        );
        expect(shares[1]).toEqual({
          first: { value: 0, low: 0, high: 0 },
          total: { value: 0, low: 0, high: 0 },
        });
      }),
      { numRuns: 20 },
    );
  });

  test("where the answer is one number no factor has a share", () => {
    for (const { first, total } of varianceShares(
      sampleOf(50, 2, 1, () => 0.1),
      bootstrap(1),
    )) {
      expect(first).toEqual({ value: 0, low: 0, high: 0 });
      expect(total).toEqual({ value: 0, low: 0, high: 0 });
    }
  });

  test("another unit, another zero: the same shares", () => {
    const f = ([x, y]: readonly number[]) => x! * y! + y!;
    const plain = varianceShares(sampleOf(200, 2, 3, f), bootstrap(3));
    const moved = varianceShares(
      sampleOf(200, 2, 3, (u) => 1000 + 25.4 * f(u)),
      bootstrap(3),
    );
    plain.forEach((share, i) => {
      expect(moved[i]!.first.value).toBeCloseTo(share.first.value, 9);
      expect(moved[i]!.total.high).toBeCloseTo(share.total.high, 9);
    });
  });
});

describe("a Latin hypercube", () => {
  test("meets every part once in every column", () => {
    for (const column of latinHypercube(40, 3, (c) => stream(9, c)))
      expect(Array.from(column, (u) => Math.floor(u * 40)).sort((p, q) => p - q)).toEqual(
        Array.from({ length: 40 }, (_, i) => i),
      );
  });
  test("one more column leaves the others as they were", () => {
    const [two, three] = [2, 3].map((columns) => latinHypercube(20, columns, (c) => stream(9, c)));
    expect(three!.slice(0, 2)).toEqual(two);
  });
});
