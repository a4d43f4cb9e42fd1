import type { CropCourse } from "../../crop/course.ts";
import { netChange } from "../money/partialBudget.ts";
import { partsPerHa } from "../money/yearlyItems.ts";
import { weightsOfChange } from "../runs/rowsThatChange.ts";
import { asDug, readyRun } from "../runs/readyRun.ts";
import { courseOf, makeRunBuffers, readySoil, runCases, type ReadyCase } from "../runs/run.ts";
import { yieldOfRun } from "../runs/yieldOfRun.ts";
import type { SeasonTotals } from "../../season/season.ts";
import { withRain, type DailyWeather } from "../../weather/records/record.ts";
import type { SensitivityGround } from "./ground.ts";
import { caseAt, type Setting } from "./setting.ts";

/** What is asked of a pair: all three of the same seasons. Net is of the whole field's rows, as in an answer's money. */
export const answerKinds = ["extraWaterUsed", "extraYield", "net"] as const;
export type AnswerKind = (typeof answerKinds)[number];

/** Sums of the seasons of one setting, by year, then by case. */
export type SeasonsAtSetting = readonly (readonly SeasonOfCase[])[];

interface SeasonOfCase {
  readonly totals: SeasonTotals;
  readonly ordinaryEvaporationMm: number;
}

/** Runs settings, one after the other, in the same years. */
export interface SettingRuns {
  readonly pairs: number;
  readonly years: number;
  readonly seasonsOf: (setting: Setting) => SeasonsAtSetting;
  /** By year: every kind of answer of every pair, pair by pair, in mm, kg/ha and money for each hectare; net is 0 without money. */
  readonly answersByYear: (seasons: SeasonsAtSetting, setting: Setting) => Float64Array[];
  /** Their means over the years. */
  readonly answersOf: (seasons: SeasonsAtSetting, setting: Setting) => Float64Array;
}

export function settingRuns({ preparation, runs, weather }: SensitivityGround): SettingRuns {
  const { scenario, drawsByRun } = preparation;
  const { cases, ensemble, yieldLine, money, rowPositions } = scenario;
  const base = runs.map((run) => readyRun(preparation, run));
  const digDecides = scenario.evidence?.dig?.drives === true;
  const buffers = makeRunBuffers("sums");
  const rainMm = weather.rainMm.slice();
  const moved = withRain(weather, rainMm, weather.notes);
  const courses: CourseCache = new Map();
  let rainTimes = 1;
  const pairs = cases.length - 1;
  const weights = Array.from({ length: pairs }, (_, p) => weightsOfChange(rowPositions, p));
  const fixedPerHa = money === null ? 0 : netChange(partsPerHa(money));

  const moveRain = (times: number): void => {
    if (times === rainTimes) return;
    for (let day = 0; day < rainMm.length; day++) rainMm[day] = weather.rainMm[day]! * times;
    rainTimes = times;
  };

  const seasonsOf = (setting: Setting): SeasonsAtSetting => {
    moveRain(setting.rainTimes);
    const draws = { ...drawsByRun[0]!, ...setting };
    const soils = cases.map((own, c) => {
      const plan = caseAt(own, cases[0], setting);
      const soil = readySoil(plan, draws, ensemble.deepBelowMm);
      const dug =
        digDecides && setting.fitRun !== null
          ? asDug(preparation, c, setting.fitRun, soil.slices)
          : { slices: soil.slices, stopMm: null };
      return { plan, ...soil, ...dug };
    });
    return base.map((readyOfYear) => {
      const ready = readyOfYear.map((own, c): ReadyCase => ({
        ...soils[c]!,
        firstIndex: own.firstIndex,
        course: courseAt(own, soils[c]!.plan, setting, weather, courses, c),
        fullStandCourse: own.fullStandCourse,
      }));
      return runCases(ready, moved, buffers).map(({ totals, ordinaryEvaporationMm }) => ({
        totals,
        ordinaryEvaporationMm,
      }));
    });
  };

  const answersByYear = (seasons: SeasonsAtSetting, setting: Setting): Float64Array[] =>
    seasons.map((ofCases) => {
      const answers = new Float64Array(pairs * answerKinds.length);
      const yields = ofCases.map(({ totals, ordinaryEvaporationMm }) =>
        yieldOfRun(yieldLine, setting.slopeKgPerHaPerMm, totals, ordinaryEvaporationMm),
      );
      for (let p = 0; p < pairs; p++) {
        const at = p * answerKinds.length;
        answers[at] = ofCases[p + 1]!.totals.transpirationMm - ofCases[0]!.totals.transpirationMm;
        answers[at + 1] = yields[p + 1]! - yields[0]!;
        if (setting.pricePerKg === null) continue;
        let extra = 0;
        for (const { caseIndex, share } of weights[p]!) extra += share * yields[caseIndex]!;
        answers[at + 2] = extra * setting.pricePerKg + fixedPerHa;
      }
      return answers;
    });

  const answersOf = (seasons: SeasonsAtSetting, setting: Setting): Float64Array => {
    const means = new Float64Array(pairs * answerKinds.length);
    for (const year of answersByYear(seasons, setting))
      for (let i = 0; i < means.length; i++) means[i]! += year[i]! / seasons.length;
    return means;
  };

  return { pairs, years: runs.length, seasonsOf, answersByYear, answersOf };
}

type CourseCache = Map<string, CropCourse>;

/** A crop's course does not ask for the rain: only another stand needs a new one. */
function courseAt(
  own: ReadyCase,
  plan: ReadyCase["plan"],
  { standTimes }: Setting,
  weather: DailyWeather,
  cache: CourseCache,
  c: number,
): CropCourse {
  if (plan.crop === own.plan.crop) return own.course;
  const key = `${c} ${own.firstIndex} ${standTimes}`;
  const known = cache.get(key) ?? courseOf(plan, weather, own.firstIndex + plan.fallowDays);
  cache.set(key, known);
  return known;
}
