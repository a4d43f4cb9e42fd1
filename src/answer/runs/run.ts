import type { CropCourse } from "../../crop/course.ts";
import { cropCourse } from "../../crop/cropCourse.ts";
import type { Case } from "../../scenario/scenario.ts";
import { makeLedger } from "../../season/ledger.ts";
import type { Ledger, SeasonInput, SeasonTotals, UptakeRule } from "../../season/season.ts";
import { makeWorkspace, simulate, type Workspace } from "../../season/simulate.ts";
import type { Slices } from "../../soil/layers/layer.ts";
import { cutSlices } from "../../soil/layers/slices.ts";
import { startingWaterMm } from "../../soil/layers/startingWater.ts";
import type { DailyWeather } from "../../weather/records/record.ts";
import type { RunDraws } from "./draws.ts";
import { rootingOfCase, stoppedAt, type FirstFront } from "./rootingOfCase.ts";

/** What one case is before its run: nothing in it depends on the rain. */
export interface ReadyCase {
  readonly plan: Case;
  readonly slices: Slices;
  readonly startWaterMm: Float64Array;
  /** Water in the snow that lies then, mm; left out: none. */
  readonly startSnowMm?: number;
  readonly uptake: UptakeRule;
  /** Where a dig says that these roots stop, mm; left out or null: nowhere but where they are stated to. */
  readonly stopMm?: number | null;
  readonly course: CropCourse;
  /** Index in the weather of the run's first day. */
  readonly firstIndex: number;
  /** Of the first case, where its stand is thin: the course of a full one, for the evaporation that yields are counted with. */
  readonly fullStandCourse: CropCourse | null;
  /** What was measured in the middle of the run; left out: nothing. */
  readonly found?: SeasonInput["found"];
}

/** Arrays of one case that run after run is written into. */
export interface CaseBuffers {
  ledger: Ledger;
  days: number;
  readonly workspace: Workspace;
  stretchedFrontMm: Float64Array;
}

/** A case after its run. The arrays are those of the buffers: read them before the next run. */
export interface CaseAfterRun extends Omit<ReadyCase, "fullStandCourse" | "found" | "stopMm"> {
  readonly ledger: Ledger;
  readonly totals: SeasonTotals;
  readonly waterAtSowingMmBySlice: Float64Array;
  /** What the run leaves: water by slice, straw, snow. */
  readonly waterAtEndMmBySlice: Float64Array;
  readonly left: Workspace["left"];
  /** Evaporation from sowing to maturity of the first case with a full stand: the same for every case of a run. See `yieldOfRun`. */
  readonly ordinaryEvaporationMm: number;
}

/** A case's soil in one run, cut and filled, and how roots draw on it: nothing in it depends on the weather. */
export type ReadySoil = Pick<ReadyCase, "slices" | "startWaterMm" | "uptake">;

/** Cuts the soil and fills it with one run's draws; the same draws for every case. */
export function readySoil(plan: Case, draws: RunDraws, deepBelowMm: number): ReadySoil {
  const slices = cutSlices(plan.layers, plan.sliceThicknessMm, draws, plan.ground.evaporatingDepthMm);
  const startWaterMm = startingWaterMm(slices, plan.layers, plan.startingWater, {
    deepShift: draws.deepShift,
    deepBelowMm,
  });
  return { slices, startWaterMm, uptake: drawnUptake(plan.uptake, draws.deepUptake) };
}

/** Field by field: the daily loop is compiled for one layout of this object. */
export function drawnUptake(rule: UptakeRule, deepUptake: number): UptakeRule {
  return {
    rule: rule.rule,
    sharePerDay: rule.sharePerDay,
    denseRootsMm: rule.denseRootsMm,
    halvingMm: rule.halvingMm * deepUptake,
    depletionFraction: rule.depletionFraction,
  };
}

/** The crop's course in a run that begins `fallowDays` before sowing. */
export function courseOf(plan: Case, weather: DailyWeather, sowingIndex: number): CropCourse {
  return cropCourse(plan.crop, weather, sowingIndex - plan.fallowDays, sowingIndex);
}

/** Where runs are written, one over the other: room for each case. */
export interface RunBuffers {
  readonly cases: CaseBuffers[];
  /** Whether the ledger keeps the water of every slice, day by day: for one run to be looked at, not for its sums. */
  readonly keepsWater: boolean;
}

export function makeRunBuffers(keeps: "sums" | "water by slice" = "water by slice"): RunBuffers {
  return { cases: [], keepsWater: keeps === "water by slice" };
}

/** Runs every case of a scenario through one weather year, the first case first. */
export function runCases(
  ready: readonly ReadyCase[],
  weather: DailyWeather,
  buffers: RunBuffers,
): CaseAfterRun[] {
  const after: CaseAfterRun[] = [];
  let first: FirstFront | null = null;
  let ordinaryEvaporationMm = 0;
  ready.forEach((one, c) => {
    const { plan, slices, course } = one;
    const days = course.maturityDay + 1;
    const place = roomFor(buffers, c, days, slices.count);
    const stated = rootingOfCase(plan.rooting, first, course, bottomMm(slices), place.stretchedFrontMm);
    const rooting = stoppedAt(stated, one.stopMm ?? null);
    const input: SeasonInput = {
      slices,
      startWaterMm: one.startWaterMm,
      startSnowMm: one.startSnowMm ?? 0,
      weather,
      firstIndex: one.firstIndex,
      course,
      ground: plan.ground,
      rooting,
      uptake: one.uptake,
      evaporation: plan.evaporation,
      found: one.found ?? null,
    };
    const totals = simulate(input, place.ledger, place.workspace);
    if (c === 0)
      ordinaryEvaporationMm = fullStandTotals(one, input, totals, buffers, ready.length).evaporationMm;
    first ??= {
      rooting: plan.rooting,
      frontMmByDay: place.ledger.frontMm,
      sowingDay: course.sowingDay,
      maturityDay: course.maturityDay,
      finalDepthMm: totals.finalRootDepthMm,
    };
    const { waterAtSowingMmBySlice, waterMmBySlice, left } = place.workspace;
    after.push({
      plan,
      slices,
      startWaterMm: one.startWaterMm,
      uptake: one.uptake,
      course,
      firstIndex: one.firstIndex,
      ledger: place.ledger,
      totals,
      waterAtSowingMmBySlice,
      waterAtEndMmBySlice: waterMmBySlice,
      left,
      ordinaryEvaporationMm,
    });
  });
  return after;
}

/** What the first case comes to with a full stand: its own totals where it has one. */
function fullStandTotals(
  { fullStandCourse, slices }: ReadyCase,
  input: SeasonInput,
  own: SeasonTotals,
  buffers: RunBuffers,
  freePlace: number,
): SeasonTotals {
  if (fullStandCourse === null) return own;
  const place = roomFor(buffers, freePlace, fullStandCourse.maturityDay + 1, slices.count);
  return simulate({ ...input, course: fullStandCourse }, place.ledger, place.workspace);
}

/** The case's arrays in the buffers, made larger only when a run is longer than any before it. */
function roomFor({ cases, keepsWater }: RunBuffers, c: number, days: number, count: number): CaseBuffers {
  const here = cases[c];
  if (here !== undefined && here.days >= days && here.workspace.waterMmBySlice.length >= count) return here;
  const roomyDays = days + 60;
  const made: CaseBuffers = {
    ledger: makeLedger(roomyDays, keepsWater ? count : 0),
    days: roomyDays,
    workspace: makeWorkspace(count),
    stretchedFrontMm: new Float64Array(roomyDays),
  };
  cases[c] = made;
  return made;
}

export function bottomMm({ count, topMm, thicknessMm }: Slices): number {
  return topMm[count - 1]! + thicknessMm[count - 1]!;
}
