import type { Preparation } from "../../src/answer/runs/prepare.ts";
import type { CaseAfterRun } from "../../src/answer/runs/run.ts";
import { longestSeasonDays } from "../../src/crop/stages.ts";
import type { Traces } from "./protocol.ts";

/** Days between two points of a small picture of a season. */
const stepDays = 5;

export function emptyTraces({ scenario, weatherYears, yearByRun }: Preparation): Traces {
  const { hasTemperature } = weatherYears.weather;
  const longest = Math.max(...scenario.cases.map(({ crop }) => longestSeasonDays(crop, hasTemperature)));
  const points = Math.ceil(longest / stepDays) + 1;
  const runs = yearByRun.length;
  return {
    stepDays,
    points,
    cases: scenario.cases.map(({ name }) => ({
      name,
      frontMm: new Float32Array(runs * points),
      waterUsedMm: new Float32Array(runs * points),
      count: new Int32Array(runs),
    })),
  };
}

/** Writes one run down: every fifth day from sowing, and maturity. */
export function trace(traces: Traces, run: number, after: readonly CaseAfterRun[]): void {
  const { points } = traces;
  after.forEach(({ course, ledger }, c) => {
    const { frontMm, waterUsedMm, count } = traces.cases[c]!;
    const { sowingDay, maturityDay } = course;
    let point = run * points;
    let used = 0;
    for (let day = sowingDay; day <= maturityDay; day++) {
      used += ledger.evaporationMm[day]! + ledger.transpirationMm[day]!;
      if ((day - sowingDay) % stepDays !== 0 && day !== maturityDay) continue;
      frontMm[point] = ledger.frontMm[day]!;
      waterUsedMm[point] = used;
      point++;
    }
    count[run] = point - run * points;
    const last = Math.max(run * points, point - 1);
    frontMm.fill(frontMm[last]!, point, (run + 1) * points);
    waterUsedMm.fill(waterUsedMm[last]!, point, (run + 1) * points);
  });
}
