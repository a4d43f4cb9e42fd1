import type { RunDraws } from "../answer/draws.ts";
import { courseOf, readySoil } from "../answer/run.ts";
import type { CropCourse } from "../crop/course.ts";
import { quantile } from "../answer/quantiles.ts";
import { InputError } from "../problem.ts";
import { sayMonthDay } from "../quantity/dates.ts";
import { stream } from "../randomness.ts";
import type { Case, Scenario } from "../scenario/scenario.ts";
import { makeLedger } from "../season/ledger.ts";
import { makeWorkspace, simulate } from "../season/simulate.ts";
import { dayInYear, isoDate, yearOf } from "../weather/calendar.ts";
import type { DailyWeather } from "../weather/record.ts";
import { middleDepth, type Dig, type DugGroup, type Fitted, type MiddleDepth } from "./dig.ts";
import { gridFor, hinderBy } from "./hinderBy.ts";

/** What a dig tells of the soil: each case's fitted value, draw by draw. The same draw is the same soil and weather in every case. */
export interface DigFit {
  readonly fitted: Fitted;
  /** By case; null for a case without plants, or whose depth is stated. */
  readonly cases: readonly (CaseFit | null)[];
  /** Whether the dig's own year is in the record; otherwise the fit runs over other years. */
  readonly ownYear: boolean;
  readonly confidence: number;
}

export interface CaseFit {
  readonly caseIndex: number;
  /** Meets the observed middle depth, in the middle of the soils and years tried. */
  readonly value: number;
  readonly low: number;
  readonly high: number;
  /** What the soil's density or reading would have said, in the usual reading. */
  readonly otherwise: number;
  /** Share of the soils and years tried in which the observed depth is out of what any passage reaches. */
  readonly tooDeepShare: number;
  readonly tooShallowShare: number;
  /** Of the first group: how deep roots come on that day with the layer shut, and with it open, middle of those tried, mm. */
  readonly shutMm: number;
  readonly openMm: number;
  /** Fitted values: as many as asked. */
  readonly draws: Float64Array;
  readonly groups: readonly GroupFit[];
}

/** Whether some value meets the depth observed. */
export type Reach = "meets" | "no passage is open enough" | "no passage is shut enough";

/** From this share of the soils tried on, no value meets the depth. */
const outOfReachShare = 0.5;

export function reachOf({
  tooDeepShare,
  tooShallowShare,
}: Pick<CaseFit, "tooDeepShare" | "tooShallowShare">): Reach {
  if (tooDeepShare > outOfReachShare) return "no passage is open enough";
  return tooShallowShare > outOfReachShare ? "no passage is shut enough" : "meets";
}

export interface GroupFit {
  readonly day: number;
  readonly middle: MiddleDepth;
  /** The simulated front on that day at the fitted value, mm. */
  readonly frontMm: number;
}

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
/** Draws behind an interval. */
const intervalDraws = 2000;
/** Between values of the grid the front is taken as straight while it deepens by no more than this, mm; at most so many values. */
const jumpMm = 10;
const mostValues = 60;
/** Depths that the grid is made fine for lie within this many errors of those observed, and at least so many mm. */
const errorsAround = 4;
const leastAroundMm = 100;
/** A front that stands within this distance of where it can come at most, mm, has come there. */
const atLimitMm = 1;
/** Plants may be dug this long after maturity, days: roots stay. */
const daysAfterMaturity = 90;

/**
 * Fits the passage of the dense layer (or the penetrometer's limit), case by case, so that the simulated front on the day of the
 * dig meets the depth observed.
 *
 * The front is worked out on a grid of values in each soil tried; between them it is taken as straight. A draw takes one of the
 * soils, and depths that differ from those observed as their errors say.
 * Throws InputError for plants dug before sowing or long after harvest.
 *
 * @returns null where the dig has nothing to fit
 */
export function fitDig(dig: Dig, ground: FitGround): DigFit | null {
  const response = responseTo(dig, ground);
  return response === null ? null : fitFrom(response, dig, ground.scenario, ground.drawsByRun.length);
}

/** How the front answers to what is fitted, whatever depths were observed. */
export interface FrontResponse {
  readonly fitted: Fitted;
  readonly ownYear: boolean;
  /** By case, for its groups in their order; null for a case that nothing is fitted to. */
  readonly byCase: readonly (Fronts | null)[];
}

/** Runs the front through the soils tried, at every value of the grid. */
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
    if (own.length === 0 || plan.rooting.kind !== "grown" || !hasFitted(plan, fitted)) return null;
    const indexes = ownYear ? own.map((group) => owns[groups.indexOf(group)]!) : null;
    return frontsOf(plan, c, own, fitted, indexes, ground);
  });
  return byCase.every((one) => one === null) ? null : { fitted, ownYear, byCase };
}

/** Fits what was observed to how the front answers; with at least `runs` draws. */
export function fitFrom(
  { fitted, ownYear, byCase }: FrontResponse,
  dig: Dig,
  { cases, ensemble }: Pick<Scenario, "cases" | "ensemble">,
  runs: number,
): DigFit {
  const noise = noiseOf(dig, ensemble.seed, Math.max(intervalDraws, runs));
  const fits = byCase.map((fronts, c) => {
    if (fronts === null) return null;
    const own = dig.groups.filter(({ caseIndex }) => caseIndex === c);
    const ownNoise = own.map((group) => noise[dig.groups.indexOf(group)]!);
    return fitCase(c, cases[c]!, own, fitted, fronts, ownNoise, dig.confidence);
  });
  return { fitted, cases: fits, ownYear, confidence: dig.confidence };
}

/** Whether a case's soil has what is fitted. */
export function hasFitted({ layers }: Case, fitted: Fitted): boolean {
  return fitted.kind === "passage"
    ? layers.some(({ name }) => name === fitted.layer)
    : layers.some(({ hindrance }) => hindrance.resistanceMPa !== undefined);
}

/** Where in the weather the crop of these plants was sown; null where the weather does not hold that year. */
function ownYearIndex({ day }: DugGroup, plan: Case, weather: DailyWeather): number | null {
  const sowing = sownBefore(day, plan);
  const index = sowing - weather.firstDay;
  if (index - plan.fallowDays < 0 || day - weather.firstDay >= weather.days) return null;
  return index;
}

/** The last sowing day on or before a day. */
export function sownBefore(day: number, { crop }: Case): number {
  const sowing = dayInYear(yearOf(day), crop.sowing);
  return sowing <= day ? sowing : dayInYear(yearOf(day) - 1, crop.sowing);
}

/** How the front of one case answers. */
interface Fronts {
  /** Values of what is fitted, growing. */
  readonly grid: readonly number[];
  /** Front of each group's day, mm: `[group][soil][value of the grid]`. */
  readonly mm: readonly (readonly Float64Array[])[];
}

function frontsOf(
  plan: Case,
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
  const { slices, startWaterMm } = readySoil(plan, draws, deepBelowMm);
  const firstIndex = sowingIndex - plan.fallowDays;
  const whatever = {
    slices,
    weather,
    ground: plan.ground,
    rooting: { kind: "grown" },
    uptake: plan.uptake,
    slowDrainage: plan.slowDrainage,
  } as const;
  const ledger = makeLedger(maturityDay + 1, 0);
  const workspace = makeWorkspace(slices.count);
  let from: { startWaterMm: Float64Array; firstIndex: number; course: CropCourse } = {
    startWaterMm,
    firstIndex,
    course,
  };
  let skippedDays = 0;
  return (fitted, value) => {
    hinderBy(slices, plan.layers, fitted, value);
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

/** How far each group's depth lies off the observed one, draw by draw, in its own errors: `[group][draw]`. */
function noiseOf({ groups, paired }: Dig, seed: number, count: number): readonly Float64Array[] {
  // Plants beside each other share what the place does to both, as much as the pairs show.
  return groups.map((group, g) => {
    const own = stream(seed, "dig", g);
    const { freedom } = middleDepth(group);
    const share = paired ? pairedShare(groups, g) : 0;
    const common = stream(seed, "dig, common to pairs");
    return Float64Array.from({ length: count }, () => {
      const z = Math.sqrt(share) * common.normal() + Math.sqrt(1 - share) * own.normal();
      return freedom === Infinity ? z : z / Math.sqrt(own.gamma(freedom / 2, 2) / freedom);
    });
  });
}

/** Correlation of a group's plants with their neighbours of the first group dug, 0 to 1. */
function pairedShare(groups: readonly DugGroup[], g: number): number {
  const one = groups[g]!.depthsMm;
  const other = groups.find(
    ({ caseIndex, depthsMm }) => caseIndex !== groups[g]!.caseIndex && depthsMm.length === one.length,
  )?.depthsMm;
  if (other === undefined || one.length < 3) return 0;
  const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
  const [mean1, mean2] = [mean(one), mean(other)];
  let [both, first, second] = [0, 0, 0];
  one.forEach((depth, i) => {
    both += (depth - mean1) * (other[i]! - mean2);
    first += (depth - mean1) ** 2;
    second += (other[i]! - mean2) ** 2;
  });
  return first > 0 && second > 0 ? Math.min(1, Math.max(0, both / Math.sqrt(first * second))) : 0;
}

function fitCase(
  caseIndex: number,
  plan: Case,
  groups: readonly DugGroup[],
  fitted: Fitted,
  fronts: Fronts,
  noise: readonly Float64Array[],
  confidence: number,
): CaseFit {
  const { grid, mm } = fronts;
  const soils = mm[0]!.length;
  const middles = groups.map(middleDepth);
  const observed = middles.map(({ depthMm }) => depthMm);
  const errors = middles.map(({ errorMm }) => Math.max(errorMm, atLimitMm));
  const inSoil = (s: number, depths: readonly number[]) =>
    solve(
      mm.map((group) => group[s]!),
      grid,
      depths,
      errors,
    );

  const atObserved = Float64Array.from({ length: soils }, (_, s) => inSoil(s, observed)).sort();
  const value = quantile(atObserved, 0.5);
  const draws = Float64Array.from(noise[0]!, (_, d) =>
    inSoil(
      d % soils,
      observed.map((depth, g) => depth + noise[g]![d]! * middles[g]!.errorMm),
    ),
  );
  const sorted = Float64Array.from(draws).sort();
  const tail = (1 - confidence) / 2;
  const ends = (v: number, g: number) => Float64Array.from(mm[g]!, (bySoil) => bySoil[v]!).sort();
  const share = (count: number) => count / soils;
  const first = mm[0]!;
  return {
    caseIndex,
    value,
    low: quantile(sorted, tail),
    high: quantile(sorted, 1 - tail),
    otherwise: usualValue(plan, fitted),
    tooDeepShare: share(first.filter((bySoil) => observed[0]! > bySoil.at(-1)! + atLimitMm).length),
    tooShallowShare: share(first.filter((bySoil) => observed[0]! < bySoil[0]! - atLimitMm).length),
    shutMm: quantile(ends(0, 0), 0.5),
    openMm: quantile(ends(grid.length - 1, 0), 0.5),
    draws,
    groups: groups.map(({ day }, g) => ({
      day,
      middle: middles[g]!,
      frontMm: quantile(Float64Array.from(mm[g]!, (bySoil) => frontAt(bySoil, grid, value)).sort(), 0.5),
    })),
  };
}

/** The value whose fronts lie nearest to the depths; exact for one group, where the front deepens with the value. */
function solve(
  fronts: readonly Float64Array[],
  grid: readonly number[],
  depths: readonly number[],
  errors: readonly number[],
): number {
  if (fronts.length === 1) return valueAt(fronts[0]!, grid, depths[0]!);
  const misfit = (value: number) =>
    fronts.reduce((sum, front, g) => sum + ((frontAt(front, grid, value) - depths[g]!) / errors[g]!) ** 2, 0);
  // The misfit bends at the grid's values only: between two of them it is a parabola, told by three of its points.
  let best = grid[0]!;
  let least = misfit(best);
  for (let i = 0; i + 1 < grid.length; i++) {
    const [from, to] = [grid[i]!, grid[i + 1]!];
    const [a, b, c] = [misfit(from), misfit((from + to) / 2), misfit(to)];
    const bend = a - 2 * b + c;
    const share = bend > 0 ? (3 * a - 4 * b + c) / (4 * bend) : 1;
    const lowest = from + (to - from) * Math.min(1, Math.max(0, share));
    for (const value of [lowest, to]) {
      const here = misfit(value);
      if (here < least) [best, least] = [value, here];
    }
  }
  return best;
}

/** First value at which the front comes as deep as `depthMm`; an end of the grid where none does, or all do. */
function valueAt(front: Float64Array, grid: readonly number[], depthMm: number): number {
  if (depthMm <= front[0]!) return grid[0]!;
  for (let i = 1; i < grid.length; i++) {
    if (front[i]! < depthMm) continue;
    const share = (depthMm - front[i - 1]!) / (front[i]! - front[i - 1]!);
    return grid[i - 1]! + share * (grid[i]! - grid[i - 1]!);
  }
  return grid.at(-1)!;
}

function frontAt(front: Float64Array, grid: readonly number[], value: number): number {
  let i = 1;
  while (i < grid.length - 1 && grid[i]! < value) i++;
  const share = (value - grid[i - 1]!) / (grid[i]! - grid[i - 1]!);
  return front[i - 1]! + share * (front[i]! - front[i - 1]!);
}

/** What the case's own soil would say without a dig. */
function usualValue({ layers }: Case, fitted: Fitted): number {
  if (fitted.kind === "penetration limit") return 2.5;
  const layer = layers.find(({ name }) => name === fitted.layer)!;
  return layer.openShare + (1 - layer.openShare) * layer.hindrance.usual;
}
