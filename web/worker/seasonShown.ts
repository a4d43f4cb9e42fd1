import type { Preparation } from "../../src/answer/runs/prepare.ts";
import type { CaseAfterRun } from "../../src/answer/runs/run.ts";
import { yieldOfRun } from "../../src/answer/runs/yieldOfRun.ts";
import { shownYield } from "../../src/answer/comparison/yieldUnits.ts";
import { isSod } from "../../src/crop/crop.ts";
import { stageNames } from "../../src/crop/course.ts";
import type { Units } from "../../src/quantity/kinds.ts";
import type { CaseSeason, SeasonShown } from "./protocol.ts";

/** One run as the page draws it; copies what it takes, since the buffers are written again by the next run. */
export function seasonShown(
  preparation: Preparation,
  after: readonly CaseAfterRun[],
  run: number,
  totalIndex: number,
  units: Units,
): SeasonShown {
  const { weatherYears, yearByRun, rainTotalsMm } = preparation;
  const weather = weatherYears.weatherByTotal[totalIndex]!;
  const first = Math.min(...after.map(({ firstIndex }) => firstIndex));
  const end = Math.max(...after.map(({ firstIndex, course }) => firstIndex + course.maturityDay + 1));
  return {
    run,
    runs: yearByRun.length,
    year: yearByRun[run]!.year,
    isGenerated: preparation.scenario.weather.source.kind === "normals",
    totalIndex,
    rainTotalMm: rainTotalsMm[totalIndex] ?? null,
    firstDay: weather.firstDay + first,
    days: end - first,
    rainMm: Float32Array.from(weather.rainMm.subarray(first, end)),
    referenceEtMm: Float32Array.from(weather.et0Mm.subarray(first, end)),
    cases: after.map((one) => caseSeason(one, first, preparation, run, units)),
  };
}

function caseSeason(
  { plan, course, slices, ledger, totals, firstIndex, ordinaryEvaporationMm }: CaseAfterRun,
  first: number,
  { scenario, drawsByRun }: Preparation,
  run: number,
  units: Units,
): CaseSeason {
  const days = course.maturityDay + 1;
  const part = (values: Float64Array) => Float32Array.from(values.subarray(0, days));
  const { count } = slices;
  const water = ledger.waterMmByDayAndSlice;
  if (water === null) throw new Error("the ledger keeps no water by slice");
  const availableMm = new Float32Array(days * count);
  for (let i = 0; i < availableMm.length; i++) {
    availableMm[i] = Math.max(0, water[i]! - slices.wiltingPointMm[i % count]!);
  }
  const { slope } = drawsByRun[run]!;
  const { unit, factor } = shownYield(scenario.yieldLine.unit, units);
  return {
    name: plan.name,
    isSod: isSod(plan.crop),
    startsAt: firstIndex - first,
    days,
    sowingDay: course.sowingDay,
    floweringDay: course.floweringDay,
    maturityDay: course.maturityDay,
    stages: stagesOf(course.stageByDay),
    frontMm: part(ledger.frontMm),
    transpirationMm: part(ledger.transpirationMm),
    demandMm: part(ledger.transpirationDemandMm),
    evaporationMm: part(ledger.evaporationMm),
    runoffMm: part(ledger.runoffMm),
    drainageMm: part(ledger.drainageMm),
    snowOnGroundMm: part(ledger.snowOnGroundMm),
    sliceTopMm: Float32Array.from(slices.topMm),
    sliceThicknessMm: Float32Array.from(slices.thicknessMm),
    capacityMm: Float32Array.from(slices.fieldCapacityMm, (mm, i) => mm - slices.wiltingPointMm[i]!),
    passage: Float32Array.from(slices.passage),
    availableMm,
    totals,
    yield: {
      unit,
      value: yieldOfRun(scenario.yieldLine, slope, totals, ordinaryEvaporationMm) * factor,
    },
  };
}

function stagesOf(stageByDay: Uint8Array): { name: string; fromDay: number }[] {
  const stages: { name: string; fromDay: number }[] = [];
  stageByDay.forEach((stage, day) => {
    if (stage > 0 && stage !== stageByDay[day - 1]) stages.push({ name: stageNames[stage]!, fromDay: day });
  });
  return stages;
}

/** The buffers a season is made of, to hand over instead of copying. */
export function buffersOf(season: SeasonShown): ArrayBuffer[] {
  const arrays: unknown[] = [...Object.values(season), ...season.cases.flatMap((one) => Object.values(one))];
  return arrays.flatMap((one) => (one instanceof Float32Array ? [one.buffer as ArrayBuffer] : []));
}
