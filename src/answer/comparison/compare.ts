import { starvedUpTo } from "../../crop/yield/floweringStress.ts";
import type { Units } from "../../quantity/kinds.ts";
import type { Case, Scenario } from "../../scenario/scenario.ts";
import { isSod } from "../../crop/crop.ts";
import { statedDepthMm } from "../../scenario/statedDepth.ts";
import { cautionsFor } from "./cautions/cautions.ts";
import type {
  AnswerAtRain,
  CaseAnswer,
  Comparison,
  ComparisonMethod,
  DifferenceAnswer,
  YieldSpread,
} from "./comparison.ts";
import type { CaseRuns, Ensemble, EnsembleAtRain } from "../runs/ensemble.ts";
import { meaningOfTotal, middleOf, middleTotalIndex } from "../runs/middleTotal.ts";
import { overRainOf, type OverRainOfPair } from "../runs/overRain.ts";
import { spreadSaid } from "../../soil/equations/availableWaterSpread.ts";
import { percent } from "../../soil/layers/layerRanges.ts";
import { digReadings } from "./digReadings.ts";
import { evidenceAnswer } from "./evidenceAnswer.ts";
import { fieldAverage } from "./fieldAverage.ts";
import { moneyOf, type MoneyAnswer, type MoneyOfPair } from "../money/money.ts";
import { medianOf, spreadOf } from "../../statistics/quantiles.ts";
import { atEndMm, onlyRootsDiffer, rootsEndAt } from "./rootsOfCases.ts";
import { doubtsOf } from "./doubts.ts";
import { shownYield, type ShownYield } from "./yieldUnits.ts";

/**
 * Extra water from which we say that depth mattered in a season, mm. Ours: 5 mm, 0.2 in, is worth about a bushel of
 * sorghum or wheat an acre, the least that could be told apart in a field.
 */
export const matteredFromMm = 5;

/** Below this mean extra transpiration, mm, its share after flowering says nothing. */
const tellingTranspirationMm = 0.5;

/**
 * Boils an ensemble down to the answer.
 *
 * @param measured leaves evidence out, and its time, where it is not wanted (yet)
 * @param years whether the runs are seasons by themselves, or years in a row of a rotation
 * @param ofChains money of years in a row, where it is known; else each season is taken for any
 */
export function comparisonOf(
  ensemble: Ensemble,
  units: Units,
  measured: "with evidence" | "without evidence" = "with evidence",
  years: "single seasons" | "year after year" = "single seasons",
  ofChains: MoneyAnswer | null = null,
): Comparison {
  const { scenario } = ensemble.preparation;
  const shown = shownYield(scenario.yieldLine.unit, units);
  const money =
    scenario.money === null ? null : (ofChains ?? moneyOf(ensemble, scenario.money, scenario.rowPositions));
  const byRainTotal = ensemble.byRainTotal.map((atRain, t) =>
    answerAtRain(atRain, scenario.cases, shown, money?.byRainTotal[t]?.pairs ?? null),
  );
  const middle = middleOf(byRainTotal);
  const readings =
    measured === "with evidence" && years === "single seasons"
      ? digReadings(ensemble, (at) => answerAtRain(at, scenario.cases, shown, null))
      : null;
  const answer = {
    format: "rootfront-comparison/1" as const,
    scenario: scenario.name,
    invented: scenario.invented,
    method: methodOf(ensemble, shown),
    ...middle,
    byRainTotal,
    evidence: measured === "with evidence" ? evidenceAnswer(ensemble) : null,
    ...(readings === null ? {} : { digReadings: readings }),
    fieldAverage:
      scenario.rowPositions === null ? null : fieldAverage(ensemble, scenario.rowPositions, scenario.money),
    money,
    ...varying(ensemble, years),
    defaults: scenario.defaults,
    doubts: doubtsOf(scenario),
    notes: [...new Set([...scenario.notes, ...ensemble.preparation.weatherYears.notes])],
  };
  return { ...answer, cautions: cautionsFor(answer, scenario, years) };
}

/** With years in a row the chain tells it, first year and after. */
function varying(
  ensemble: Ensemble,
  years: "single seasons" | "year after year",
): { readonly overRain?: readonly OverRainOfPair[] } {
  const { weather } = ensemble.preparation.scenario;
  if (years === "year after year" || meaningOfTotal(weather).rainTotalIs === undefined) return {};
  const over = overRainOf(
    ensemble,
    middleTotalIndex(ensemble.byRainTotal.map(({ rainTotalMm }) => rainTotalMm)),
  );
  return over === null ? {} : { overRain: over };
}

function answerAtRain(
  atRain: EnsembleAtRain,
  plans: Scenario["cases"],
  shown: ShownYield,
  money: readonly MoneyOfPair[] | null,
): AnswerAtRain {
  const [first, ...later] = atRain.cases;
  return {
    rainTotalMm: atRain.rainTotalMm,
    annualRainMm: atRain.annualRainMmByRun === null ? null : spreadOf(atRain.annualRainMmByRun),
    cases: atRain.cases.map((one, c) => caseAnswer(one, plans[c]!, plans[0].rooting, shown)),
    differences: later.map((to, p) => ({
      from: first!.name,
      to: to.name,
      onlyRootsDiffer: onlyRootsDiffer(plans[0], plans[p + 1]!),
      ...differenceAnswer(first!, to, atRain.pairs[p]!, shown),
      ...(isSod(plans[p + 1]!.crop) ? { shareAfterFlowering: null } : {}),
      ...(money === null ? {} : { chanceItPays: money[p]!.chanceItPays }),
    })),
  };
}

function caseAnswer(
  { name, byRun, yieldKgPerHaByRun, unripeByRun }: CaseRuns,
  plan: Case,
  firstRooting: Case["rooting"],
  shown: ShownYield,
): CaseAnswer {
  const finalRootDepthMm = medianOf(byRun.finalRootDepthMm);
  const statedMm = statedDepthMm(plan.rooting, firstRooting);
  return {
    name,
    finalRootDepthMm,
    rootsEndAt: rootsEndAt(plan, firstRooting, finalRootDepthMm),
    shortOfStatedShare:
      statedMm === null ? null : shareOf(byRun.finalRootDepthMm, (mm) => mm < statedMm - atEndMm),
    transpirationMm: medianOf(byRun.transpirationMm),
    evaporationMm: medianOf(byRun.evaporationMm),
    runoffMm: medianOf(byRun.runoffMm),
    drainageMm: medianOf(byRun.drainageMm),
    waterUseMm: medianOf(byRun.waterUseMm),
    seasonRainMm: medianOf(byRun.rainMm),
    storedAtSowingMm: medianOf(byRun.storedAtSowingMm),
    fallowStorageShare: fallowStorageShare(byRun),
    balanceErrorMm: byRun.balanceErrorMm.reduce((worst, error) => Math.max(worst, error), 0),
    unripeShare: unripeByRun.reduce((sum, unripe) => sum + unripe, 0) / unripeByRun.length,
    demandMet: medianOf(
      byRun.transpirationMm.map((used, run) => {
        const demand = byRun.transpirationDemandMm[run]!;
        return demand > 0 ? used / demand : 1;
      }),
    ),
    demandMetAroundFlowering: medianOf(byRun.metAroundFlowering),
    starvedShare: shareOf(byRun.metAroundFlowering, (met) => met <= starvedUpTo),
    yield: yieldSpread(yieldKgPerHaByRun, shown),
  };
}

function shareOf(values: Float64Array, holds: (value: number) => boolean): number {
  return values.filter(holds).length / values.length;
}

/** Median over the runs with fallow rain; below 0 where fallow lost water. */
function fallowStorageShare({ fallowGainMm, fallowRainMm }: CaseRuns["byRun"]): number | null {
  const shares = fallowGainMm
    .map((gain, run) => (fallowRainMm[run]! > 0 ? gain / fallowRainMm[run]! : Number.NaN))
    .filter(Number.isFinite);
  return shares.length === 0 ? null : medianOf(shares);
}

function differenceAnswer(
  from: CaseRuns,
  to: CaseRuns,
  pair: EnsembleAtRain["pairs"][number],
  shown: ShownYield,
): Omit<DifferenceAnswer, "from" | "to" | "onlyRootsDiffer"> {
  const extraUsed = minus(to.byRun.transpirationMm, from.byRun.transpirationMm);
  const mattered = extraUsed.reduce((n, mm) => (Math.abs(mm) >= matteredFromMm ? n + 1 : n), 0);
  return {
    extraDepthMm: medianOf(minus(to.byRun.finalRootDepthMm, from.byRun.finalRootDepthMm)),
    ruleOfThumbMm: medianOf(pair.ruleOfThumbMmByRun),
    storedInExtraDepthMm: medianOf(pair.storedInExtraDepthMmByRun),
    extraWaterUsedMm: spreadOf(extraUsed),
    shareAfterFlowering: shareAfterFlowering(from, to),
    shareOfSeasonsItMattered: mattered / extraUsed.length,
    extraYield: yieldSpread(minus(to.yieldKgPerHaByRun, from.yieldKgPerHaByRun), shown),
  };
}

/** Of all the extra transpiration of all runs, the share after flowering; may pass 1 where the start of the season lost some. */
function shareAfterFlowering(from: CaseRuns, to: CaseRuns): number | null {
  const all = sum(minus(to.byRun.transpirationMm, from.byRun.transpirationMm));
  if (Math.abs(all) < tellingTranspirationMm * from.byRun.transpirationMm.length) return null;
  return sum(minus(to.byRun.transpirationAfterFloweringMm, from.byRun.transpirationAfterFloweringMm)) / all;
}

function yieldSpread(kgPerHa: Float64Array, { unit, factor }: ShownYield): YieldSpread {
  const { p10, p50, p90 } = spreadOf(kgPerHa);
  return { unit, p10: p10 * factor, p50: p50 * factor, p90: p90 * factor };
}

function methodOf({ preparation, runs }: Ensemble, shown: ShownYield): ComparisonMethod {
  const { scenario, weatherYears } = preparation;
  const { ensemble, yieldLine, weather } = scenario;
  const years = weatherYears.sowingYears.map(({ year }) => year);
  return {
    referenceEt: weatherYears.weather.referenceEt,
    uptake: inWords(scenario, ({ uptake }) => uptake.rule),
    evaporation: inWords(scenario, ({ evaporation }) => evaporation),
    rain: weatherYears.rain,
    rainTotalOver: weather.rainTotalOver,
    ...meaningOfTotal(weather),
    runs,
    seed: ensemble.seed,
    sowingYears: years.length,
    firstSowingYear: years[0]!,
    lastSowingYear: years.at(-1)!,
    densityReading: ensemble.densityReading,
    availableCapacitySpread:
      ensemble.availableCapacitySd === null
        ? spreadSaid(scenario.cases.flatMap(({ layers }) => layers))
        : `${percent(ensemble.availableCapacitySd)} of it`,
    deepWaterSd: ensemble.deepWaterSd,
    deepUptakeSpread: ensemble.deepUptakeSpread,
    yieldLine: {
      source: yieldLine.source,
      slopeKgPerHaPerMm: yieldLine.slopeKgPerHaPerMm,
      thresholdMm: yieldLine.thresholdMm,
      capKgPerHa: yieldLine.capKgPerHa,
      capSource: yieldLine.capSource,
      region: yieldLine.region,
      seasons: yieldLine.seasons,
      floweringLoss: yieldLine.floweringLoss,
      kgPerHaPerUnit: 1 / shown.factor,
      storedInchNote: yieldLine.storedInchNote,
    },
    matteredFromMm,
  };
}

/** A rule of every case; where they differ, each once. */
function inWords({ cases }: Scenario, ruleOf: (of: Case) => string): string {
  return [...new Set(cases.map(ruleOf))].join(" and ");
}

function minus(a: Float64Array, b: Float64Array): Float64Array {
  return a.map((value, run) => value - b[run]!);
}

function sum(values: Float64Array): number {
  return values.reduce((all, value) => all + value, 0);
}
