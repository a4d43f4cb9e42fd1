/** What a gauge's rain is like, and years generated from its own monthly normals. */
import { readFileSync } from "node:fs";
import { dayNumber, monthOf, yearOf } from "../src/weather/calendar.ts";
import { generateYears } from "../src/weather/generate.ts";
import { readWeather } from "../src/weather/readers/index.ts";
import type { MonthlyNormals, WeatherRecord } from "../src/weather/record.ts";
import { placeNamed } from "./places.ts";
import { mean, sum } from "./water.ts";

export interface Gauge {
  readonly id: string;
  readonly file: string;
  readonly fromMonth: number;
  readonly toMonth: number;
}

export const gauges: readonly Gauge[] = [
  { id: "byers", file: "weather-daily/byers_co_rain_apr-oct_1990-2019.csv", fromMonth: 4, toMonth: 10 },
  { id: "dubois", file: "weather-daily/dubois_id_1926-2016.csv", fromMonth: 1, toMonth: 12 },
  { id: "merced", file: "weather-daily/merced_ca_1999-2022.csv", fromMonth: 1, toMonth: 12 },
  { id: "new-york", file: "weather-daily/USW00094728_1990-2019_core.dly", fromMonth: 1, toMonth: 12 },
  {
    id: "manhattan",
    file: "soil-moisture/uscrn_KS_Manhattan_6_SSW_2003-2017.csv",
    fromMonth: 1,
    toMonth: 12,
  },
];

export interface RainLike {
  /** Of a hundred of rain, on days above 20 and above 30 mm. */
  readonly above20Percent: number;
  readonly above30Percent: number;
  /** Days with 0.25 mm or more, in a year or in the months that are read. */
  readonly wetDays: number;
  /** Mean over the years of their longest run of other days. */
  readonly longestSpellDays: number;
  /** Of the totals of years. */
  readonly sdMm: number;
}

const wetMm = 0.25;
/** A year counts with at most so many days missing. */
const mostMissing = 5;
const generatedYears = 1000;

export function rainOf(openData: string, gauge: Gauge): { measured: RainLike; generated: RainLike } {
  const record = recordOf(openData, gauge);
  const years = { years: generatedYears, firstYear: 2001, seed: 1 };
  const site = { latitudeDeg: 40, elevationM: 1000, setting: "inland" } as const;
  return {
    measured: rainLike(record, gauge),
    generated: rainLike(generateYears(normalsOf(record), site, years), gauge),
  };
}

/** Days whose maximum is below their minimum lose both temperatures, which the rain does not need. */
function recordOf(openData: string, { file }: Gauge): WeatherRecord {
  const text = readFileSync(`${openData}/${file}`, "utf8");
  const plain = text.startsWith("date,rain_mm,tmax_c,tmin_c")
    ? text.replace(
        /^([\d-]{10},[^,\n]*),([^,\n]*),([^,\n]*)$/gm,
        (line, rain: string, high: string, low: string) =>
          Number(low) > Number(high) && high !== "" ? `${rain},,` : line,
      )
    : text;
  return readWeather(plain, { fileName: file });
}

/** Of its own months; where it reads no winter, and for temperatures it lacks, Akron's. */
function normalsOf(record: WeatherRecord): MonthlyNormals {
  const akron = placeNamed("akron");
  const lengths = [31, 28.25, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
  const months = lengths.map((length, m) => {
    const days = Array.from({ length: record.days }, (_, day) => day).filter(
      (day) => monthOf(record.firstDay + day) === m + 1,
    );
    const meanOf = (values: Float64Array | null, of: (value: number) => number): number | null => {
      const held = days.map((day) => values?.[day] ?? NaN).filter((value) => !Number.isNaN(value));
      return held.length < 25 ? null : mean(held.map(of));
    };
    const rain = meanOf(record.rainMm, (mm) => mm);
    const wet = meanOf(record.rainMm, (mm) => (mm >= wetMm ? 1 : 0));
    return {
      rainMm: rain === null ? akron.rainMm[m]! : rain * length,
      wetDays: wet === null ? 4 : wet * length, // of Akron's winter months, which are not looked at
      tMaxC: meanOf(record.tMaxC, (c) => c) ?? akron.tMaxC[m]!,
      tMinC: meanOf(record.tMinC, (c) => c) ?? akron.tMinC[m]!,
    };
  });
  return {
    rainMm: months.map((month) => month.rainMm),
    wetDays: months.map((month) => month.wetDays),
    tMaxC: months.map((month) => month.tMaxC),
    tMinC: months.map((month) => month.tMinC),
  };
}

interface Year {
  readonly amounts: number[];
  missing: number;
}

function rainLike({ firstDay, days, rainMm }: WeatherRecord, { fromMonth, toMonth }: Gauge): RainLike {
  const years = new Map<number, Year>();
  for (let day = 0; day < days; day++) {
    const month = monthOf(firstDay + day);
    if (month < fromMonth || month > toMonth) continue;
    const number = yearOf(firstDay + day);
    const year = years.get(number) ?? { amounts: [], missing: 0 };
    years.set(number, year);
    const mm = rainMm[day]!;
    year.amounts.push(Number.isNaN(mm) ? 0 : mm);
    if (Number.isNaN(mm)) year.missing++;
  }
  const whole = [...years].filter(([number, { amounts, missing }]) => {
    const absent = spanDays(number, fromMonth, toMonth) - amounts.length;
    return missing + absent <= mostMissing;
  });
  const all = [...years.values()].flatMap(({ amounts }) => amounts);
  const shareAbove = (mm: number) => (100 * sum(all.filter((each) => each > mm))) / sum(all);
  const totals = whole.map(([, { amounts }]) => sum(amounts));
  const level = mean(totals);
  return {
    above20Percent: shareAbove(20),
    above30Percent: shareAbove(30),
    wetDays: mean(whole.map(([, { amounts }]) => amounts.filter((mm) => mm >= wetMm).length)),
    longestSpellDays: mean(whole.map(([, { amounts }]) => longestDry(amounts))),
    sdMm: Math.sqrt(sum(totals.map((total) => (total - level) ** 2)) / (totals.length - 1)),
  };
}

const spanDays = (year: number, fromMonth: number, toMonth: number): number =>
  (toMonth === 12 ? dayNumber(year + 1, 1, 1) : dayNumber(year, toMonth + 1, 1)) -
  dayNumber(year, fromMonth, 1);

function longestDry(amounts: readonly number[]): number {
  let [longest, run] = [0, 0];
  for (const mm of amounts) {
    run = mm >= wetMm ? 0 : run + 1;
    longest = Math.max(longest, run);
  }
  return longest;
}
