import { seasonYieldKgPerHa, type YieldLine } from "../../crop/yield/yieldLine.ts";
import type { SeasonTotals } from "../../season/season.ts";

/**
 * Yield of a case in one run, kg/ha.
 *
 * A line counts water use with the evaporation of its own trials: ordinary stands, whose ground evaporated as it did that season.
 * So every case of a run is given the same evaporation, that of an ordinary stand, and what it transpires is its own. Bare ground
 * under thin plants, or straw that keeps the ground moist, then move the yield only by what the crop takes up.
 *
 * @param slopeKgPerHaPerMm the run's draw
 * @param ordinaryEvaporationMm of the first case with a full stand: see `CaseAfterRun`
 */
export function yieldOfRun(
  line: YieldLine,
  slopeKgPerHaPerMm: number,
  totals: SeasonTotals,
  ordinaryEvaporationMm: number,
): number {
  return seasonYieldKgPerHa(line, slopeKgPerHaPerMm, {
    waterUseMm: totals.transpirationMm + ordinaryEvaporationMm,
    rainMm: totals.rainMm,
    metBeforeFlowering: totals.metBeforeFlowering,
    metAtFlowering: totals.metAtFlowering,
    metAfterFlowering: totals.metAfterFlowering,
  });
}
