import { longestSeasonDays, seasonClock } from "../../crop/stages.ts";
import { refuseSaying } from "../../problem.ts";
import { dayInYear, isoDate, yearOf } from "../../quantity/calendar.ts";
import type { Case, Scenario } from "../../scenario/scenario.ts";
import type { DailyWeather } from "../../weather/records/record.ts";
import { otherYears, spliced, type OtherYear } from "./splice.ts";

/** The season that a day lies in, and the years that may end it. */
export interface SeasonUnderWay {
  /** Of sowing. */
  readonly year: number;
  /** Day number of the last day known. */
  readonly day: number;
  /** Its index in the record. */
  readonly dayIndex: number;
  /** Index in the record of each case's sowing day, in the order of the cases. */
  readonly sowingIndexByCase: readonly number[];
  readonly others: readonly OtherYear[];
  /** The record up to the day, then that other year. */
  readonly weatherWith: (other: OtherYear) => DailyWeather;
}

/** Fewer other years make no range. Ours. */
export const fewestOtherYears = 3;

/**
 * Finds the season that a day lies in, for every case, and the other years of the record that reach its end.
 *
 * @param asked day number, and the field or flag that it was told by; null: the record's last day
 * @throws InputError for a day outside the record or outside a season, and for too few other years
 */
export function seasonUnderWay(
  { cases }: Pick<Scenario, "cases">,
  weather: DailyWeather,
  asked: { readonly day: number; readonly field: string } | null,
): SeasonUnderWay {
  const lastDay = weather.firstDay + weather.days - 1;
  const day = asked?.day ?? lastDay;
  const field = asked?.field ?? "outlook.date";
  const found = asked === null ? `nothing, so ${isoDate(day)}, the last day of the record` : isoDate(day);
  if (day < weather.firstDay || day > lastDay)
    refuseSaying(
      field,
      `a day of the record, ${isoDate(weather.firstDay)} to ${isoDate(lastDay)}`,
      found,
      "give one of these, or bring a record that holds the day",
    );
  const year = sowingYearBefore(day, cases[0]);
  const dayIndex = day - weather.firstDay;
  const sowingIndexByCase = cases.map(({ crop }) => dayInYear(year, crop.sowing) - weather.firstDay);
  cases.forEach((plan, c) => {
    const sowing = sowingIndexByCase[c]!;
    refuseUnheldStart(plan, weather, sowing);
    const ripe = maturityBy(plan, weather, sowing, dayIndex);
    if (sowing <= dayIndex && (ripe === null || dayIndex <= ripe)) return;
    const whose =
      cases.length > 1 && sowing > dayIndex ? `"${plan.name}", ${plan.crop.name},` : plan.crop.name;
    const season = (from: number, to: string) => `sown ${isoDate(weather.firstDay + from)}${to}`;
    refuseSaying(
      field,
      `a day from sowing to maturity of ${whose} ${season(sowing, ripe === null ? "" : ` and ripe ${isoDate(weather.firstDay + ripe)}`)}`,
      found,
      "give a day of a season, as --date or outlook.date",
    );
  });
  const mostDays = Math.max(...cases.map(({ crop }) => longestSeasonDays(crop, weather.hasTemperature)));
  const weatherWith = ({ thenIndex }: OtherYear) => spliced(weather, dayIndex, thenIndex, mostDays);
  const others = otherYears(weather, day).filter((other) => {
    const whole = weatherWith(other);
    return cases.every(
      ({ crop }, c) => seasonClock(crop, whole, sowingIndexByCase[c]!).end !== "weather ends",
    );
  });
  if (others.length < fewestOtherYears)
    refuseSaying(
      "weather.record",
      `at least ${fewestOtherYears} other years that reach from ${isoDate(day).slice(5)} to maturity of ${cases[0].crop.name}`,
      `${others.length} in ${isoDate(weather.firstDay)} to ${isoDate(lastDay)}`,
      "bring a longer record",
    );
  return { year, day, dayIndex, sowingIndexByCase, others, weatherWith };
}

/** Year of the last sowing day on or before a day. */
function sowingYearBefore(day: number, { crop }: Case): number {
  const year = yearOf(day);
  return dayInYear(year, crop.sowing) <= day ? year : year - 1;
}

/** The run begins with the fallow before sowing: the record has to hold it. */
function refuseUnheldStart({ crop, fallowDays }: Case, weather: DailyWeather, sowingIndex: number): void {
  if (sowingIndex - fallowDays >= 0) return;
  const before = fallowDays > 0 ? `${fallowDays} days of fallow before sowing` : "sowing";
  refuseSaying(
    "weather.record",
    `a record from ${before} of ${crop.name} on, ${isoDate(weather.firstDay + sowingIndex - fallowDays)}`,
    `one from ${isoDate(weather.firstDay)} on`,
    fallowDays > 0
      ? "bring a longer record, or less fallow and the water measured at sowing"
      : "bring a longer record, or give a later day",
  );
}

/** Index of the day of maturity where it lies on or before a day; null where the season goes on. */
function maturityBy(
  { crop }: Case,
  weather: DailyWeather,
  sowingIndex: number,
  dayIndex: number,
): number | null {
  if (sowingIndex > dayIndex) return null;
  const { end, days } = seasonClock(crop, { ...weather, days: dayIndex + 1 }, sowingIndex);
  return end === "weather ends" ? null : sowingIndex + days - 1;
}
