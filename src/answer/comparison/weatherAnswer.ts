import { InputError, sayProblem } from "../../problem.ts";
import { unitDoubts } from "./unitDoubts.ts";
import { dayNumber, isoDate } from "../../quantity/calendar.ts";
import { toDailyWeather } from "../../weather/et/dailyWeather.ts";
import { chosen, fillGaps, type GapOptions } from "../../weather/records/gaps.ts";
import {
  describeHoldings,
  seasonTotals,
  type Holdings,
  type SeasonWindow,
} from "../../weather/records/holdings.ts";
import type { DailyWeather, Site, WeatherRecord } from "../../weather/records/record.ts";

/** The answer of `weather`, as `--json` gives it: `rootfront-weather/1`. Water in mm, temperatures in C. */
export interface WeatherAnswer {
  readonly format: "rootfront-weather/1";
  readonly station: Holdings["station"];
  readonly firstDate: string;
  readonly lastDate: string;
  readonly days: number;
  readonly elements: readonly ElementAnswer[];
  readonly years: readonly YearAnswer[];
  readonly completeYears: number;
  readonly seasons: readonly SeasonAnswer[];
  readonly monthly: Holdings["monthly"];
  readonly referenceEt: EtAnswer;
  readonly notes: readonly string[];
}

export interface ElementAnswer {
  readonly what: string;
  readonly unit: string;
  readonly missingDays: number;
  readonly longestGapDays: number;
  readonly gaps: readonly { readonly from: string; readonly days: number }[];
}

export interface YearAnswer {
  readonly year: number;
  readonly days: number;
  readonly missingRainDays: number;
  readonly rainMm: number;
  readonly complete: boolean;
  /** Null where reference ET cannot be had for the whole year. */
  readonly referenceEtMm: number | null;
}

export interface SeasonAnswer {
  readonly name: string;
  /** Of seasons wholly within the record; the year is the one it ends in. */
  readonly totals: readonly {
    readonly year: number;
    readonly rainMm: number;
    readonly missingRainDays: number;
  }[];
}

/** Where a station lies, its elevation perhaps unknown. */
export type Place = Omit<Site, "elevationM"> & { readonly elevationM: number | null };

/** How reference ET comes about, or why it cannot. */
export type EtAnswer = { readonly how: string } | { readonly lacking: string };

/** The halves of the year that the totals are told for. */
const halves: readonly { readonly name: string; readonly window: SeasonWindow }[] = [
  { name: "April to September", window: { from: { month: 4, day: 1 }, to: { month: 9, day: 30 } } },
  { name: "October to March", window: { from: { month: 10, day: 1 }, to: { month: 3, day: 31 } } },
];

/**
 * What a record holds.
 * @param site null where neither the file nor the user says where the station lies: then there is no reference ET
 * @param use the days to look at, and the longest gap that is filled for reference ET; left out, all, and as in a run
 */
export function weatherAnswer(
  whole: WeatherRecord,
  site: Place | null,
  { from, to, maxGapDays }: GapOptions = {},
): WeatherAnswer {
  const record = chosen(whole, { from, to });
  const holdings = describeHoldings(record);
  const atSeaLevel = site !== null && site.elevationM === null && record.referenceEtMm === null;
  const { et, weather } = referenceEt(
    record,
    site === null ? null : { ...site, elevationM: site.elevationM ?? 0 },
    maxGapDays,
  );
  return {
    format: "rootfront-weather/1",
    station: holdings.station,
    firstDate: isoDate(holdings.firstDay),
    lastDate: isoDate(holdings.lastDay),
    days: holdings.days,
    elements: holdings.elements.map(({ words, unit, missingDays, longestGapDays, gaps }) => ({
      what: words,
      unit,
      missingDays,
      longestGapDays,
      gaps: gaps.map(({ firstDay, days }) => ({ from: isoDate(firstDay), days })),
    })),
    years: holdings.years.map(({ year, days, missingRainDays, rainMm, complete }) => ({
      year,
      days,
      missingRainDays,
      rainMm,
      complete,
      referenceEtMm: weather === null ? null : etOfYear(weather, year),
    })),
    completeYears: holdings.completeYears.length,
    seasons: halves.map(({ name, window }) => ({
      name,
      totals: seasonTotals(record, window).map(({ year, rainMm, missingRainDays }) => ({
        year,
        rainMm,
        missingRainDays,
      })),
    })),
    monthly: holdings.monthly,
    referenceEt: et,
    notes: [
      ...new Set([
        ...unitDoubts(record),
        ...holdings.notes,
        ...(weather?.notes ?? []),
        ...(atSeaLevel ? [seaLevelNote] : []),
      ]),
    ],
  };
}

const seaLevelNote = "Elevation not in the file: sea level taken for reference ET; give --elevation.";

/** A record that brings its own reference ET needs no place. */
const anywhere: Site = { latitudeDeg: 0, elevationM: 0, setting: "inland" };

/** Reference ET as a run would have it, gaps filled; or what stands in the way. */
function referenceEt(
  record: WeatherRecord,
  known: Site | null,
  maxGapDays: number | undefined,
): { et: EtAnswer; weather: DailyWeather | null } {
  const site = known ?? (record.referenceEtMm === null ? null : anywhere);
  if (site === null)
    return {
      et: { lacking: "the file does not say where the station lies; give --latitude" },
      weather: null,
    };
  try {
    const { record: filled } = fillGaps(record, { maxGapDays });
    const weather = toDailyWeather(filled, site, { method: "penman-monteith", normals: null });
    return { et: { how: weather.referenceEt }, weather };
  } catch (error) {
    if (!(error instanceof InputError)) throw error;
    return { et: { lacking: error.problems.map(sayProblem).join("; ") }, weather: null };
  }
}

function etOfYear({ firstDay, days, et0Mm }: DailyWeather, year: number): number | null {
  const from = dayNumber(year, 1, 1) - firstDay;
  const to = dayNumber(year + 1, 1, 1) - firstDay;
  return from < 0 || to > days ? null : et0Mm.subarray(from, to).reduce((sum, mm) => sum + mm, 0);
}
