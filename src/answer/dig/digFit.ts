import { quantile } from "../../statistics/quantiles.ts";
import { stream } from "../../randomness.ts";
import type { Case, Scenario } from "../../scenario/scenario.ts";
import type { SoilLayer } from "../../soil/layers/layer.ts";
import { limitMPa } from "../../soil/equations/penetrationFactor.ts";
import { passageOf } from "../../soil/layers/slices.ts";
import {
  middleDepth,
  type Dig,
  type DugGroup,
  type Fitted,
  type MiddleDepth,
} from "../../evidence/dig/dig.ts";
import { readingOf, shareStopped, stopDepthMm, type ReadingTold } from "./digReading.ts";
import type { FrontResponse, Fronts } from "./digResponse.ts";

/** What a dig tells of the soil: each case's fitted value, draw by draw. The same draw is the same soil and weather in every case. */
export interface DigFit {
  readonly fitted: Fitted;
  /** By case; null for a case without plants, or whose roots are told against another case's. */
  readonly cases: readonly (CaseFit | null)[];
  /**
   * By case: the place of the case whose draws it takes, where the dig decides. Its own, where it was dug: roots deeper than any
   * value lets them count as through an open layer, those too shallow as above a shut one. Where nothing of it is fitted, that of
   * the first dug case whose dense layer is the very same, one that some value meets before others; null where density or
   * reading decide.
   */
  readonly servedBy: readonly (number | null)[];
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
  /** How many soils (and years, where the dig's own is not known) were tried. */
  readonly tried: number;
  /** Share of the soils and years tried in which the observed depth is out of what any passage reaches. */
  readonly tooDeepShare: number;
  readonly tooShallowShare: number;
  /** Of the first group: how deep roots come on that day with the layer shut, and with it open, middle of those tried, mm. */
  readonly shutMm: number;
  readonly openMm: number;
  /** Fitted values: as many as asked. */
  readonly draws: Float64Array;
  readonly groups: readonly GroupFit[];
  readonly told: ReadingTold;
  /** Where the roots stay, if they stopped, mm. */
  readonly stop: StopFit;
}

export interface StopFit {
  readonly depthMm: number;
  readonly low: number;
  readonly high: number;
  /** As many as fitted values, of the same draws. */
  readonly draws: Float64Array;
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

/** Draws behind an interval. */
const intervalDraws = 2000;
/** A front that stands within this distance of where it can come at most, mm, has come there. */
const atLimitMm = 1;
/**
 * Fits the passage of the dense layer (or the penetrometer's limit), case by case, so that the simulated front on the day of the
 * dig meets the depth observed; with at least `runs` draws. A draw takes one of the soils tried, and depths that differ from
 * those observed as their errors say.
 */
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
  return {
    fitted,
    cases: fits,
    servedBy: servedBy(fits, cases, fitted),
    ownYear,
    confidence: dig.confidence,
  };
}

function servedBy(
  fits: readonly (CaseFit | null)[],
  cases: readonly Case[],
  fitted: Fitted,
): (number | null)[] {
  const soils = cases.map((plan) => JSON.stringify(fittedLayers(plan, fitted)));
  const meets = fits.map((fit) => fit !== null && reachOf(fit) === "meets");
  return fits.map((fit, c) => {
    if (fit !== null) return c;
    const alike = fits.flatMap((one, d) => (one !== null && soils[d] === soils[c] ? [d] : []));
    return alike.find((d) => meets[d]) ?? alike[0] ?? null;
  });
}

/** The layers that what is fitted belongs to. */
function fittedLayers({ layers }: Case, fitted: Fitted): SoilLayer[] {
  return fitted.kind === "passage"
    ? layers.filter(({ name }) => name === fitted.layer)
    : layers.filter(({ hindrance }) => hindrance.resistanceMPa !== undefined);
}

/** How far each group's depth lies off the observed one, draw by draw, in its own errors: `[group][draw]`. */
function noiseOf({ groups, paired }: Dig, seed: number, count: number): readonly Float64Array[] {
  // Plants beside each other share what the place does to both, as much as the pairs show.
  return groups.map((group, g) => {
    const own = stream(seed, "dig", g);
    const { freedom } = middleDepth(group);
    const share = paired ? pairedShare(groups, g) : 0;
    const common = stream(seed, "dig, common to pairs");
    const chiSquared = freedom === Infinity ? null : own.gamma(freedom / 2, 2);
    return Float64Array.from({ length: count }, () => {
      const z = Math.sqrt(share) * common.normal() + Math.sqrt(1 - share) * own.normal();
      return chiSquared === null ? z : z / Math.sqrt(chiSquared() / freedom);
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
  const ends = (v: number, g: number) => Float64Array.from(mm[g]!, (bySoil) => bySoil[v]!).sort();
  const sorted = Float64Array.from(draws).sort();
  const usual = usualValue(plan, fitted);
  const openMm = groups.map((_, g) => quantile(ends(grid.length - 1, g), 0.5));
  const told = readingOf({
    groups,
    middles,
    openMm,
    fittedLayers: fittedLayers(plan, fitted),
    stoppedShare: stoppedShareOf(groups, middles, fronts, inSoil, usual),
    confidence,
  });
  const tail = (1 - confidence) / 2;
  const share = (count: number) => count / soils;
  const first = mm[0]!;
  return {
    caseIndex,
    value,
    low: quantile(sorted, tail),
    high: quantile(sorted, 1 - tail),
    otherwise: usual,
    tried: soils,
    tooDeepShare: share(first.filter((bySoil) => observed[0]! > bySoil.at(-1)! + atLimitMm).length),
    tooShallowShare: share(first.filter((bySoil) => observed[0]! < bySoil[0]! - atLimitMm).length),
    shutMm: quantile(ends(0, 0), 0.5),
    openMm: openMm[0]!,
    draws,
    groups: groups.map(({ day }, g) => ({
      day,
      middle: middles[g]!,
      frontMm: quantile(Float64Array.from(mm[g]!, (bySoil) => frontAt(bySoil, grid, value)).sort(), 0.5),
    })),
    told,
    stop: stopOf(groups, middles, noise, told, tail),
  };
}

/** Null of one date. Roots that stopped came there no slower than the soil by itself lets them; see `noSlowerThan`. */
function stoppedShareOf(
  groups: readonly DugGroup[],
  middles: readonly MiddleDepth[],
  { grid, mm }: Fronts,
  inSoil: (s: number, depths: readonly number[]) => number,
  usual: number,
): number | null {
  if (new Set(groups.map(({ day }) => day)).size < 2) return null;
  const observed = middles.map(({ depthMm }) => depthMm);
  const stopMm = stopDepthMm(observed, middles);
  const bySoil = mm[0]!.map((_, s) => {
    const value = inSoil(s, observed);
    const at = (v: number) => mm.map((group) => frontAt(group[s]!, grid, v));
    const free = at(Math.max(value, usual));
    return { slowedMm: at(value), stoppedMm: free.map((front) => Math.min(front, stopMm)) };
  });
  return shareStopped(bySoil, middles);
}

/** Roots seen to have stopped may have grown between the dates: then the last one tells where they stay. */
function stopOf(
  groups: readonly DugGroup[],
  middles: readonly MiddleDepth[],
  noise: readonly Float64Array[],
  { reading, by }: ReadingTold,
  tail: number,
): StopFit {
  const lastDay = Math.max(...groups.map(({ day }) => day));
  const together = reading === "stopped" && by === "two dates";
  const used = groups.flatMap(({ day }, g) => (together || day === lastDay ? [g] : []));
  const ownMiddles = used.map((g) => middles[g]!);
  const depths = ownMiddles.map(({ depthMm }) => depthMm);
  const draws = Float64Array.from(noise[0]!, (_, d) =>
    Math.max(
      0,
      stopDepthMm(
        depths.map((depth, i) => depth + noise[used[i]!]![d]! * ownMiddles[i]!.errorMm),
        ownMiddles,
      ),
    ),
  );
  const sorted = Float64Array.from(draws).sort();
  return {
    depthMm: stopDepthMm(depths, ownMiddles),
    low: quantile(sorted, tail),
    high: quantile(sorted, 1 - tail),
    draws,
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
  // The misfit bends at the grid's values only: between two of them it is a parabola, told by three of its points.
  const misfit = (i: number, share: number) => {
    let sum = 0;
    for (let g = 0; g < fronts.length; g++) {
      const front = fronts[g]!;
      const off = front[i]! + share * (front[i + 1]! - front[i]!) - depths[g]!;
      sum += (off / errors[g]!) ** 2;
    }
    return sum;
  };
  let best = grid[0]!;
  let a = misfit(0, 0);
  let least = a;
  for (let i = 0; i + 1 < grid.length; i++) {
    const [b, c] = [misfit(i, 0.5), misfit(i, 1)];
    const bend = a - 2 * b + c;
    const lowest = bend > 0 ? Math.min(1, Math.max(0, (3 * a - 4 * b + c) / (4 * bend))) : 1;
    for (const share of [lowest, 1]) {
      const here = misfit(i, share);
      if (here < least) [best, least] = [grid[i]! + share * (grid[i + 1]! - grid[i]!), here];
    }
    a = c;
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
  if (fitted.kind === "penetration limit") return limitMPa("pan without pores").usual;
  const layer = layers.find(({ name }) => name === fitted.layer)!;
  return passageOf(layer, 0);
}
