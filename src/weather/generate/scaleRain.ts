import { InputError, refuse } from "../../problem.ts";
import { sayBoth } from "../../quantity/sayQuantity.ts";
import { dayInYear, isoDate, yearOf, type MonthDay } from "../../quantity/calendar.ts";
import { withRain, type DailyWeather } from "../records/record.ts";

/** First and last day of a season, both in it; across the new year where the last comes before the first. */
export interface SeasonWindow {
  readonly from: MonthDay;
  readonly to: MonthDay;
}

const wholeYear: SeasonWindow = { from: { month: 1, day: 1 }, to: { month: 12, day: 31 } };

/** A year or season with less rain than this holds too little to multiply. */
const leastToScaleMm = 1;

/**
 * Weather whose every calendar year, or every season, brings the same total of rain. Each day's rain is multiplied by
 * one factor for its year or season; nothing else changes, days outside all seasons included.
 *
 * A year (season) with less than 1 mm cannot be multiplied: it takes over the rainy days of the nearest one that has
 * rain, and a note says so. One cut off by an end of the record takes the factor of the whole ones together.
 *
 * @param totalMm 0 or more
 * @param window only with "season"
 * @throws InputError where the record holds no whole year (season), or no rain in any
 */
export function scaleToTotals(
  weather: DailyWeather,
  totalMm: number,
  over: "year" | "season",
  window: SeasonWindow = wholeYear,
): DailyWeather {
  refuseTotal(totalMm, over);
  const spans = spansOf(weather, over === "year" ? wholeYear : window);
  const whole = spans.filter((span) => span.whole);
  const measured = whole.map((span) => sumOf(weather.rainMm, span));
  const meanMm = measured.reduce((sum, mm) => sum + mm, 0) / whole.length;
  if (whole.length === 0) throw new InputError([notWhole(weather, over)]);
  if (totalMm > 0 && Math.max(...measured) < leastToScaleMm) throw new InputError([noRain(over)]);

  const rainMm = weather.rainMm.slice();
  const factors: number[] = [];
  const borrowed: string[] = [];
  for (const [index, span] of whole.entries()) {
    const donorIndex = measured[index]! >= leastToScaleMm ? index : nearestWithRain(measured, index);
    const donor = whole[donorIndex];
    if (!donor) {
      rainMm.fill(0, span.start, span.end); // no rain anywhere, and none asked for
      continue;
    }
    if (donorIndex !== index) borrowed.push(`${nameOf(weather, span)} those of ${nameOf(weather, donor)}`);
    fillScaled(rainMm, span, weather.rainMm, donor, totalMm);
    factors.push(totalMm / measured[donorIndex]!);
  }
  for (const span of spans) {
    if (span.whole) continue;
    const factor = meanMm > 0 ? totalMm / meanMm : 0;
    for (let day = span.start; day < span.end; day++) rainMm[day]! *= factor;
  }
  return withRain(weather, rainMm, [...weather.notes, ...notesOf(totalMm, over, factors, borrowed)]);
}

/**
 * Weather whose whole calendar years, or seasons, bring the total on average, each as much more or less than it as it did: every
 * day's rain is multiplied by the same factor.
 *
 * @param totalMm 0 or more
 * @param window only with "season"
 * @throws InputError where the record holds no whole year (season), or no rain in any
 */
export function scaleToMean(
  weather: DailyWeather,
  totalMm: number,
  over: "year" | "season",
  window: SeasonWindow = wholeYear,
): DailyWeather {
  refuseTotal(totalMm, over);
  const whole = spansOf(weather, over === "year" ? wholeYear : window).filter((span) => span.whole);
  if (whole.length === 0) throw new InputError([notWhole(weather, over)]);
  const measured = whole.map((span) => sumOf(weather.rainMm, span));
  const meanMm = measured.reduce((sum, mm) => sum + mm, 0) / whole.length;
  if (totalMm > 0 && Math.max(...measured) < leastToScaleMm) throw new InputError([noRain(over)]);
  const factor = meanMm > 0 ? totalMm / meanMm : 0;
  const said = `Rain of every day multiplied by ${factor.toFixed(2)}, so that ${over === "year" ? "calendar years" : "seasons"} bring ${sayBoth(totalMm, "rain")} on average.`;
  return withRain(
    weather,
    weather.rainMm.map((mm) => mm * factor),
    [...weather.notes, said],
  );
}

/** Days of the record, `end` not among them. */
interface Span {
  readonly start: number;
  readonly end: number;
  readonly whole: boolean;
}

function refuseTotal(totalMm: number, over: "year" | "season"): void {
  if (totalMm >= 0 && Number.isFinite(totalMm)) return;
  refuse(fieldOf(over), "a total of 0 or more", totalMm, 'give one such as "13 in"');
}

function spansOf(weather: DailyWeather, { from, to }: SeasonWindow): Span[] {
  const crosses = to.month < from.month || (to.month === from.month && to.day < from.day);
  const lastYear = yearOf(weather.firstDay + weather.days - 1);
  const spans: Span[] = [];
  for (let year = yearOf(weather.firstDay) - 1; year <= lastYear; year++) {
    const start = dayInYear(year, from) - weather.firstDay;
    const end = dayInYear(crosses ? year + 1 : year, to) + 1 - weather.firstDay;
    const inside = { start: Math.max(0, start), end: Math.min(weather.days, end) };
    if (inside.start < inside.end) spans.push({ ...inside, whole: start >= 0 && end <= weather.days });
  }
  return spans;
}

function sumOf(values: Float64Array, { start, end }: Span): number {
  let sum = 0;
  for (let day = start; day < end; day++) sum += values[day]!;
  return sum;
}

/** -1 where there is none; the earlier of two as near. */
function nearestWithRain(measured: readonly number[], index: number): number {
  for (let away = 1; away < measured.length; away++) {
    if (measured[index - away]! >= leastToScaleMm) return index - away;
    if (measured[index + away]! >= leastToScaleMm) return index + away;
  }
  return -1;
}

/** Writes the donor's rain, scaled, day by day; where the donor is a leap day longer, both last days' rain falls on one. */
function fillScaled(
  rainMm: Float64Array,
  span: Span,
  from: Float64Array,
  donor: Span,
  totalMm: number,
): void {
  const factor = totalMm / sumOf(from, donor);
  rainMm.fill(0, span.start, span.end);
  for (let day = donor.start; day < donor.end; day++)
    rainMm[Math.min(span.end - 1, span.start + day - donor.start)]! += from[day]! * factor;
}

function nameOf(weather: DailyWeather, span: Span): string {
  const [first, last] = [yearOf(weather.firstDay + span.start), yearOf(weather.firstDay + span.end - 1)];
  return first === last ? `${first}` : `${first}/${last}`;
}

function notesOf(
  totalMm: number,
  over: "year" | "season",
  factors: readonly number[],
  borrowed: readonly string[],
): string[] {
  if (factors.length === 0) return [];
  const [least, most] = [Math.min(...factors), Math.max(...factors)];
  const range = least === most ? least.toFixed(2) : `${least.toFixed(2)} to ${most.toFixed(2)}`;
  return [
    `Rain of each ${over === "year" ? "calendar year" : "season"} scaled to ${sayBoth(totalMm, "rain")}: multiplied by ${range}.`,
    ...(borrowed.length > 0
      ? [
          `With less than ${sayBoth(leastToScaleMm, "rain")} to scale, these took the rainy days of another: ${borrowed.join("; ")}.`,
        ]
      : []),
  ];
}

/** The scenario file's name of the total. */
function fieldOf(over: "year" | "season"): string {
  return over === "year" ? "weather.annualRain" : "weather.seasonRain";
}

function notWhole(weather: DailyWeather, over: "year" | "season") {
  const last = weather.firstDay + weather.days - 1;
  return {
    field: fieldOf(over),
    expected: `a record with at least one whole ${over === "year" ? "calendar year" : "season"} to scale`,
    found: `${isoDate(weather.firstDay)} to ${isoDate(last)}`,
    mend: over === "year" ? "give a longer record, or scale the season's total" : "give a longer record",
  };
}

function noRain(over: "year" | "season") {
  return {
    field: fieldOf(over),
    expected: `at least ${sayBoth(leastToScaleMm, "rain")} of rain in one ${over} to scale`,
    found: "less",
    mend: "check the record's rain column, or leave the totals out",
  };
}
