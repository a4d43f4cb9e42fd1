/**
 * The public library: pure functions, no files, no streams; the same in Node and in a browser.
 *
 *   const scenario = await resolveScenario(readJson(text, "my-field.json"), { fileName: "my-field.json", readText });
 *   const answer = answerOf(scenario, "us");
 *   console.log(comparisonText(answer, "us", "deciding"));
 */

// The scenario file
export {
  describeScenario,
  quickScenario,
  readJson,
  resolveScenario,
  scenarioFormat,
  scenarioJsonSchema,
  starterScenario,
  type QuickQuestion,
  type QuickScenario,
  type ReadText,
  type Surroundings,
} from "./scenario/index.ts";
export type {
  Case,
  DefaultUsed,
  EnsemblePlan,
  RotationPlan,
  Scenario,
  WeatherPlan,
} from "./scenario/scenario.ts";

// Weather
export {
  readWeather,
  weatherFormats,
  type ReadOptions,
  type WeatherUnits,
} from "./weather/records/readers/index.ts";
export { fillGaps, type FilledRecord, type GapOptions } from "./weather/records/gaps.ts";
export { describeHoldings, type Holdings } from "./weather/records/holdings.ts";
export { toDailyWeather } from "./weather/et/dailyWeather.ts";
export { generateYears } from "./weather/generate/generate.ts";
export { scaleToTotals } from "./weather/generate/scaleRain.ts";
export type { DailyWeather, MonthlyNormals, Site, WeatherRecord } from "./weather/records/record.ts";

// Soil
export { textureClass } from "./soil/equations/texture.ts";
export { estimateWaterLimits } from "./soil/equations/waterLimits.ts";
export { resolveColumn } from "./soil/layers/column.ts";
export { cutSlices } from "./soil/layers/slices.ts";
export { startingWaterMm, type StartingWater } from "./soil/layers/startingWater.ts";
export type { Hindrance, Slices, SoilLayer } from "./soil/layers/layer.ts";

// Crop
export { cropNames, defaultPlan, findCrop } from "./crop/crops.ts";
export { cropCourse } from "./crop/cropCourse.ts";
export { stageNames, type CropCourse } from "./crop/course.ts";
export type { CropPlan } from "./crop/crop.ts";

// The season, one run of one case
export { makeWorkspace, simulate, type Workspace } from "./season/simulate.ts";
export { makeLedger } from "./season/ledger.ts";
export type { Ground, Ledger, Rooting, SeasonInput, SeasonTotals, UptakeRule } from "./season/season.ts";

// Answers
export { runEnsemble, type CaseRuns, type Ensemble, type EnsembleAtRain } from "./answer/runs/ensemble.ts";
export { answerOf } from "./answer/chain/answerOf.ts";
export type {
  ChainAnswer,
  ChainAtRain,
  ChainCase,
  ChainDifference,
  CropChain,
} from "./answer/chain/chainAnswer.ts";
export { seasonsOf, type SeasonOfCase, type Seasons } from "./answer/chain/seasonsOf.ts";
export { comparisonOf, matteredFromMm } from "./answer/comparison/compare.ts";
export type {
  AnswerAtRain,
  CaseAnswer,
  Comparison,
  ComparisonMethod,
  DifferenceAnswer,
  YieldSpread,
} from "./answer/comparison/comparison.ts";
export { weatherAnswer, type WeatherAnswer } from "./answer/comparison/weatherAnswer.ts";
export { quantile, spreadOf, type Spread } from "./statistics/quantiles.ts";
export { yieldKgPerHa, type YieldLine, type YieldUnit } from "./crop/yield/yieldLine.ts";
export { yieldLineFor } from "./crop/yield/yieldLines.ts";

// The season under way
export { runOutlook, type OutlookRuns } from "./answer/outlook/outlookRuns.ts";
export { outlookOf } from "./answer/outlook/outlookOf.ts";
export type { CaseEnd, CaseNow, LayerNow, Outlook, OutlookDifference } from "./answer/outlook/outlook.ts";

// Results as text
export { briefText } from "./report/sentences/briefText.ts";
export { comparisonText, type DefaultsTold } from "./report/sentences/comparisonText.ts";
export { outlookText } from "./report/sentences/outlookText.ts";
export { weatherText } from "./report/sentences/weatherText.ts";
export { ledgerCsv, ledgerTable, type LedgerTable } from "./report/tables/ledgerCsv.ts";
export { tableOfOne, type ComparisonTable } from "./report/tables/comparisonTable.ts";
export { csvText } from "./report/tables/csvText.ts";
export { jsonText } from "./report/tables/roundForPrint.ts";
export { unitsBeside, type JsonUnits } from "./report/tables/unitsBeside.ts";

// What is wrong with an input
export { InputError, sayProblem, type Problem } from "./problem.ts";
export type { Units } from "./quantity/kinds.ts";
