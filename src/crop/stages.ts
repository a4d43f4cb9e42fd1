import { dayInYear, yearOf } from "../quantity/calendar.ts";
import type { DailyWeather } from "../weather/records/record.ts";
import type { CropPlan } from "./crop.ts";
import type { StageLengths } from "./stageLengths.ts";

export type { StageLengths };

/** A season may last this many times the calendar days of the crop, then it ends as it stands. Ours: frost or the combine would. */
export const longestSeasonFactor = 1.15;

/** How far the season's clock has come, day by day from sowing. */
export interface SeasonClock {
  readonly lengths: StageLengths;
  /** Reading at the end of each day, index 0 = the day of sowing; never falls. */
  readonly progressByDay: Float64Array;
  /** The same for leaves, which a winter crop puts out before its ears are under way; else the same array. */
  readonly leavesByDay: Float64Array;
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
export function clockLengths(
  plan: Pick<CropPlan, "clock" | "stageLengths" | "stageDaysFallback">,
  hasTemperature: boolean,
): StageLengths {
  return plan.clock === "thermal time" && !hasTemperature ? plan.stageDaysFallback : plan.stageLengths;
}

/** Sown later than this before spring growth, a crop does not wait for it: a winter crop sown in spring. Ours. */
const longestWaitDays = 250;

/**
 * Days from sowing to the day on which a winter crop leaves its first stage at the earliest; 0 for crops that do not wait.
 *
 * @param sowingDay day number
 */
export function waitDays({ springFrom }: Pick<CropPlan, "springFrom">, sowingDay: number): number {
  if (springFrom === null) return 0;
  const year = yearOf(sowingDay);
  const here = dayInYear(year, springFrom);
  const days = (here > sowingDay ? here : dayInYear(year + 1, springFrom)) - sowingDay;
  return days <= longestWaitDays ? days : 0;
}

/** How far into development the leaves of a winter crop may come before spring: tillered, not closed. Ours. */
const autumnLeaves = 0.3;

/** Any September and February will do; with a leap day between them. */
const someLeapWinter = 2003;

/**
 * Most days from sowing to maturity a season of this crop can take, at least 1. On calendar days: the stages' sum, the first
 * lasting through the winter of a crop that waits for spring; on thermal time 1.15 times that of the fallback days. For choosing
 * weather that is long enough.
 */
export function longestSeasonDays(plan: CropPlan, hasTemperature: boolean): number {
  return longestAfter(plan, hasTemperature, waitDays(plan, dayInYear(someLeapWinter, plan.sowing)));
}

/** Calendar days from sowing to maturity as usual, both counted: what the crop's calendar days and the wait for spring say. */
export function usualSeasonDays(plan: CropPlan): number {
  const wait = waitDays(plan, dayInYear(someLeapWinter, plan.sowing));
  return Math.max(1, Math.round(sum(afterWait(plan.stageDaysFallback, wait))));
}

function longestAfter(plan: CropPlan, hasTemperature: boolean, wait: number): number {
  const onHeat = plan.clock === "thermal time" && hasTemperature;
  const lengths = onHeat ? plan.stageDaysFallback : clockLengths(plan, hasTemperature);
  const days = sum(afterWait(lengths, wait));
  return Math.max(1, Math.ceil(onHeat ? longestSeasonFactor * days : days));
}

/** On calendar days the first stage of a crop that waits for spring is the wait. */
function afterWait(lengths: StageLengths, wait: number): StageLengths {
  return wait > 0 ? [wait, lengths[1], lengths[2], lengths[3]] : lengths;
}

/** Runs the clock from sowing until the stages are through, the longest season is over, or the weather ends. */
export function seasonClock(plan: CropPlan, weather: DailyWeather, sowingIndex: number): SeasonClock {
  const onHeat = plan.clock === "thermal time" && weather.hasTemperature;
  const wait = waitDays(plan, weather.firstDay + sowingIndex);
  const counted = clockLengths(plan, weather.hasTemperature);
  const lengths = onHeat ? counted : afterWait(counted, wait);
  const total = sum(lengths);
  const longest = longestAfter(plan, weather.hasTemperature, wait);
  const progressByDay = new Float64Array(longest);
  const leavesByDay = onHeat && wait > 0 ? new Float64Array(longest) : progressByDay;
  const mostLeaves = lengths[0] + autumnLeaves * lengths[1];
  let progress = 0;
  let leaves = 0;
  for (let day = 0; day < longest; day++) {
    const index = sowingIndex + day;
    if (index >= weather.days) return { lengths, progressByDay, leavesByDay, days: day, end: "weather ends" };
    const step = onHeat ? degreeDays(weather.tMeanC[index]!, plan.baseC) : 1;
    progress += step;
    // Autumn warmth beyond the first stage brings no ears: those wait for cold and for long days.
    if (day < wait && progress > lengths[0]) progress = lengths[0];
    progressByDay[day] = progress;
    if (leavesByDay !== progressByDay) {
      leaves = Math.min(mostLeaves, leaves + step);
      leavesByDay[day] = Math.max(progress, leaves);
    }
    if (progress >= total) return { lengths, progressByDay, leavesByDay, days: day + 1, end: "matured" };
  }
  return { lengths, progressByDay, leavesByDay, days: longest, end: "ended by days" };
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
