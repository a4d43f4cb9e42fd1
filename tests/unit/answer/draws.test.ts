import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { drawRuns } from "../../../src/answer/runs/draws.ts";
import { readySoil } from "../../../src/answer/runs/run.ts";
import { stream } from "../../../src/randomness.ts";
import { asDug, someScenario } from "./someScenario.ts";

const { ensemble, yieldLine } = someScenario();
const drawn = (deepUptakeSpread: number, seed = 5, runs = 400) =>
  drawRuns(runs, { ...ensemble, seed, deepUptakeSpread }, yieldLine);

describe("how unsure the depth is over which uptake falls to half", () => {
  test("with s, it is drawn between 1 / (1 + s) and 1 + s times", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 400 }).map((percent) => percent / 100),
        fc.nat({ max: 1000 }),
        (spread, seed) => {
          for (const { deepUptake } of drawn(spread, seed, 30)) {
            expect(deepUptake).toBeGreaterThanOrEqual(1 / (1 + spread) - 1e-12);
            expect(deepUptake).toBeLessThanOrEqual(1 + spread + 1e-12);
          }
        },
      ),
      { numRuns: 100, seed: 51 },
    );
  });

  test("and alike on a scale of factors: a quarter of the draws in each quarter of the way", () => {
    const places = drawn(1, 5, 4000).map(({ deepUptake }) => (Math.log2(deepUptake) + 1) / 2);
    for (const quarter of [0, 1, 2, 3]) {
      const within = places.filter((place) => Math.floor(4 * place) === quarter).length;
      expect(Math.abs(within / 4000 - 0.25)).toBeLessThan(0.03); // four standard errors
    }
    expect(Math.min(...places)).toBeLessThan(0.01);
    expect(Math.max(...places)).toBeGreaterThan(0.99);
  });

  test("with 0 % it is exactly the stated one", () => {
    expect(drawn(0).every(({ deepUptake }) => deepUptake === 1)).toBe(true);
  });

  test("another spread leaves all other draws as they were", () => {
    const others = (spread: number) => drawn(spread).map((draws) => ({ ...draws, deepUptake: null }));
    expect(others(1)).toEqual(others(0));
    expect(others(3)).toEqual(others(0));
    // And a draw keeps its place among the others.
    const places = (spread: number) =>
      drawn(spread).map(({ deepUptake }) => Math.log(deepUptake) / Math.log(1 + spread));
    places(3).forEach((place, run) => expect(place).toBeCloseTo(places(1)[run]!, 9));
  });

  test("is drawn from a stream of its own, as the open share is", () => {
    const shares = stream(5, "open share");
    const depths = stream(5, "uptake by depth");
    for (const { openness, deepUptake } of drawn(1)) {
      expect(openness).toBe(2 * shares.uniform() - 1);
      expect(Math.log2(deepUptake)).toBeCloseTo(2 * depths.uniform() - 1, 9);
    }
  });

  test("moves the halving depth of a run, and nothing else of its uptake", () => {
    const [draws] = drawn(1);
    const { uptake } = readySoil(asDug, draws!, ensemble.deepBelowMm);
    expect(draws!.deepUptake).not.toBe(1);
    expect(uptake).toEqual({ ...asDug.uptake, halvingMm: asDug.uptake.halvingMm * draws!.deepUptake });
  });
});
