import { haPerAcre, kgPerPound, mmPerInch } from "../../quantity/constants.ts";
import { shareLeftByStress, type FloweringLoss, type FloweringMet } from "./floweringStress.ts";
import { positionOf, seasonSlope, type SeasonSlopes, type Slope } from "./seasonSlope.ts";

/**
 * A published straight line, yield = slope x (water use - threshold), in SI. The slope is a triangle in the ensemble.
 * Never mix the slope with yield divided by water: that is another number.
 */
export interface YieldLine {
  readonly slopeKgPerHaPerMm: Slope;
  readonly thresholdMm: number;
  /** The crop's cap, kg/ha; null = none. */
  readonly capKgPerHa: number | null;
  /** Where the cap comes from; null where none is published, or it was given. */
  readonly capSource: string | null;
  /** Where the line holds; null for a line of the user's own. */
  readonly region: string | null;
  /** What water beyond the ordinary is worth in dry and wet seasons; null = the line's slope. */
  readonly seasons: SeasonSlopes | null;
  /** What stress around flowering takes off; null where nothing is published of the crop. */
  readonly floweringLoss: FloweringLoss | null;
  /** How people count this yield. */
  readonly unit: YieldUnit;
  /** Place, years, source, read or memory: shown on results. */
  readonly source: string;
  /** Measured worth of an inch stored at sowing, shown beside ours; null where none is published. */
  readonly storedInchNote: string | null;
}

export interface YieldUnit {
  /** `bu/ac` or `lb/ac` with US units; metric results are in kg/ha. */
  readonly us: "bu/ac" | "lb/ac";
  /** kg in one bushel or one pound. */
  readonly kgPerUsUnit: number;
}

export const poundsPerAcre: YieldUnit = { us: "lb/ac", kgPerUsUnit: kgPerPound };

export function bushelsPerAcre(lbPerBushel: number): YieldUnit {
  return { us: "bu/ac", kgPerUsUnit: lbPerBushel * kgPerPound };
}

/** @example kgPerHaOfUs(1, bushelsPerAcre(56)) // 62.77 */
export function kgPerHaOfUs(yieldUs: number, unit: YieldUnit): number {
  return (yieldUs * unit.kgPerUsUnit) / haPerAcre;
}

export function usOfKgPerHa(kgPerHa: number, unit: YieldUnit): number {
  return (kgPerHa * haPerAcre) / unit.kgPerUsUnit;
}

/**
 * A slope in bu/ac or lb/ac per inch of water, in kg/ha per mm.
 *
 * @example slopeOfUsPerInch(1, bushelsPerAcre(56)) // 2.471
 */
export function slopeOfUsPerInch(slopeUsPerInch: number, unit: YieldUnit): number {
  return kgPerHaOfUs(slopeUsPerInch, unit) / mmPerInch;
}

export function usPerInchOfSlope(slopeKgPerHaPerMm: number, unit: YieldUnit): number {
  return usOfKgPerHa(slopeKgPerHaPerMm, unit) * mmPerInch;
}

/**
 * Yield of a season by the straight line.
 *
 * @param slopeKgPerHaPerMm one draw, or a corner of the line's own triangle
 * @param waterUseMm evaporation plus transpiration from sowing to maturity
 * @returns kg/ha, 0 up to the threshold, never above the cap
 */
export function yieldKgPerHa(line: YieldLine, slopeKgPerHaPerMm: number, waterUseMm: number): number {
  const straight = Math.max(0, slopeKgPerHaPerMm * (waterUseMm - line.thresholdMm));
  return line.capKgPerHa === null ? straight : Math.min(straight, line.capKgPerHa);
}

/** What the yield of a season is worked out from. */
export interface SeasonForYield extends FloweringMet {
  /** Transpiration, and the evaporation of an ordinary stand. */
  readonly waterUseMm: number;
  /** From sowing to maturity. */
  readonly rainMm: number;
}

/**
 * Yield of a season: the straight line up to the season's ordinary water use, beyond that the slope its rain picks; less what
 * stress around flowering takes; never above the cap. Continuous in water and rain, and more water never gives less.
 *
 * @param slopeKgPerHaPerMm the run's draw from the line's own slope; its place there is its place in the season's
 * @returns kg/ha
 */
export function seasonYieldKgPerHa(
  line: YieldLine,
  slopeKgPerHaPerMm: number,
  season: SeasonForYield,
): number {
  const { capKgPerHa, floweringLoss } = line;
  const fed = fedYieldKgPerHa(line, slopeKgPerHaPerMm, season);
  const left = floweringLoss === null ? fed : fed * shareLeftByStress(floweringLoss, season);
  return capKgPerHa === null ? left : Math.min(left, capKgPerHa);
}

/** By water alone, without cap or stress. */
function fedYieldKgPerHa(
  { seasons, thresholdMm, slopeKgPerHaPerMm }: YieldLine,
  drawnSlope: number,
  { waterUseMm, rainMm }: SeasonForYield,
): number {
  const ordinaryMm = seasons === null ? Infinity : Math.max(thresholdMm, rainMm + seasons.ordinaryDrawMm);
  const straight = Math.max(0, drawnSlope * (Math.min(waterUseMm, ordinaryMm) - thresholdMm));
  if (seasons === null || waterUseMm <= ordinaryMm) return straight;
  const beyond = seasonSlope(seasons, positionOf(drawnSlope, slopeKgPerHaPerMm), rainMm);
  return straight + beyond * (waterUseMm - ordinaryMm);
}
