import { yearBriefly } from "../../../src/report/tables/yearSaid.ts";
import { shownIn } from "../../../src/report/tables/formatters.ts";
import type { Units } from "../../../src/quantity/kinds.ts";
import { monthOf, yearOf } from "../../../src/quantity/calendar.ts";
import type { LayerShown, SeasonShown } from "../../worker/protocol.ts";
import type { PictureTable } from "../kit/frame.tsx";
import { monthNames } from "../../../src/quantity/dates.ts";
import { availableAboveMm, frontOn, sayMonthDay } from "./pitWallReading.ts";

/** The pit wall to be read: for each month its rain, and on its last day every front and the water in every layer. */
export function pitWallTable(
  season: SeasonShown,
  caseIndex: number,
  layers: readonly LayerShown[],
  units: Units,
): PictureTable {
  const shown = shownIn(units);
  const one = season.cases[caseIndex] ?? season.cases[0]!;
  return {
    head: [
      season.isGenerated ? "Month of a generated year, to its last day" : "Month, to its last day",
      `Rain and snow, ${shown.length}`,
      ...season.cases.map(({ name }) => `Root front, ${name}, ${shown.length}`),
      ...layers.map(({ name }) => `Available water in ${name}, ${shown.length}`),
    ],
    rows: monthsOf(season).map(({ from, to }) => [
      `${monthNames[monthOf(season.firstDay + to) - 1]!} ${yearBriefly(yearOf(season.firstDay + to), season.isGenerated)}, to ${sayMonthDay(season.firstDay + to)}`,
      shown.fineWater(sum(season.rainMm, from, to)),
      ...season.cases.map((each) => {
        const mm = frontOn(each, to);
        return mm === null ? noRoots(to < each.startsAt + each.sowingDay) : shown.depth(mm);
      }),
      ...layers.map(({ topMm, bottomMm }) => {
        const ownDay = to - one.startsAt;
        if (ownDay < 0 || ownDay >= one.days) return "–";
        return shown.fineWater(availableAboveMm(one, ownDay, bottomMm, topMm));
      }),
    ]),
  };
}

function noRoots(early: boolean): string {
  return early ? "not sown" : "ended";
}

/** First and last day of each month that the season touches, counted from its first day. */
export function monthsOf({ firstDay, days }: SeasonShown): { from: number; to: number }[] {
  const months: { from: number; to: number }[] = [];
  for (let from = 0; from < days;) {
    let to = from;
    while (to + 1 < days && monthOf(firstDay + to + 1) === monthOf(firstDay + from)) to++;
    months.push({ from, to });
    from = to + 1;
  }
  return months;
}

function sum(values: Float32Array, from: number, to: number): number {
  let total = 0;
  for (let i = from; i <= to; i++) total += values[i]!;
  return total;
}
