/**
 * One run of one case, day by day. The order of the day is fixed and stands here only:
 *
 *  1. snow and melt      cold rain lies as snow; warm days melt it            snow.ts
 *  2. runoff             curve number, moved with the topsoil's water         curveNumber.ts, runoff.ts
 *  3. infiltration       and drainage, a cascade from the top slice down      drainage.ts
 *  4. evaporation        dual coefficient, from the top slices                evaporation.ts
 *  5. root front         the day's descent through what lies beneath          rootFront.ts
 *  6. uptake             supply and demand by slice                           uptake.ts
 *  7. ledger             every millimetre accounted for                       ledger.ts
 *
 * Pure as seen from outside: what it writes is the ledger and workspace it is handed. Nothing is allocated in the day.
 */
import { dryAndWetCurveNumber, movedCurveNumber } from "./curveNumber.ts";
import { soakAndDrain, type SoakResult } from "./drainage.ts";
import {
  evaporatingZone,
  evaporationCoefficient,
  evaporationReduction,
  residueFactorInCrop,
  takeEvaporation,
  totalEvaporableUnderResidue,
  zoneDepletionMm,
} from "./evaporation.ts";
import { totalsOf } from "./ledger.ts";
import { advancedFront } from "./rootFront.ts";
import { runoffMm } from "./runoff.ts";
import type { Ledger, SeasonInput, SeasonTotals } from "./season.ts";
import { isSnowDay, meltMm } from "./snow.ts";
import { takeByRootZoneAverage, takeBySlice } from "./uptake.ts";

/** Scratch arrays indexed by slice, for columns of up to `count` slices. */
export interface Workspace {
  readonly waterMmBySlice: Float64Array;
  readonly supplyMmBySlice: Float64Array;
}

export function makeWorkspace(count: number): Workspace {
  return { waterMmBySlice: new Float64Array(count), supplyMmBySlice: new Float64Array(count) };
}

/**
 * Runs the days of `input.course`, writes `ledger` (index 0 = the run's first day) and returns the season's sums.
 * The ledger must hold at least that many days, the workspace at least as many slices.
 */
export function simulate(input: SeasonInput, ledger: Ledger, workspace: Workspace): SeasonTotals {
  const { slices, weather, firstIndex, course, ground, rooting, uptake, slowDrainage } = input;
  const { count, wiltingPointMm, fieldCapacityMm } = slices;
  const { waterMmBySlice, supplyMmBySlice } = workspace;
  const days = course.maturityDay + 1;
  const { sowingDay } = course;

  waterMmBySlice.set(input.startWaterMm);
  const zone = evaporatingZone(
    slices.topMm,
    slices.thicknessMm,
    fieldCapacityMm,
    wiltingPointMm,
    ground.evaporatingDepthMm,
  );
  const bareTewMm = zone.totalEvaporableMm;
  const fallowTewMm = totalEvaporableUnderResidue(bareTewMm, ground.residueCoverFallow);
  const bareRewMm = Math.min(ground.readilyEvaporableMm, bareTewMm);
  const fallowRewMm = Math.min(bareRewMm, fallowTewMm);
  const cropResidueFactor = residueFactorInCrop(ground.residueCoverCrop);
  const fallowCn = dryAndWetCurveNumber(ground.curveNumberFallow);
  const cropCn = dryAndWetCurveNumber(ground.curveNumberCrop);
  const stopMm = rooting.kind === "stops" ? rooting.depthMm : Infinity;
  const bottomMm = slices.topMm[count - 1]! + slices.thicknessMm[count - 1]!;
  const soak: SoakResult = { refusedMm: 0, deepDrainageMm: 0 };

  let snowMm = 0;
  let frontMm = 0;
  let storageMm = sumFirst(waterMmBySlice, count);
  const storedOnFirstDayMm = availableMm(waterMmBySlice, wiltingPointMm, count);
  let storedAtSowingMm = storedOnFirstDayMm;

  for (let day = 0; day < days; day++) {
    const index = firstIndex + day;
    const et0Mm = weather.et0Mm[index]!;
    const precipitationMm = weather.rainMm[index]!;
    const inCrop = day >= sowingDay;
    if (day === sowingDay) storedAtSowingMm = availableMm(waterMmBySlice, wiltingPointMm, count);

    // 1. snow and melt
    let rainMm = precipitationMm;
    let snowfallMm = 0;
    let melt = 0;
    if (weather.hasTemperature) {
      const meanC = weather.tMeanC[index]!;
      if (isSnowDay(meanC, ground.snowBelowC)) {
        rainMm = 0;
        snowfallMm = precipitationMm;
        snowMm += snowfallMm * (1 + ground.snowCatchShare);
      }
      melt = meltMm(snowMm, meanC, ground.meltMmPerCDay);
      snowMm -= melt;
    }
    const reachingMm = rainMm + melt;

    // 2. runoff
    const depletionMm = zoneDepletionMm(zone, waterMmBySlice, fieldCapacityMm);
    let runoff = 0;
    if (reachingMm > 0) {
      const cn = inCrop ? cropCn : fallowCn;
      const average = inCrop ? ground.curveNumberCrop : ground.curveNumberFallow;
      runoff = runoffMm(
        reachingMm,
        movedCurveNumber(cn.dry, average, cn.wet, depletionMm, bareRewMm, bareTewMm),
      );
    }

    // 3. infiltration and drainage
    soakAndDrain(waterMmBySlice, reachingMm - runoff, slices, slowDrainage, soak);
    runoff += soak.refusedMm;

    // 4. evaporation; none from under snow
    const kcb = course.kcbByDay[day]!;
    let evaporationMm = 0;
    let ke = 0;
    if (snowMm <= 0) {
      const wetDepletionMm =
        reachingMm > 0 ? zoneDepletionMm(zone, waterMmBySlice, fieldCapacityMm) : depletionMm;
      const kcMax = course.kcMaxByDay[day]!;
      if (inCrop) {
        const reduction = evaporationReduction(wetDepletionMm, bareRewMm, bareTewMm);
        ke = cropResidueFactor * evaporationCoefficient(reduction, kcMax, kcb, 1 - course.coverByDay[day]!);
      } else {
        ke = evaporationCoefficient(
          evaporationReduction(wetDepletionMm, fallowRewMm, fallowTewMm),
          kcMax,
          0,
          1,
        );
      }
      evaporationMm = takeEvaporation(ke * et0Mm, zone, waterMmBySlice, wiltingPointMm);
    }

    // 5. root front
    if (inCrop) {
      if (rooting.kind === "stretched") {
        frontMm = Math.max(frontMm, Math.min(bottomMm, rooting.frontMmByDay[day]! * rooting.factor));
      } else {
        if (day === sowingDay) frontMm = Math.min(course.sowingDepthMm, stopMm, bottomMm);
        frontMm = advancedFront(frontMm, course.descentMmByDay[day]!, stopMm, slices, waterMmBySlice);
      }
    }

    // 6. uptake
    const demandMm = inCrop ? kcb * et0Mm : 0;
    let transpirationMm = 0;
    if (demandMm > 0) {
      transpirationMm =
        uptake.rule === "by slice"
          ? takeBySlice(demandMm, frontMm, uptake.sharePerDay, slices, waterMmBySlice, supplyMmBySlice)
          : takeByRootZoneAverage(
              demandMm,
              (kcb + ke) * et0Mm,
              frontMm,
              uptake.depletionFraction,
              slices,
              waterMmBySlice,
              supplyMmBySlice,
            );
    }

    // 7. ledger
    const storageTonightMm = sumFirst(waterMmBySlice, count);
    const infiltrationMm = reachingMm - runoff;
    ledger.rainMm[day] = rainMm;
    ledger.snowfallMm[day] = snowfallMm;
    ledger.meltMm[day] = melt;
    ledger.snowOnGroundMm[day] = snowMm;
    ledger.runoffMm[day] = runoff;
    ledger.infiltrationMm[day] = infiltrationMm;
    ledger.evaporationMm[day] = evaporationMm;
    ledger.transpirationMm[day] = transpirationMm;
    ledger.transpirationDemandMm[day] = demandMm;
    ledger.drainageMm[day] = soak.deepDrainageMm;
    ledger.frontMm[day] = frontMm;
    ledger.storageMm[day] = storageTonightMm;
    ledger.residualMm[day] =
      storageTonightMm - storageMm - (infiltrationMm - evaporationMm - transpirationMm - soak.deepDrainageMm);
    storageMm = storageTonightMm;
    if (ledger.waterMmByDayAndSlice !== null) {
      for (let j = 0; j < count; j++) ledger.waterMmByDayAndSlice[day * count + j] = waterMmBySlice[j]!;
    }
  }

  return totalsOf(
    ledger,
    days,
    sowingDay,
    course.floweringDay,
    course.maturityDay,
    storedOnFirstDayMm,
    storedAtSowingMm,
  );
}

function sumFirst(values: Float64Array, count: number): number {
  let sum = 0;
  for (let j = 0; j < count; j++) sum += values[j]!;
  return sum;
}

/** Water above wilting point, mm. */
function availableMm(waterMmBySlice: Float64Array, wiltingPointMm: Float64Array, count: number): number {
  let sum = 0;
  for (let j = 0; j < count; j++) {
    const available = waterMmBySlice[j]! - wiltingPointMm[j]!;
    if (available > 0) sum += available;
  }
  return sum;
}
