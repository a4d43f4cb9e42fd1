import { expect, test } from "vitest";
import { outlookByDay } from "../../../../src/answer/outlook/waterAhead.ts";
import { spreadOf } from "../../../../src/statistics/quantiles.ts";
import { demoAsWritten, resolved } from "../../../support/demos.ts";

const wheat = demoAsWritten("wheat-after-fallow");
const { evidence: _dug, money: _money, rowPositions: _rows, ...plain } = wheat;
const cases = (wheat["cases"] as { name: string }[]).slice(0, 2);

test("today's water is the outlook's, yesterday's and tomorrow's lie beside it; up to today the years agree, then they part", async () => {
  const scenario = await resolved({
    ...plain,
    cases,
    ensemble: { years: 28, seed: 1 },
    outlook: { date: "2014-04-22" },
  });
  const { firstDay, today, byCase, runs } = outlookByDay(scenario);
  expect(firstDay + today).toBe(runs.season.day);
  byCase.forEach(({ p10, p50, p90 }, c) => {
    const now = spreadOf(runs.stateByCase[c]!.inRootsMm);
    expect([p10[today], p50[today], p90[today]]).toEqual([now.p10, now.p50, now.p90]);
    for (const day of [today - 1, today + 1]) expect(Math.abs(p50[day]! - now.p50)).toBeLessThan(5);
    for (let day = 0; day < p50.length; day++) {
      expect(p10[day]).toBeLessThanOrEqual(p50[day]!);
      expect(p50[day]).toBeLessThanOrEqual(p90[day]!);
    }
    // Weeks on, the other years' rain has told.
    const apart = (day: number) => p90[day]! - p10[day]!;
    expect(apart(today + 40)).toBeGreaterThan(2 * apart(today));
  });
});
