import { describe, expect, test } from "vitest";
import { stream } from "../../src/randomness.ts";

const many = (draw: () => number, count = 20_000) => Array.from({ length: count }, draw);
const mean = (values: number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;

describe("a stream", () => {
  test("gives the same numbers for the same seed and name", () => {
    expect(many(stream(3, "slope").uniform, 50)).toEqual(many(stream(3, "slope").uniform, 50));
  });

  test("gives others for another seed, another name, or one more word", () => {
    const first = stream(3, "slope").uniform();
    const others = [stream(4, "slope"), stream(3, "slopes"), stream(3, "slope", 1), stream(-3, "slope")];
    for (const other of others) expect(other.uniform()).not.toBe(first);
  });

  test("is not moved by draws from another", () => {
    const [alone, beside, other] = [stream(1, "a"), stream(1, "a"), stream(1, "b")];
    for (let i = 0; i < 10; i++) {
      other.normal();
      expect(beside.uniform()).toBe(alone.uniform());
    }
  });

  /** Seeds 1, 2, 3 put straight into the generator start near 1.0, then nearly in line: years would hang together. */
  test("small seeds give unrelated first and second draws: means 0.5, no correlation (four standard errors)", () => {
    const pairs = Array.from({ length: 20_000 }, (_, seed) => {
      const { uniform } = stream(seed, "rain");
      return [uniform(), uniform()] as const;
    });
    const firsts = pairs.map(([first]) => first);
    const seconds = pairs.map(([, second]) => second);
    expect(Math.abs(mean(firsts) - 0.5)).toBeLessThan(0.0082);
    expect(Math.abs(mean(seconds) - 0.5)).toBeLessThan(0.0082);
    const together = mean(pairs.map(([first, second]) => (first - 0.5) * (second - 0.5))) * 12;
    const neighbours = mean(firsts.slice(1).map((each, i) => (each - 0.5) * (firsts[i]! - 0.5))) * 12;
    expect(Math.abs(together)).toBeLessThan(0.0283);
    expect(Math.abs(neighbours)).toBeLessThan(0.0283);
  });
});

describe("the triangle", () => {
  const { triangle } = stream(9, "triangle");

  test("stays within its ends and means a third of their sum", () => {
    const values = many(() => triangle(1, 4.9, 8.9));
    expect(Math.min(...values)).toBeGreaterThanOrEqual(1);
    expect(Math.max(...values)).toBeLessThanOrEqual(8.9);
    expect(Math.abs(mean(values) - (1 + 4.9 + 8.9) / 3)).toBeLessThan(0.05);
  });

  test.each([
    [5, 5, 5],
    [0, 0, 9],
    [0, 9, 9],
  ])("takes the edge %d, %d, %d", (low, mode, high) => {
    for (const value of many(() => triangle(low, mode, high), 500)) {
      expect(value).toBeGreaterThanOrEqual(low);
      expect(value).toBeLessThanOrEqual(high);
    }
  });
});

test("normal draws have mean 0 and deviation 1 (four standard errors)", () => {
  const values = many(stream(2, "normal").normal);
  expect(Math.abs(mean(values))).toBeLessThan(0.0283);
  expect(Math.abs(Math.sqrt(mean(values.map((value) => value ** 2))) - 1)).toBeLessThan(0.02);
});
