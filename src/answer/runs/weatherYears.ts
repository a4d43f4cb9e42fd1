import { longestSeasonDays, seasonClock } from "../../crop/stages.ts";
import { InputError } from "../../problem.ts";
import type { Case, EnsemblePlan, WeatherPlan } from "../../scenario/scenario.ts";
import { sayMonthDay } from "../../quantity/dates.ts";
import { dayInYear, dayOfMonth, dayOfYear, isoDate, monthOf, yearOf } from "../../quantity/calendar.ts";
import { weatherOnDemand, type WeatherOnDemand } from "../../weather/et/dailyWeather.ts";
import { daysOf, generateYears } from "../../weather/generate/generate.ts";
import type { DailyWeather, MonthlyNormals, Site, WeatherRecord } from "../../weather/records/record.ts";
import { scaleToMean, scaleToTotals, type SeasonWindow } from "../../weather/generate/scaleRain.ts";
import {
  type AnswerCache,
  newAnswerCache,
  cachedDraws,
  cachedYears,
  cachedOfWeather,
  cachedWeather,
} from "./answerCache.ts";
import { medianOf } from "../../statistics/quantiles.ts";

/** The weather of all runs, and the years in it that a run can be sown in. */
export interface WeatherYears {
  /** Before any scaling. Reference ET and lowest humidity, here and at every total, only of days that `workOut` has been asked for. */
  readonly weather: DailyWeather;
  readonly workOut: WeatherOnDemand["workOut"];
  /** In the order of the scenario's totals; the weather itself where it has none. Only the rain differs. */
  readonly weatherByTotal: readonly DailyWeather[];
  readonly sowingYears: readonly SowingYear[];
  /** Sowing to usual maturity of the first case: what a season's total is scaled over. */
  readonly window: SeasonWindow;
  /** What the rain is, in words. */
  readonly rain: string;
  readonly notes: readonly string[];
}

export interface SowingYear {
  readonly year: number;
  /** Index in the weather of each case's sowing day, in the order of the cases. */
  readonly sowingIndexByCase: readonly number[];
}

/** Generated sowing years are counted from here; the number stands for no real year. */
export const firstGeneratedYear = 2001;
/** Years after the last sowing: a winter crop sown late is mature in the second. */
const yearsAfterSowing = 2;

/**
 * Takes the record, or generates as many years as there are runs, and scales them to each total.
 * Throws InputError where a record holds no whole run of every case.
 */
export function weatherYears(
  plan: WeatherPlan,
  site: Site,
  cases: readonly Case[],
  ensemble: EnsemblePlan,
  cache: AnswerCache = newAnswerCache(),
): WeatherYears {
  const { source, rainTotalsMm } = plan;
  const { weather, workOut } = weatherOf(plan, site, cases, ensemble, cache);
  // Of generated years there are some to spare at the end; a record is used to its last.
  const crops = JSON.stringify([
    source.kind === "record" || ensemble.years,
    ...cases.map(({ crop, fallowDays }) => [crop, fallowDays]),
  ]);
  const { sowingYears, window } = cachedOfWeather(cache, "sown", weather, crops, () => {
    const fitting = sowingYearsIn(weather, cases);
    const years = source.kind === "record" ? fitting : fitting.slice(0, ensemble.years);
    if (years.length === 0) refuseShortRecord(weather, cases);
    return { sowingYears: years, window: seasonWindow(cases[0]!, weather, years) };
  });
  const totals = JSON.stringify([rainTotalsMm, plan.rainTotalOver, plan.rainTotalIs, window]);
  const weatherByTotal = cachedOfWeather(cache, "scaled", weather, totals, () =>
    rainTotalsMm.length === 0 ? [weather] : scaledTo(rainTotalsMm, weather, plan, window),
  );
  return {
    weather,
    workOut,
    weatherByTotal,
    sowingYears,
    window,
    rain: rainInWords(plan, window),
    notes: [...new Set(weatherByTotal.flatMap(({ notes }) => notes))],
  };
}

/** The same weather at each of the totals. */
export function scaledTo(
  totalsMm: readonly number[],
  weather: DailyWeather,
  { rainTotalOver, rainTotalIs }: WeatherPlan,
  window: SeasonWindow,
): DailyWeather[] {
  const scale = rainTotalIs === "each year" ? scaleToTotals : scaleToMean;
  return totalsMm.map((total) => scale(weather, total, rainTotalOver, window));
}

/** Weather before any scaling. */
export function weatherOf(
  plan: WeatherPlan,
  site: Site,
  cases: readonly Case[],
  ensemble: EnsemblePlan,
  cache: AnswerCache,
): WeatherOnDemand {
  const { source, referenceEt } = plan;
  const how = { method: referenceEt, normals: source.normals };
  const key = weatherKey(plan, site, cases, ensemble);
  if (source.kind === "record") {
    return cachedWeather(cache, key, source.record, () => weatherOnDemand(source.record, site, how));
  }
  return cachedWeather(cache, key, null, () =>
    weatherOnDemand(generatedYears(plan, source.normals, site, cases, ensemble, cache), site, how),
  );
}

/** All but the record that the weather depends on: generated years also on how many there are, and how far back runs begin. */
function weatherKey(
  { source, referenceEt }: WeatherPlan,
  site: Site,
  cases: readonly Case[],
  { years, seed }: EnsemblePlan,
): string {
  const generating = source.kind === "normals" ? [years, seed, yearsBeforeSowing(cases)] : null;
  return JSON.stringify([source.kind, source.normals, referenceEt, site, generating]);
}

/** Years generated for all runs, without reference ET yet. */
export function generatedYears(
  plan: WeatherPlan,
  normals: MonthlyNormals,
  site: Site,
  cases: readonly Case[],
  ensemble: EnsemblePlan,
  cache: AnswerCache,
): WeatherRecord {
  const before = yearsBeforeSowing(cases);
  const { years, seed } = ensemble;
  const span = { years: before + years + yearsAfterSowing, firstYear: firstGeneratedYear - before, seed };
  return cachedYears(cache, weatherKey(plan, site, cases, ensemble), () =>
    generateYears(normals, site, span, cachedDraws(cache, seed, daysOf(span))),
  );
}

/** From sowing of the first case to the day it is usually mature. */
function seasonWindow(plan: Case, weather: DailyWeather, sowingYears: readonly FittingYear[]): SeasonWindow {
  const lengths = Float64Array.from(sowingYears, ({ daysOfFirst }) => daysOfFirst);
  const first = sowingYears[0]!.sowingIndexByCase[0]!;
  const last = weather.firstDay + first + medianOf(lengths) - 1;
  const day = Math.round(last);
  return { from: plan.crop.sowing, to: { month: monthOf(day), day: dayOfMonth(day) } };
}

function rainInWords(
  { source, rainTotalsMm, rainTotalOver, rainTotalIs }: WeatherPlan,
  { from, to }: SeasonWindow,
): string {
  const years = source.kind === "record" ? "years of the record" : "years generated from monthly normals";
  if (rainTotalsMm.length === 0) return `${years}, as they are`;
  const season = `${sayMonthDay(from)} to ${sayMonthDay(to)}`;
  if (rainTotalIs === "long-run mean")
    return `${years}, varying as they do about the total as their mean${rainTotalOver === "year" ? "" : ` (${season})`}`;
  if (rainTotalOver === "year") return `${years}, each calendar year scaled to the total`;
  return `${years}, each season (${season}) scaled to the total`;
}

/** Whole years that have to lie before the year of the first sowing. */
function yearsBeforeSowing(cases: readonly Case[]): number {
  const most = Math.max(
    ...cases.map(
      ({ crop, fallowDays }) => fallowDays - dayOfYear(dayInYear(firstGeneratedYear, crop.sowing)) + 1,
    ),
  );
  return Math.max(0, Math.ceil(most / 365));
}

interface FittingYear extends SowingYear {
  /** From sowing to maturity of the first case. */
  readonly daysOfFirst: number;
}

/** Years in which every case's run lies within the weather, fallow to maturity. */
function sowingYearsIn(weather: DailyWeather, cases: readonly Case[]): FittingYear[] {
  const found: FittingYear[] = [];
  // Cases of one crop and fallow fit alike.
  const keys = cases.map(({ crop, fallowDays }) => JSON.stringify([crop, fallowDays]));
  const differing = cases.filter((_, c) => keys.indexOf(keys[c]!) === c);
  const last = yearOf(weather.firstDay + weather.days - 1);
  for (let year = yearOf(weather.firstDay); year <= last; year++) {
    const sowingIndex = ({ crop }: Case) => dayInYear(year, crop.sowing) - weather.firstDay;
    const days = differing.map((plan) => daysInside(plan, weather, sowingIndex(plan)));
    if (days.every((one) => one > 0))
      found.push({ year, sowingIndexByCase: cases.map(sowingIndex), daysOfFirst: days[0]! });
  }
  return found;
}

/** Days from sowing to maturity; 0 where the run does not lie within the weather. */
function daysInside({ crop, fallowDays }: Case, weather: DailyWeather, sowingIndex: number): number {
  if (sowingIndex - fallowDays < 0 || sowingIndex >= weather.days) return 0;
  const { end, days } = seasonClock(crop, weather, sowingIndex);
  return end === "weather ends" ? 0 : days;
}

function refuseShortRecord(weather: DailyWeather, cases: readonly Case[]): never {
  const fallowDays = Math.max(...cases.map((one) => one.fallowDays));
  const { crop } = cases[0]!;
  const before = fallowDays > 0 ? `from ${fallowDays} days of fallow before sowing` : "from sowing";
  throw new InputError([
    {
      field: "weather",
      expected: `a record of at least one whole run, ${before} of ${crop.name} to maturity (at most ${longestSeasonDays(crop, weather.hasTemperature)} days)`,
      found: `${isoDate(weather.firstDay)} to ${isoDate(weather.firstDay + weather.days - 1)}`,
      mend:
        fallowDays > 0
          ? "give a longer record, or less fallow and the water measured at sowing"
          : "give a longer record",
    },
  ]);
}
