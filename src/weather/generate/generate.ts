import generator from "../../../data-reference/rain-generator.json" with { type: "json" };
import { dayNumber, daysInMonth, isLeapYear } from "../../quantity/calendar.ts";
import { checkNormals, yearCourse } from "./normals.ts";
import { drawDays, serves, type GeneratorDraws } from "./generatorDraws.ts";
import { amountShape, wetDayAmounts, wetDayRainMm, type WetDayAmounts } from "./rainAmounts.ts";
import { isWet, usualRainPerWetDayMm, wetChances, wetFromMm } from "./rainChain.ts";
import { persistenceOf, warmRainIndex, wetnessOf, wetnessSpreadOf, wetShareOfYear } from "./rainTiming.ts";
import type { MonthlyNormals, Site, WeatherRecord } from "../records/record.ts";
import { temperatureSpreadC } from "./temperatureResiduals.ts";

export interface GeneratePlan {
  /** 1 or more; the first years are the same however many are asked. */
  readonly years: number;
  readonly firstYear: number;
  readonly seed: number;
}

/**
 * Weather years like those of a place of which only monthly normals are known: rain, highest and lowest temperature.
 *
 * Rain: wet and dry days (rainChain.ts), wetter and drier years (rainTiming.ts), amounts (rainAmounts.ts). Temperature: a smooth course with the normals as its monthly means, plus residuals of
 * highest and lowest (temperatureResiduals.ts); wet days are cooler than dry ones, the mean staying the month's.
 * Where a draw puts the lowest above the highest the two change places. Monthly means come back over many years.
 *
 * @param drawn draws kept from before (see generatorDraws.ts): saves time, changes nothing; others are made anew
 * @throws InputError on normals that cannot be (see checkNormals)
 */
export function generateYears(
  normals: MonthlyNormals,
  site: Site,
  plan: GeneratePlan,
  drawn: GeneratorDraws | null = null,
): WeatherRecord {
  checkNormals(normals);
  const months = rainMonths(normals);
  const timing = warmRainIndex(normals);
  const persistence = persistenceOf(timing);
  const wetnessSpread = wetnessSpreadOf(timing);
  const firstDay = dayNumber(plan.firstYear, 1, 1);
  const days = daysOf(plan);
  const rainMm = new Float64Array(days);
  const tMaxC = new Float64Array(days);
  const tMinC = new Float64Array(days);

  const draws = serves(drawn, plan.seed, days) ? drawn : drawDays(plan.seed, days);
  const highs = yearCourse(normals.tMaxC);
  const lows = yearCourse(normals.tMinC);
  const { tMaxCoolerC, tMinCoolerC } = generator.wetDays;

  let wet = draws.wetBefore < months[0]!.wetShare;
  let day = 0;
  for (let year = plan.firstYear; year < plan.firstYear + plan.years; year++) {
    const kind = isLeapYear(year) ? "leap" : "ordinary";
    const [high, low] = [highs[kind], lows[kind]];
    const lengths = monthLengths[kind];
    const wetness = wetnessOf(wetnessSpread, draws.wetnessByYear[year - plan.firstYear]!);
    let ofYear = 0;
    for (let m = 0; m < 12; m++) {
      const { wetShare, amounts, spreadMaxC, spreadMinC } = months[m]!;
      const chances = wetShare > 0 ? wetChances(wetShareOfYear(wetShare, wetness), persistence) : never;
      for (const end = ofYear + lengths[m]!; ofYear < end; ofYear++, day++) {
        wet = isWet(wet, chances, draws.wet[day]!);
        if (wet) rainMm[day] = wetDayRainMm(amounts, draws.amount[day]!);
        const coolness = wet ? 1 - wetShare : -wetShare; // mean 0 over the month
        const highC = high[ofYear]! - tMaxCoolerC * coolness + spreadMaxC * draws.tMax[day]!;
        const lowC = low[ofYear]! - tMinCoolerC * coolness + spreadMinC * draws.tMin[day]!;
        tMaxC[day] = Math.max(highC, lowC);
        tMinC[day] = Math.min(highC, lowC);
      }
    }
  }
  // Field by field: what runs over it is compiled for one layout of this object.
  return {
    firstDay,
    days,
    rainMm,
    tMaxC,
    tMinC,
    solarMjPerM2: null,
    rhMaxPercent: null,
    rhMinPercent: null,
    rhMeanPercent: null,
    dewPointC: null,
    wind2mMPerS: null,
    referenceEtMm: null,
    station: stationOf(site),
    notes: notesOf(normals, plan),
  };
}

/** Days of all the years of a plan. */
export function daysOf({ firstYear, years }: Pick<GeneratePlan, "firstYear" | "years">): number {
  return dayNumber(firstYear + years, 1, 1) - dayNumber(firstYear, 1, 1);
}

const monthLengths = {
  ordinary: Array.from({ length: 12 }, (_, month) => daysInMonth(2001, month + 1)),
  leap: Array.from({ length: 12 }, (_, month) => daysInMonth(2004, month + 1)),
};

/** Wet days of each month where the normals do not say: rain over the usual rain of a wet day, at most 0.9 of the days. */
export function assumedWetDays(normals: MonthlyNormals): number[] {
  return normals.rainMm.map((rainMm, month) => {
    const most = 0.9 * daysInMonth(2001, month + 1);
    return Math.min(most, rainMm > 0 ? rainMm / usualRainPerWetDayMm(monthMeanC(normals, month), rainMm) : 0);
  });
}

interface RainMonth {
  readonly wetShare: number;
  readonly amounts: WetDayAmounts;
  readonly spreadMaxC: number;
  readonly spreadMinC: number;
}

/** In a month without rain no day is wet, whatever the day before was. */
const never = { afterDry: 0, afterWet: 0 };

function rainMonths(normals: MonthlyNormals): RainMonth[] {
  const assumed = assumedWetDays(normals);
  return assumed.map((assumedDays, month) => {
    const rainMm = normals.rainMm[month]!;
    const known = normals.wetDays?.[month] ?? 0;
    // Rain without a wet day is a rounded table, wet days without rain bring none: both go by the assumption.
    // No more of them than the rain serves with the 0.25 mm that makes one.
    const wetDays = Math.min(rainMm / wetFromMm, rainMm > 0 && known > 0 ? known : assumedDays);
    const length = month === 1 ? 28.25 : daysInMonth(2001, month + 1);
    const wetShare = Math.min(1, wetDays / length);
    const meanC = monthMeanC(normals, month);
    const meanMm = wetShare > 0 ? rainMm / (wetShare * length) : wetFromMm;
    return {
      wetShare,
      amounts: wetDayAmounts(meanMm, amountShape(meanC)),
      spreadMaxC: temperatureSpreadC("tMax", meanC),
      spreadMinC: temperatureSpreadC("tMin", meanC),
    };
  });
}

function monthMeanC(normals: MonthlyNormals, month: number): number {
  return (normals.tMaxC[month]! + normals.tMinC[month]!) / 2;
}

function stationOf(site: Site): WeatherRecord["station"] {
  return {
    id: "generated",
    name: "generated from monthly normals",
    format: "generated years",
    latitudeDeg: site.latitudeDeg,
    elevationM: site.elevationM,
  };
}

function notesOf(normals: MonthlyNormals, { years, seed }: GeneratePlan): string[] {
  const notes = [
    `Weather: ${years} ${years === 1 ? "year" : "years"} generated from monthly normals (seed ${seed}): wet and dry days and years, and mixed exponential amounts (Woolhiser & Roldan 1982), fitted on open gauges; temperatures about their normals (Richardson 1981); no real year is among them.`,
  ];
  if (normals.wetDays === null) {
    const each = assumedWetDays(normals).map((days) => days.toFixed(0));
    notes.push(`Wet days a month were not given; assumed from rain and temperature: ${each.join(", ")}.`);
  }
  return notes;
}
