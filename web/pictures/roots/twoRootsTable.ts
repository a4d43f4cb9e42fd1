import type { Formatters } from "../../../src/report/tables/formatters.ts";
import type { CaseSeason, SeasonShown } from "../../worker/protocol.ts";
import type { PictureTable } from "../kit/frame.tsx";
import { frontOn, sayDay } from "../pit/pitWallReading.ts";

/** Both fronts by the week, up to a day: the picture to be read. */
export function twoRootsTable(
  season: SeasonShown,
  pair: readonly number[],
  fromDay: number,
  toDay: number,
  shown: Formatters,
): PictureTable {
  const here = pair.filter((c) => season.cases[c] !== undefined);
  const days: number[] = [];
  for (let day = fromDay; day < toDay; day += 7) days.push(day);
  days.push(toDay);
  return {
    head: ["Day", ...here.map((c) => `${season.cases[c]!.name}: roots down to, ${shown.length}`)],
    rows: days.map((day) => [
      sayDay(season.firstDay + day, season.isGenerated),
      ...here.map((c) => {
        const mm = heldFront(season.cases[c]!, day);
        return mm === null ? "–" : shown.depth(mm);
      }),
    ]),
  };
}

/** How deep the roots are, mm: after maturity they stay where they are; null before sowing. */
export function heldFront(one: CaseSeason, day: number): number | null {
  return frontOn(one, Math.min(day, one.startsAt + one.days - 1));
}
