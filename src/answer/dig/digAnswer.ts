import { quantile } from "../../statistics/quantiles.ts";
import { isoDate } from "../../quantity/calendar.ts";
import {
  middleDepth,
  rootWays,
  type Dig,
  type DugGroup,
  type Fitted,
  type MiddleDepth,
  type RootWay,
} from "../../evidence/dig/dig.ts";
import { reachOf, type CaseFit, type DigFit, type Reach, type StopFit } from "./digFit.ts";
import { pairedDifference, welchDifference, type Difference } from "../../statistics/differenceOfMeans.ts";
import { neededForReach, neededToTell, type Layout, type Needed } from "../../statistics/howMany.ts";
import { spreadOf, type Spread } from "../../statistics/spread.ts";
import { twoSidedT } from "../../statistics/studentT.ts";

/** What the dig says, as `evidence` and `compare` give it. Depths in mm. */
export interface DigAnswer {
  readonly confidence: number;
  readonly paired: boolean;
  readonly groups: readonly DugAnswer[];
  readonly differences: readonly DugDifference[];
  /** Null where nothing is fitted. */
  readonly fit: DigFitAnswer | null;
}

export interface DugAnswer {
  readonly case: string;
  readonly date: string;
  readonly rowPosition: string | null;
  readonly depthMm: Spread;
  /** Of the middle depth, at `confidence`; with the spread that is assumed, where one is. */
  readonly middleIntervalMm: { readonly low: number; readonly high: number };
  /** Where one plant, or plants all equal, do not tell how plants differ. */
  readonly assumed: MiddleDepth["assumed"];
  /** How many plants went which way; left out where not told. */
  readonly ways?: Readonly<Partial<Record<RootWay, number>>>;
  /** Middle depth at which roots turned aside, mm; left out where not told. */
  readonly turnedAtMm?: number;
}

export interface DugDifference {
  readonly from: string;
  readonly to: string;
  /** Of both; where they were dug on different days, of the later group, and `sameDay` is false. */
  readonly date: string;
  readonly sameDay: boolean;
  /** Difference of the mean depths, mm. */
  readonly depthMm: Difference;
  /** How the plants spread, and how many there are of each case, or pairs; null where they tell no spread. */
  readonly layout: Layout | null;
  readonly now: number;
  /** Plants of each case, or pairs, that halve the interval. */
  readonly toHalve: Needed;
  /** To tell two inches, a usual difference (common practice, no source), from none, four times in five. */
  readonly toTellUsual: Needed;
}

export interface DigFitAnswer {
  readonly what: Fitted["kind"];
  readonly layer: string | null;
  readonly ownYear: boolean;
  readonly decides: boolean;
  readonly cases: readonly FittedCase[];
  readonly pairs: readonly FittedPair[];
  /** Cases that nothing is fitted of, where the dig decides. */
  readonly undug: readonly UndugCase[];
}

export interface UndugCase {
  readonly case: string;
  /** The case whose fit serves it, as its dense layer is the very same; null where its density or reading decide. */
  readonly as: string | null;
}

export interface FittedCase extends Omit<CaseFit, "draws" | "groups" | "caseIndex" | "stop"> {
  readonly case: string;
  readonly observedMm: number;
  /** The front at the fitted value on the day of the first dig. */
  readonly simulatedMm: number;
  readonly verdict: Reach;
  /** Where the roots stay, if they stopped. */
  readonly stop: Omit<StopFit, "draws">;
}

export interface FittedPair {
  readonly from: string;
  readonly to: string;
  /** Share of the draws in which roots of `to` find the easier way. */
  readonly easierShare: number;
  /** Fitted value of `to` less that of `from`. */
  readonly difference: { readonly value: number; readonly low: number; readonly high: number };
  readonly toldApart: boolean;
}

/** Two inches: common practice, no source. */
export const usualDifferenceMm = 50.8;
/** @param names of the cases, in the scenario's order */
export function digAnswer(dig: Dig, fit: DigFit | null, names: readonly string[]): DigAnswer {
  return {
    confidence: dig.confidence,
    paired: dig.paired,
    groups: dig.groups.map((group) => ({
      case: names[group.caseIndex]!,
      date: isoDate(group.day),
      rowPosition: group.rowPosition,
      depthMm: spreadOf(group.depthsMm),
      middleIntervalMm: intervalOf(middleDepth(group), dig.confidence),
      assumed: middleDepth(group).assumed,
      ...waysOf(group),
    })),
    differences: differencesOf(dig, names),
    fit: fit === null ? null : fitAnswer(dig, fit, names),
  };
}

function waysOf({ ways = [], turnedAtMm = [] }: DugGroup): Pick<DugAnswer, "ways" | "turnedAtMm"> {
  const counted = rootWays.flatMap((way) => {
    const count = ways.filter((one) => one === way).length;
    return count > 0 ? [[way, count] as const] : [];
  });
  return {
    ...(counted.length > 0 ? { ways: Object.fromEntries(counted) } : {}),
    ...(turnedAtMm.length > 0 ? { turnedAtMm: middleDepth({ depthsMm: turnedAtMm }).depthMm } : {}),
  };
}

/** Two-sided t about the middle, cut off at the surface. */
function intervalOf({ depthMm, errorMm, freedom }: MiddleDepth, confidence: number) {
  const reach = twoSidedT(confidence, freedom) * errorMm;
  return { low: Math.max(0, depthMm - reach), high: depthMm + reach };
}

/** Every case's groups against the first dug case's: of the same day where there is one, else the nearest. */
function differencesOf({ groups, paired, confidence }: Dig, names: readonly string[]): DugDifference[] {
  const firstCase = Math.min(...groups.map(({ caseIndex }) => caseIndex));
  const first = groups.filter(({ caseIndex }) => caseIndex === firstCase);
  return groups
    .filter(({ caseIndex }) => caseIndex !== firstCase)
    .map((group) => {
      const other = nearest(first, group.day);
      const pairs = group.depthsMm.map((depth, i) => [other.depthsMm[i]!, depth] as const);
      const inPairs = paired && other.day === group.day && other.depthsMm.length === group.depthsMm.length;
      const depthMm = inPairs
        ? pairedDifference(pairs, confidence)
        : welchDifference(other.depthsMm, group.depthsMm, confidence);
      return {
        from: names[firstCase]!,
        to: names[group.caseIndex]!,
        date: isoDate(group.day),
        sameDay: other.day === group.day,
        depthMm,
        ...howMany(inPairs ? pairs : null, other, group, depthMm),
      };
    });
}

function nearest(groups: readonly DugGroup[], day: number): DugGroup {
  return groups.reduce((best, one) => (Math.abs(one.day - day) < Math.abs(best.day - day) ? one : best));
}

function howMany(
  pairs: readonly (readonly [number, number])[] | null,
  from: DugGroup,
  to: DugGroup,
  { interval, confidence }: Difference,
): Pick<DugDifference, "layout" | "now" | "toHalve" | "toTellUsual"> {
  const now = Math.min(from.depthsMm.length, to.depthsMm.length);
  if (interval === null) return { layout: null, now, toHalve: null, toTellUsual: null };
  const layout: Layout =
    pairs === null
      ? { kind: "two sets", sds: [spreadOf(from.depthsMm).sd ?? 0, spreadOf(to.depthsMm).sd ?? 0] }
      : { kind: "one set", sd: spreadOf(pairs.map(([a, b]) => b - a)).sd ?? 0 };
  return {
    layout,
    now,
    toHalve: neededForReach(layout, (interval.high - interval.low) / 4, confidence),
    toTellUsual: neededToTell(layout, usualDifferenceMm, confidence),
  };
}

function fitAnswer(
  dig: Dig,
  { fitted, cases, servedBy, ownYear }: DigFit,
  names: readonly string[],
): DigFitAnswer {
  const known = cases.filter((one) => one !== null);
  const [first, ...others] = known;
  return {
    what: fitted.kind,
    layer: fitted.kind === "passage" ? fitted.layer : null,
    ownYear,
    decides: dig.drives,
    cases: known.map((one) => fittedCase(one, names)),
    pairs: first === undefined ? [] : others.map((one) => fittedPair(first, one, names, dig.confidence)),
    undug: dig.drives
      ? cases.flatMap((one, c) => {
          const place = servedBy[c] ?? null;
          return one === null ? [{ case: names[c]!, as: place === null ? null : names[place]! }] : [];
        })
      : [],
  };
}

function fittedCase(one: CaseFit, names: readonly string[]): FittedCase {
  const { draws: _, groups, caseIndex, stop, ...fit } = one;
  const [first] = groups;
  return {
    case: names[caseIndex]!,
    ...fit,
    observedMm: first!.middle.depthMm,
    simulatedMm: first!.frontMm,
    verdict: reachOf(fit),
    stop: { depthMm: stop.depthMm, low: stop.low, high: stop.high },
  };
}

function fittedPair(from: CaseFit, to: CaseFit, names: readonly string[], confidence: number): FittedPair {
  const differences = to.draws.map((value, d) => value - from.draws[d]!);
  const easierShare =
    differences.reduce((n, difference) => n + (difference > 0 ? 1 : 0), 0) / differences.length;
  const harderShare =
    differences.reduce((n, difference) => n + (difference < 0 ? 1 : 0), 0) / differences.length;
  const sorted = differences.sort();
  const tail = (1 - confidence) / 2;
  return {
    from: names[from.caseIndex]!,
    to: names[to.caseIndex]!,
    easierShare,
    difference: {
      value: to.value - from.value,
      low: quantile(sorted, tail),
      high: quantile(sorted, 1 - tail),
    },
    toldApart: Math.max(easierShare, harderShare) >= 1 - tail,
  };
}
