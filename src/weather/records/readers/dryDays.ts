import { isoDate } from "../../../quantity/calendar.ts";
import { counted, type Complaints } from "./complaints.ts";
import { refuseLongSpan, type Days } from "./days.ts";

/**
 * A rain book that lists only days with rain: days of no line are dry. A day that stands in the book without a figure stays
 * missing. Where the first and last day to use are told, the book is taken to cover them: before its first rain and after its
 * last it was dry.
 *
 * @param from first day to use, a day number; undefined: the first listed
 * @returns what was done, in words, beside the days
 */
export function withDryDays(
  days: Days,
  from: number | undefined,
  to: number | undefined,
  complaints: Complaints,
): { readonly days: Days; readonly note: string } {
  const listedTo = days.firstDay + days.days - 1;
  const firstDay = Math.min(days.firstDay, from ?? days.firstDay);
  const lastDay = Math.max(listedTo, to ?? listedTo);
  refuseLongSpan(firstDay, lastDay, complaints);
  const count = lastDay - firstDay + 1;
  const moved = (values: Float64Array, empty: number) => {
    const wider = new Float64Array(count).fill(empty);
    wider.set(values, days.firstDay - firstDay);
    return wider;
  };
  const lineByDay = moved(days.lineByDay, 0);
  const byFigure = new Map(
    [...days.byFigure].map(([figure, values]) => [figure, moved(values, NaN)] as const),
  );
  const rainMm = byFigure.get("rainMm");
  let dry = 0;
  for (let day = 0; day < count; day++) {
    if (lineByDay[day] !== 0) continue;
    dry++;
    if (rainMm !== undefined) rainMm[day] = 0;
  }
  return {
    days: { ...days, firstDay, days: count, lineByDay, byFigure },
    note: `Only days with rain are listed, as told: ${counted(dry, "day")} from ${isoDate(firstDay)} to ${isoDate(lastDay)} without a line taken as dry.`,
  };
}
