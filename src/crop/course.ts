/**
 * What a crop would do with all the water it wants, day by day over a run (fallow days first, if any):
 * everything the season needs to know of it. Arrays are indexed by day of the run.
 */
export interface CropCourse {
  /** Basal coefficient, climate-adjusted, dormancy and stand applied; 0 on fallow days. */
  readonly kcbByDay: Float64Array;
  /** Upper limit of evaporation plus transpiration, FAO-56 eq. 72. */
  readonly kcMaxByDay: Float64Array;
  /** Ground covered by the crop, 0 to 0.99, FAO-56 eq. 76. */
  readonly coverByDay: Float64Array;
  /** How far an unhindered root front would go down today. */
  readonly descentMmByDay: Float64Array;
  /** See `stageNames`. */
  readonly stageByDay: Uint8Array;
  /** Days of the run; sowing <= flowering <= maturity. */
  readonly sowingDay: number;
  /** Where the front starts on the day of sowing. */
  readonly sowingDepthMm: number;
  readonly floweringDay: number;
  /** Last day on which the crop uses water; the season's results end with it. */
  readonly maturityDay: number;
  /** False where the season ended by its longest time, in whatever stage the crop stood. */
  readonly ripe: boolean;
}

/** Index = value of `stageByDay`. */
export const stageNames = [
  "fallow",
  "initial",
  "development",
  "mid-season",
  "late season",
  "after maturity",
] as const;
