import type { Ensemble } from "../../src/answer/runs/ensemble.ts";
import type { Traces } from "./protocol.ts";

/** Results of a few runs at one total, in one array, to hand from worker to worker. */
export interface PackedRuns {
  readonly totalIndex: number;
  readonly from: number;
  /** Not among them. */
  readonly to: number;
  readonly numbers: Float64Array;
  /** Points of the small pictures, front and water used of each case; empty at all totals but the middle one. */
  readonly points: Float32Array;
}

/** Every array of an ensemble at one total that is indexed by run, in an order that is the same in every worker. */
function columnsOf({ byRainTotal }: Ensemble, totalIndex: number): (Float64Array | Uint8Array)[] {
  const { cases, pairs } = byRainTotal[totalIndex]!;
  return [
    ...cases.flatMap(({ byRun, yieldKgPerHaByRun, unripeByRun }) => [
      ...Object.values(byRun),
      yieldKgPerHaByRun,
      unripeByRun,
    ]),
    ...pairs.flatMap(({ ruleOfThumbMmByRun, storedInExtraDepthMmByRun }) => [
      ruleOfThumbMmByRun,
      storedInExtraDepthMmByRun,
    ]),
  ];
}

/** @param traces null where this total has none */
export function packRuns(
  ensemble: Ensemble,
  traces: Traces | null,
  totalIndex: number,
  from: number,
  to: number,
): PackedRuns {
  const columns = [...columnsOf(ensemble, totalIndex), ...countsOf(traces)];
  const runs = to - from;
  const numbers = new Float64Array(columns.length * runs);
  columns.forEach((column, c) => numbers.set(column.subarray(from, to), c * runs));
  const lines = linesOf(traces);
  const width = (traces?.points ?? 0) * runs;
  const points = new Float32Array(lines.length * width);
  lines.forEach((line, l) => {
    points.set(line.subarray(from * traces!.points, to * traces!.points), l * width);
  });
  return { totalIndex, from, to, numbers, points };
}

export function unpackRuns(
  { totalIndex, from, to, numbers, points }: PackedRuns,
  ensemble: Ensemble,
  traces: Traces | null,
): void {
  const runs = to - from;
  [...columnsOf(ensemble, totalIndex), ...countsOf(traces)].forEach((column, c) => {
    column.set(numbers.subarray(c * runs, (c + 1) * runs), from);
  });
  const width = (traces?.points ?? 0) * runs;
  linesOf(traces).forEach((line, l) =>
    line.set(points.subarray(l * width, (l + 1) * width), from * traces!.points),
  );
}

function countsOf(traces: Traces | null): Int32Array[] {
  return traces === null ? [] : traces.cases.map(({ count }) => count);
}

function linesOf(traces: Traces | null): Float32Array[] {
  return traces === null ? [] : traces.cases.flatMap(({ frontMm, waterUsedMm }) => [frontMm, waterUsedMm]);
}
