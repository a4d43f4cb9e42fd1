import { middleIndex } from "../../../src/statistics/quantiles.ts";
import type { Answer } from "../../worker/protocol.ts";
import { extraWaterByRun, extraYieldByRun, middleRuns } from "../answer/runs.ts";

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
  readonly rootDepthMm: number;
  readonly waterUseMm: number;
  readonly yield: number;
}

/** Every run at the answer's own total. `d`: the difference on show. */
export function seasonRows(now: Pick<Answer, "byRun" | "comparison">, d: number): SeasonRow[] {
  const runs = middleRuns(now);
  const { years } = now.byRun;
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

export const sortKeys = ["year", "rain", "annualRain", "water", "yield"] as const;
export type SortKey = (typeof sortKeys)[number];

/** What each key sorts by; with one case only, water and yield are those of that case. */
const valueOf: Readonly<Record<SortKey, (row: SeasonRow) => number>> = {
  year: ({ year, run }) => year + run * 1e-6,
  rain: ({ seasonRainMm }) => seasonRainMm,
  annualRain: ({ annualRainMm }) => annualRainMm ?? 0,
  water: ({ extraWaterMm, cases }) => extraWaterMm ?? cases[0]!.waterUseMm,
  yield: ({ extraYield, cases }) => extraYield ?? cases[0]!.yield,
};

/** Seasons that are equal stay in the order of their runs, whichever way it goes. */
export function sortedSeasons(
  rows: readonly SeasonRow[],
  key: SortKey,
  way: "ascending" | "descending",
): SeasonRow[] {
  const value = valueOf[key];
  const sign = way === "ascending" ? 1 : -1;
  return rows.toSorted((a, b) => sign * (value(a) - value(b)) || a.run - b.run);
}

/** Keys by which seasons differ at all: years that were scaled to one total have all the same rain in the year. */
export function keysThatTell(rows: readonly SeasonRow[]): SortKey[] {
  return sortKeys.filter((key) => {
    if (key === "annualRain" && rows.some(({ annualRainMm }) => annualRainMm === null)) return false;
    const values = rows.map(valueOf[key]);
    return key === "year" || Math.max(...values) - Math.min(...values) > 0.05;
  });
}
