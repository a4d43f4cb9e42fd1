import type { EnsembleAtRain } from "../../../src/answer/runs/ensemble.ts";
import type { RunsAtRain } from "../protocol.ts";

/** Every run at one total, as the page lists them. `factor`: from kg/ha to the unit of the answer. */
export function runsAtRain(
  { rainTotalMm, annualRainMmByRun, cases }: EnsembleAtRain,
  factor: number,
): RunsAtRain {
  return {
    rainTotalMm,
    annualRainMm: annualRainMmByRun,
    cases: cases.map(({ name, byRun, yieldKgPerHaByRun }) => ({
      name,
      seasonRainMm: byRun.rainMm,
      waterUseMm: byRun.waterUseMm,
      transpirationMm: byRun.transpirationMm,
      finalRootDepthMm: byRun.finalRootDepthMm,
      storedAtSowingMm: byRun.storedAtSowingMm,
      yield: yieldKgPerHaByRun.map((kgPerHa) => kgPerHa * factor),
    })),
  };
}
