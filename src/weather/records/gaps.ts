import { InputError, refuse } from "../../problem.ts";
import { sayBoth } from "../../quantity/sayQuantity.ts";
import { isoDate, monthOf } from "../../quantity/calendar.ts";
import { isMaxGapDays, maxGapDaysWithin, usualMaxGapDays } from "./gapLimits.ts";
import { arrayOf, elementNames, elements, type Element } from "./readers/element.ts";
import type { WeatherRecord } from "./record.ts";

export interface GapOptions {
  /** Longest gap that is filled, days; see `gapLimits.ts`. */
  readonly maxGapDays?: number | undefined;
  /** First and last day to keep, as day numbers; default all. */
  readonly from?: number | undefined;
  readonly to?: number | undefined;
  /** Whether longer gaps of what a season needs refuse the record, or are filled like short ones and told with it. Left out: refused. */
  readonly longGaps?: "refused" | "told" | undefined;
}

/** A run of days without a figure of one element. */
export interface Gap {
  readonly element: Element;
  readonly firstDay: number;
  readonly days: number;
}

export interface FilledRecord {
  /** Without gaps in any element that it holds; its notes say what was done. */
  readonly record: WeatherRecord;
  /** Days filled, of the elements where any were. */
  readonly filledDays: ReadonlyMap<Element, number>;
  /** Elements left out because of longer gaps. */
  readonly dropped: readonly Element[];
}

/** Runs of missing days of an element, in order; none where the record does not have it. */
export function gapsOf(record: WeatherRecord, element: Element): Gap[] {
  const values = arrayOf(record, element);
  const gaps: Gap[] = [];
  if (values === null) return gaps;
  for (let day = 0; day < values.length; day++) {
    if (!Number.isNaN(values[day]!)) continue;
    const start = day;
    while (day + 1 < values.length && Number.isNaN(values[day + 1]!)) day++;
    gaps.push({ element, firstDay: record.firstDay + start, days: day - start + 1 });
  }
  return gaps;
}

/**
 * A record without gaps.
 *
 * First it is cut to `from` and `to`, then at both ends to the days that have rain and temperatures (where it has any).
 * Gaps up to `maxGapDays` are filled:
 * - temperature, humidity, dew point, wind, radiation, reference ET: on a straight line between the days around the gap;
 * - rain: taken as 0. Most days are dry, a storm made up would be worse than one missed, and after some missing days a
 *   gauge often reads their sum. It makes totals low: by how much on average is said with the count.
 * Longer gaps of rain and temperature are an InputError that lists them and names the longest stretch without. Another
 * element with a longer gap is left out, said in the notes; reference ET only where temperatures remain to compute it.
 */
export function fillGaps(record: WeatherRecord, options: GapOptions = {}): FilledRecord {
  const maxGapDays = options.maxGapDays ?? usualMaxGapDays;
  if (!isMaxGapDays(maxGapDays)) {
    const expected = `whole days from ${maxGapDaysWithin.join(" to ")}`;
    refuse("weather.maxGapDays", expected, maxGapDays, `give a number of days such as ${usualMaxGapDays}`);
  }
  const notes: string[] = [];
  const cut = trimmed(chosen(record, options), notes);
  const needed = neededOf(cut);
  const long = longGapsOf(cut, needed, maxGapDays);
  const areTold = options.longGaps === "told";
  if (!areTold) refuseLongGaps(cut, long, maxGapDays);

  const dropped: Element[] = [];
  const filledDays = new Map<Element, number>();
  const filled = {} as Record<Element, Float64Array | null>;
  for (const element of elementNames) {
    const values = arrayOf(cut, element);
    filled[element] = values;
    if (values === null) continue;
    const gaps = gapsOf(cut, element);
    const longest = gaps.reduce((most, { days }) => Math.max(most, days), 0);
    if (longest > maxGapDays && !needed.includes(element)) {
      dropped.push(element);
      filled[element] = null;
      notes.push(`${capital(elements[element].words)} is left out: it has a gap of ${longest} days.`);
      continue;
    }
    const missing = gaps.reduce((sum, { days }) => sum + days, 0);
    if (missing === 0) continue;
    filledDays.set(element, missing);
    filled[element] = element === "rainMm" ? withZeros(values) : withLines(values);
    notes.push(
      element === "rainMm"
        ? rainNote(cut, missing)
        : `${daysWords(missing)} of ${elements[element].words} interpolated.`,
    );
  }
  keepOrder(cut.tMinC, filled.tMinC, cut.tMaxC, filled.tMaxC);
  keepOrder(cut.rhMinPercent, filled.rhMinPercent, cut.rhMaxPercent, filled.rhMaxPercent);
  const rainMm = filled.rainMm ?? cut.rainMm;
  const whole = { ...cut, ...filled, rainMm, notes: [...record.notes, ...notes] };
  return { record: areTold ? { ...whole, longGaps: long.map(toldLong) } : whole, filledDays, dropped };
}

/** Rain, temperatures, and reference ET where there are no temperatures to compute it from. */
function neededOf(record: WeatherRecord): Element[] {
  const temperatures = (["tMaxC", "tMinC"] as const).filter((element) => record[element] !== null);
  const bareEt = temperatures.length < 2 && record.referenceEtMm !== null;
  return ["rainMm", ...temperatures, ...(bareEt ? (["referenceEtMm"] as const) : [])];
}

/** The record from `from` to `to`, both included; refused where it holds no day of them. */
export function chosen(record: WeatherRecord, { from, to }: GapOptions): WeatherRecord {
  const last = record.firstDay + record.days - 1;
  if (from !== undefined && to !== undefined && from > to) {
    const mend = "exchange the two days";
    refuse("weather.from", `a day not after weather.to (${isoDate(to)})`, isoDate(from), mend);
  }
  const start = Math.max(record.firstDay, from ?? record.firstDay);
  const end = Math.min(last, to ?? last);
  if (start > end) {
    const field = from !== undefined && from > last ? "weather.from" : "weather.to";
    const held = `a day within the record, ${isoDate(record.firstDay)} to ${isoDate(last)}`;
    refuse(field, held, isoDate(field === "weather.from" ? from! : to!), "choose days that the record holds");
  }
  return part(record, start, end);
}

/** Without the days at both ends that lack rain or a temperature. */
function trimmed(record: WeatherRecord, notes: string[]): WeatherRecord {
  const needed = neededOf(record);
  for (const element of needed) {
    if (arrayOf(record, element)!.some((value) => !Number.isNaN(value))) continue;
    const mend = "choose other days or another record";
    refuse("weather", `${elements[element].words} on some day`, undefined, mend);
  }
  const lacksOne = (day: number) => needed.some((element) => Number.isNaN(arrayOf(record, element)![day]!));
  let first = 0;
  let last = record.days - 1;
  while (first <= last && lacksOne(first)) first++;
  while (last > first && lacksOne(last)) last--;
  if (first > last) {
    refuse(
      "weather",
      "days that have rain and temperature",
      "a record whose rain and temperature do not overlap",
      "give another station",
    );
  }
  const cutDays = first + record.days - 1 - last;
  if (cutDays === 0) return record;
  const kept = part(record, record.firstDay + first, record.firstDay + last);
  const span = `${isoDate(kept.firstDay)} to ${isoDate(kept.firstDay + kept.days - 1)} is used`;
  notes.push(
    `${daysWords(cutDays)} without rain or temperature at the ends of the record left off: ${span}.`,
  );
  return kept;
}

/** The record from one day to another, both within it. Elements without a figure there become null. */
function part(record: WeatherRecord, first: number, last: number): WeatherRecord {
  const days = last - first + 1;
  if (days === record.days) return record;
  const cut = (values: Float64Array | null) => {
    const kept = values?.slice(first - record.firstDay, first - record.firstDay + days) ?? null;
    return kept === null || kept.every(Number.isNaN) ? null : kept;
  };
  const arrays = Object.fromEntries(elementNames.map((element) => [element, cut(arrayOf(record, element))]));
  const rainMm = record.rainMm.slice(first - record.firstDay, first - record.firstDay + days);
  return { ...record, ...(arrays as Record<Element, Float64Array | null>), rainMm, firstDay: first, days };
}

const listed = 8;

/** In order of their first day. */
function longGapsOf(record: WeatherRecord, needed: readonly Element[], maxGapDays: number): Gap[] {
  return needed
    .flatMap((element) => gapsOf(record, element))
    .filter(({ days }) => days > maxGapDays)
    .sort((a, b) => a.firstDay - b.firstDay);
}

const toldLong = (gap: Gap) => ({ firstDay: gap.firstDay, days: gap.days, said: sayGap(gap) });

function refuseLongGaps(record: WeatherRecord, long: readonly Gap[], maxGapDays: number): void {
  if (long.length === 0) return;
  const said = long.slice(0, listed).map(sayGap).join("; ");
  const more = long.length > listed ? `; and ${long.length - listed} more` : "";
  const [first, last] = longestStretch(record, long);
  throw new InputError([
    {
      field: "weather",
      expected: `at most ${daysWords(maxGapDays)} missing in a row`,
      found: `${long.length === 1 ? "a longer gap" : `${long.length} longer gaps`}: ${said}${more}`,
      mend:
        `use part of the record (the longest stretch without: weather.from ${isoDate(first)}, weather.to ${isoDate(last)}), ` +
        "give another station, or raise weather.maxGapDays",
    },
  ]);
}

/** `rain 2020-03-01 to 2020-03-20 (20 days)` */
export function sayGap({ element, firstDay, days }: Gap): string {
  const to = days === 1 ? "" : ` to ${isoDate(firstDay + days - 1)}`;
  return `${elements[element].words} ${isoDate(firstDay)}${to} (${daysWords(days)})`;
}

/** First and last day of the longest stretch that none of these gaps (in order of their first day) touches. */
function longestStretch(record: WeatherRecord, gaps: readonly Gap[]): [number, number] {
  let best: [number, number] = [record.firstDay, record.firstDay];
  let start = record.firstDay;
  const consider = (end: number) => {
    if (end - start > best[1] - best[0]) best = [start, end];
  };
  for (const { firstDay, days } of gaps) {
    consider(firstDay - 1);
    start = Math.max(start, firstDay + days);
  }
  consider(record.firstDay + record.days - 1);
  return best;
}

function withZeros(values: Float64Array): Float64Array {
  return values.map((value) => (Number.isNaN(value) ? 0 : value));
}

/** Gaps bridged by straight lines; at an end the nearest figure is held. */
function withLines(values: Float64Array): Float64Array {
  const whole = values.slice();
  let before = -1;
  for (let day = 0; day < whole.length; day++) {
    if (!Number.isNaN(values[day]!)) {
      before = day;
      continue;
    }
    let after = day + 1;
    while (after < values.length && Number.isNaN(values[after]!)) after++;
    const left = before >= 0 ? values[before]! : values[after]!;
    const right = after < values.length ? values[after]! : left;
    for (; day < after; day++) whole[day] = left + ((right - left) * (day - before)) / (after - before);
    before = after;
  }
  return whole;
}

/** Where filling brought the lower of two above the higher, the one that was filled is set to the measured one. */
function keepOrder(
  lowBefore: Float64Array | null,
  low: Float64Array | null,
  highBefore: Float64Array | null,
  high: Float64Array | null,
): void {
  if (lowBefore === null || low === null || highBefore === null || high === null) return;
  for (let day = 0; day < low.length; day++) {
    if (low[day]! <= high[day]!) continue;
    if (Number.isNaN(highBefore[day]!)) high[day] = low[day]!;
    else if (Number.isNaN(lowBefore[day]!)) low[day] = high[day]!;
  }
}

/** How many days were taken as dry, and what rain they would have had at the mean of their months. */
function rainNote(record: WeatherRecord, missing: number): string {
  const sum = new Float64Array(13);
  const held = new Float64Array(13);
  const lacking = new Float64Array(13);
  for (let day = 0; day < record.days; day++) {
    const month = monthOf(record.firstDay + day);
    const rain = record.rainMm[day]!;
    if (Number.isNaN(rain)) lacking[month]!++;
    else {
      sum[month]! += rain;
      held[month]!++;
    }
  }
  let shortMm = 0;
  for (let month = 1; month <= 12; month++) {
    if (held[month]! > 0) shortMm += (lacking[month]! * sum[month]!) / held[month]!;
  }
  return `${daysWords(missing)} of rain missing, taken as 0: at the mean of their months they would bring ${sayBoth(shortMm, "rain")} in all.`;
}

function daysWords(count: number): string {
  return count === 1 ? "1 day" : `${count} days`;
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
