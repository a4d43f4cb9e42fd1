import { floweringWindows } from "../crop/yield/floweringStress.ts";
import type { Field } from "./field.ts";
import type { Ledger, SeasonTotals } from "./season.ts";
import { measuredMm } from "./storage.ts";
import type { Today } from "./today.ts";

/** Arrays for runs of up to `days` days; `bySlice` > 0 also keeps the water of that many slices every day. */
export function makeLedger(days: number, bySlice = 0): Ledger {
  const column = () => new Float64Array(days);
  return {
    rainMm: column(),
    snowfallMm: column(),
    snowCaughtMm: column(),
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

/**
 * Step 7: writes the day down and closes it.
 *
 * @returns all water tonight, mm
 */
export function closeDay(ledger: Ledger, today: Today, field: Field): number {
  const { day } = today;
  const { count } = field.input.slices;
  const { waterMmBySlice } = field.workspace;
  const { draining, zone, rooted, storage } = field;
  const touchedTo = Math.max(draining.reached, zone.count, today.inCrop ? rooted.slice + 1 : 0);
  const storageMm = measuredMm(storage, waterMmBySlice, count, touchedTo);
  ledger.rainMm[day] = today.rainMm;
  ledger.snowfallMm[day] = today.snowfallMm;
  ledger.snowCaughtMm[day] = today.snowCaughtMm;
  ledger.meltMm[day] = today.meltMm;
  ledger.snowOnGroundMm[day] = today.snowOnGroundMm;
  ledger.runoffMm[day] = today.runoffMm;
  ledger.infiltrationMm[day] = today.infiltrationMm;
  ledger.evaporationMm[day] = today.evaporationMm;
  ledger.transpirationMm[day] = today.transpirationMm;
  ledger.transpirationDemandMm[day] = today.demandMm;
  ledger.drainageMm[day] = today.deepDrainageMm;
  ledger.frontMm[day] = field.rooted.frontMm;
  ledger.storageMm[day] = storageMm;
  ledger.residualMm[day] =
    storageMm -
    today.storedThisMorningMm -
    (today.infiltrationMm - today.evaporationMm - today.transpirationMm - today.deepDrainageMm);
  const bySlice = ledger.waterMmByDayAndSlice;
  if (bySlice !== null) for (let j = 0; j < count; j++) bySlice[day * count + j] = waterMmBySlice[j]!;
  return storageMm;
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
  const met = (from: number, to: number) =>
    shareMet(ledger, Math.max(sowingDay, floweringDay + from), Math.min(maturityDay, floweringDay + to));
  const { before, at, after } = floweringWindows;
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
    metBeforeFlowering: met(...before),
    metAtFlowering: met(...at),
    metAfterFlowering: met(...after),
    metAroundFlowering: met(before[0], after[1]),
    finalRootDepthMm: ledger.frontMm[maturityDay]!,
    storedAtSowingMm,
    balanceErrorMm,
    fallowRainMm: precipitationOver(ledger, 0, sowingDay - 1),
    fallowGainMm: storedAtSowingMm - storedOnFirstDayMm,
  };
}

/** Share of the demand met from one day to another, 0 to 1; 1 where there was none. */
function shareMet({ transpirationMm, transpirationDemandMm }: Ledger, from: number, to: number): number {
  const demandMm = sumOver(transpirationDemandMm, from, to);
  return demandMm > 0 ? Math.min(1, sumOver(transpirationMm, from, to) / demandMm) : 1;
}

/** Rain and snow as they fell; blown snow that stubble caught is not among them. */
function precipitationOver(ledger: Ledger, from: number, to: number): number {
  return sumOver(ledger.rainMm, from, to) + sumOver(ledger.snowfallMm, from, to);
}
