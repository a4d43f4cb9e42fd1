import { isoDate, dayInYear, dayOfMonth, monthOf, yearOf } from "../../../quantity/calendar.ts";
import { monthNames } from "../../../quantity/dates.ts";
import type { DugGroup } from "../../../evidence/dig/dig.ts";
import type { Scale } from "../../../drawing/axis.ts";
import { coordinate, lineBetween, textAt } from "./drawing.ts";
import type { DepthRoom } from "./depthAxis.ts";
import { caseColour, ink } from "../reportStyle.ts";
import type { ReportInput } from "../reportInput.ts";

/** What was dug, on the pictures of soil and roots: a ring at the deepest root of each plant, a bar where roots turned aside. */

const ringPx = 2.3;
/** Half the bar where roots turned aside. */
const turnedPx = 5;
/** How far rings of one column stand from its middle, by turns: plants as deep as each other stay apart. */
const besidePx = [0, -4, 4, -8, 8] as const;

export function dugGroups({ scenario }: ReportInput): readonly DugGroup[] {
  return scenario.evidence?.dig?.groups ?? [];
}

/** Plants of one case in its column of the pit. */
export function dugInColumn(
  input: ReportInput,
  c: number,
  x: number,
  width: number,
  { y }: DepthRoom,
): string[] {
  const middle = x + width / 2;
  return dugGroups(input)
    .filter(({ caseIndex }) => caseIndex === c)
    .flatMap(({ depthsMm, turnedAtMm = [] }) => [
      ...turnedAtMm.map((mm) => turned(middle, y(mm), c)),
      ...depthsMm.map((mm, plant) => ring(middle + besideBy(plant, width / 2 - ringPx - 1), y(mm), c)),
    ]);
}

/** Plants at the day they were dug, in the season drawn; those dug outside of it are left out. */
export function dugOverTime(
  input: ReportInput,
  x: Scale,
  [from, to]: readonly [from: number, to: number],
  room: DepthRoom,
  mostCases: number,
): string[] {
  const drawn = dugGroups(input).flatMap((group) => {
    const day = dayInSeason(group.day, from, to);
    return day === null || group.caseIndex >= mostCases ? [] : [{ ...group, at: day }];
  });
  const days = new Map(drawn.map(({ at, day }) => [at, day]));
  return [
    ...[...days].map(([at, day]) =>
      textAt(x(at), room.bottom - 4, `dug ${dayWords(day)}`, {
        anchor: x(at) < x(from) + 60 ? "start" : x(at) > x(to) - 60 ? "end" : "middle",
        fill: ink,
        size: 9,
      }),
    ),
    ...[...days.keys()].map(
      (at) =>
        `<path d="M${coordinate(x(at))} ${coordinate(room.top)}V${coordinate(room.bottom - 14)}" stroke="${ink}" stroke-width="0.5" stroke-dasharray="1 2" fill="none"/>`,
    ),
    ...drawn.flatMap(({ caseIndex, depthsMm, turnedAtMm = [], at }) => [
      ...turnedAtMm.map((mm) => turned(x(at), room.y(mm), caseIndex)),
      ...depthsMm.map((mm, plant) => ring(x(at) + besideBy(plant, 9), room.y(mm), caseIndex)),
    ]),
  ];
}

/** The same day of the year in the season drawn, which is of another year; null where it is outside of it. */
function dayInSeason(day: number, from: number, to: number): number | null {
  const monthDay = { month: monthOf(day), day: dayOfMonth(day) };
  for (let year = yearOf(from); year <= yearOf(to); year++) {
    const at = dayInYear(year, monthDay);
    if (at >= from && at <= to) return at;
  }
  return null;
}

function besideBy(plant: number, most: number): number {
  const by = besidePx[plant % besidePx.length]!;
  return Math.sign(by) * Math.min(Math.abs(by), Math.max(0, most));
}

function ring(x: number, y: number, c: number): string {
  return `<circle class="dug" cx="${coordinate(x)}" cy="${coordinate(y)}" r="${ringPx}" fill="#fffdf7" stroke="${caseColour(c)}" stroke-width="1.3"/>`;
}

function turned(x: number, y: number, c: number): string {
  return lineBetween(x - turnedPx, y, x + turnedPx, y, caseColour(c), 2.2);
}

/** What rings and bars are, and when it was; nothing where nothing was dug. */
export function dugCaption(input: ReportInput): string {
  const groups = dugGroups(input);
  if (groups.length === 0) return "";
  const dates = [...new Set(groups.map(({ day }) => `${dayWords(day)}, ${yearOf(day)}`))];
  const bars = groups.some(({ turnedAtMm = [] }) => turnedAtMm.length > 0)
    ? "; bars: where roots turned aside"
    : "";
  return ` Rings in both pictures: deepest root of each plant dug, ${dates.join("; ")}${bars}.`;
}

/** For those who do not see them. */
export function dugInWords(input: ReportInput): string[] {
  const { scenario, shown } = input;
  const each = (depths: readonly number[]) => depths.map((mm) => shown.depth(mm)).join(", ");
  return dugGroups(input).map(({ caseIndex, day, depthsMm, turnedAtMm = [] }) => {
    const aside =
      turnedAtMm.length === 0 ? "" : `; roots turned aside at ${each(turnedAtMm)} ${shown.length}`;
    return `Dug in "${scenario.cases[caseIndex]!.name}" on ${isoDate(day)}: ${each(depthsMm)} ${shown.length}${aside}.`;
  });
}

/** `Jun 3` */
export function dayWords(day: number): string {
  return `${monthNames[monthOf(day) - 1]!} ${dayOfMonth(day)}`;
}
