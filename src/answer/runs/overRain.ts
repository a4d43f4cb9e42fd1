import { spreadOf, type Spread } from "../../statistics/quantiles.ts";
import type { Ensemble } from "./ensemble.ts";

/** Each year's own rain against what depth brought in it: for a picture, and for whoever wants the figures. */
export interface OverRain {
  /** Rain of the calendar year of sowing, and the extra of the later case; the driest year first. */
  readonly years: readonly YearOverRain[];
  /** As many years in each, driest first: middle and range of what depth brought in them. None where there are too few years. */
  readonly bands: readonly RainBand[];
}

export interface YearOverRain {
  readonly rainMm: number;
  readonly extraWaterUsedMm: number;
  readonly extraYieldKgPerHa: number;
}

export interface RainBand {
  readonly fromMm: number;
  readonly toMm: number;
  /** Half of its years had less. */
  readonly middleMm: number;
  readonly years: number;
  readonly extraWaterUsedMm: Spread;
  readonly extraYieldKgPerHa: Spread;
}

export interface OverRainOfPair extends OverRain {
  readonly from: string;
  readonly to: string;
}

/** A range needs so many years: with fewer P10 and P90 are the ends. Ours. */
const fewestInBand = 10;
/** More bands tell no more than the years themselves. Ours. */
const mostBands = 8;

/** @param years in any order; those whose calendar year the weather does not hold whole are to be left out before */
export function overRain(years: readonly YearOverRain[]): OverRain {
  const sorted = [...years].sort((a, b) => a.rainMm - b.rainMm);
  const bands = Math.min(mostBands, Math.floor(sorted.length / fewestInBand));
  const edge = (b: number) => Math.round((b * sorted.length) / bands);
  return {
    years: sorted,
    bands: Array.from({ length: bands }, (_, b) => bandOf(sorted.slice(edge(b), edge(b + 1)))),
  };
}

function bandOf(years: readonly YearOverRain[]): RainBand {
  const spread = (of: (year: YearOverRain) => number) => spreadOf(Float64Array.from(years, of));
  return {
    fromMm: years[0]!.rainMm,
    toMm: years.at(-1)!.rainMm,
    middleMm: spread(({ rainMm }) => rainMm).p50,
    years: years.length,
    extraWaterUsedMm: spread(({ extraWaterUsedMm }) => extraWaterUsedMm),
    extraYieldKgPerHa: spread(({ extraYieldKgPerHa }) => extraYieldKgPerHa),
  };
}

/** Of every later case against the first, at one of the totals; null where a year of sowing is not whole in the weather. */
export function overRainOf({ byRainTotal }: Ensemble, totalIndex: number): OverRainOfPair[] | null {
  const { annualRainMmByRun: rain, cases } = byRainTotal[totalIndex]!;
  if (rain === null) return null;
  const [first, ...later] = cases;
  return later.map((to) => ({
    from: first!.name,
    to: to.name,
    ...overRain(
      Array.from(rain, (rainMm, run) => ({
        rainMm,
        extraWaterUsedMm: to.byRun.transpirationMm[run]! - first!.byRun.transpirationMm[run]!,
        extraYieldKgPerHa: to.yieldKgPerHaByRun[run]! - first!.yieldKgPerHaByRun[run]!,
      })),
    ),
  }));
}
