import { InputError } from "../../problem.ts";
import { airOf } from "./airTemperature.ts";
import { isoDate } from "../../quantity/calendar.ts";
import type { DailyWeather, MonthlyAir, Site, WeatherRecord } from "../records/record.ts";
import { asGiven, etMethods, extraterrestrialByDay, isDryClimate, type EtMethod } from "./recordEt.ts";
import { lowestHumidityOn, vapourRule, type VapourRule } from "./vapour.ts";
import { usualWindMPerS, windOrUsual } from "./wind.ts";

export interface EtChoice {
  /** What to compute; a record with its own reference ET keeps it. */
  readonly method: EtMethod;
  /** Temperatures for a record without any. */
  readonly normals: MonthlyAir | null;
}

/** FAO-56 writes its crop coefficients for this lowest humidity; where nothing is known they stay as they are. */
const humidityOfTheTablesPercent = 45;
/** Stands in for temperatures nobody knows: nothing freezes, nothing sleeps. */
const noTemperatureC = 20;

/**
 * Weather whose reference ET and lowest humidity are NaN until they are asked for: of two hundred generated years, one season
 * on show needs one.
 */
export interface WeatherOnDemand {
  readonly weather: DailyWeather;
  /** Works out days `from` to below `to`; those worked out before stay as they are. Days beyond the record are left out. */
  readonly workOut: (from: number, to: number) => void;
}

/**
 * What a season runs on: a record with reference ET worked out and every series filled.
 *
 * @param record gaps filled: no NaN in any series it has
 * @throws InputError where neither reference ET nor temperatures are to be had
 * Source: [Allen et al. 1998, FAO-56] ch. 3 and 4 (read), with its rules for missing data.
 */
export function toDailyWeather(record: WeatherRecord, site: Site, choice: EtChoice): DailyWeather {
  const { weather, workOut } = weatherOnDemand(record, site, choice);
  workOut(0, record.days);
  return weather;
}

/** The same, reference ET and lowest humidity on demand. */
export function weatherOnDemand(
  record: WeatherRecord,
  site: Site,
  { method, normals }: EtChoice,
): WeatherOnDemand {
  const air = airOf(record, normals);
  const own = record.referenceEtMm;
  if (own && !air) return allWorkedOut(finite(withoutTemperatures(record, own)));
  if (!air) throw new InputError([noTemperatures]);

  const raMj = extraterrestrialByDay(record, site);
  const vapour = vapourRule(record, air.tMaxC, air.tMinC, () => isDryClimate(record, air, raMj));
  const wind2mMPerS = windOrUsual(record);
  const et = own ? asGiven(own) : etMethods[method]({ record, air, raMj, vapour, wind2mMPerS, site });
  const et0Mm = new Float64Array(record.days).fill(NaN);
  const rhMinPercent = new Float64Array(record.days).fill(NaN);
  const weather = {
    firstDay: record.firstDay,
    days: record.days,
    rainMm: record.rainMm,
    tMaxC: air.tMaxC,
    tMinC: air.tMinC,
    tMeanC: air.tMeanC,
    et0Mm,
    rhMinPercent,
    wind2mMPerS,
    hasTemperature: true,
    referenceEt: et.words,
    notes: [
      ...record.notes,
      ...(own && method === "hargreaves"
        ? ["The record brings its own reference ET, so Hargreaves was not used."]
        : []),
      ...(air.fromNormals
        ? [
            "The record has no temperatures: they follow the monthly normals, the same every year, for snow and crop stages too.",
          ]
        : []),
      ...climateNotes(record, own !== null || method === "hargreaves", vapour),
    ],
  };
  const { rainMm, tMaxC, tMinC, tMeanC } = weather;
  checkFinite({ rainMm, tMaxC, tMinC, tMeanC, wind2mMPerS }, record.firstDay, 0, record.days);
  const workOut = byBlocks(record.days, (from, to) => {
    for (let day = from; day < to; day++) {
      const vapourKPa = vapour.kPaOn(day);
      et0Mm[day] = et.mmOn(day, vapourKPa);
      rhMinPercent[day] = lowestHumidityOn(record, day, vapourKPa, air.tMaxC);
    }
    checkFinite({ et0Mm, rhMinPercent }, record.firstDay, from, to);
  });
  return { weather, workOut };
}

const blockDays = 64;

/** Does each block of days once, when a day of it is first asked for. */
function byBlocks(days: number, workOut: (from: number, to: number) => void): WeatherOnDemand["workOut"] {
  const done = new Uint8Array(Math.ceil(days / blockDays));
  return (from, to) => {
    const end = Math.min(days, to);
    for (let block = Math.floor(Math.max(0, from) / blockDays); block * blockDays < end; block++) {
      if (done[block] === 1) continue;
      workOut(block * blockDays, Math.min(days, (block + 1) * blockDays));
      done[block] = 1;
    }
  };
}

function allWorkedOut(weather: DailyWeather): WeatherOnDemand {
  return { weather, workOut: () => undefined };
}

function withoutTemperatures(record: WeatherRecord, own: Float64Array): DailyWeather {
  const unknownC = new Float64Array(record.days).fill(noTemperatureC);
  const { mmOn, words } = asGiven(own);
  return {
    firstDay: record.firstDay,
    days: record.days,
    rainMm: record.rainMm,
    tMaxC: unknownC,
    tMinC: unknownC,
    tMeanC: unknownC,
    et0Mm: own.map((_, day) => mmOn(day, NaN)),
    rhMinPercent: record.rhMinPercent ?? new Float64Array(record.days).fill(humidityOfTheTablesPercent),
    wind2mMPerS: windOrUsual(record),
    hasTemperature: false,
    referenceEt: words,
    notes: [
      ...record.notes,
      "The record has no temperatures: nothing counts as snow, and crop stages run on days.",
      ...climateNotes(record, true, null),
    ],
  };
}

/** What the crop coefficients' adjustment for wind and humidity rests on, where reference ET does not say it already. */
function climateNotes(record: WeatherRecord, unsaid: boolean, vapour: VapourRule | null): string[] {
  const guessed = [
    ...(record.wind2mMPerS ? [] : [`wind ${usualWindMPerS} m/s`]),
    ...(record.rhMinPercent || vapour?.measured
      ? []
      : [
          vapour
            ? "lowest humidity from the day's temperatures (FAO-56 eq. 64)"
            : `lowest humidity ${humidityOfTheTablesPercent} %`,
        ]),
  ];
  return unsaid && guessed.length > 0
    ? [`Not in the record, so taken for the crop coefficients: ${guessed.join(" and ")}.`]
    : [];
}

const noTemperatures = {
  field: "weather.monthlyNormals",
  expected:
    "monthly mean highest and lowest temperatures, since the record has neither temperatures nor reference ET",
  found: "none",
  mend: "give weather.monthlyNormals, or a record with both daily temperatures",
};

function finite(weather: DailyWeather): DailyWeather {
  const { firstDay, days, rainMm, tMaxC, tMinC, tMeanC, et0Mm, rhMinPercent, wind2mMPerS } = weather;
  checkFinite({ rainMm, tMaxC, tMinC, tMeanC, et0Mm, rhMinPercent, wind2mMPerS }, firstDay, 0, days);
  return weather;
}

/** No season runs on a number that is none: a gap left here is our own fault, not the user's. */
function checkFinite(
  series: Readonly<Record<string, Float64Array>>,
  firstDay: number,
  from: number,
  to: number,
): void {
  for (const [name, values] of Object.entries(series)) {
    for (let day = from; day < to; day++) {
      if (!Number.isFinite(values[day]))
        throw new Error(`weather series ${name} has no number on ${isoDate(firstDay + day)}`);
    }
  }
}
