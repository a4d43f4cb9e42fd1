import { comparisonOfYears, yearsInARow, type YearsInARow } from "../../../src/answer/chain/answerOf.ts";
import { linksCounted } from "../../../src/answer/chain/chainEnsemble.ts";
import { prepareChains } from "../../../src/answer/chain/prepareChains.ts";
import { chainsInSteps } from "../../../src/answer/chain/runChains.ts";
import { walkChain } from "../../../src/answer/chain/walkedChain.ts";
import { shownYield } from "../../../src/answer/comparison/yieldUnits.ts";
import { middleTotalIndex } from "../../../src/answer/runs/middleTotal.ts";
import { middleRun } from "../../../src/answer/runs/chosenRun.ts";
import type { AnswerCache } from "../../../src/answer/runs/answerCache.ts";
import type { CaseAfterRun } from "../../../src/answer/runs/run.ts";
import { yearOf } from "../../../src/quantity/calendar.ts";
import type { Comparison } from "../../../src/answer/comparison/comparison.ts";
import type { Units } from "../../../src/quantity/kinds.ts";
import type { RotationPlan, Scenario } from "../../../src/scenario/scenario.ts";
import { chainSentences } from "../../../src/report/sentences/chainText.ts";
import { shownIn } from "../../../src/report/tables/formatters.ts";
import { typeset } from "../../../src/report/tables/typeset.ts";
import { runsAtRain } from "./runsAtRain.ts";
import type { CaseOfYear, YearOnWall, YearsShown } from "../protocol.ts";

/** Years in a row as far as they have been run. */
export interface YearsJob {
  /** One link, or what comes before the first; false when there is nothing left to do. */
  readonly step: () => boolean;
  /** Chains done of all. */
  readonly progress: () => { readonly done: number; readonly total: number };
  /** Null until all chains are run. */
  readonly found: () => YearsInARow | null;
}

/** @param cache of the years in a row alone: their weather is longer than that of single seasons */
export function openYears(scenario: Scenario, rotation: RotationPlan, cache: AnswerCache): YearsJob {
  let found: YearsInARow | null = null;
  let progress = { done: 0, total: 1 };
  const steps = work();

  function* work(): Generator<void, void, void> {
    const prepared = prepareChains(scenario, rotation, cache);
    yield;
    const chains = chainsInSteps(prepared);
    let next = chains.next();
    for (; next.done !== true; next = chains.next()) {
      progress = { done: next.value.done, total: next.value.total };
      yield;
    }
    found = yearsInARow(prepared, next.value);
  }

  return { step: () => steps.next().done !== true, progress: () => progress, found: () => found };
}

/** The answer of years in a row, and what the page shows of it beside the comparison. */
export function yearsShown(
  years: YearsInARow,
  units: Units,
): { readonly comparison: Comparison; readonly inARow: YearsShown } {
  const { ensemble } = years;
  const { factor } = shownYield(ensemble.preparation.scenario.yieldLine.unit, units);
  const comparison = comparisonOfYears(years, units);
  return {
    comparison,
    inARow: {
      sentences: chainSentences(comparison.chain!, shownIn(units)).map(typeset),
      years: Int32Array.from(ensemble.preparation.yearByRun, ({ year }) => year),
      byRainTotal: ensemble.byRainTotal.map((at) => runsAtRain(at, factor)),
      walked: walkedYears(years),
    },
  };
}

/** The chain that holds the year in the middle, at the middle total. */
function walkedYears({ prepared, byRain, ensemble }: YearsInARow): YearOnWall[] {
  const totalIndex = middleTotalIndex(byRain.map(({ rainTotalMm }) => rainTotalMm));
  const middle = linksCounted(prepared, byRain[totalIndex]!.links)[middleRun(ensemble)]!;
  const { firstDay } = ensemble.preparation.weatherYears.weather;
  const years: YearOnWall[] = [];
  walkChain(prepared, middle, totalIndex, ({ link, sinceChange, own }) => {
    const first = own[0]!;
    const begins = firstDay + first.firstIndex;
    years.push({
      sinceChange,
      crop: prepared.rotation.entries[link.entry]!.crop,
      sownYear: yearOf(begins + first.course.sowingDay),
      fallowDays: first.course.sowingDay,
      fallowRainMm: first.totals.fallowRainMm,
      seasonRainMm: first.totals.rainMm,
      cases: own.map(caseOfYear),
    });
  });
  return years;
}

function caseOfYear({
  slices,
  startWaterMm,
  waterAtSowingMmBySlice,
  waterAtEndMmBySlice,
  totals,
  course,
}: CaseAfterRun): CaseOfYear {
  const { count, wiltingPointMm, fieldCapacityMm } = slices;
  const available = (water: Float64Array) =>
    Float32Array.from({ length: count }, (_, j) => Math.max(0, water[j]! - wiltingPointMm[j]!));
  return {
    frontMm: totals.finalRootDepthMm,
    takenUpMm: totals.transpirationMm,
    sliceTopMm: Float32Array.from(slices.topMm.subarray(0, count)),
    sliceThicknessMm: Float32Array.from(slices.thicknessMm.subarray(0, count)),
    capacityMm: Float32Array.from({ length: count }, (_, j) => fieldCapacityMm[j]! - wiltingPointMm[j]!),
    atSowingMm: available(course.sowingDay === 0 ? startWaterMm : waterAtSowingMmBySlice),
    atHarvestMm: available(waterAtEndMmBySlice),
  };
}
