/**
 * The grass of 2020 at an open station (grassStation.ts) against its own readings: April to October as one run from the
 * spring's water, and every dry spell from its own measured start; each beside what needs no model of grass and soil.
 */
import { sumOver } from "../../src/season/ledger.ts";
import type { SoilLayer } from "../../src/soil/layers/layer.ts";
import { dayNumber } from "../../src/quantity/calendar.ts";
import {
  capacityMm,
  firstWholeDay,
  fittedLayers,
  measuredMm,
  probeEdgesMm,
  probes,
  readStation,
  runGrass,
  type Measured,
  type Station,
} from "./grassStation.ts";

/** Field capacity as this quantile of the year's readings. */
export const usualQuantile = 0.95;

/** The first probe that counts as deep: below 35 cm. */
export const deepFrom = 3;

export const thicknessMm = (probe: number): number => probeEdgesMm[probe + 1]! - probeEdgesMm[probe]!;
export const sum = (values: readonly number[]): number => values.reduce((total, each) => total + each, 0);
export const meanOf = (values: readonly number[]): number => sum(values) / values.length;
export const rootMeanSquare = (values: readonly number[]): number =>
  Math.sqrt(meanOf(values.map((each) => each * each)));

const measured = new Map<string, Measured>();
export function read(station: Station): Measured {
  const held = measured.get(station.name) ?? readStation(station);
  measured.set(station.name, held);
  return held;
}

export interface Season {
  readonly bias: number;
  readonly rmse: number;
  /** The same below 35 cm. */
  readonly deepRmse: number;
  /** Volume fraction by probe. */
  readonly biasByProbe: readonly number[];
  /** Modelled less measured storage, mm, by day with all five probes. */
  readonly differences: readonly number[];
  /** Rain less storage change, mm. */
  readonly lostMm: number;
  readonly balanceErrorMm: number;
}

/** What a forecast that knows neither grass nor soil layers misses by, mm. */
export interface Naive {
  readonly rmse: number;
  readonly deepRmse: number;
}

export interface GrassSeason {
  readonly ours: Season;
  readonly unchangedRmse: number;
  /** Storage left as it was in spring. */
  readonly unchanged: Naive;
  /** A straight bucket between the fitted limits: loss = reference ET x share of its capacity that is left. */
  readonly bucket: Naive;
  readonly lostMm: number;
}

export async function season(station: Station): Promise<GrassSeason> {
  const { weather, moisture } = read(station);
  const on = (month: number, day: number) => dayNumber(2020, month, day) - weather.firstDay;
  const start = firstWholeDay(moisture, on(4, 1));
  const startMm = measuredMm(moisture, start);
  let last = on(10, 31);
  while (Number.isNaN(measuredMm(moisture, last))) last--;
  const days = Array.from({ length: last - start }, (_, d) => start + 1 + d).filter(
    (day) => !Number.isNaN(measuredMm(moisture, day)),
  );
  const rainMm = sumOver(weather.rainMm, start + 1, last);
  const layers = fittedLayers(moisture, usualQuantile);
  const run = await runGrass(station, read(station), start + 1, last, usualQuantile);
  const storageMm = (day: number) => run.storageMm[day - start - 1]!;
  const differences = days.map((day) => storageMm(day) - measuredMm(moisture, day));
  const deepMm = (day: number) => sum(run.layerMm.slice(deepFrom).map((layer) => layer[day - start - 1]!));
  const ours: Season = {
    bias: meanOf(differences),
    rmse: rootMeanSquare(differences),
    deepRmse: rootMeanSquare(days.map((day) => deepMm(day) - measuredMm(moisture, day, deepFrom))),
    biasByProbe: probes.map((probe) =>
      meanOf(
        days.map(
          (day) => run.layerMm[probe]![day - start - 1]! / thicknessMm(probe) - moisture[probe]![day]!,
        ),
      ),
    ),
    differences,
    lostMm: rainMm + startMm - storageMm(last),
    balanceErrorMm: run.balanceErrorMm,
  };
  const missedBy = (of: (day: number) => number, from = 0) =>
    rootMeanSquare(days.map((day) => of(day) - measuredMm(moisture, day, from)));
  const startDeepMm = measuredMm(moisture, start, deepFrom);
  const unchanged = {
    rmse: missedBy(() => startMm),
    deepRmse: missedBy(() => startDeepMm, deepFrom),
  };
  const share = bucketShares(read(station), start, last, layers, startMm);
  const held = (day: number, from: number) => {
    const capacity = layers.slice(from);
    return wiltingMm(capacity) + share[day - start]! * capacityMm(capacity);
  };
  return {
    ours,
    unchangedRmse: unchanged.rmse,
    unchanged,
    bucket: {
      rmse: missedBy((day) => held(day, 0)),
      deepRmse: missedBy((day) => held(day, deepFrom), deepFrom),
    },
    lostMm: rainMm + startMm - measuredMm(moisture, last),
  };
}

export interface DrySpell {
  readonly measuredMm: number;
  readonly modelledMm: number;
  readonly measuredDeepMm: number;
  readonly modelledDeepMm: number;
  /** By the straight bucket. */
  readonly bucketMm: number;
  /** What leaves the metre at its foot. */
  readonly drainedMm: number;
}

/** Spells of 8 to 15 days from April to October with less than 1 mm a day and 3 mm in all; the first day only gives the start. */
export async function drySpells(station: Station, quantile = usualQuantile): Promise<DrySpell[]> {
  const { weather, moisture } = read(station);
  const layers = fittedLayers(moisture, quantile);
  const spells: DrySpell[] = [];
  let day = dayNumber(2020, 4, 1) - weather.firstDay;
  const end = dayNumber(2020, 10, 31) - weather.firstDay;
  while (day <= end) {
    let [after, rainMm] = [day, 0];
    while (after <= end && after - day < 15 && weather.rainMm[after]! < 1 && rainMm < 3)
      rainMm += weather.rainMm[after++]!;
    const [startMm, endMm] = [measuredMm(moisture, day), measuredMm(moisture, after - 1)];
    if (after - day >= 8 && !Number.isNaN(startMm) && !Number.isNaN(endMm)) {
      const run = await runGrass(station, read(station), day + 1, after - 1, quantile);
      const deepMm = sum(run.layerMm.slice(deepFrom).map((layer) => layer.at(-1)!));
      const startDeepMm = measuredMm(moisture, day, deepFrom);
      spells.push({
        measuredMm: startMm - endMm,
        modelledMm: startMm - run.storageMm.at(-1)!,
        measuredDeepMm: startDeepMm - measuredMm(moisture, after - 1, deepFrom),
        modelledDeepMm: startDeepMm - deepMm,
        bucketMm:
          startMm -
          wiltingMm(layers) -
          capacityMm(layers) * bucketShares(read(station), day, after - 1, layers, startMm).at(-1)!,
        drainedMm: sumOver(run.drainageMm, 0, after - 2 - day),
      });
    }
    day = Math.max(after, day + 1);
  }
  return spells;
}

/** Water of the layers at their fitted wilting points, mm. */
function wiltingMm(layers: readonly SoilLayer[]): number {
  return sum(layers.map(({ wiltingPoint, topMm, bottomMm }) => wiltingPoint * (bottomMm - topMm)));
}

/** Share of the bucket's capacity left on the evening of each day from `start` to `last`; what it cannot hold is lost. */
function bucketShares(
  { weather }: Measured,
  start: number,
  last: number,
  layers: readonly SoilLayer[],
  startMm: number,
): number[] {
  const capacity = capacityMm(layers);
  let share = Math.max(0, (startMm - wiltingMm(layers)) / capacity);
  const shares = [share];
  for (let day = start + 1; day <= last; day++) {
    share = Math.min(1, share + weather.rainMm[day]! / capacity);
    share -= Math.min(share, (weather.et0Mm[day]! * share) / capacity);
    shares.push(share);
  }
  return shares;
}
