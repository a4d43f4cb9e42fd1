import type { MonthDay } from "../quantity/calendar.ts";
import type { RootDescent } from "./rootDescent.ts";

/** A crop by its numbers, resolved: FAO-56 coefficients, stages, roots. Defaults come from `crops.ts`. */
export interface CropPlan {
  readonly name: string;
  readonly sowing: MonthDay;
  /** Stages on thermal time above `baseC`, or on calendar days. */
  readonly clock: "thermal time" | "days";
  /** Initial, development, mid-season, late season: days (clock "days") or degree days C above `baseC`. */
  readonly stageLengths: readonly [number, number, number, number];
  /** The same stages in calendar days: the clock of a record without temperatures, and what the longest season is taken from. */
  readonly stageDaysFallback: readonly [number, number, number, number];
  readonly baseC: number;
  /** A winter crop stays in its first stage until this day: it needs cold and lengthening days; null for others. */
  readonly springFrom: MonthDay | null;
  /** Basal coefficients for the standard climate (FAO-56 Table 17). */
  readonly kcbInitial: number;
  readonly kcbMid: number;
  readonly kcbEnd: number;
  /** Largest height, mm. */
  readonly heightMm: number;
  /** Below this daily mean the crop sleeps (winter crops); null for crops that do not. */
  readonly dormantBelowC: number | null;
  readonly kcbDormant: number;
  /** Leaf area against a full stand, 0 to 1: thin populations, wide rows (FAO-56 eq. 97, Box 17). 1 = full. */
  readonly standShare: number;
  readonly sowingDepthMm: number;
  /** Deepest rooting with nothing in the way. */
  readonly maxRootDepthMm: number;
  /** How the front goes down to it, and until which stage. */
  readonly descent: RootDescent;
  /** Front velocity the user gives, mm a day, until descent ends; null = as `descent` says. */
  readonly frontVelocityMmPerDay: number | null;
  /** Share of a slice's available water a root can take in a day (Monteith 1986; Dardanelli et al. 2004). */
  readonly uptakeSharePerDay: number;
  /** Down to here roots are dense and can take the whole share. */
  readonly denseRootsMm: number;
  /** Beneath that, the depth over which the share falls to half. */
  readonly uptakeHalvingMm: number;
  /** FAO-56 p at 5 mm a day; only the root-zone-average uptake uses it. */
  readonly depletionFraction: number;
}

/** Sod: its roots are there when the season begins, as deep as they go. It has no seed, no flowering that decides, no grain. */
export function isSod({ sowingDepthMm, maxRootDepthMm }: CropPlan): boolean {
  return sowingDepthMm >= maxRootDepthMm;
}

/** Sod whose roots go as deep as is stated, from the first day. */
export function sodTo(depthMm: number, crop: CropPlan): CropPlan {
  return writtenOut({ ...crop, sowingDepthMm: depthMm, maxRootDepthMm: depthMm });
}

/**
 * The same crop written out field by field. Put together from what differs from crop to crop, each would be an object of a
 * layout of its own, and the runtime would compile the daily loop anew for each.
 */
export function writtenOut(crop: CropPlan): CropPlan {
  return {
    name: crop.name,
    sowing: crop.sowing,
    clock: crop.clock,
    stageLengths: crop.stageLengths,
    stageDaysFallback: crop.stageDaysFallback,
    baseC: crop.baseC,
    springFrom: crop.springFrom,
    kcbInitial: crop.kcbInitial,
    kcbMid: crop.kcbMid,
    kcbEnd: crop.kcbEnd,
    heightMm: crop.heightMm,
    dormantBelowC: crop.dormantBelowC,
    kcbDormant: crop.kcbDormant,
    standShare: crop.standShare,
    sowingDepthMm: crop.sowingDepthMm,
    maxRootDepthMm: crop.maxRootDepthMm,
    descent: crop.descent,
    frontVelocityMmPerDay: crop.frontVelocityMmPerDay,
    uptakeSharePerDay: crop.uptakeSharePerDay,
    denseRootsMm: crop.denseRootsMm,
    uptakeHalvingMm: crop.uptakeHalvingMm,
    depletionFraction: crop.depletionFraction,
  };
}
