import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  daysToLack,
  lackingAfter,
  twoStageEvaporationMm,
} from "../../../src/season/evaporation/twoStageEvaporation.ts";
import { dryingLedger, evaporatedMm } from "../../support/bareColumn.ts";
import { testGround } from "../../support/column.ts";

// Even steps: fc.double draws mostly numbers next to 0.
const between = (min: number, max: number) =>
  fc.integer({ min: 0, max: 1_000_000 }).map((step) => min + ((max - min) * step) / 1_000_000);
const potential = between(0.05, 14);
const firstStage = between(0, 15);
const rootTime = between(1, 8);
const lacking = between(0, 60);

const turnMm = (potentialMm: number, firstStageMm: number, rootTimeMm: number) =>
  firstStageMm + rootTimeMm ** 2 / (2 * potentialMm);

describe("what a wet soil lacks", () => {
  test("grows with the weather until U + alpha^2 / (2 potential), then its square beyond U by alpha^2 a day", () => {
    fc.assert(
      fc.property(potential, firstStage, rootTime, between(0, 200), (e, u, alpha, days) => {
        const turn = turnMm(e, u, alpha);
        const first = (turn / e) * (days / 200);
        expect(lackingAfter(first, e, u, alpha)).toBeCloseTo(first * e, 9);
        const beyond = (d: number) => (lackingAfter(turn / e + d, e, u, alpha) - u) ** 2;
        expect(beyond(days + 1) - beyond(days)).toBeCloseTo(alpha ** 2, 6);
      }),
      { numRuns: 500, seed: 31 },
    );
  });

  test("comes to what a drying reckoned in small steps does", () => {
    // The law as a pace: the weather's, or alpha^2 / 2 (lacking - U) where that is less.
    const reckoned = (days: number, e: number, u: number, alpha: number) => {
      const steps = 20_000;
      const dt = days / steps;
      const pace = (mm: number) => (mm <= u ? e : Math.min(e, alpha ** 2 / (2 * (mm - u))));
      let mm = 0;
      for (let i = 0; i < steps; i++) mm += dt * pace(mm + 0.5 * dt * pace(mm));
      return mm;
    };
    for (const [e, u, alpha] of [
      [6, 9, 4],
      [2, 6, 3.34],
      [10, 12, 5.08],
      [0.5, 8, 4],
    ] as const)
      for (const days of [1, 3, 10, 40])
        expect(lackingAfter(days, e, u, alpha)).toBeCloseTo(reckoned(days, e, u, alpha), 2);
  });

  test("is told by its days, and its days by it", () => {
    fc.assert(
      fc.property(potential, firstStage, rootTime, lacking, between(0, 120), (e, u, alpha, mm, days) => {
        expect(lackingAfter(daysToLack(mm, e, u, alpha), e, u, alpha)).toBeCloseTo(mm, 6);
        expect(daysToLack(lackingAfter(days, e, u, alpha), e, u, alpha)).toBeCloseTo(days, 6);
      }),
      { numRuns: 1000, seed: 32 },
    );
  });

  test("and its pace turn without a step", () => {
    fc.assert(
      fc.property(potential, firstStage, rootTime, (e, u, alpha) => {
        const days = turnMm(e, u, alpha) / e;
        const hair = 1e-4 * (alpha / (2 * e)) ** 2; // short against the root's own time
        const at = (d: number) => lackingAfter(d, e, u, alpha);
        expect(at(days + 1e-12 * days) - at(days)).toBeCloseTo(0, 6);
        const before = (at(days) - at(days - hair)) / hair;
        const after = (at(days + hair) - at(days)) / hair;
        expect(before / e).toBeCloseTo(1, 5);
        expect(after / e).toBeCloseTo(1, 3);
      }),
      { numRuns: 500, seed: 33 },
    );
  });
});

describe("what goes in a day", () => {
  const day = fc.record({ mm: lacking, fresh: between(0, 40), e: potential, u: firstStage, alpha: rootTime });

  test("is never more than the weather asks, never less than nothing", () => {
    fc.assert(
      fc.property(day, ({ mm, fresh, e, u, alpha }) => {
        const loss = twoStageEvaporationMm(mm, fresh, e, u, alpha);
        expect(loss).toBeGreaterThan(0);
        expect(loss).toBeLessThanOrEqual(e);
      }),
      { numRuns: 1000, seed: 34 },
    );
    for (const e of [0, -1]) expect(twoStageEvaporationMm(5, 3, e, 9, 4)).toBe(0);
  });

  test("is never less with more potential, nor more from a drier soil", () => {
    fc.assert(
      fc.property(day, between(0, 5), between(0, 20), ({ mm, fresh, e, u, alpha }, more, drier) => {
        const loss = twoStageEvaporationMm(mm, fresh, e, u, alpha);
        expect(twoStageEvaporationMm(mm, fresh, e + more, u, alpha)).toBeGreaterThanOrEqual(loss - 1e-9);
        expect(twoStageEvaporationMm(mm + drier, fresh, e, u, alpha)).toBeLessThanOrEqual(loss + 1e-9);
      }),
      { numRuns: 1000, seed: 35 },
    );
  });

  test("is all that the weather asks while U lasts the day", () => {
    for (const mm of [0, 1, 4]) expect(twoStageEvaporationMm(mm, 0, 5, 9, 4)).toBeCloseTo(5, 12);
  });

  test("is at least 0.8 of today's rain on drying soil, within what the weather asks", () => {
    fc.assert(
      fc.property(day, ({ mm, fresh, e, u, alpha }) => {
        const without = twoStageEvaporationMm(mm, 0, e, u, alpha);
        const loss = twoStageEvaporationMm(mm, fresh, e, u, alpha);
        expect(loss).toBeCloseTo(Math.min(e, Math.max(without, 0.8 * fresh)), 12);
      }),
      { numRuns: 1000, seed: 36 },
    );
  });
});

describe("a bare column dries through the engine by the same law until its zone is empty", () => {
  // The test silt: from field capacity to half of wilting point over 100 mm, 25 mm; U 9 mm, alpha 4.
  const zoneMm = 100 * (0.31 - 0.5 * 0.12);
  const { readilyEvaporableMm: u, secondStageMmPerRootDay: alpha } = testGround;

  test.each([3, 6, 9])("at %d mm a day", (potentialMm) => {
    const days = 60;
    const loss = evaporatedMm(dryingLedger(days, potentialMm), days);
    const turn = turnMm(potentialMm, u, alpha);
    const byDay = loss.slice(0, -1).map((mm, d) => ({ mm, next: loss[d + 1]! }));
    const wet = byDay.filter(({ next }) => next <= turn);
    const onTheRoot = byDay.filter(({ mm, next }) => mm >= turn && next < zoneMm - 1e-9);
    for (const { mm, next } of wet) expect(next - mm).toBeCloseTo(potentialMm, 9);
    for (const { mm, next } of onTheRoot) expect((next - u) ** 2 - (mm - u) ** 2).toBeCloseTo(alpha ** 2, 9);
    expect(loss[0]!).toBeCloseTo(potentialMm, 9);
    expect(onTheRoot.length).toBeGreaterThan(10);
    expect(loss.at(-1)!).toBeCloseTo(zoneMm, 9);
  });
});
