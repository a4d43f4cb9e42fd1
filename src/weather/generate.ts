import generator from "../../data-reference/rain-generator.json" with { type: "json" };
import { stream, type Draws } from "../randomness.ts";
import { dayNumber, daysInMonth, isLeapYear } from "./calendar.ts";
import { checkNormals, yearCourse } from "./normals.ts";
import { drawDays, serves, type GeneratorDraws } from "./generatorDraws.ts";
import { isWet, usualRainPerWetDayMm, wetChances, wetDayAmounts, type WetDayAmounts } from "./rainChain.ts";
import type { MonthlyNormals, Site, WeatherRecord } from "./record.ts";
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
 * Rain: see rainChain.ts. Temperature: a smooth course with the normals as its monthly means, plus residuals of
 * highest and lowest (temperatureResiduals.ts); wet days are cooler than dry ones, the mean staying the month's.
 * Where a draw puts the lowest above the highest the two change places. Monthly means come back over many years;
 * totals of years vary less than measured ones, as with every such chain.
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
  const amounts = stream(plan.seed, "rain amounts");
  const months = rainMonths(normals, amounts);
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
    let ofYear = 0;
    for (let m = 0; m < 12; m++) {
      const { wetShare, chances, amountMm, spreadMaxC, spreadMinC } = months[m]!;
      for (const end = ofYear + lengths[m]!; ofYear < end; ofYear++, day++) {
        wet = isWet(wet, chances, draws.wet[day]!);
        if (wet) rainMm[day] = amountMm();
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
    return Math.min(most, rainMm / usualRainPerWetDayMm(monthMeanC(normals, month)));
  });
}

interface RainMonth {
  readonly wetShare: number;
  readonly chances: { readonly afterDry: number; readonly afterWet: number };
  /** Draws a wet day's rain. */
  readonly amountMm: () => number;
  readonly spreadMaxC: number;
  readonly spreadMinC: number;
}

/** Never drawn from. */
const dryMonth: WetDayAmounts = { shape: 1, scaleMm: 1 };

function rainMonths(normals: MonthlyNormals, draws: Draws): RainMonth[] {
  const assumed = assumedWetDays(normals);
  return assumed.map((assumedDays, month) => {
    const rainMm = normals.rainMm[month]!;
    const known = normals.wetDays?.[month] ?? 0;
    // Rain without a wet day is a rounded table, wet days without rain bring none: both go by the assumption.
    const wetDays = rainMm > 0 && known > 0 ? known : assumedDays;
    const length = month === 1 ? 28.25 : daysInMonth(2001, month + 1);
    const wetShare = Math.min(1, wetDays / length);
    const meanC = monthMeanC(normals, month);
    const { shape, scaleMm } = wetShare > 0 ? wetDayAmounts(rainMm / (wetShare * length)) : dryMonth;
    return {
      wetShare,
      chances: wetShare > 0 ? wetChances(wetShare) : { afterDry: 0, afterWet: 0 },
      amountMm: draws.gamma(shape, scaleMm),
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
    `Weather: ${years} ${years === 1 ? "year" : "years"} generated from monthly normals (seed ${seed}): wet and dry days as a chain with gamma amounts (Geng et al. 1986), temperatures about their normals (Richardson 1981); no real year is among them.`,
  ];
  if (normals.wetDays === null) {
    const each = assumedWetDays(normals).map((days) => days.toFixed(0));
    notes.push(`Wet days a month were not given; assumed from rain and temperature: ${each.join(", ")}.`);
  }
  return notes;
}
