import { middleIndex } from "../../../src/statistics/quantiles.ts";
import type { Answer } from "../../worker/protocol.ts";
import { answeredRuns, extraWaterByRun, extraYieldByRun } from "../answer/runs.ts";

/** One run with what it is sorted by and told with. Water and depth in mm, yield in the unit of the answer. */
export interface SeasonRow {
  readonly run: number;
  readonly year: number;
  /** How many runs were sown in this year and are stood for by this one. */
  readonly runsOfYear: number;
  readonly seasonRainMm: number;
  /** Null where the record's years have gaps. */
  readonly annualRainMm: number | null;
  /** The first case, then, where there is one, the case against it. */
  readonly cases: readonly SeasonCase[];
  /** Null with one case only. */
  readonly extraWaterMm: number | null;
  readonly extraYield: number | null;
}

export interface SeasonCase {
  /** Place among all cases. */
  readonly c: number;
  readonly storedAtSowingMm: number;
  readonly rootDepthMm: number;
  readonly waterUseMm: number;
  readonly yield: number;
}

/** Every run at the answer's own total, with a rotation every year of the years in a row. `d`: the difference on show. */
export function seasonRows(now: Pick<Answer, "byRun" | "comparison" | "inARow">, d: number): SeasonRow[] {
  const runs = answeredRuns(now);
  const { years } = now.inARow ?? now.byRun;
  const paired = d + 1 < runs.cases.length;
  const places = paired ? [0, d + 1] : [0];
  const extraWaterMm = paired ? extraWaterByRun(runs, d) : null;
  const extraYield = paired ? extraYieldByRun(runs, d) : null;
  const { seasonRainMm } = runs.cases[0]!;
  return Array.from(seasonRainMm, (rainMm, run) => ({
    run,
    year: years[run] ?? 0,
    runsOfYear: 1,
    seasonRainMm: rainMm,
    annualRainMm: runs.annualRainMm?.[run] ?? null,
    cases: places.map((c) => {
      const one = runs.cases[c]!;
      return {
        c,
        storedAtSowingMm: one.storedAtSowingMm[run]!,
        rootDepthMm: one.finalRootDepthMm[run]!,
        waterUseMm: one.waterUseMm[run]!,
        yield: one.yield[run]!,
      };
    }),
    extraWaterMm: extraWaterMm?.[run] ?? null,
    extraYield: extraYield?.[run] ?? null,
  }));
}

/** One row a year: of a year that was gone through again with other draws, the run in the middle by extra water. */
export function onePerYear(rows: readonly SeasonRow[]): SeasonRow[] {
  const byYear = new Map<number, SeasonRow[]>();
  for (const row of rows) byYear.set(row.year, [...(byYear.get(row.year) ?? []), row]);
  return [...byYear.values()].map((same) => {
    const middle = same[middleIndex(Float64Array.from(same, valueOf.water))]!;
    return { ...middle, runsOfYear: same.length };
  });
}

/** What the bars are of; with one case only, what that case used or grew. */
export type StripOf = "water" | "yield";
export const sortKeys = ["size", "year", "rain"] as const;
export type SortKey = (typeof sortKeys)[number];

export const valueOf: Readonly<Record<StripOf, (row: SeasonRow) => number>> = {
  water: ({ extraWaterMm, cases }) => extraWaterMm ?? cases[0]!.waterUseMm,
  yield: ({ extraYield, cases }) => extraYield ?? cases[0]!.yield,
};

/** Years that were scaled to one total have all the same rain in the year: then it is the season's that tells. */
export function rainThatTells(rows: readonly SeasonRow[]): "year" | "season" {
  const annual = rows.map(({ annualRainMm }) => annualRainMm);
  const known = annual.filter((mm) => mm !== null);
  return known.length === annual.length && Math.max(...known) - Math.min(...known) > 1 ? "year" : "season";
}

export function rainOf(row: SeasonRow, over: "year" | "season"): number {
  return over === "year" ? (row.annualRainMm ?? 0) : row.seasonRainMm;
}

/** The largest, the earliest, the driest first; equal ones stay in the order of their runs. */
export function sortedSeasons(rows: readonly SeasonRow[], key: SortKey, of: StripOf): SeasonRow[] {
  const over = rainThatTells(rows);
  const value = (row: SeasonRow) =>
    key === "size" ? -valueOf[of](row) : key === "year" ? row.year : rainOf(row, over);
  return rows.toSorted((a, b) => value(a) - value(b) || a.run - b.run);
}
