import type { CropCourse } from "../../src/crop/course.ts";
import type { Ground, SeasonInput, UptakeRule } from "../../src/season/season.ts";
import type { RootSupply } from "../../src/season/field.ts";
import { makeRootSupply, setRootSupply } from "../../src/season/uptake.ts";
import { setRootsLeft } from "../../src/soil/equations/rootsLeft.ts";
import type { Slices } from "../../src/soil/layers/layer.ts";
import type { DailyWeather } from "../../src/weather/records/record.ts";

/** The same share at every depth. */
export const testUptake: UptakeRule = {
  rule: "by slice",
  sharePerDay: 0.096,
  denseRootsMm: Infinity,
  halvingMm: 1000,
  depletionFraction: 0.55,
};

/** What roots can draw on where nothing evaporates. */
export function plainSupply(slices: Slices, sharePerDay = testUptake.sharePerDay): RootSupply {
  const supply = makeRootSupply(slices.count);
  setRootSupply(supply, slices, 0, { ...testUptake, sharePerDay });
  return supply;
}

/** A layer as plain volume fractions: enough to test the season without the soil room. */
export interface TestLayer {
  readonly thicknessMm: number;
  readonly wiltingPoint: number;
  readonly fieldCapacity: number;
  readonly saturation: number;
  readonly conductivityMmPerDay: number;
  readonly drainExponent: number;
  readonly passage: number;
}

/** Invented; near a silt loam. */
export const testSilt: TestLayer = {
  thicknessMm: 1500,
  wiltingPoint: 0.12,
  fieldCapacity: 0.31,
  saturation: 0.48,
  conductivityMmPerDay: 390,
  drainExponent: 12,
  passage: 1,
};

export function column(layers: readonly TestLayer[], sliceMm = 25): Slices {
  const parts = layers.flatMap((layer, index) => {
    const pieces = Math.ceil(layer.thicknessMm / sliceMm);
    return Array.from({ length: pieces }, () => ({ layer, index, thickness: layer.thicknessMm / pieces }));
  });
  const of = (value: (part: (typeof parts)[number]) => number) => Float64Array.from(parts, value);
  let top = 0;
  const topMm = of((p) => {
    top += p.thickness;
    return top - p.thickness;
  });
  const slices: Slices = {
    count: parts.length,
    topMm,
    thicknessMm: of((p) => p.thickness),
    layer: Int32Array.from(parts, (p) => p.index),
    wiltingPointMm: of((p) => p.layer.wiltingPoint * p.thickness),
    fieldCapacityMm: of((p) => p.layer.fieldCapacity * p.thickness),
    saturationMm: of((p) => p.layer.saturation * p.thickness),
    saturatedConductivityMmPerDay: of((p) => p.layer.conductivityMmPerDay),
    drainExponent: of((p) => p.layer.drainExponent),
    passage: of((p) => p.layer.passage),
    rootsLeft: new Float64Array(parts.length),
  };
  setRootsLeft(slices);
  return slices;
}

/** Water by slice at a share of available water. */
export function waterAt(slices: Slices, share: number): Float64Array {
  return slices.wiltingPointMm.map((wp, j) => wp + share * (slices.fieldCapacityMm[j]! - wp));
}

export function testWeather(
  days: number,
  day: (d: number) => { rainMm?: number; et0Mm?: number; meanC?: number },
): DailyWeather {
  const all = Array.from({ length: days }, (_, d) => ({ rainMm: 0, et0Mm: 5, meanC: 20, ...day(d) }));
  return {
    firstDay: 0,
    days,
    rainMm: Float64Array.from(all, (d) => d.rainMm),
    tMaxC: Float64Array.from(all, (d) => d.meanC + 6),
    tMinC: Float64Array.from(all, (d) => d.meanC - 6),
    tMeanC: Float64Array.from(all, (d) => d.meanC),
    et0Mm: Float64Array.from(all, (d) => d.et0Mm),
    rhMinPercent: new Float64Array(days).fill(40),
    wind2mMPerS: new Float64Array(days).fill(2),
    hasTemperature: true,
    referenceEt: "invented",
    notes: [],
  };
}

/** A crop that grows from `sowingDay` to the last day, with a triangle of cover; invented. */
export function testCourse(days: number, sowingDay: number, maxDescentMm = 1200, kcbMid = 1): CropCourse {
  const season = days - sowingDay;
  const of = (value: (progress: number) => number) =>
    Float64Array.from({ length: days }, (_, d) => (d < sowingDay ? 0 : value((d - sowingDay) / season)));
  const kcb = (x: number) => 0.15 + (kcbMid - 0.15) * Math.min(1, Math.max(0, 2 * x));
  return {
    kcbByDay: of(kcb),
    kcMaxByDay: new Float64Array(days).fill(1.2),
    coverByDay: of((x) => Math.min(0.99, (kcb(x) - 0.15) / (1.2 - 0.15))),
    descentMmByDay: of(() => maxDescentMm / season),
    stageByDay: Uint8Array.from({ length: days }, (_, d) => (d < sowingDay ? 0 : 3)),
    sowingDay,
    sowingDepthMm: 30,
    floweringDay: sowingDay + Math.floor(season / 2),
    maturityDay: days - 1,
    ripe: true,
  };
}

export const testGround: Ground = {
  curveNumberFallow: 86,
  curveNumberCrop: 78,
  curveNumberBareFallow: 86,
  residueCoverFallow: 0.3,
  residueCoverCrop: 0.2,
  residueDecays: false,
  snowCatchByCover: 0,
  snowCatchBareShare: 0,
  snowBelowC: 1,
  meltMmPerCDay: 2.74,
  evaporatingDepthMm: 100,
  readilyEvaporableMm: 9,
  secondStageMmPerRootDay: 4,
};

export function testInput(
  parts: Partial<SeasonInput> & Pick<SeasonInput, "slices" | "weather" | "course">,
): SeasonInput {
  return {
    startWaterMm: waterAt(parts.slices, 0.5),
    firstIndex: 0,
    ground: testGround,
    rooting: { kind: "grown" },
    uptake: testUptake,
    evaporation: "two-stage",
    ...parts,
  };
}
