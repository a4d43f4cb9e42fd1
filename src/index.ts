/**
 * The public library: pure functions, no files, no streams; the same in Node and in a browser.
 *
 *   const scenario = await resolveScenario(readJson(text, "my-field.json"), { fileName: "my-field.json", readText });
 *   const answer = comparisonOf(runEnsemble(scenario), "us");
 *   console.log(comparisonText(answer, "us", "short"));
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
export type { Case, DefaultUsed, EnsemblePlan, Scenario, WeatherPlan } from "./scenario/scenario.ts";

// Weather
export { readWeather, weatherFormats, type ReadOptions, type WeatherUnits } from "./weather/readers/index.ts";
export { fillGaps, type FilledRecord, type GapOptions } from "./weather/gaps.ts";
export { describeHoldings, type Holdings } from "./weather/holdings.ts";
export { toDailyWeather } from "./weather/dailyWeather.ts";
export { generateYears } from "./weather/generate.ts";
export { scaleToTotals } from "./weather/scaleRain.ts";
export type { DailyWeather, MonthlyNormals, Site, WeatherRecord } from "./weather/record.ts";

// Soil
export { textureClass } from "./soil/texture.ts";
export { estimateWaterLimits } from "./soil/waterLimits.ts";
export { resolveColumn } from "./soil/column.ts";
export { cutSlices } from "./soil/slices.ts";
export { startingWaterMm, type StartingWater } from "./soil/startingWater.ts";
export type { Hindrance, Slices, SoilLayer } from "./soil/layer.ts";

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
export { runEnsemble, type CaseRuns, type Ensemble, type EnsembleAtRain } from "./answer/ensemble.ts";
export { comparisonOf, matteredFromMm } from "./answer/compare.ts";
export type {
  AnswerAtRain,
  CaseAnswer,
  Comparison,
  ComparisonMethod,
  DifferenceAnswer,
  YieldSpread,
} from "./answer/comparison.ts";
export { weatherAnswer, type WeatherAnswer } from "./answer/weatherAnswer.ts";
export { quantile, spreadOf, type Spread } from "./answer/quantiles.ts";
export { yieldKgPerHa, type YieldLine, type YieldUnit } from "./crop/yieldLine.ts";
export { yieldLineFor } from "./crop/yieldLines.ts";

// Results as text
export { comparisonText, type DefaultsTold } from "./report/comparisonText.ts";
export { weatherText } from "./report/weatherText.ts";
export { ledgerCsv, ledgerTable, type LedgerTable } from "./report/ledgerCsv.ts";
export { jsonText } from "./report/roundForPrint.ts";

// What is wrong with an input
export { InputError, sayProblem, type Problem } from "./problem.ts";
export type { Units } from "./quantity/kinds.ts";
