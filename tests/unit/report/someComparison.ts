import type { CaseAnswer, Comparison, DifferenceAnswer } from "../../../src/answer/comparison/comparison.ts";

/** A comparison by hand, for its wording; the figures belong to nothing. */
export const someCase: CaseAnswer = {
  name: "as dug",
  finalRootDepthMm: 660,
  rootsEndAt: null,
  shortOfStatedShare: null,
  transpirationMm: 110,
  evaporationMm: 90,
  runoffMm: 5,
  drainageMm: 0,
  waterUseMm: 200,
  seasonRainMm: 150,
  storedAtSowingMm: 120,
  fallowStorageShare: null,
  unripeShare: 0,
  balanceErrorMm: 1e-13,
  demandMet: 0.5,
  demandMetAroundFlowering: 0.5,
  starvedShare: 0,
  yield: { unit: "bu/ac", p10: 10, p50: 24, p90: 40 },
};

export const someDifference: DifferenceAnswer = {
  from: "as dug",
  to: "deeper",
  onlyRootsDiffer: true,
  extraDepthMm: 50.8,
  ruleOfThumbMm: 9,
  storedInExtraDepthMm: 7,
  extraWaterUsedMm: { p10: 2.54, p50: 10.16, p90: 20.32 },
  shareAfterFlowering: 0.6,
  shareOfSeasonsItMattered: 0.7,
  extraYield: { unit: "bu/ac", p10: 1, p50: 4, p90: 9 },
};

export function someComparison(change: Partial<Comparison> = {}): Comparison {
  const cases = change.cases ?? [someCase, { ...someCase, name: "deeper" }];
  const differences = change.differences ?? [someDifference];
  const at = { rainTotalMm: 330.2, annualRainMm: { p10: 330.2, p50: 330.2, p90: 330.2 }, cases, differences };
  return {
    format: "rootfront-comparison/1",
    scenario: "by hand",
    invented: true,
    method: {
      referenceEt: "as written",
      uptake: "by slice",
      evaporation: "two-stage",
      deepUptakeSpread: 1,
      rain: "years of the record, as they are",
      rainTotalOver: "year",
      runs: 200,
      seed: 1,
      sowingYears: 200,
      firstSowingYear: 2001,
      lastSowingYear: 2200,
      densityReading: "range",
      availableCapacitySpread: "10 % of it",
      deepWaterSd: 0.1,
      yieldLine: {
        source: "none",
        slopeKgPerHaPerMm: { low: 2.5, middle: 12, high: 22 },
        thresholdMm: 178,
        capKgPerHa: 6000,
        capSource: null,
        region: null,
        seasons: null,
        floweringLoss: null,
        kgPerHaPerUnit: 62.77,
        storedInchNote: null,
      },
      matteredFromMm: 5,
    },
    ...at,
    byRainTotal: [at],
    evidence: null,
    fieldAverage: null,
    money: null,
    defaults: [],
    doubts: [],
    notes: [],
    cautions: [],
    ...change,
  };
}
