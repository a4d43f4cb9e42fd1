import { InputError } from "../problem.ts";
import { airOf } from "./airTemperature.ts";
import { isoDate } from "./calendar.ts";
import type { DailyWeather, MonthlyAir, Site, WeatherRecord } from "./record.ts";
import { asGiven, etMethods, extraterrestrialByDay, isDryClimate, type EtMethod } from "./recordEt.ts";
import { lowestHumidity, vapourRule, type VapourRule } from "./vapour.ts";
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
 * What a season runs on: a record with reference ET worked out and every series filled.
 *
 * @param record gaps filled: no NaN in any series it has
 * @throws InputError where neither reference ET nor temperatures are to be had
 * Source: [Allen et al. 1998, FAO-56] ch. 3 and 4 (read), with its rules for missing data.
 */
export function toDailyWeather(
  record: WeatherRecord,
  site: Site,
  { method, normals }: EtChoice,
): DailyWeather {
  const air = airOf(record, normals);
  const own = record.referenceEtMm;
  if (own && !air) return finite(withoutTemperatures(record, own));
  if (!air) throw new InputError([noTemperatures]);

  const raMj = extraterrestrialByDay(record, site);
  const vapour = vapourRule(record, air.tMaxC, air.tMinC, () => isDryClimate(record, air, raMj));
  const wind2mMPerS = windOrUsual(record);
  const et = own ? asGiven(own) : etMethods[method]({ record, air, raMj, vapour, wind2mMPerS, site });
  return finite({
    firstDay: record.firstDay,
    days: record.days,
    rainMm: record.rainMm,
    tMaxC: air.tMaxC,
    tMinC: air.tMinC,
    tMeanC: air.tMeanC,
    et0Mm: et.et0Mm,
    rhMinPercent: lowestHumidity(record, vapour, air.tMaxC),
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
  });
}

function withoutTemperatures(record: WeatherRecord, own: Float64Array): DailyWeather {
  const unknownC = new Float64Array(record.days).fill(noTemperatureC);
  const et = asGiven(own);
  return {
    firstDay: record.firstDay,
    days: record.days,
    rainMm: record.rainMm,
    tMaxC: unknownC,
    tMinC: unknownC,
    tMeanC: unknownC,
    et0Mm: et.et0Mm,
    rhMinPercent: record.rhMinPercent ?? new Float64Array(record.days).fill(humidityOfTheTablesPercent),
    wind2mMPerS: windOrUsual(record),
    hasTemperature: false,
    referenceEt: et.words,
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

/** No season runs on a number that is none: a gap left here is our own fault, not the user's. */
function finite(weather: DailyWeather): DailyWeather {
  for (const [name, series] of Object.entries(weather)) {
    if (!(series instanceof Float64Array)) continue;
    for (let day = 0; day < series.length; day++) {
      if (!Number.isFinite(series[day]))
        throw new Error(`weather series ${name} has no number on ${isoDate(weather.firstDay + day)}`);
    }
  }
  return weather;
}
