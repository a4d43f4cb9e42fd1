/**
 * Stations of the U.S. Climate Reference Network as a scenario file: their own record, water limits taken from its readings, the
 * perennial grass of our crop table. Rules and numbers stand in data-reference/season-soil-moisture.json.
 */
import { readFileSync } from "node:fs";
import tables from "../../data-reference/season-soil-moisture.json" with { type: "json" };
import { defaultPlan, findCrop } from "../../src/crop/crops.ts";
import type { SoilLayer } from "../../src/soil/layers/layer.ts";
import { resolveLayer } from "../../src/soil/layers/resolveLayer.ts";
import { centralTexture, textureClasses, type TextureClass } from "../../src/soil/equations/texture.ts";
import { estimateWaterLimits } from "../../src/soil/equations/waterLimits.ts";
import { dayNumber, isoDate, yearOf } from "../../src/quantity/calendar.ts";
import { toDailyWeather } from "../../src/weather/et/dailyWeather.ts";
import { fillGaps } from "../../src/weather/records/gaps.ts";
import { readWeather } from "../../src/weather/records/readers/index.ts";
import type { DailyWeather } from "../../src/weather/records/record.ts";
import { bySeason, noSpread } from "../../truth/seasons.ts";

export const dataFolder = "../shared/data";
export const stations = tables.stations;
export type Station = (typeof stations)[number];

/** Probes at 5, 10, 20, 50 and 100 cm; each stands for the soil half-way to its neighbours, the last for that down to 1 m. */
export const probeDepthsMm = [50, 100, 200, 500, 1000] as const;
export const probeEdgesMm = [0, 75, 150, 350, 750, 1000] as const;
export const probes = probeDepthsMm.map((_, probe) => probe);

export interface Measured {
  readonly weather: DailyWeather;
  /** Volume fraction by probe, then by day of the weather; NaN where missing. */
  readonly moisture: readonly Float64Array[];
  /** C by probe and day; null where the file has none. */
  readonly soilC: readonly Float64Array[] | null;
}

export function readStation({ file, latitudeDeg, elevationM }: Station): Measured {
  const text = readFileSync(`${dataFolder}/${file}`, "utf8");
  const { record } = fillGaps(readWeather(text, { fileName: file }));
  const site = { latitudeDeg, elevationM, setting: "inland" as const };
  const weather = toDailyWeather(record, site, { method: "penman-monteith", normals: null });
  const lines = text.split(/\r?\n/).filter((line) => line !== "" && !line.startsWith("#"));
  const fixed = file.endsWith(".txt");
  const rows = fixed
    ? lines.map((line) => line.trim().split(/ +/))
    : lines.slice(1).map((line) => line.split(","));
  const series = (first: number) =>
    probes.map((probe) => {
      const values = new Float64Array(weather.days).fill(NaN);
      for (const cells of rows) {
        const [year, month, day] = /(\d{4})-?(\d\d)-?(\d\d)/
          .exec(cells[fixed ? 1 : 0]!)!
          .slice(1)
          .map(Number);
        const cell = cells[first + probe]!;
        const at = dayNumber(year!, month!, day!) - weather.firstDay;
        if (cell !== "" && Number(cell) > -90) values[at] = Number(cell);
      }
      return values;
    });
  return { weather, moisture: series(fixed ? 18 : 8), soilC: fixed ? series(23) : null };
}

/** Water of the probed metre on a day, mm; NaN unless all five probes speak. `from`: first probe counted. */
export function measuredMm(moisture: readonly Float64Array[], day: number, from = 0): number {
  let sum = 0;
  for (const probe of probes.slice(from)) {
    sum += moisture[probe]![day]! * (probeEdgesMm[probe + 1]! - probeEdgesMm[probe]!);
  }
  return sum;
}

/** First day from `day` on with all five probes. */
export function firstWholeDay(moisture: readonly Float64Array[], day: number): number {
  let at = day;
  while (Number.isNaN(measuredMm(moisture, at))) at++;
  return at;
}

export function quantile(values: Float64Array, share: number): number {
  const held = Array.from(values)
    .filter((value) => !Number.isNaN(value))
    .sort((a, b) => a - b);
  return held[Math.round(share * (held.length - 1))]!;
}

/**
 * Layers with limits fitted to the record: field capacity a high quantile of the year's readings, wilting point the 2 %
 * quantile. Evaporation takes the uppermost probe below wilting point, so it has that of the one beneath.
 * Saturation and conductivity: Saxton & Rawls for the texture class whose two limits are nearest.
 */
function fittedDescriptions(moisture: readonly Float64Array[], fieldCapacityQuantile: number) {
  return probes.map((probe) => {
    const fieldCapacity = quantile(moisture[probe]!, fieldCapacityQuantile);
    const wiltingPoint = quantile(moisture[Math.max(1, probe)]!, 0.02);
    return {
      name: `${probeDepthsMm[probe]! / 10} cm`,
      topMm: probeEdgesMm[probe]!,
      bottomMm: probeEdgesMm[probe + 1]!,
      texture: nearestClass(wiltingPoint, fieldCapacity),
      fieldCapacity,
      wiltingPoint,
      openShare: 1,
    };
  });
}

export function fittedLayers(moisture: readonly Float64Array[], fieldCapacityQuantile: number): SoilLayer[] {
  return fittedDescriptions(moisture, fieldCapacityQuantile).map(
    (description, probe) => resolveLayer(description, `layers[${probe}]`).layer,
  );
}

function nearestClass(wiltingPoint: number, fieldCapacity: number): TextureClass {
  let [nearest, least]: [TextureClass, number] = ["loam", Infinity];
  for (const name of textureClasses) {
    const limits = estimateWaterLimits({
      ...centralTexture(name),
      organicMatterPercent: 1.5,
      bulkDensityKgPerM3: null,
      gravelVolumeFraction: 0,
    });
    const away = Math.hypot(limits.wiltingPoint - wiltingPoint, limits.fieldCapacity - fieldCapacity);
    if (away < least) [nearest, least] = [name, away];
  }
  return nearest;
}

/** Water between the fitted limits of the metre, mm. */
export function capacityMm(layers: readonly SoilLayer[]): number {
  return layers.reduce(
    (sum, { fieldCapacity, wiltingPoint, topMm, bottomMm }) =>
      sum + (fieldCapacity - wiltingPoint) * (bottomMm - topMm),
    0,
  );
}

export interface Modelled {
  /** Evening storage of each probe's layer, mm, by probe and day of the run. */
  readonly layerMm: readonly Float64Array[];
  readonly storageMm: Float64Array;
  readonly drainageMm: Float64Array;
  readonly balanceErrorMm: number;
}

/** When the grass of the crop table begins its year, and its first two stages, days. */
const grass = defaultPlan(findCrop("perennial grass"));
const [initialDays, developmentDays] = grass.stageLengths;

/** What is left on `day` of a stage from `from` to `to`, days of the year's growth, where no more than `most` days are run. */
const leftOf = (from: number, to: number, day: number, most: number): number =>
  Math.max(0, Math.min(to, day + most) - Math.max(from, day));

/** From the measured moisture of the evening before day `first` to day `last`, all five probes speaking on that evening. */
export async function runGrass(
  station: Station,
  { weather, moisture }: Measured,
  first: number,
  last: number,
  fieldCapacityQuantile: number,
): Promise<Modelled> {
  const days = last - first + 1;
  const year = yearOf(weather.firstDay + first);
  const grown = weather.firstDay + first - dayNumber(year, grass.sowing.month, grass.sowing.day);
  const late = initialDays + developmentDays;
  const stages = [
    leftOf(-Infinity, initialDays, grown, days),
    leftOf(initialDays, late, grown, days),
    leftOf(late, Infinity, grown, days),
    0,
  ];
  const resolved = fittedLayers(moisture, fieldCapacityQuantile);
  const written = {
    site: { latitude: station.latitudeDeg, elevation: `${station.elevationM} m` },
    soil: {
      layers: fittedDescriptions(moisture, fieldCapacityQuantile).map((layer, probe) => ({
        name: layer.name,
        thickness: `${layer.bottomMm - layer.topMm} mm`,
        texture: layer.texture,
        fieldCapacity: percent(layer.fieldCapacity),
        wiltingPoint: percent(layer.wiltingPoint),
        openShare: "100 %",
        // A reading is its day's mean; the run begins with the next morning. A probe may read more than the estimated pores hold.
        water: `${percent(held(moisture[probe]![first - 1]!, resolved[probe]!))} by volume`,
      })),
    },
    weather: { record: "station.txt", maxGapDays: 366 },
    crop: {
      name: "perennial grass",
      sowing: isoDate(weather.firstDay + first).slice(5),
      stageLengths: stages.map((length) => `${length} days`),
    },
    surface: { curveNumber: tables.curveNumber.value },
    ensemble: { years: 1, seed: 1, ...noSpread },
  };
  const files = { "station.txt": readFileSync(`${dataFolder}/${station.file}`, "utf8") };
  const [run] = await bySeason(written, files, ({ ledger, slices, totals }) => {
    const water = ledger.waterMmByDayAndSlice!;
    const layerMm = probes.map(() => new Float64Array(days));
    for (let d = 0; d < days; d++) {
      for (let j = 0; j < slices.count; j++) {
        const layer = layerMm[slices.layer[j]!]!;
        layer[d] = layer[d]! + water[d * slices.count + j]!;
      }
    }
    return {
      layerMm,
      storageMm: ledger.storageMm.slice(0, days),
      drainageMm: ledger.drainageMm.slice(0, days),
      balanceErrorMm: totals.balanceErrorMm,
    };
  });
  return run!;
}

/** Within what a scenario takes as starting water, to the last tenth of a percent. */
const held = (reading: number, { saturation, wiltingPoint }: SoilLayer): number =>
  Math.min(Math.floor(1000 * saturation) / 1000, Math.max(Math.ceil(500 * wiltingPoint) / 1000, reading));

const percent = (fraction: number): string => `${(100 * fraction).toFixed(1)} %`;
