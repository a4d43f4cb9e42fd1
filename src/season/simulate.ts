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
  zoneWetness,
} from "./evaporation.ts";
import { totalsOf } from "./ledger.ts";
import { advancedFront, seedbedWetness, sliceAt } from "./rootFront.ts";
import { runoffMm } from "./runoff.ts";
import type { Ledger, SeasonInput, SeasonTotals } from "./season.ts";
import { isSnowDay, meltMm } from "./snow.ts";
import {
  adjustedDepletionFraction,
  makeRootSupply,
  setRootSupply,
  takeByRootZoneAverage,
  takeBySlice,
  type Rooted,
  type RootSupply,
} from "./uptake.ts";

/** Scratch arrays indexed by slice, for columns of up to `count` slices. */
export interface Workspace {
  readonly waterMmBySlice: Float64Array;
  readonly availableMmBySlice: Float64Array;
  readonly rootSupply: RootSupply;
}

export function makeWorkspace(count: number): Workspace {
  return {
    waterMmBySlice: new Float64Array(count),
    availableMmBySlice: new Float64Array(count),
    rootSupply: makeRootSupply(count),
  };
}

/**
 * Runs the days of `input.course`, writes `ledger` (index 0 = the run's first day) and returns the season's sums.
 * The ledger must hold at least that many days, the workspace at least as many slices.
 */
export function simulate(input: SeasonInput, ledger: Ledger, workspace: Workspace): SeasonTotals {
  const { slices, weather, firstIndex, course, ground, rooting, uptake, slowDrainage } = input;
  const { count, wiltingPointMm, fieldCapacityMm } = slices;
  const { waterMmBySlice, availableMmBySlice, rootSupply } = workspace;
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
  setRootSupply(rootSupply, slices, zone.count);
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
  const rooted: Rooted = { frontMm: 0, beneathMm: 0 };
  /** Index of the slice that holds the front. */
  let frontSlice = 0;
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
    const frontSliceMm = waterMmBySlice[frontSlice]!;
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
      if (day === sowingDay) {
        if (rooting.kind !== "stretched") rooted.frontMm = Math.min(course.sowingDepthMm, stopMm, bottomMm);
        frontSlice = sliceAt(rooted.frontMm, slices);
        rooted.beneathMm = waterMmBySlice[frontSlice]!;
      } else {
        // What came or went since morning reached both parts of the front's slice; draining leaves neither wetter than this.
        const wettestMm = Math.max(fieldCapacityMm[frontSlice]!, waterMmBySlice[frontSlice]!);
        const changed = rooted.beneathMm + waterMmBySlice[frontSlice]! - frontSliceMm;
        rooted.beneathMm = Math.min(wettestMm, Math.max(0, changed));
      }
      rooted.frontMm =
        rooting.kind === "stretched"
          ? Math.max(rooted.frontMm, Math.min(bottomMm, rooting.frontMmByDay[day]! * rooting.factor))
          : advancedFront(
              rooted.frontMm,
              course.descentMmByDay[day]!,
              stopMm,
              slices,
              waterMmBySlice,
              rooted.beneathMm,
              zone.count,
              seedbedWetness(
                zoneWetness(zone, waterMmBySlice, wiltingPointMm),
                zone.count,
                slices,
                waterMmBySlice,
              ),
            );
      const holder = sliceAt(rooted.frontMm, slices);
      if (holder !== frontSlice) {
        frontSlice = holder;
        rooted.beneathMm = waterMmBySlice[holder]!;
      }
    }

    // 6. uptake
    const demandMm = inCrop ? kcb * et0Mm : 0;
    let transpirationMm = 0;
    if (demandMm > 0) {
      if (uptake.rule === "by slice") {
        const { sharePerDay } = uptake;
        transpirationMm = takeBySlice(
          demandMm,
          sharePerDay,
          rooted,
          rootSupply,
          slices,
          waterMmBySlice,
          availableMmBySlice,
        );
      } else {
        const p = adjustedDepletionFraction(uptake.depletionFraction, (kcb + ke) * et0Mm);
        transpirationMm = takeByRootZoneAverage(
          demandMm,
          p,
          rooted,
          rootSupply,
          slices,
          waterMmBySlice,
          availableMmBySlice,
        );
      }
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
    ledger.frontMm[day] = rooted.frontMm;
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
