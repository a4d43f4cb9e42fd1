import type { DailyWeather } from "../weather/record.ts";
import type { CropPlan } from "./crop.ts";

/** Initial, development, mid-season, late season; in degree days or days, whichever the clock counts. */
export type StageLengths = readonly [number, number, number, number];

/** A season may last this many times the calendar days of the crop, then it ends as it stands. Ours: frost or the combine would. */
export const longestSeasonFactor = 1.15;

/** How far the season's clock has come, day by day from sowing. */
export interface SeasonClock {
  readonly lengths: StageLengths;
  /** Reading at the end of each day, index 0 = the day of sowing; never falls. */
  readonly progressByDay: Float64Array;
  /** From sowing to maturity, both counted. */
  readonly days: number;
  /** "ended by days": the crop was still short of heat when its longest season was over. */
  readonly end: "matured" | "ended by days" | "weather ends";
}

/** Heat of one day above the base, degree days C; 0 on colder days. Mean-temperature method, without an upper limit. */
export function degreeDays(meanC: number, baseC: number): number {
  return Math.max(0, meanC - baseC);
}

/** What the clock counts: degree days need temperatures; without them it runs on calendar days. */
export function clockLengths(plan: CropPlan, hasTemperature: boolean): StageLengths {
  return plan.clock === "thermal time" && !hasTemperature ? plan.stageDaysFallback : plan.stageLengths;
}

/**
 * Most days from sowing to maturity a season of this crop can take, at least 1. On calendar days: the stages' sum;
 * on thermal time: 1.15 times the sum of the fallback days. For choosing weather that is long enough.
 */
export function longestSeasonDays(plan: CropPlan, hasTemperature: boolean): number {
  const onHeat = plan.clock === "thermal time" && hasTemperature;
  const days = sum(onHeat ? plan.stageDaysFallback : clockLengths(plan, hasTemperature));
  return Math.max(1, Math.ceil(onHeat ? longestSeasonFactor * days : days));
}

/** Runs the clock from sowing until the stages are through, the longest season is over, or the weather ends. */
export function seasonClock(plan: CropPlan, weather: DailyWeather, sowingIndex: number): SeasonClock {
  const lengths = clockLengths(plan, weather.hasTemperature);
  const onHeat = plan.clock === "thermal time" && weather.hasTemperature;
  const total = sum(lengths);
  const longest = longestSeasonDays(plan, weather.hasTemperature);
  const progressByDay = new Float64Array(longest);
  let progress = 0;
  for (let day = 0; day < longest; day++) {
    const index = sowingIndex + day;
    if (index >= weather.days) return { lengths, progressByDay, days: day, end: "weather ends" };
    progress += onHeat ? degreeDays(weather.tMeanC[index]!, plan.baseC) : 1;
    progressByDay[day] = progress;
    if (progress >= total) return { lengths, progressByDay, days: day + 1, end: "matured" };
  }
  return { lengths, progressByDay, days: longest, end: "ended by days" };
}

/**
 * Stage at a reading of the clock, as an index of `stageNames`: 1 initial to 4 late season, 5 beyond the last.
 * A reading at the very end of a stage still belongs to it.
 */
export function stageAt(
  progress: number,
  [initial, development, mid, late]: StageLengths,
): 1 | 2 | 3 | 4 | 5 {
  if (progress <= initial) return 1;
  if (progress <= initial + development) return 2;
  if (progress <= initial + development + mid) return 3;
  return progress <= initial + development + mid + late ? 4 : 5;
}

function sum([a, b, c, d]: StageLengths): number {
  return a + b + c + d;
}
