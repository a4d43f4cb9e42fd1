/**
 * Drying and drainage of a profile on open measured data (../shared/data, see its SOURCES.md): soil moisture under grass at
 * eight stations of the U.S. Climate Reference Network in 2020, down to 1 m. Skipped where the folder is absent.
 *
 * Not a blind test: water limits are fitted to the same year's readings (tests/support/grassStation.ts), and the uptake of the
 * crop table's perennial grass to these eight stations together. The grass is FAO-56's extensive pasture rooted to 1 m everywhere,
 * there is no litter on the ground, and the network has no wind (2 m/s). A probe is good to about 0.03 (memory), 30 mm in the
 * metre; it speaks for a point. At La Junta the deep readings follow soil temperature (r = 0.99); at Pierre readings reach 0.59,
 * more than such soil's pores.
 */
import { existsSync } from "node:fs";
import tables from "../../../data-reference/season-soil-moisture.json" with { type: "json" };
import { describe, expect, test } from "vitest";
import { sumOver } from "../../../src/season/ledger.ts";
import { isAsleep } from "../../../src/crop/dormancy.ts";
import { mayDrainAnywhere, soakAndDrain } from "../../../src/season/drainage.ts";
import type { SoilLayer } from "../../../src/soil/layers/layer.ts";
import { asResolved, cutSlices } from "../../../src/soil/layers/slices.ts";
import { dayNumber, isoDate } from "../../../src/quantity/calendar.ts";
import type { DailyWeather } from "../../../src/weather/records/record.ts";
import {
  drySpells,
  meanOf,
  read,
  rootMeanSquare,
  season,
  sum,
  thicknessMm,
  usualQuantile,
} from "../../support/grassSeason.ts";
import {
  capacityMm,
  dataFolder,
  fittedLayers,
  measuredMm,
  probeDepthsMm,
  probeEdgesMm,
  runGrass,
  stations,
  type Station,
} from "../../support/grassStation.ts";

const absent = !existsSync(dataFolder);
const orSkipped = absent ? ` (skipped: ${dataFolder} is absent)` : "";

/** Field capacity as this quantile of the year's readings; the answer on drainage is asked of the lower ones too. */
const quantiles = [0.85, 0.9, usualQuantile];

/** Readings step by 0.001: half a millimetre in the metre, at both ends of a spell. */
const readingMm = 1;
const round = (value: number, places = 0): string => value.toFixed(places);

describe.skipIf(absent)(
  `perennial grass of the crop table from 1 April to 31 October 2020${orSkipped}`,
  async () => {
    const all = absent
      ? []
      : await Promise.all(
          stations.map(async (station) => ({
            station,
            ...(await season(station)),
            spells: await drySpells(station),
          })),
        );

    test.each(all)("$station.name", ({ station, ours, unchangedRmse, lostMm, spells }) => {
      const losses = (which: "measuredMm" | "modelledMm") => sum(spells.map((spell) => spell[which]));
      console.info(
        `${station.name}, storage 0-100 cm, ${ours.differences.length} days: ` +
          `bias ${round(ours.bias)}, RMSE ${round(ours.rmse)} mm; storage left as it was: RMSE ${round(unchangedRmse)}; ` +
          `bias by depth ${ours.biasByProbe.map((bias, p) => `${probeDepthsMm[p]! / 10} cm ${round(bias, 3)}`).join(", ")}; ` +
          `water lost by the end ${round(lostMm)}, modelled ${round(ours.lostMm)} mm; ` +
          `in ${spells.length} dry spells, each from its measured start, lost ${round(losses("measuredMm"))}, modelled ${round(losses("modelledMm"))} mm`,
      );
      expect(ours.balanceErrorMm).toBeLessThan(1e-9);
      expect(ours.differences.length).toBeGreaterThan(180);
      // Rain less storage change. The coefficient of pasture runs from 0.3 to 1 in FAO-56's table, probes add 30 mm to some 300.
      expect(Math.abs(ours.lostMm - lostMm)).toBeLessThan(0.25 * lostMm);
      // Nobody who knows the limits and nothing else can be further off all season than the water between them.
      expect(ours.rmse).toBeLessThan(capacityMm(fittedLayers(read(station).moisture, usualQuantile)));
    });

    test("over all stations storage within 36 mm, nearer than leaving the spring's as it was", () => {
      const pooled = (of: (each: (typeof all)[number]) => number) => rootMeanSquare(all.map(of));
      const model = pooled(({ ours }) => ours.rmse);
      const unchanged = pooled(({ unchangedRmse }) => unchangedRmse);
      console.info(`all stations: RMSE ${round(model)} mm, storage left as it was ${round(unchanged)}`);
      expect(all.length).toBe(stations.length);
      expect(model).toBeLessThanOrEqual(36);
      expect(model).toBeLessThan(unchanged);
    });

    test("dry spells, each from its measured water: modeled loss within 1.6 times the measured, deep loss as well", () => {
      const spells = all.flatMap((each) => each.spells);
      const ratio = meanOf(spells.map((s) => s.modelledMm)) / meanOf(spells.map((s) => s.measuredMm));
      const deep = meanOf(spells.map((s) => s.modelledDeepMm)) / meanOf(spells.map((s) => s.measuredDeepMm));
      console.info(
        `${spells.length} dry spells: modeled over measured loss ${round(ratio, 2)} in the metre, ${round(deep, 2)} below 35 cm`,
      );
      expect(spells.length).toBeGreaterThan(40);
      for (const each of [ratio, deep]) {
        expect(each).toBeGreaterThan(1 / 1.6);
        expect(each).toBeLessThan(1.6);
      }
    });

    /** No drainage can be more than all that left the metre, uptake and evaporation included. */
    test("drainage in a dry spell is never more than all that was lost", () => {
      const spells = all.flatMap((each) => each.spells);
      expect(spells.filter((s) => s.drainedMm > Math.max(0, s.measuredMm) + readingMm)).toEqual([]);
    });
  },
);

/**
 * Which is truer, drainage that stops at field capacity or that goes on? After a wetting of the 50 or 100 cm probe, while the
 * grass sleeps, how far does that layer fall from the third day to the seventeenth? Both ways start from the third day's readings.
 */
describe.skipIf(absent)(`deep water after a wetting, grass asleep${orSkipped}`, () => {
  test.each(quantiles)("field capacity as the %d quantile of the readings", async (quantile) => {
    const falls = (await Promise.all(stations.map((station) => quietRecessions(station, quantile)))).flat();
    if (quantile === usualQuantile) for (const { line } of falls) console.info(line);
    const mean = (of: (each: Recession) => number) => meanOf(falls.map(of));
    const error = (of: (each: Recession) => number, without?: string) =>
      rootMeanSquare(falls.filter(({ name }) => name !== without).map((each) => of(each) - each.measuredMm));
    const [stop, slow] = [error(({ stopMm }) => stopMm), error(({ slowMm }) => slowMm)];
    console.info(
      `field capacity ${quantile}: ${falls.length} recessions, mean fall day 3 to 17: measured ${round(
        mean((f) => f.measuredMm),
        1,
      )} mm, ` +
        `stopping ${round(
          mean((f) => f.stopMm),
          1,
        )} (RMSE ${round(stop, 1)}), slow ${round(
          mean((f) => f.slowMm),
          1,
        )} (RMSE ${round(slow, 1)})`,
    );
    expect(falls.length).toBeGreaterThanOrEqual(6);
    // The readings step by 0.001: 0.4 mm at 50 cm. A fall beyond that is water that goes on leaving.
    expect(mean((f) => f.measuredMm)).toBeGreaterThan(0.4);
    // What the default rests on, whichever station is left out; were it the other way round, the default should be too.
    for (const without of [undefined, ...stations.map(({ name }) => name)])
      expect(error(({ stopMm }) => stopMm, without)).toBeLessThan(error(({ slowMm }) => slowMm, without));
  });
});

interface Recession {
  readonly name: string;
  readonly measuredMm: number;
  readonly stopMm: number;
  readonly slowMm: number;
  readonly line: string;
}

/**
 * Peaks of the 50 and 100 cm probes: 0.01 above the last 30 days' least, above half of the available water at the fitted
 * limits, highest from 5 days before to 17 after, under a sleeping cover with less than 10 mm of rain in those 17 days.
 */
async function quietRecessions(station: Station, fieldCapacityQuantile: number): Promise<Recession[]> {
  const [from, to] = [3, 17];
  const { weather, moisture } = read(station);
  const layers = fittedLayers(moisture, fieldCapacityQuantile);
  const usual = fittedLayers(moisture, usualQuantile);
  const [greenFrom, greenTo] = greenSeason(weather);
  const isQuietGrass = (day: number) => day < greenFrom || day > greenTo || isAsleep(weather, day, 5);
  const found: Recession[] = [];
  for (const probe of [3, 4]) {
    const readings = moisture[probe]!;
    // The same events whatever the quantile asked.
    const halfway = (usual[probe]!.fieldCapacity + usual[probe]!.wiltingPoint) / 2;
    for (let day = 5; day + to < weather.days; day++) {
      const around = readings.subarray(day - 5, day + to + 1);
      const least = Math.min(...readings.subarray(Math.max(0, day - 30), day));
      const isPeak = Math.max(...around) === readings[day]! && readings[day]! - least >= 0.01;
      const isQuiet =
        Array.from({ length: to + 1 }, (_, d) => day + d).filter((d) => !isQuietGrass(d)).length <= to / 2 &&
        sumOver(weather.rainMm, day + 1, day + to) < 10;
      const startMm = measuredMm(moisture, day + from);
      if (!isPeak || !isQuiet || readings[day]! < halfway || Number.isNaN(startMm)) continue;
      const run = await runGrass(station, read(station), day + from + 1, day + to, fieldCapacityQuantile);
      const startsMm = readings[day + from]! * thicknessMm(probe);
      const stopMm = startsMm - run.layerMm[probe]!.at(-1)!;
      const slowMm =
        startsMm -
        drainedOnMm(
          layers,
          moisture.map((of) => of[day + from]!),
          probe,
          to - from,
        );
      const measuredFallMm = (readings[day + from]! - readings[day + to]!) * thicknessMm(probe);
      const et0Mm = sumOver(weather.et0Mm, day + from + 1, day + to) / (to - from);
      found.push({
        name: station.name,
        measuredMm: measuredFallMm,
        stopMm,
        slowMm,
        line:
          `${station.name}, ${probeDepthsMm[probe]! / 10} cm, peak ${isoDate(weather.firstDay + day)}: ` +
          `ET0 ${round(et0Mm, 1)} mm/day, fall day 3 to 17 measured ${round(measuredFallMm, 1)}, stopping ${round(stopMm, 1)}, slow ${round(slowMm, 1)} mm`,
      });
      day += to; // one event, one recession
    }
  }
  return found;
}

/** First and last day of the year in which grass is green, by its killing frosts. */
function greenSeason({ tMinC, firstDay, days }: DailyWeather): [number, number] {
  const { killingC, daysAroundKilling } = tables.greenSeason;
  const middle = dayNumber(2020, 7, 15) - firstDay;
  let spring = middle;
  while (spring > 0 && tMinC[spring]! > killingC) spring--;
  let autumn = middle;
  while (autumn < days - 1 && tMinC[autumn]! > killingC) autumn++;
  return [spring - daysAroundKilling, autumn + daysAroundKilling];
}

/** What a probe's layer holds after so many days without rain or roots where K(theta) goes on below field capacity under 35 cm. */
function drainedOnMm(
  layers: readonly SoilLayer[],
  readings: readonly number[],
  probe: number,
  days: number,
): number {
  const slices = cutSlices(layers, 25, asResolved, 100);
  const water = slices.thicknessMm.map((mm, j) =>
    Math.min(slices.saturationMm[j]!, mm * readings[slices.layer[j]!]!),
  );
  const goesOn = {
    ...slices,
    fieldCapacityMm: slices.fieldCapacityMm.map((mm, j) =>
      slices.topMm[j]! < probeEdgesMm[3] ? mm : slices.wiltingPointMm[j]!,
    ),
  };
  const soak = { refusedMm: 0, deepDrainageMm: 0 };
  for (let day = 0; day < days; day++) soakAndDrain(water, 0, goesOn, mayDrainAnywhere(slices.count), soak);
  return water.reduce((sum, mm, j) => (slices.layer[j] === probe ? sum + mm : sum), 0);
}
