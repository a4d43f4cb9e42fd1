import type { Answer, RunsAtRain } from "../../worker/protocol.ts";

/** Every run at the total that the answer's cases and differences stand for. */
export function middleRuns({ byRun, comparison }: Pick<Answer, "byRun" | "comparison">): RunsAtRain {
  const found = byRun.byRainTotal.find(({ rainTotalMm }) => rainTotalMm === comparison.rainTotalMm);
  if (found === undefined) throw new Error("the answer's total is not among its runs");
  return found;
}

/** The same of what the answer is of: with a rotation the years of its chains. */
export function answeredRuns(now: Pick<Answer, "byRun" | "comparison" | "inARow">): RunsAtRain {
  if (now.inARow === null) return middleRuns(now);
  const { byRainTotal } = now.inARow;
  return middleRuns({ comparison: now.comparison, byRun: { ...now.byRun, byRainTotal } });
}

/** Water that the crop of a later case took up more than that of the first, by run; as in the answer's own differences. */
export function extraWaterByRun({ cases }: RunsAtRain, d: number): Float64Array {
  const [from, to] = [cases[0]!.transpirationMm, cases[d + 1]!.transpirationMm];
  return to.map((mm, run) => mm - from[run]!);
}

/** Likewise, in the unit of the yields. */
export function extraYieldByRun({ cases }: RunsAtRain, d: number): Float64Array {
  const [from, to] = [cases[0]!.yield, cases[d + 1]!.yield];
  return to.map((grown, run) => grown - from[run]!);
}
