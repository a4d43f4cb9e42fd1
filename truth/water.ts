/** Water of a run between two depths, and what fell on it. */
import type { CaseAfterRun } from "../src/answer/runs/run.ts";
import { sumOver } from "../src/season/ledger.ts";

/** Share of a slice that lies between two depths. */
function shareBetween(topMm: number, thicknessMm: number, fromMm: number, toMm: number): number {
  return Math.max(0, Math.min(toMm, topMm + thicknessMm) - Math.max(fromMm, topMm)) / thicknessMm;
}

/** Water between two depths on the evening of `day`, mm; day -1 is before the run begins. */
export function waterMm(
  { slices, ledger, startWaterMm }: CaseAfterRun,
  day: number,
  fromMm = 0,
  toMm = Infinity,
): number {
  const { count, topMm, thicknessMm } = slices;
  const evenings = ledger.waterMmByDayAndSlice!;
  let sum = 0;
  for (let j = 0; j < count; j++) {
    const water = day < 0 ? startWaterMm[j]! : evenings[day * count + j]!;
    sum += water * shareBetween(topMm[j]!, thicknessMm[j]!, fromMm, toMm);
  }
  return sum;
}

/** The same above wilting point. */
export function availableMm(run: CaseAfterRun, day: number, fromMm = 0, toMm = Infinity): number {
  const { count, topMm, thicknessMm, wiltingPointMm } = run.slices;
  let dry = 0;
  for (let j = 0; j < count; j++)
    dry += wiltingPointMm[j]! * shareBetween(topMm[j]!, thicknessMm[j]!, fromMm, toMm);
  return waterMm(run, day, fromMm, toMm) - dry;
}

/** Rain and snow as they fell over days `from` to `to`, both included, mm. */
export function fallenMm({ ledger }: CaseAfterRun, from: number, to: number): number {
  return sumOver(ledger.rainMm, from, to) + sumOver(ledger.snowfallMm, from, to);
}

export const sum = (values: readonly number[]): number => values.reduce((total, each) => total + each, 0);
export const mean = (values: readonly number[]): number => sum(values) / values.length;
export const median = (values: readonly number[]): number => quantile(values, 0.5);

/** Between neighbours in a straight line. */
export function quantile(values: readonly number[], share: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  const at = share * (sorted.length - 1);
  const below = sorted[Math.floor(at)]!;
  return below + (at - Math.floor(at)) * (sorted[Math.ceil(at)]! - below);
}
