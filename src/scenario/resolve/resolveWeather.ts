import { InputError } from "../../problem.ts";
import { sayBoth, sayQuantity } from "../../quantity/index.ts";
import { fillGaps } from "../../weather/records/gaps.ts";
import { monthlyNormalsOf } from "../../weather/records/holdings.ts";
import { normalsFromPattern, patternSite } from "../../weather/generate/rainPatterns.ts";
import { withFarNotes } from "../../weather/records/readers/finish.ts";
import { readWeather } from "../../weather/records/readers/index.ts";
import type {
  MonthlyAir,
  MonthlyNormals,
  Site,
  StationInfo,
  WeatherRecord,
} from "../../weather/records/record.ts";
import { siteFields, type SitePart, type WeatherPart } from "../fields/file.ts";
import { alternatives, isSaidTwice } from "../fields/facts/alternatives.ts";
import { weatherFields } from "../fields/weatherFields.ts";
import { attempt, complain, orDefault, type Notebook } from "./notebook.ts";
import { cachedRecord, type RecordCache } from "../read/recordCache.ts";
import type { ReadText } from "../read/readText.ts";
import type { WeatherPlan } from "../scenario.ts";

export interface PlaceAndWeather {
  readonly site: Site;
  readonly weather: WeatherPlan;
  /** Usual temperatures of the place; null where nothing tells them. */
  readonly normals: MonthlyAir | null;
}

type Source = "record" | "normals" | "pattern";

/** Site and weather; undefined where they cannot be, with the problems written down. */
export function resolveWeather(
  part: WeatherPart,
  sitePart: SitePart,
  readText: ReadText,
  recordCache: RecordCache,
  notebook: Notebook,
  longGaps: "refused" | "told" = "refused",
): PlaceAndWeather | undefined {
  const source = sourceOf(part, notebook);
  const record =
    source === "record" ? readRecord(part, sitePart, readText, recordCache, notebook, longGaps) : null;
  const site = resolveSite(sitePart, record?.station ?? null, notebook);
  const totals = rainTotals(part, source, notebook);
  if (source === undefined || record === undefined || site === undefined || totals === undefined)
    return undefined;

  const air = airGiven(part);
  const method = orDefault(
    notebook,
    part.referenceEt,
    weatherFields.shape.referenceEt.byDefault,
    "weather.referenceEt",
  );
  const plan = { referenceEt: method, ...totals };
  if (record !== null) {
    if ((record.tMaxC === null || record.tMinC === null) && record.referenceEtMm === null && air === null) {
      complain(
        notebook,
        "weather.monthlyNormals",
        "monthly temperatures beside a record that has neither temperatures nor reference ET",
        undefined,
        "give weather.monthlyNormals, or a record with both daily temperatures",
      );
      return undefined;
    }
    return {
      site,
      weather: { source: { kind: "record", record, normals: air }, ...plan },
      normals: air ?? normalsOf(record),
    };
  }
  const normals =
    source === "normals"
      ? normalsGiven(part, notebook)
      : fromPattern(part, totals.rainTotalsMm, site, notebook);
  if (normals === undefined) return undefined;
  return {
    site,
    weather: { source: { kind: "normals", normals, ofPattern: source === "pattern" }, ...plan },
    normals,
  };
}

function sourceOf(part: WeatherPart, notebook: Notebook): Source | undefined {
  const { record, monthlyNormals, pattern } = part;
  const choices = "weather.record, weather.monthlyNormals, or weather.pattern with weather.annualRain";
  if (record === undefined) {
    for (const key of ["station", "units", "from", "to", "maxGapDays"] as const) {
      if (part[key] !== undefined)
        complain(
          notebook,
          `weather.${key}`,
          "a weather.record that it belongs to",
          undefined,
          "name the record, or leave this out",
        );
    }
  }
  if (pattern !== undefined && (record !== undefined || monthlyNormals !== undefined)) {
    complain(
      notebook,
      "weather.pattern",
      "one source of weather",
      `"${pattern}" beside ${record === undefined ? "monthlyNormals" : "a record"}`,
      "leave pattern out",
    );
    return undefined;
  }
  if (record !== undefined) return "record";
  if (monthlyNormals !== undefined) return "normals";
  if (pattern !== undefined) return "pattern";
  complain(
    notebook,
    "weather",
    choices,
    "none of them",
    "name a station record, or give the year's rain and its pattern",
  );
  return undefined;
}

/** The record without gaps; undefined where it cannot be read. */
function readRecord(
  part: WeatherPart,
  { latitude }: SitePart,
  readText: ReadText,
  recordCache: RecordCache,
  notebook: Notebook,
  longGaps: "refused" | "told",
): WeatherRecord | undefined {
  const { record: file = "", station, units, from, to } = part;
  return attempt(notebook, () => {
    // Only the latitude is looked at, to warn of a station far away.
    const site: Site | undefined =
      latitude === undefined ? undefined : { latitudeDeg: latitude, elevationM: 0, setting: "inland" };
    const text = readText(file, "weather.record");
    const maxGapDays = orDefault(
      notebook,
      part.maxGapDays,
      weatherFields.shape.maxGapDays.byDefault,
      "weather.maxGapDays",
    );
    const how = [file, station, units];
    return cachedRecord(recordCache, "filled", text, [...how, site, maxGapDays, from, to, longGaps], () => {
      const asRead = cachedRecord(recordCache, "asRead", text, how, () =>
        readWeather(text, { fileName: file, station, units }),
      );
      return fillGaps(withFarNotes(asRead, site), { maxGapDays, from, to, longGaps }).record;
    });
  });
}

/** Null for a record without temperatures or of less than a year. */
function normalsOf(record: WeatherRecord): MonthlyNormals | null {
  try {
    return monthlyNormalsOf(record);
  } catch (error) {
    if (error instanceof InputError) return null;
    throw error;
  }
}

function resolveSite(part: SitePart, station: StationInfo | null, notebook: Notebook): Site | undefined {
  const latitudeDeg = part.latitude ?? station?.latitudeDeg ?? undefined;
  const elevationM = part.elevation ?? station?.elevationM ?? undefined;
  const alone = station === null ? "" : ", which the record does not state";
  if (latitudeDeg === undefined)
    complain(
      notebook,
      "site.latitude",
      `a latitude such as "38.5 N"${alone}`,
      undefined,
      "give the field's latitude",
    );
  if (elevationM === undefined)
    complain(
      notebook,
      "site.elevation",
      `a height such as "3300 ft"${alone}`,
      undefined,
      "give the field's elevation",
    );
  if (latitudeDeg === undefined || elevationM === undefined) return undefined;
  const ofStation = "the weather station's own";
  if (part.latitude === undefined) {
    const side = latitudeDeg < 0 ? "S" : "N";
    notebook.defaults.push({
      field: "site.latitude",
      value: `${Math.abs(latitudeDeg)} ${side}`,
      why: ofStation,
    });
  }
  if (part.elevation === undefined)
    notebook.defaults.push({
      field: "site.elevation",
      value: sayBoth(elevationM, "elevation"),
      why: ofStation,
    });
  const setting = orDefault(notebook, part.setting, siteFields.shape.setting.byDefault, "site.setting");
  return { latitudeDeg, elevationM, setting };
}

function rainTotals(
  part: WeatherPart,
  source: Source | undefined,
  notebook: Notebook,
): Pick<WeatherPlan, "rainTotalsMm" | "rainTotalOver"> | undefined {
  const { annualRain, seasonRain } = part;
  if (isSaidTwice(part, "annualRain", alternatives.weather)) {
    complain(notebook, "weather.seasonRain", "annualRain or seasonRain", "both", "leave one out");
    return undefined;
  }
  if (source === "pattern" && annualRain === undefined) {
    complain(
      notebook,
      "weather.annualRain",
      'the year\'s rain such as "13 in" or "12..14 in" beside a pattern',
      undefined,
      "give it",
    );
    return undefined;
  }
  return {
    rainTotalsMm: annualRain ?? seasonRain ?? [],
    rainTotalOver: seasonRain === undefined ? "year" : "season",
  };
}

/** Temperatures to stand beside a record; its rain is its own. */
function airGiven({ monthlyNormals }: WeatherPart): MonthlyAir | null {
  return monthlyNormals === undefined ? null : { tMaxC: monthlyNormals.tMax, tMinC: monthlyNormals.tMin };
}

/** Normals to generate years from; undefined where they lack the rain. */
function normalsGiven(part: WeatherPart, notebook: Notebook): MonthlyNormals | undefined {
  const air = airGiven(part);
  if (air === null) throw new Error("normals were made sure of");
  const { rain, wetDays = null } = part.monthlyNormals ?? {};
  if (rain !== undefined) return { rainMm: rain, wetDays, ...air };
  complain(
    notebook,
    "weather.monthlyNormals.rain",
    "the mean rain of each month, since there is no weather.record to take rain from",
    undefined,
    "give twelve amounts, January first, or name a record",
  );
  return undefined;
}

/** Normals of the middle total; every generated year is scaled to its own. */
function fromPattern(
  { pattern }: WeatherPart,
  totalsMm: readonly number[],
  site: Site,
  notebook: Notebook,
): MonthlyNormals {
  if (pattern === undefined) throw new Error("a pattern was made sure of");
  const middleMm = [...totalsMm].sort((a, b) => a - b)[Math.floor((totalsMm.length - 1) / 2)] ?? 0;
  notebook.defaults.push({
    field: "weather.monthlyNormals",
    value: `${pattern}, ${sayQuantity(middleMm, "rain", "us")} a year, temperatures of an invented dryland site at ${patternSite.latitudeDeg} N`,
    why: "defaults of ours: give a station record, or the monthly normals of a place near by",
  });
  return normalsFromPattern(pattern, middleMm, site.latitudeDeg);
}
