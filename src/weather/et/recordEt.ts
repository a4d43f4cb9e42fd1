import { temperaturesInWords, type Air } from "./airTemperature.ts";
import { airPressureKPa, psychrometricKPaPerC } from "./atmosphere.ts";
import { dayOfYear, yearOf } from "../../quantity/calendar.ts";
import { hargreavesMm } from "./hargreaves.ts";
import { overDays } from "../generate/normals.ts";
import {
  clearSkyMj,
  netLongwaveMj,
  netShortwaveMj,
  solarFromTemperaturesMj,
  solarPerRootRange,
} from "./radiation.ts";
import type { Site, WeatherRecord } from "../records/record.ts";
import { penmanMonteithMm } from "./referenceEt.ts";
import { extraterrestrialMj } from "./sun.ts";
import type { VapourRule } from "./vapour.ts";
import { usualWindMPerS } from "./wind.ts";

export type EtMethod = "penman-monteith" | "hargreaves";

/** Reference ET of the days of a record. */
export interface Et {
  readonly mmOn: (day: number, vapourKPa: number) => number;
  /** Which data were used and which rule stood in for what, in words. */
  readonly words: string;
}

/** Rain below this share of reference ET makes a dry climate: the usual upper limit of semi-arid (UNEP 1992, memory). */
const dryBelowShare = 0.5;

export interface EtInput {
  readonly record: WeatherRecord;
  readonly air: Air;
  /** Radiation above the atmosphere by day, see `extraterrestrialByDay`. */
  readonly raMj: Float64Array;
  readonly vapour: VapourRule;
  readonly wind2mMPerS: Float64Array;
  readonly site: Site;
}

export const etMethods: Record<EtMethod, (input: EtInput) => Et> = {
  "penman-monteith": byPenmanMonteith,
  hargreaves: byHargreaves,
};

function byPenmanMonteith({ record, air, raMj, vapour, wind2mMPerS, site }: EtInput): Et {
  const gamma = psychrometricKPaPerC(airPressureKPa(site.elevationM));
  const perRootRange = solarPerRootRange[site.setting];
  const mmOn = (day: number, vapourKPa: number) => {
    const tMaxC = air.tMaxC[day]!;
    const tMinC = air.tMinC[day]!;
    const ra = raMj[day]!;
    const clear = clearSkyMj(ra, site.elevationM);
    const solar =
      record.solarMjPerM2?.[day] ??
      solarFromTemperaturesMj({ tMaxC, tMinC, extraterrestrialMj: ra, clearSkyMj: clear, perRootRange });
    return penmanMonteithMm({
      tMaxC,
      tMinC,
      tMeanC: air.tMeanC[day]!,
      vapourKPa,
      netRadiationMj: netShortwaveMj(solar) - netLongwaveMj(tMaxC, tMinC, vapourKPa, solar, clear), // eq. 40
      soilHeatMj: 0, // eq. 42
      wind2mMPerS: wind2mMPerS[day]!,
      psychrometricKPaPerC: gamma,
    });
  };
  const held = [
    temperaturesInWords(air),
    ...(record.solarMjPerM2 ? ["solar radiation"] : []),
    ...(vapour.measured ? [vapour.words] : []),
    ...(record.wind2mMPerS ? ["wind"] : []),
  ];
  const replaced = [
    ...(record.solarMjPerM2
      ? []
      : [
          `radiation missing, taken from the temperature range (eq. 50, ${perRootRange} for ${site.setting} places)`,
        ]),
    ...(vapour.measured ? [] : [vapour.words]),
    ...(record.wind2mMPerS ? [] : [`wind missing, taken as ${usualWindMPerS} m/s`]),
  ];
  return {
    mmOn,
    words: ["FAO-56 Penman-Monteith (eq. 6) from " + listed(held), ...replaced].join("; ") + ".",
  };
}

function byHargreaves({ air, raMj }: EtInput): Et {
  const mmOn = (day: number) => hargreavesMm(air.tMeanC[day]!, air.tMaxC[day]! - air.tMinC[day]!, raMj[day]!);
  return { mmOn, words: `Hargreaves (FAO-56 eq. 52) from ${temperaturesInWords(air)} alone.` };
}

/** The record's own reference ET; below 0 counts as 0. */
export function asGiven(own: Float64Array): Et {
  return {
    mmOn: (day) => Math.max(0, own[day]!),
    words: "Reference ET as the weather record gives it, unchanged.",
  };
}

/** Radiation above the atmosphere, MJ/m2 a day. */
export function extraterrestrialByDay(record: WeatherRecord, site: Site): Float64Array {
  const byDayOfYear = Float64Array.from({ length: 366 }, (_, index) =>
    extraterrestrialMj(site.latitudeDeg, index + 1),
  );
  return overDays(
    { ordinary: byDayOfYear.subarray(0, 365), leap: byDayOfYear },
    yearOf(record.firstDay),
    dayOfYear(record.firstDay),
    record.days,
  );
}

/** Judged by the record itself: its rain against Hargreaves' reference ET. */
export function isDryClimate(record: WeatherRecord, air: Air, raMj: Float64Array): boolean {
  let [rain, et] = [0, 0];
  for (let day = 0; day < record.days; day++) {
    rain += record.rainMm[day]!;
    et += hargreavesMm(air.tMeanC[day]!, air.tMaxC[day]! - air.tMinC[day]!, raMj[day]!);
  }
  return rain < dryBelowShare * et;
}

function listed(words: readonly string[]): string {
  return words.length < 2 ? words.join("") : `${words.slice(0, -1).join(", ")} and ${words.at(-1)}`;
}
