/**
 * One day's water, mm: written by the steps in the order of the day, read by the steps after them and by the ledger.
 * One object serves every day of a run.
 */
export interface Today {
  /** Day of the run, 0 first, and its place in the weather. */
  day: number;
  index: number;
  inCrop: boolean;
  et0Mm: number;
  /** All water in the column when the day began. */
  storedThisMorningMm: number;
  rainMm: number;
  snowfallMm: number;
  /** Blown snow that standing stubble kept beyond the snowfall. */
  snowCaughtMm: number;
  meltMm: number;
  /** What is left of the snow tonight. */
  snowOnGroundMm: number;
  /** Rain and melt: what comes to the ground. */
  reachingMm: number;
  runoffMm: number;
  infiltrationMm: number;
  deepDrainageMm: number;
  /** Ke of the day. */
  evaporationCoefficient: number;
  evaporationMm: number;
  demandMm: number;
  transpirationMm: number;
}

export function makeToday(): Today {
  return {
    day: 0,
    index: 0,
    inCrop: false,
    et0Mm: 0,
    storedThisMorningMm: 0,
    rainMm: 0,
    snowfallMm: 0,
    snowCaughtMm: 0,
    meltMm: 0,
    snowOnGroundMm: 0,
    reachingMm: 0,
    runoffMm: 0,
    infiltrationMm: 0,
    deepDrainageMm: 0,
    evaporationCoefficient: 0,
    evaporationMm: 0,
    demandMm: 0,
    transpirationMm: 0,
  };
}
