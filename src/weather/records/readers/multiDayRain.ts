import { counted } from "./complaints.ts";
import type { Figure } from "./element.ts";

/**
 * Rain gauged after several days (NOAA's MDPR, over DAPR days up to that day), spread evenly over those of its days
 * that have no figure of their own; what the others have is taken off first. The total is kept; on which of the
 * days it fell nobody knows. Totals of unknown length stay unused. Changes `rainMm` in `byFigure`.
 *
 * @returns what was done, in words
 */
export function spreadMultiDayRain(byFigure: ReadonlyMap<Figure, Float64Array>): string[] {
  const rain = byFigure.get("rainMm");
  const totals = byFigure.get("multiDayRainMm");
  const lengths = byFigure.get("multiDayRainDays");
  if (rain === undefined || totals === undefined) return [];
  let spread = 0;
  let spreadDays = 0;
  let unused = 0;
  for (let last = 0; last < totals.length; last++) {
    const total = totals[last]!;
    if (Number.isNaN(total)) continue;
    const length = lengths?.[last] ?? NaN;
    const first = last - length + 1;
    let empty = 0;
    let given = 0;
    for (let day = Math.max(0, first); day <= last; day++) {
      if (Number.isNaN(rain[day]!)) empty++;
      else given += rain[day]!;
    }
    if (!(first >= 0) || empty === 0) {
      unused++;
      continue;
    }
    const share = Math.max(0, total - given) / empty;
    for (let day = first; day <= last; day++) if (Number.isNaN(rain[day]!)) rain[day] = share;
    spread++;
    spreadDays += empty;
  }
  const notes: string[] = [];
  if (spread > 0) {
    notes.push(
      `${counted(spread, "rain total")} of several days spread evenly over ${counted(spreadDays, "day")}.`,
    );
  }
  if (unused > 0)
    notes.push(`${counted(unused, "rain total")} of several days not used: no free days known for it.`);
  return notes;
}
