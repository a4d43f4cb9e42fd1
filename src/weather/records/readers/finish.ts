import { sayBoth } from "../../../quantity/sayQuantity.ts";
import { isoDate } from "../../../quantity/calendar.ts";
import type { Site, StationInfo, WeatherRecord } from "../record.ts";
import { complain, refuseIfAny, type Complaints } from "./complaints.ts";
import type { Counts } from "./dayRows.ts";
import { counted } from "./complaints.ts";
import type { Days } from "./days.ts";
import { rareRainMm, type Element } from "./element.ts";

/** A dew point above the day's highest temperature by more than instruments differ, °C. Our judgement. */
const dewPointSlackC = 2;

/** The record of checked days. Throws what was complained of on the way. */
export function finishRecord(
  days: Days,
  station: StationInfo,
  notes: readonly string[],
  complaints: Complaints,
  site: Site | undefined,
): WeatherRecord {
  const array = (element: Element): Float64Array | null => {
    const values = days.byFigure.get(element);
    return values === undefined || values.every(Number.isNaN) ? null : values;
  };
  const record = {
    firstDay: days.firstDay,
    days: days.days,
    tMaxC: array("tMaxC"),
    tMinC: array("tMinC"),
    solarMjPerM2: array("solarMjPerM2"),
    rhMaxPercent: array("rhMaxPercent"),
    rhMinPercent: array("rhMinPercent"),
    rhMeanPercent: array("rhMeanPercent"),
    dewPointC: array("dewPointC"),
    wind2mMPerS: array("wind2mMPerS"),
    referenceEtMm: array("referenceEtMm"),
    station,
  };
  const orderOf = (
    low: Float64Array | null,
    high: Float64Array | null,
    slack: number,
    words: string,
    unit: string,
  ) => checkOrder(days, low, high, slack, words, unit, complaints);
  orderOf(record.tMinC, record.tMaxC, 0, "lowest temperature at or below the highest", "°C");
  orderOf(record.rhMinPercent, record.rhMaxPercent, 0, "lowest humidity at or below the highest", "%");
  orderOf(
    record.dewPointC,
    record.tMaxC,
    dewPointSlackC,
    "dew point at or below the highest temperature",
    "°C",
  );
  refuseIfAny(complaints);
  const rainMm = array("rainMm");
  if (rainMm === null) {
    const expected = "rain on at least one day";
    complain(
      complaints,
      0,
      expected,
      "none",
      "order the file with daily precipitation, or name the rain column",
      true,
    );
    refuseIfAny(complaints);
  }
  return withFarNotes({ ...record, rainMm: rainMm!, notes: [...days.notes, ...notes] }, site);
}

/** Complains of each day on which `low` is above `high`. */
function checkOrder(
  { firstDay, lineByDay }: Days,
  low: Float64Array | null,
  high: Float64Array | null,
  slack: number,
  words: string,
  unit: string,
  complaints: Complaints,
): void {
  if (low === null || high === null) return;
  const show = (value: number) => Number(value.toFixed(2));
  for (let day = 0; day < low.length; day++) {
    if (!(low[day]! > high[day]! + slack)) continue;
    const found = `${show(low[day]!)} above ${show(high[day]!)} ${unit} on ${isoDate(firstDay + day)}`;
    complain(complaints, lineByDay[day]!, words, found, "mend the figures, or leave both empty", true);
  }
}

/** What was done to single figures, in words. `marks` is said only where the format does not define the mark. */
export function countNotes(counts: Counts, sayMarks: boolean): string[] {
  const notes: string[] = [];
  const say = (count: number, thing: string, words: string) => {
    if (count > 0) notes.push(`${counted(count, thing)} ${words}.`);
  };
  say(counts.failedQuality, "value", "failed a quality check of the agency: taken as missing");
  say(counts.traces, "trace", "of rain taken as 0");
  say(sayMarks ? counts.missingMarks : 0, "value", "such as -9999 or -99 taken as missing");
  say(
    counts.setToLimit,
    "value",
    "a little outside what is possible (humidity over 100 %, ET below 0) set to the limit",
  );
  say(counts.decimalCommas, "value", "read with a decimal comma");
  if (counts.rareRainDays > 0) notes.push(rareRainNote(counts));
  return notes;
}

/** Read as it stands, but a slip of the point or of the unit looks the same. */
function rareRainNote({ rareRains, rareRainDays }: Counts): string {
  const named = rareRains.map(({ line, mm }) => `line ${line} with ${sayBoth(mm, "rain")}`).join(", ");
  const more = rareRainDays > rareRains.length ? ` and ${rareRainDays - rareRains.length} more` : "";
  return `More rain in a day than most places ever see, above ${sayBoth(rareRainMm, "rain")}, on ${named}${more}: check the figures and their unit.`;
}

/** `Columns not used: SNOW, SNWD.` */
export function unusedNote(names: readonly string[]): string[] {
  const real = names.filter((name) => name !== "");
  if (real.length === 0) return [];
  const said = real.slice(0, 12).join(", ");
  const more = real.length > 12 ? ` and ${real.length - 12} more` : "";
  return [`Columns not used: ${said}${more}.`];
}

/** The record with its last note: whether it was measured far from the site. */
export function withFarNotes(record: WeatherRecord, site: Site | undefined): WeatherRecord {
  return { ...record, notes: [...record.notes, ...farNotes(record.station, site)] };
}

/** A warning where the station lies more than a degree of latitude (111 km) from the site. */
function farNotes({ latitudeDeg }: StationInfo, site: Site | undefined): string[] {
  if (latitudeDeg === null || site === undefined || Math.abs(latitudeDeg - site.latitudeDeg) <= 1) return [];
  return [
    `The station lies at latitude ${latitudeDeg.toFixed(2)}, the site at ${site.latitudeDeg.toFixed(2)}: more than 110 km apart.`,
  ];
}
