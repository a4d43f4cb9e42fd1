import type { Ledger, SeasonTotals } from "./season.ts";

/** Arrays for runs of up to `days` days; `bySlice` > 0 also keeps the water of that many slices every day. */
export function makeLedger(days: number, bySlice = 0): Ledger {
  const column = () => new Float64Array(days);
  return {
    rainMm: column(),
    snowfallMm: column(),
    meltMm: column(),
    snowOnGroundMm: column(),
    runoffMm: column(),
    infiltrationMm: column(),
    evaporationMm: column(),
    transpirationMm: column(),
    transpirationDemandMm: column(),
    drainageMm: column(),
    frontMm: column(),
    storageMm: column(),
    residualMm: column(),
    waterMmByDayAndSlice: bySlice > 0 ? new Float64Array(days * bySlice) : null,
  };
}

/** Sum of an array over days `from` to `to`, both included. */
export function sumOver(values: Float64Array, from: number, to: number): number {
  let sum = 0;
  for (let d = from; d <= to; d++) sum += values[d]!;
  return sum;
}

/** The season's sums, read off a closed ledger. */
export function totalsOf(
  ledger: Ledger,
  days: number,
  sowingDay: number,
  floweringDay: number,
  maturityDay: number,
  storedOnFirstDayMm: number,
  storedAtSowingMm: number,
): SeasonTotals {
  const evaporationMm = sumOver(ledger.evaporationMm, sowingDay, maturityDay);
  const transpirationMm = sumOver(ledger.transpirationMm, sowingDay, maturityDay);
  let balanceErrorMm = 0;
  for (let d = 0; d < days; d++) balanceErrorMm = Math.max(balanceErrorMm, Math.abs(ledger.residualMm[d]!));
  return {
    // Rain as it fell, snow included.
    rainMm:
      sumOver(ledger.rainMm, sowingDay, maturityDay) + sumOver(ledger.snowfallMm, sowingDay, maturityDay),
    runoffMm: sumOver(ledger.runoffMm, sowingDay, maturityDay),
    drainageMm: sumOver(ledger.drainageMm, sowingDay, maturityDay),
    evaporationMm,
    transpirationMm,
    waterUseMm: evaporationMm + transpirationMm,
    transpirationAfterFloweringMm: sumOver(ledger.transpirationMm, floweringDay, maturityDay),
    transpirationDemandMm: sumOver(ledger.transpirationDemandMm, sowingDay, maturityDay),
    finalRootDepthMm: ledger.frontMm[maturityDay]!,
    storedAtSowingMm,
    balanceErrorMm,
    fallowRainMm:
      sowingDay > 0
        ? sumOver(ledger.rainMm, 0, sowingDay - 1) + sumOver(ledger.snowfallMm, 0, sowingDay - 1)
        : 0,
    fallowGainMm: storedAtSowingMm - storedOnFirstDayMm,
  };
}
