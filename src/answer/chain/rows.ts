import { dayNumber, yearOf } from "../../quantity/calendar.ts";
import { sumOver } from "../../season/ledger.ts";
import type { SeasonTotals } from "../../season/season.ts";
import type { Slices } from "../../soil/layers/layer.ts";
import type { DailyWeather } from "../../weather/records/record.ts";
import type { CaseAfterRun } from "../runs/run.ts";

/** One season of one case with the fallow before it: what `seasons` shows and what the answer of a chain is made of. Water in mm. */
export interface SeasonRow {
  readonly crop: string;
  /** Day numbers: the first of the fallow (or of the season), sowing, and the last of the crop. */
  readonly firstDay: number;
  readonly sowingDay: number;
  readonly harvestDay: number;
  /** False where the season ended before the crop was ripe. */
  readonly ripe: boolean;
  /** Of the calendar year of sowing; null where the record does not hold it whole. */
  readonly yearRainMm: number | null;
  /** Water above wilting point on the first morning, and on the morning of sowing by layer as described. */
  readonly storedAtFirstMm: number;
  /** All water in the column on the first morning, and on the evening of harvest. */
  readonly waterAtFirstMm: number;
  readonly waterLeftMm: number;
  readonly storedAtSowingMmByLayer: readonly number[];
  readonly fallowRunoffMm: number;
  readonly fallowEvaporationMm: number;
  readonly fallowDrainageMm: number;
  /** How deep the soil was wetter at sowing than on the first morning; null without fallow. */
  readonly depthWettedMm: number | null;
  readonly yieldKgPerHa: number;
  /** Sums from sowing to maturity. */
  readonly totals: SeasonTotals;
  /** What the balance of the whole row misses, snow and the water in the soil counted: nothing but rounding. */
  readonly residualMm: number;
}

/** Wetter by this share of the volume counts as wetted: less is within what a probe or a hand can tell. Ours. */
const tellingWetting = 0.01;

/** A run as a row; read before the next run. */
export function seasonRow(
  after: CaseAfterRun,
  startSnowMm: number,
  weather: DailyWeather,
  yieldKgPerHa: number,
): SeasonRow {
  const { course, ledger, totals, slices, firstIndex, startWaterMm, plan } = after;
  const { sowingDay, maturityDay } = course;
  const fallow = (flux: Float64Array) => sumOver(flux, 0, sowingDay - 1);
  const firstDay = weather.firstDay + firstIndex;
  return {
    crop: plan.crop.name,
    firstDay,
    sowingDay: firstDay + sowingDay,
    harvestDay: firstDay + maturityDay,
    ripe: course.ripe,
    yearRainMm: rainOfYear(weather, yearOf(firstDay + sowingDay)),
    storedAtFirstMm: availableMm(startWaterMm, slices),
    waterAtFirstMm: allMm(startWaterMm, slices),
    waterLeftMm: allMm(after.waterAtEndMmBySlice, slices),
    storedAtSowingMmByLayer: availableByLayer(after),
    fallowRunoffMm: fallow(ledger.runoffMm),
    fallowEvaporationMm: fallow(ledger.evaporationMm),
    fallowDrainageMm: fallow(ledger.drainageMm),
    depthWettedMm: sowingDay > 0 ? wettedToMm(after) : null,
    yieldKgPerHa,
    totals,
    residualMm: residualOf(after, startSnowMm),
  };
}

/** Null where the weather does not hold the whole year. */
export function rainOfYear({ firstDay, days, rainMm }: DailyWeather, year: number): number | null {
  const from = dayNumber(year, 1, 1) - firstDay;
  const to = dayNumber(year + 1, 1, 1) - firstDay;
  return from < 0 || to > days ? null : sumOver(rainMm, from, to - 1);
}

function availableMm(waterMm: Float64Array, { count, wiltingPointMm }: Slices): number {
  let mm = 0;
  for (let j = 0; j < count; j++) mm += Math.max(0, waterMm[j]! - wiltingPointMm[j]!);
  return mm;
}

function allMm(waterMm: Float64Array, { count }: Slices): number {
  let mm = 0;
  for (let j = 0; j < count; j++) mm += waterMm[j]!;
  return mm;
}

/** Without fallow the water on the first morning is that at sowing. */
function atSowing({ course, startWaterMm, waterAtSowingMmBySlice }: CaseAfterRun): Float64Array {
  return course.sowingDay === 0 ? startWaterMm : waterAtSowingMmBySlice;
}

function availableByLayer(after: CaseAfterRun): number[] {
  const { slices, plan } = after;
  const water = atSowing(after);
  const byLayer = plan.layers.map(() => 0);
  for (let j = 0; j < slices.count; j++)
    byLayer[slices.layer[j]!]! += Math.max(0, water[j]! - slices.wiltingPointMm[j]!);
  return byLayer;
}

/** Bottom of the deepest slice that is wetter at sowing than on the first morning; 0 where none is. */
function wettedToMm(after: CaseAfterRun): number {
  const { slices, startWaterMm } = after;
  const water = atSowing(after);
  for (let j = slices.count - 1; j >= 0; j--)
    if (water[j]! - startWaterMm[j]! > tellingWetting * slices.thicknessMm[j]!)
      return slices.topMm[j]! + slices.thicknessMm[j]!;
  return 0;
}

function residualOf(after: CaseAfterRun, startSnowMm: number): number {
  const { ledger, slices, startWaterMm, waterAtEndMmBySlice, left, course } = after;
  const all = (flux: Float64Array) => sumOver(flux, 0, course.maturityDay);
  let stored = left.snowMm - startSnowMm;
  for (let j = 0; j < slices.count; j++) stored += waterAtEndMmBySlice[j]! - startWaterMm[j]!;
  const come = all(ledger.rainMm) + all(ledger.snowfallMm) + all(ledger.snowCaughtMm);
  const gone =
    all(ledger.runoffMm) + all(ledger.evaporationMm) + all(ledger.transpirationMm) + all(ledger.drainageMm);
  return stored - (come - gone);
}
