import generator from "../../data-reference/rain-generator.json" with { type: "json" };
import { stream } from "../randomness.ts";
import { dayNumber, daysInMonth, isLeapYear } from "./calendar.ts";
import { checkNormals, yearCourse } from "./normals.ts";
import { isWet, usualRainPerWetDayMm, wetChances, wetDayAmounts, type WetDayAmounts } from "./rainChain.ts";
import { emptyRecord, type MonthlyNormals, type Site, type WeatherRecord } from "./record.ts";
import { residualWalk, temperatureSpreadC } from "./temperatureResiduals.ts";

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
 * @throws InputError on normals that cannot be (see checkNormals)
 */
export function generateYears(normals: MonthlyNormals, site: Site, plan: GeneratePlan): WeatherRecord {
  checkNormals(normals);
  const months = rainMonths(normals);
  const firstDay = dayNumber(plan.firstYear, 1, 1);
  const days = dayNumber(plan.firstYear + plan.years, 1, 1) - firstDay;
  const rainMm = new Float64Array(days);
  const tMaxC = new Float64Array(days);
  const tMinC = new Float64Array(days);

  const occurrence = stream(plan.seed, "wet days");
  const amounts = stream(plan.seed, "rain amounts");
  const residuals = residualWalk(stream(plan.seed, "temperature"));
  const courses = { tMax: yearCourse(normals.tMaxC), tMin: yearCourse(normals.tMinC) };
  const cooler = generator.wetDays;

  let wet = occurrence.uniform() < months[0]!.wetShare;
  let day = 0;
  for (let year = plan.firstYear; year < plan.firstYear + plan.years; year++) {
    const kind = isLeapYear(year) ? "leap" : "ordinary";
    let ofYear = 0;
    for (const [index, month] of months.entries()) {
      for (let left = daysInMonth(year, index + 1); left > 0; left--, day++, ofYear++) {
        wet = isWet(wet, month.chances, occurrence);
        if (wet) rainMm[day] = amounts.gamma(month.amounts.shape, month.amounts.scaleMm);
        const coolness = wet ? 1 - month.wetShare : -month.wetShare; // mean 0 over the month
        const away = residuals();
        const high =
          courses.tMax[kind][ofYear]! - cooler.tMaxCoolerC * coolness + month.spreadMaxC * away.tMax;
        const low =
          courses.tMin[kind][ofYear]! - cooler.tMinCoolerC * coolness + month.spreadMinC * away.tMin;
        tMaxC[day] = Math.max(high, low);
        tMinC[day] = Math.min(high, low);
      }
    }
  }
  return {
    ...emptyRecord(firstDay, days, stationOf(site)),
    rainMm,
    tMaxC,
    tMinC,
    notes: notesOf(normals, plan),
  };
}

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
  readonly amounts: WetDayAmounts;
  readonly spreadMaxC: number;
  readonly spreadMinC: number;
}

function rainMonths(normals: MonthlyNormals): RainMonth[] {
  const assumed = assumedWetDays(normals);
  return assumed.map((assumedDays, month) => {
    const rainMm = normals.rainMm[month]!;
    const known = normals.wetDays?.[month] ?? 0;
    // Rain without a wet day is a rounded table, wet days without rain bring none: both go by the assumption.
    const wetDays = rainMm > 0 && known > 0 ? known : assumedDays;
    const length = month === 1 ? 28.25 : daysInMonth(2001, month + 1);
    const wetShare = Math.min(1, wetDays / length);
    const meanC = monthMeanC(normals, month);
    return {
      wetShare,
      chances: wetShare > 0 ? wetChances(wetShare) : { afterDry: 0, afterWet: 0 },
      amounts: wetShare > 0 ? wetDayAmounts(rainMm / (wetShare * length)) : { shape: 1, scaleMm: 1 },
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
