import { yieldLineFor } from "../../../src/crop/yield/yieldLines.ts";
import { defaultPlan, findCrop } from "../../../src/crop/crops.ts";
import type { Case, Scenario } from "../../../src/scenario/scenario.ts";
import { resolveColumn } from "../../../src/soil/layers/column.ts";
import { normalsFromPattern, patternSite } from "../../../src/weather/generate/rainPatterns.ts";
import { generateYears } from "../../../src/weather/generate/generate.ts";
import type { WeatherRecord } from "../../../src/weather/records/record.ts";

/** Invented: grain sorghum on silt loam over a pan, generated years; small enough for a unit test. */
const { layers } = resolveColumn(
  [
    { name: "plough layer", topMm: 0, bottomMm: 130, texture: "silt loam", bulkDensityKgPerM3: 1300 },
    { name: "pan", topMm: 130, bottomMm: 230, texture: "silt loam", bulkDensityKgPerM3: 1600 },
    { name: "subsoil", topMm: 230, bottomMm: 2600, texture: "silt loam", bulkDensityKgPerM3: 1350 },
  ],
  "soil.layers",
);

const crop = defaultPlan(findCrop("grain sorghum"));

export const asDug: Case = {
  name: "as dug",
  layers,
  endsOn: null,
  sliceThicknessMm: 25,
  startingWater: { kind: "share", share: 0.6 },
  ground: {
    curveNumberFallow: 86,
    curveNumberBareFallow: 86,
    curveNumberCrop: 78,
    residueCoverFallow: 0.3,
    residueCoverCrop: 0.2,
    residueDecays: false,
    snowCatchBareShare: 0,
    snowCatchByCover: 0,
    snowBelowC: 0,
    meltMmPerCDay: 2.74,
    evaporatingDepthMm: 100,
    readilyEvaporableMm: 9,
    secondStageMmPerRootDay: 4,
  },
  crop,
  fallowDays: 0,
  rooting: { kind: "grown" },
  uptake: {
    rule: "by slice",
    sharePerDay: crop.uptakeSharePerDay,
    denseRootsMm: crop.denseRootsMm,
    halvingMm: crop.uptakeHalvingMm,
    depletionFraction: crop.depletionFraction,
  },
  evaporation: "two-stage",
  samples: { coresByLayer: [], log: null },
};

export const normals = normalsFromPattern("summer-peak", 330);

export function someScenario(change: Partial<Scenario> = {}): Scenario {
  return {
    name: "sorghum over a pan",
    invented: true,
    site: patternSite,
    weather: {
      source: { kind: "normals", normals },
      referenceEt: "penman-monteith",
      rainTotalsMm: [],
      rainTotalOver: "year",
      rainTotalIs: "each year",
    },
    cases: [asDug, { ...asDug, name: "two inches deeper", rooting: { kind: "relative", extraMm: 50.8 } }],
    yieldLine: yieldLineFor("grain sorghum"),
    ensemble: {
      years: 12,
      seed: 7,
      availableCapacitySd: 0.1,
      deepUptakeSpread: 0,
      deepWaterSd: 0.1,
      deepBelowMm: 610,
      densityReading: "range",
    },
    rotation: null,
    evidence: null,
    money: null,
    rowPositions: null,
    outlook: null,
    defaults: [],
    doubts: [],
    notes: [],
    ...change,
  };
}

/** A generated record of some years. */
export function someRecord(years: number): WeatherRecord {
  return generateYears(normals, patternSite, { years, firstYear: 1991, seed: 3 });
}
