import { seasonClock } from "../../crop/stages.ts";
import { dayInYear, yearOf } from "../../quantity/calendar.ts";
import type { RotationEntry } from "../../scenario/scenario.ts";
import type { DailyWeather } from "../../weather/records/record.ts";

/** A link of a chain: from the day after one harvest to the harvest of the next crop. Days are indices in the weather, by case. */
export interface CalendarLink {
  /** Of harvest. */
  readonly year: number;
  /** Which entry of the rotation is harvested, and which before it. */
  readonly entry: number;
  readonly entryBefore: number;
  readonly firstIndexByCase: readonly number[];
  readonly sowingIndexByCase: readonly number[];
  readonly maturityIndexByCase: readonly number[];
}

export interface ChainCalendar {
  readonly links: readonly CalendarLink[];
  /** The last year whose crop, if it has one, is ripe within the weather. */
  readonly lastYear: number;
}

/**
 * Sowing and harvest of every year of one phase of a rotation. A crop is harvested in its year; one that is ripe only in the year
 * after its sowing is sown the year before. Where the crop before is late, the next one is sown when the field is free. The first
 * crop that the weather holds whole only tells when the first link begins.
 *
 * @param phase which entry stands in the weather's first year
 */
export function chainCalendar(
  entries: readonly (RotationEntry | null)[],
  weather: DailyWeather,
  phase: number,
): ChainCalendar {
  const links: CalendarLink[] = [];
  const [firstYear, lastYear] = [yearOf(weather.firstDay), yearOf(weather.firstDay + weather.days - 1)];
  let before: { entry: number; maturity: readonly number[] } | null = null;
  for (let year = firstYear; year <= lastYear; year++) {
    const place = (year - firstYear + phase) % entries.length;
    const entry = entries[place] ?? null;
    if (entry === null) continue;
    const sown = sowingsOf(entry, year, weather, before?.maturity ?? null);
    if (sown.some((index) => index < 0)) continue;
    const ends = maturitiesOf(entry, weather, sown);
    if (ends === null) return { links, lastYear: year - 1 };
    if (before !== null)
      links.push({
        year,
        entry: place,
        entryBefore: before.entry,
        firstIndexByCase: before.maturity.map((index) => index + 1),
        sowingIndexByCase: sown,
        maturityIndexByCase: ends,
      });
    before = { entry: place, maturity: ends };
  }
  return { links, lastYear };
}

function sowingsOf(
  { cases, sownYearBefore }: RotationEntry,
  year: number,
  { firstDay }: DailyWeather,
  before: readonly number[] | null,
): number[] {
  return cases.map(({ crop }, c) => {
    const planned = dayInYear(sownYearBefore ? year - 1 : year, crop.sowing) - firstDay;
    return before === null ? planned : Math.max(planned, before[c]! + 1);
  });
}

/** Null where the weather ends before a case is ripe. */
function maturitiesOf(
  { cases }: RotationEntry,
  weather: DailyWeather,
  sown: readonly number[],
): number[] | null {
  const ends: number[] = [];
  for (const [c, { crop }] of cases.entries()) {
    // Most cases grow the same crop.
    const alike = cases.findIndex((one, o) => one.crop === crop && sown[o] === sown[c]);
    if (alike < c) {
      ends.push(ends[alike]!);
      continue;
    }
    if (sown[c]! >= weather.days) return null;
    const { end, days } = seasonClock(crop, weather, sown[c]!);
    if (end === "weather ends") return null;
    ends.push(sown[c]! + days - 1);
  }
  return ends;
}
