import type { RunDraws } from "../runs/draws.ts";
import { courseOf, readySoil } from "../runs/run.ts";
import type { CropCourse } from "../../crop/course.ts";
import { InputError } from "../../problem.ts";
import { sayMonthDay } from "../../quantity/dates.ts";
import type { Case, Scenario } from "../../scenario/scenario.ts";
import { statedDepthMm } from "../../scenario/statedDepth.ts";
import { makeLedger } from "../../season/ledger.ts";
import type { Rooting } from "../../season/season.ts";
import { makeWorkspace, simulate } from "../../season/simulate.ts";
import { dayInYear, isoDate, yearOf } from "../../quantity/calendar.ts";
import type { DailyWeather } from "../../weather/records/record.ts";
import { hasFitted, middleDepth, type Dig, type DugGroup, type Fitted } from "../../evidence/dig/dig.ts";
import { gridFor, hinderBy } from "../../evidence/dig/hinderBy.ts";

/** What the fit is made from; `Preparation` has it all. */
export interface FitGround {
  readonly scenario: Scenario;
  /** Before any scaling. */
  readonly weather: DailyWeather;
  /** Scaled to the middle total, for digs whose own year is not known. */
  readonly middleWeather: DailyWeather;
  readonly yearByRun: readonly { readonly sowingIndexByCase: readonly number[] }[];
  readonly drawsByRun: readonly RunDraws[];
}

/** Soils (and years, where the dig's own is not known) that the front is worked out in. */
const soilsTried = 16;
/** Between values of the grid the front is taken as straight while it deepens by no more than this, mm; at most so many values. */
const jumpMm = 10;
const mostValues = 60;
/** Depths that the grid is made fine for lie within this many errors of those observed, and at least so many mm. */
const errorsAround = 4;
const leastAroundMm = 100;
/** Plants may be dug this long after maturity, days: roots stay. */
const daysAfterMaturity = 90;

/** How the front answers to what is fitted, whatever depths were observed. */
export interface FrontResponse {
  readonly fitted: Fitted;
  readonly ownYear: boolean;
  /** By case, for its groups in their order; null for a case that nothing is fitted to. */
  readonly byCase: readonly (Fronts | null)[];
}

/**
 * Runs the front through the soils tried, at every value of the grid; between those it is taken as straight.
 * Throws InputError for plants dug before sowing or long after harvest.
 *
 * @returns null where there is nothing to fit
 */
export function responseTo(
  { fitted, groups }: Pick<Dig, "fitted" | "groups">,
  ground: FitGround,
): FrontResponse | null {
  if (fitted === null) return null;
  const { scenario } = ground;
  const isRecord = scenario.weather.source.kind === "record";
  const owns = groups.map((group) =>
    isRecord ? ownYearIndex(group, scenario.cases[group.caseIndex]!, ground.weather) : null,
  );
  const ownYear = owns.every((index) => index !== null);
  const byCase = scenario.cases.map((plan, c) => {
    const own = groups.filter(({ caseIndex }) => caseIndex === c);
    const rooting = ownRooting(plan, scenario.cases[0]);
    if (own.length === 0 || rooting === null || !hasFitted(plan.layers, fitted)) return null;
    const indexes = ownYear ? own.map((group) => owns[groups.indexOf(group)]!) : null;
    return frontsOf(plan, rooting, c, own, fitted, indexes, ground);
  });
  return byCase.every((one) => one === null) ? null : { fitted, ownYear, byCase };
}

/** How roots grow through the case's own soil; null where they are told against another case's. */
function ownRooting({ rooting }: Case, first: Case): Rooting | null {
  const depthMm = statedDepthMm(rooting, first.rooting);
  if (depthMm !== null) return { kind: "stops", depthMm };
  return rooting.kind === "grown" ? { kind: "grown" } : null;
}

/** Where in the weather the crop of these plants was sown; null where the weather does not hold that year. */
function ownYearIndex({ day }: DugGroup, plan: Case, weather: DailyWeather): number | null {
  const sowing = sownBefore(day, plan);
  const index = sowing - weather.firstDay;
  if (index - plan.fallowDays < 0 || day - weather.firstDay >= weather.days) return null;
  return index;
}

/** The last sowing day on or before a day. */
function sownBefore(day: number, { crop }: Case): number {
  const sowing = dayInYear(yearOf(day), crop.sowing);
  return sowing <= day ? sowing : dayInYear(yearOf(day) - 1, crop.sowing);
}

/** How the front of one case answers. */
export interface Fronts {
  /** Values of what is fitted, growing. */
  readonly grid: readonly number[];
  /** Front of each group's day, mm: `[group][soil][value of the grid]`. */
  readonly mm: readonly (readonly Float64Array[])[];
}

function frontsOf(
  plan: Case,
  rooting: Rooting,
  caseIndex: number,
  groups: readonly DugGroup[],
  fitted: Fitted,
  ownIndexes: readonly number[] | null,
  ground: FitGround,
): Fronts {
  const { scenario, yearByRun, drawsByRun } = ground;
  const weather = ownIndexes === null ? ground.middleWeather : ground.weather;
  const soils = Math.min(soilsTried, drawsByRun.length);
  // Groups of one sowing share their runs.
  const sowings = new Map<number, number[]>();
  groups.forEach((_, g) => {
    const at = ownIndexes?.[g] ?? -1;
    sowings.set(at, [...(sowings.get(at) ?? []), g]);
  });
  const bySoil = Array.from({ length: soils }, (_, s) =>
    [...sowings].map(([at, members]) => {
      const sowingIndex = at >= 0 ? at : yearByRun[s]!.sowingIndexByCase[caseIndex]!;
      const since = members.map((g) => groups[g]!.day - sownBefore(groups[g]!.day, plan));
      const course = courseOf(plan, weather, sowingIndex);
      if (s === 0)
        members.forEach((g, m) =>
          refuseOutOfSeason(groups[g]!, since[m]!, course.maturityDay - course.sowingDay, plan),
        );
      const front = frontIn(
        plan,
        rooting,
        drawsByRun[s]!,
        scenario.ensemble.deepBelowMm,
        course,
        sowingIndex,
        since,
        weather,
      );
      return { members, front };
    }),
  );
  const frontsAt = (s: number) => (value: number) => {
    const depths = groups.map(() => 0);
    for (const { members, front } of bySoil[s]!)
      front(fitted, value).forEach((depth, m) => (depths[members[m]!] = depth));
    return depths;
  };
  const middles = groups.map(middleDepth);
  const around = middles.map(({ errorMm }) => Math.max(errorsAround * errorMm, leastAroundMm));
  const within = [
    Math.min(...middles.map(({ depthMm }, g) => depthMm - around[g]!)),
    Math.max(...middles.map(({ depthMm }, g) => depthMm + around[g]!)),
  ] as const;
  const grid = gridFor(fitted, frontsAt(0), within, jumpMm, mostValues);
  const mm = groups.map(() => Array.from({ length: soils }, () => new Float64Array(grid.length)));
  for (let s = 0; s < soils; s++) {
    grid.forEach((value, v) =>
      frontsAt(s)(value).forEach((depth, g) => {
        mm[g]![s]![v] = depth;
      }),
    );
  }
  return { grid, mm };
}

/** Runs one soil to the last of some days after sowing, whatever is fitted, and tells the front of each. */
function frontIn(
  plan: Case,
  rooting: Rooting,
  draws: RunDraws,
  deepBelowMm: number,
  whole: CropCourse,
  sowingIndex: number,
  sinceSowing: readonly number[],
  weather: DailyWeather,
): (fitted: Fitted, value: number) => number[] {
  const days = sinceSowing.map((since) => Math.min(whole.sowingDay + since, whole.maturityDay));
  const maturityDay = Math.max(...days);
  const course = { ...whole, maturityDay, floweringDay: Math.min(whole.floweringDay, maturityDay) };
  const { slices, startWaterMm, uptake } = readySoil(plan, draws, deepBelowMm);
  const firstIndex = sowingIndex - plan.fallowDays;
  const whatever = {
    slices,
    weather,
    ground: plan.ground,
    rooting,
    uptake,
    evaporation: plan.evaporation,
  };
  const ledger = makeLedger(maturityDay + 1, 0);
  const workspace = makeWorkspace(slices.count);
  let from: { startWaterMm: Float64Array; firstIndex: number; course: CropCourse } = {
    startWaterMm,
    firstIndex,
    course,
  };
  let skippedDays = 0;
  return (fitted, value) => {
    hinderBy(slices, plan.layers, fitted, value, draws.openness);
    simulate({ ...whatever, ...from }, ledger, workspace);
    const depths = days.map((day) => ledger.frontMm[day - skippedDays]!);
    // What is fitted changes nothing before sowing: with no snow lying then, later runs start there.
    const { sowingDay } = from.course;
    if (sowingDay > 0 && ledger.snowOnGroundMm[sowingDay - 1] === 0) {
      from = {
        startWaterMm: workspace.waterAtSowingMmBySlice.slice(),
        firstIndex: firstIndex + sowingDay,
        course: fromSowing(course),
      };
      skippedDays = sowingDay;
    }
    return depths;
  };
}

/** The course without its fallow. */
function fromSowing(course: CropCourse): CropCourse {
  const { sowingDay } = course;
  return {
    ...course,
    kcbByDay: course.kcbByDay.subarray(sowingDay),
    kcMaxByDay: course.kcMaxByDay.subarray(sowingDay),
    coverByDay: course.coverByDay.subarray(sowingDay),
    descentMmByDay: course.descentMmByDay.subarray(sowingDay),
    stageByDay: course.stageByDay.subarray(sowingDay),
    sowingDay: 0,
    floweringDay: course.floweringDay - sowingDay,
    maturityDay: course.maturityDay - sowingDay,
  };
}

function refuseOutOfSeason(group: DugGroup, since: number, length: number, plan: Case): void {
  if (since <= length + daysAfterMaturity) return;
  throw new InputError([
    {
      field: group.field,
      expected: `a day from sowing (${sayMonthDay(plan.crop.sowing)}) to ${daysAfterMaturity} days after the crop of "${plan.name}" is ripe`,
      found: `${isoDate(group.day)}, ${since} days after the last sowing`,
      mend: "check the date of the dig and the sowing day of the crop",
    },
  ]);
}
