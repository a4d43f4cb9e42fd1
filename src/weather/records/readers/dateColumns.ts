import { refuse } from "../../../problem.ts";
import {
  dayOf,
  dayOfYearIn,
  explainDate,
  isYearLast,
  orderShownBy,
  readDate,
  type DateOrder,
} from "./dates.ts";
import type { RowPlan } from "./dayRows.ts";
import { cellsOf, columnAt, eachLine, isAside, type Table } from "./lines.ts";

type DayPlan = Pick<RowPlan, "dayOf" | "explainDay">;

/** Days from one column of dates. Refuses dates such as 3/4/2020 where no line shows whether the month comes first. */
export function dayFromDate(table: Table, index: number, skip: number, fileName: string): DayPlan {
  const order = orderOf(table, index, skip, fileName);
  return {
    dayOf: (cells) => readDate(cells[index]!, order),
    explainDay: (cells) => ({ found: cells[index]!, ...explainDate(cells[index]!, order) }),
  };
}

/** Days from a year and a day of the year. */
export function dayFromYearAndDay(yearAt: number, dayAt: number): DayPlan {
  return {
    dayOf: (cells) => dayOfYearIn(whole(cells[yearAt]!), whole(cells[dayAt]!)),
    explainDay: (cells) => ({
      expected: "a year and a day of it, 1 to 365 (366 in leap years)",
      found: `${cells[yearAt]} ${cells[dayAt]}`,
      mend: "mend the date",
    }),
  };
}

/** Days from year, month and day in columns of their own. */
export function dayFromParts(yearAt: number, monthAt: number, dayAt: number): DayPlan {
  return {
    dayOf: (cells) => dayOf(whole(cells[yearAt]!), whole(cells[monthAt]!), whole(cells[dayAt]!)),
    explainDay: (cells) => {
      const text = `${cells[yearAt]}-${cells[monthAt]}-${cells[dayAt]}`;
      return { found: text, ...explainDate(text, null) };
    },
  };
}

/** Days from columns named YEAR with DOY, or with MO and DY; null where there are none. */
export function dayFromNamedParts(
  header: readonly string[],
): (DayPlan & { readonly used: readonly number[] }) | null {
  const year = columnAt(header, "year", "yr", "yyyy");
  const dayOfYear = columnAt(header, "doy", "day_of_year", "dayofyear", "jday", "julian_day");
  const month = columnAt(header, "mo", "month", "mm", "mon");
  const day = columnAt(header, "dy", "day", "dd", "dom");
  if (year < 0) return null;
  if (month >= 0 && day >= 0)
    return { ...dayFromParts(year, month, day), used: [year, month, day, dayOfYear] };
  if (dayOfYear >= 0) return { ...dayFromYearAndDay(year, dayOfYear), used: [year, dayOfYear] };
  return null;
}

function whole(text: string): number {
  return /^\d+(?:\.0+)?$/.test(text) ? Number(text) : NaN;
}

/** The order that the column's dates show; stops at the first that does. */
function orderOf(table: Table, index: number, skip: number, fileName: string): DateOrder | null {
  let order: DateOrder | null = null;
  let unclear: string | null = null;
  let unclearLine = 0;
  let toSkip = skip;
  eachLine(table.text, table.body, (line, number) => {
    if (isAside(line) || toSkip-- > 0) return true;
    const text = cellsOf(line, table.delimiter)[index] ?? "";
    if (!isYearLast(text)) return unclear !== null || text === "";
    order = orderShownBy(text);
    if (unclear === null) [unclear, unclearLine] = [text, number];
    return order === null;
  });
  if (unclear !== null && order === null) {
    const expected = "dates that read one way only, such as 2020-05-14";
    refuse(`${fileName} line ${unclearLine}`, expected, unclear, "write all dates as year-month-day");
  }
  return order;
}
