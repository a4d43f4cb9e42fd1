import { stream } from "../../randomness.ts";
import type { EnsemblePlan } from "../../scenario/scenario.ts";
import type { YieldLine } from "../../crop/yield/yieldLine.ts";

/** What is drawn for one run. Every case, and every rainfall total, meets the same. */
export interface RunDraws {
  /** Slope of the yield line, kg/ha per mm. */
  readonly slope: number;
  /** Available water capacity, in standard deviations of each layer. */
  readonly capacity: number;
  /** Shifts starting water below the deep limit, share of available capacity. */
  readonly deepShift: number;
  /** How the density table is read: -1 strict, 0 usual, 1 lenient. */
  readonly lenience: number;
  /** How many roots find cracks and old channels in a dense layer: -1 few, 0 as usual, 1 many. */
  readonly openness: number;
  /** Times the depth over which uptake falls to half. */
  readonly deepUptake: number;
}

/**
 * The draws of `runs` runs, each quantity from its own named stream, so that asking for more runs, or for
 * another spread of one quantity, leaves all other draws as they were.
 */
export function drawRuns(runs: number, plan: EnsemblePlan, line: YieldLine): RunDraws[] {
  const { seed } = plan;
  const slopes = stream(seed, "yield slope");
  const capacities = stream(seed, "available water capacity");
  const shifts = stream(seed, "deep starting water");
  const readings = stream(seed, "density reading");
  const shares = stream(seed, "open share");
  const thinning = stream(seed, "uptake by depth");
  const { low, middle, high } = line.slopeKgPerHaPerMm;
  return Array.from({ length: runs }, () => ({
    slope: slopes.triangle(low, middle, high),
    capacity: capacities.normal(),
    deepShift: plan.deepWaterSd * shifts.normal(),
    lenience: lenienceOf(plan.densityReading, 2 * readings.uniform() - 1),
    openness: 2 * shares.uniform() - 1,
    deepUptake: (1 + plan.deepUptakeSpread) ** (2 * thinning.uniform() - 1),
  }));
}

/** Slopes of one yield line, a year each. `name` tells the lines of a rotation apart; that of the crop in question has none. */
export function drawSlopes(
  count: number,
  seed: number,
  { slopeKgPerHaPerMm: { low, middle, high } }: YieldLine,
  name: readonly string[] = [],
): Float64Array {
  const slopes = stream(seed, "yield slope", ...name);
  return Float64Array.from({ length: count }, () => slopes.triangle(low, middle, high));
}

function lenienceOf(reading: EnsemblePlan["densityReading"], drawn: number): number {
  switch (reading) {
    case "range":
      return drawn;
    case "strict":
      return -1;
    case "usual":
      return 0;
    case "lenient":
      return 1;
  }
}
