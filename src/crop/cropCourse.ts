import { refuse } from "../problem.ts";
import { isoDate } from "../quantity/calendar.ts";
import type { DailyWeather } from "../weather/records/record.ts";
import { climateAdjusted, climateTerm, coefficientAt, upperCoefficient } from "./basalCoefficient.ts";
import { coldUpperCoefficient, hasFrosts } from "./coldGround.ts";
import type { CropCourse } from "./course.ts";
import type { CropPlan } from "./crop.ts";
import { isAsleep } from "./dormancy.ts";
import { groundCover, heightAtMm } from "./groundCover.ts";
import { depthShare, descentAtVelocityMm, potentialDepthMm, rootingProgress } from "./potentialDescent.ts";
import { degreeDays, longestSeasonDays, seasonClock, stageAt, type SeasonClock } from "./stages.ts";
import { thinnedKcb } from "./thinStand.ts";

const midSeason = 3;
const lateSeason = 4;

/**
 * The crop's course through one run: fallow from `firstIndex` (days of `weather`), sowing at `sowingIndex`, to maturity.
 *
 * A season on thermal time that lacks heat ends after its longest time (see `longestSeasonDays`), in whatever stage it
 * stands. Weather that does not reach from the first day to maturity is an InputError.
 */
export function cropCourse(
  plan: CropPlan,
  weather: DailyWeather,
  firstIndex: number,
  sowingIndex: number,
): CropCourse {
  if (firstIndex < 0 || firstIndex > sowingIndex) refuseStart(weather, firstIndex, sowingIndex);
  const clock = seasonClock(plan, weather, sowingIndex);
  if (clock.end === "weather ends") refuseEnd(plan, weather, sowingIndex);

  const sowingDay = sowingIndex - firstIndex;
  const days = sowingDay + clock.days;
  const course = {
    kcbByDay: new Float64Array(days),
    kcMaxByDay: new Float64Array(days),
    coverByDay: new Float64Array(days),
    descentMmByDay: new Float64Array(days),
    stageByDay: stagesByDay(clock, sowingDay),
    sowingDay,
    sowingDepthMm: plan.sowingDepthMm,
    floweringDay: days - 1,
    maturityDay: days - 1,
    ripe: clock.end === "matured",
  };
  const flowering = course.stageByDay.findIndex((stage) => stage >= midSeason);
  if (flowering >= 0) course.floweringDay = flowering;

  writeCoefficients(plan, weather, firstIndex, clock, course);
  writeDescent(plan, weather, sowingIndex, clock, sowingDay, course.descentMmByDay);
  return course;
}

/** Fallow is 0. Effective full cover, where mid-season begins, is about where flowering begins (FAO-56 ch. 6, memory). */
function stagesByDay(clock: SeasonClock, sowingDay: number): Uint8Array {
  const stageByDay = new Uint8Array(sowingDay + clock.days);
  for (let day = 0; day < clock.days; day++) {
    const stage = stageAt(clock.progressByDay[day]!, clock.lengths);
    // The last day's heat may overshoot the last stage; the day is still the crop's.
    stageByDay[sowingDay + day] = Math.min(stage, lateSeason);
  }
  return stageByDay;
}

type Written = Pick<CropCourse, "kcbByDay" | "kcMaxByDay" | "coverByDay" | "stageByDay" | "sowingDay">;

/** Writes kcb, kcMax and cover of every day, fallow included. */
function writeCoefficients(
  plan: CropPlan,
  weather: DailyWeather,
  firstIndex: number,
  { lengths, leavesByDay, days }: SeasonClock,
  { kcbByDay, kcMaxByDay, coverByDay, stageByDay, sowingDay }: Written,
): void {
  const mid = meanClimate(weather, firstIndex, stageByDay, midSeason);
  const late = meanClimate(weather, firstIndex, stageByDay, lateSeason);
  const kcbMid = Math.max(0, climateAdjusted(plan.kcbMid, mid.windMPerS, mid.rhMinPercent, plan.heightMm));
  const kcbEnd = Math.max(0, climateAdjusted(plan.kcbEnd, late.windMPerS, late.rhMinPercent, plan.heightMm));

  for (let day = 0; day < sowingDay; day++) kcMaxByDay[day] = upperCoefficient(0, 0); // no crop
  let heightMm = 0;
  for (let day = 0; day < days; day++) {
    const index = firstIndex + sowingDay + day;
    const fullKcb = coefficientAt(leavesByDay[day]!, lengths, plan.kcbInitial, kcbMid, kcbEnd);
    heightMm = Math.max(heightMm, heightAtMm(fullKcb, plan.kcbInitial, kcbMid, plan.heightMm));
    const term = climateTerm(weather.wind2mMPerS[index]!, weather.rhMinPercent[index]!, heightMm);
    const awakeKcb = thinnedKcb(fullKcb, plan.standShare);
    const kcb = isAsleep(weather, index, plan.dormantBelowC) ? Math.min(awakeKcb, plan.kcbDormant) : awakeKcb;
    kcbByDay[sowingDay + day] = kcb;
    kcMaxByDay[sowingDay + day] = upperCoefficient(kcb, term);
    // Sleeping leaves use little but still shade: cover is that of the crop awake.
    coverByDay[sowingDay + day] = groundCover(awakeKcb, upperCoefficient(awakeKcb, term), heightMm);
  }
  for (let day = 0; day < kcMaxByDay.length; day++) {
    if (hasFrosts(weather, firstIndex + day))
      kcMaxByDay[day] = coldUpperCoefficient(kcMaxByDay[day]!, kcbByDay[day]!);
  }
}

/** Writes how far the unhindered front goes down each day. */
function writeDescent(
  plan: CropPlan,
  weather: DailyWeather,
  sowingIndex: number,
  { lengths, progressByDay, days }: SeasonClock,
  sowingDay: number,
  descentMmByDay: Float64Array,
): void {
  const { maxRootDepthMm, sowingDepthMm, frontVelocityMmPerDay, descent } = plan;
  let depthMm = sowingDepthMm;
  let before = 0;
  let heat = 0;
  for (let day = 0; day < days; day++) {
    const index = sowingIndex + day;
    const progress = progressByDay[day]!;
    let descentMm: number;
    if (frontVelocityMmPerDay === null) {
      if (before < 1) heat += degreeDays(weather.tMeanC[index]!, plan.baseC);
      const known = weather.hasTemperature ? heat : null;
      const share = depthShare(descent, progress, lengths, known, plan.stageLengths);
      descentMm = Math.max(0, potentialDepthMm(share, maxRootDepthMm, sowingDepthMm) - depthMm);
    } else if (isAsleep(weather, index, plan.dormantBelowC)) {
      descentMm = 0;
    } else {
      descentMm = descentAtVelocityMm(before, depthMm, maxRootDepthMm, frontVelocityMmPerDay);
    }
    descentMmByDay[sowingDay + day] = descentMm;
    depthMm += descentMm;
    before = rootingProgress(progress, descent, lengths);
  }
}

/** Mean wind and least humidity of one stage of this run; FAO-56's standard climate where no day is of that stage. */
function meanClimate(
  weather: DailyWeather,
  firstIndex: number,
  stageByDay: Uint8Array,
  stage: number,
): { windMPerS: number; rhMinPercent: number } {
  let count = 0;
  let wind = 0;
  let rhMin = 0;
  for (let day = 0; day < stageByDay.length; day++) {
    if (stageByDay[day] !== stage) continue;
    count++;
    wind += weather.wind2mMPerS[firstIndex + day]!;
    rhMin += weather.rhMinPercent[firstIndex + day]!;
  }
  return count > 0
    ? { windMPerS: wind / count, rhMinPercent: rhMin / count }
    : { windMPerS: 2, rhMinPercent: 45 };
}

function refuseStart(weather: DailyWeather, firstIndex: number, sowingIndex: number): never {
  if (firstIndex > sowingIndex) throw new Error("a run begins after its sowing");
  return refuse(
    "weather",
    `weather from ${isoDate(weather.firstDay + firstIndex)} on, where this run begins`,
    `weather from ${isoDate(weather.firstDay)} on`,
    "give an earlier record, a later sowing date or fewer days of fallow",
  );
}

function refuseEnd(plan: CropPlan, weather: DailyWeather, sowingIndex: number): never {
  const longest = longestSeasonDays(plan, weather.hasTemperature);
  return refuse(
    "weather",
    `weather until ${plan.name} sown ${isoDate(weather.firstDay + sowingIndex)} is mature (at most ${longest} days)`,
    `weather that ends ${isoDate(weather.firstDay + weather.days - 1)}`,
    "give a longer record, or begin in an earlier year",
  );
}
