/**
 * Stations of the U.S. Climate Reference Network as a season: measured moisture under grass, water limits taken from the
 * record itself, FAO-56's extensive pasture as the crop, roots to 1 m all year. Rules and numbers stand in
 * data-reference/season-soil-moisture.json.
 */
import { readFileSync } from "node:fs";
import tables from "../../data-reference/season-soil-moisture.json" with { type: "json" };
import { climateAdjusted, climateTerm, upperCoefficient } from "../../src/crop/basalCoefficient.ts";
import type { CropCourse } from "../../src/crop/course.ts";
import { isAsleep } from "../../src/crop/dormancy.ts";
import { groundCover } from "../../src/crop/groundCover.ts";
import { makeLedger } from "../../src/season/ledger.ts";
import type { Ground, Ledger, SeasonTotals } from "../../src/season/season.ts";
import { makeWorkspace, simulate } from "../../src/season/simulate.ts";
import { columnReadilyEvaporableMm, secondStageMmPerRootDay } from "../../src/soil/evaporableWater.ts";
import type { SoilLayer } from "../../src/soil/layer.ts";
import { resolveLayer } from "../../src/soil/resolveLayer.ts";
import { asResolved, cutSlices } from "../../src/soil/slices.ts";
import { startingWaterMm } from "../../src/soil/startingWater.ts";
import { centralTexture, textureClasses, type TextureClass } from "../../src/soil/texture.ts";
import { estimateWaterLimits } from "../../src/soil/waterLimits.ts";
import { dayNumber } from "../../src/weather/calendar.ts";
import { toDailyWeather } from "../../src/weather/dailyWeather.ts";
import { fillGaps } from "../../src/weather/gaps.ts";
import { readWeather } from "../../src/weather/readers/index.ts";
import type { DailyWeather } from "../../src/weather/record.ts";

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
export function fittedLayers(moisture: readonly Float64Array[], fieldCapacityQuantile: number): SoilLayer[] {
  return probes.map((probe) => {
    const fieldCapacity = quantile(moisture[probe]!, fieldCapacityQuantile);
    const wiltingPoint = quantile(moisture[Math.max(1, probe)]!, 0.02);
    const texture = nearestClass(wiltingPoint, fieldCapacity);
    return resolveLayer(
      {
        name: `${probeDepthsMm[probe]! / 10} cm`,
        topMm: probeEdgesMm[probe]!,
        bottomMm: probeEdgesMm[probe + 1]!,
        texture,
        fieldCapacity,
        wiltingPoint,
        openShare: 1,
      },
      `layers[${probe}]`,
    ).layer;
  });
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

const number = (key: keyof typeof tables.grass): number => tables.grass[key].value;

/** Water between the fitted limits of the metre, mm. */
export function capacityMm(layers: readonly SoilLayer[]): number {
  return layers.reduce(
    (sum, { fieldCapacity, wiltingPoint, topMm, bottomMm }) =>
      sum + (fieldCapacity - wiltingPoint) * (bottomMm - topMm),
    0,
  );
}

/** Grass from day `first` to `last` of the weather: FAO-56's season between killing frosts, asleep in cold weather. */
export function grassCourse(weather: DailyWeather, first: number, last: number): CropCourse {
  const days = last - first + 1;
  const { tMinC } = weather;
  const middle = dayNumber(2020, 7, 15) - weather.firstDay;
  let spring = middle;
  while (spring > 0 && tMinC[spring]! > number("killingC")) spring--;
  let autumn = middle;
  while (autumn < weather.days - 1 && tMinC[autumn]! > number("killingC")) autumn++;
  const greenFrom = spring - number("daysAroundKilling");
  const greenTo = autumn + number("daysAroundKilling");
  const mean = (values: Float64Array) =>
    values.subarray(greenFrom < 0 ? 0 : greenFrom, greenTo + 1).reduce((sum, each) => sum + each, 0) /
    (Math.min(greenTo, weather.days - 1) - Math.max(0, greenFrom) + 1);
  const [wind, humidity] = [mean(weather.wind2mMPerS), mean(weather.rhMinPercent)];
  const kcbMid = climateAdjusted(number("kcbMid"), wind, humidity, number("heightMm"));
  const kcMaxTerm = climateTerm(wind, humidity, number("heightMm"));
  const kcbOf = (day: number): number => {
    if (day < greenFrom || day > greenTo || isAsleep(weather, day, 5)) return number("kcbDormant");
    const into = (day - greenFrom - number("initialDays")) / number("developmentDays");
    return number("kcbInitial") + Math.min(1, Math.max(0, into)) * (kcbMid - number("kcbInitial"));
  };
  const kcbByDay = Float64Array.from({ length: days }, (_, d) => kcbOf(first + d));
  const kcMaxByDay = kcbByDay.map((kcb) => upperCoefficient(kcb, kcMaxTerm));
  return {
    kcbByDay,
    kcMaxByDay,
    coverByDay: kcbByDay.map((kcb, d) => groundCover(kcb, kcMaxByDay[d]!, number("heightMm"))),
    descentMmByDay: new Float64Array(days),
    stageByDay: new Uint8Array(days).fill(3),
    sowingDay: 0,
    sowingDepthMm: number("rootDepthMm"),
    floweringDay: 0,
    maturityDay: days - 1,
    ripe: true,
  };
}

export interface Modelled {
  readonly ledger: Ledger;
  readonly totals: SeasonTotals;
  /** Evening storage of each probe's layer, mm, by probe and day of the run. */
  readonly layerMm: readonly Float64Array[];
}

/** From the measured moisture of the evening before day `first` to day `last`, all five probes speaking on that evening. */
export function runGrass(
  { weather, moisture }: Measured,
  first: number,
  last: number,
  layers: readonly SoilLayer[],
): Modelled {
  const evaporatingDepthMm = 100;
  const slices = cutSlices(layers, 25, asResolved, evaporatingDepthMm);
  const course = grassCourse(weather, first, last);
  const days = last - first + 1;
  const ground: Ground = {
    curveNumberFallow: number("curveNumber"),
    curveNumberCrop: number("curveNumber"),
    residueCoverFallow: 0,
    residueCoverCrop: 0,
    snowCatchShare: 0,
    snowBelowC: 1,
    meltMmPerCDay: 2.74,
    evaporatingDepthMm,
    readilyEvaporableMm: columnReadilyEvaporableMm(layers, evaporatingDepthMm),
    secondStageMmPerRootDay: secondStageMmPerRootDay(layers[0]!.clayFraction),
  };
  const ledger = makeLedger(days, slices.count);
  const totals = simulate(
    {
      slices,
      startWaterMm: startingWaterMm(
        slices,
        layers,
        // A reading is its day's mean; the run begins with the next morning.
        { kind: "by layer", volumeFraction: probes.map((probe) => moisture[probe]![first - 1]!) },
        { deepShift: 0, deepBelowMm: 0 },
      ),
      weather,
      firstIndex: first,
      course,
      ground,
      rooting: {
        kind: "stretched",
        frontMmByDay: new Float64Array(days).fill(number("rootDepthMm")),
        factor: 1,
      },
      uptake: {
        rule: "by slice",
        sharePerDay: number("uptakeSharePerDay"),
        depletionFraction: number("depletionFraction"),
      },
      evaporation: "two-stage",
    },
    ledger,
    makeWorkspace(slices.count),
  );
  const water = ledger.waterMmByDayAndSlice!;
  const layerMm = probes.map(() => new Float64Array(days));
  for (let d = 0; d < days; d++) {
    for (let j = 0; j < slices.count; j++) {
      const layer = layerMm[slices.layer[j]!]!;
      layer[d] = layer[d]! + water[d * slices.count + j]!;
    }
  }
  return { ledger, totals, layerMm };
}
