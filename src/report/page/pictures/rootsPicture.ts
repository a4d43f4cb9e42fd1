import { isSod } from "../../../crop/crop.ts";
import { dayNumber, isoDate, monthOf, yearOf } from "../../../quantity/calendar.ts";
import { monthNames } from "../../../quantity/dates.ts";
import { depthAxis, depthRoom, type DepthRoom } from "./depthAxis.ts";
import { widthOf } from "../../../drawing/text.ts";
import { apart } from "../../../drawing/labels.ts";
import { scaleTo, type Scale } from "../../../drawing/axis.ts";
import { box, coordinate, lineBetween, svgOf, textAt } from "./drawing.ts";
import { caseColour, caseDash, caseLetter, pencil, rule, slow } from "../reportStyle.ts";
import { dugInWords, dugOverTime } from "./dugMarks.ts";
import { paceUsed } from "../paceUsed.ts";
import type { ReportInput, TypicalSeason } from "../reportInput.ts";
import { slowBelow } from "../../../drawing/denseLayer.ts";

export const defaults = {
  title: "How deep the roots are, day by day, in a typical year",
  width: 350,
  axisPx: 34,
  /** Room for the letters at the ends of the lines. */
  rightPx: 18,
  mostCases: 8,
} as const;

/** The root front of each case over the dates of a typical season, with flowering and maturity marked on it. */
export function rootsPicture(input: ReportInput): string {
  const { scenario, season, shown } = input;
  const sod = isSod(scenario.cases[0].crop);
  const room = depthRoom(input);
  const left = defaults.axisPx;
  const right = defaults.width - defaults.rightPx;
  const cases = season.cases.slice(0, defaults.mostCases);
  const from = Math.min(...cases.map(({ sowingDay }) => sowingDay));
  const to = Math.max(...cases.map(({ maturityDay }) => maturityDay));
  const x = scaleTo(from, Math.max(to, from + 1), left, right);
  const slowLayers = scenario.cases[0].layers.filter(
    (layer) => layer.topMm < room.depthMm && paceUsed(input, scenario.cases[0].name, layer).share < slowBelow,
  );
  const ends = cases.map(({ frontMm }) => room.y(frontMm.at(-1) ?? 0));
  return svgOf({
    id: "roots",
    width: defaults.width,
    height: room.height,
    title: defaults.title,
    says: rootsSaid(input),
    parts: [
      ...slowLayers.map((layer) => {
        const y = room.y(layer.topMm);
        const bottom = room.y(Math.min(layer.bottomMm, room.depthMm));
        return box(left, y, right - left, bottom - y, `fill="${slow}" fill-opacity="0.12"`);
      }),
      ...depthAxis(room, left, shown, right - left),
      ...monthMarks(from, to, x, room),
      ...stageMarks(cases[0]!, sod, x, room),
      ...cases.map((one, c) => front(one, sod, c, x, room)),
      ...dugOverTime(input, x, [from, to], room, defaults.mostCases),
      ...letters(ends, right + 4, room),
    ],
  });
}

type CaseFront = TypicalSeason["cases"][number];

function front(
  { sowingDay, floweringDay, maturityDay, frontMm }: CaseFront,
  sod: boolean,
  c: number,
  x: Scale,
  room: DepthRoom,
): string {
  const path = frontMm
    .map((mm, day) => `${day === 0 ? "M" : "L"}${coordinate(x(sowingDay + day))} ${coordinate(room.y(mm))}`)
    .join("");
  const colour = caseColour(c);
  const markAt = (day: number) => room.y(frontMm[Math.min(day - sowingDay, frontMm.length - 1)] ?? 0);
  const flower = `<circle cx="${coordinate(x(floweringDay))}" cy="${coordinate(markAt(floweringDay))}" r="3.2" fill="#ffffff" stroke="${colour}" stroke-width="1.6"/>`;
  return (
    `<path d="${path}" fill="none" stroke="${colour}" stroke-width="2" stroke-dasharray="${caseDash(c)}" stroke-linejoin="round"/>` +
    (sod ? "" : flower) +
    `<circle cx="${coordinate(x(maturityDay))}" cy="${coordinate(markAt(maturityDay))}" r="3.2" fill="${colour}"/>`
  );
}

/** Sowing, flowering and maturity of the first case, along the top. */
function stageMarks(
  { sowingDay, floweringDay, maturityDay }: CaseFront,
  sod: boolean,
  x: Scale,
  { top, bottom }: DepthRoom,
): string[] {
  const marks: readonly { readonly day: number; readonly word: string; readonly side: number }[] = sod
    ? [
        { day: sowingDay, word: "growth begins", side: 0.5 },
        { day: maturityDay, word: "ends", side: -0.5 },
      ]
    : [
        { day: sowingDay, word: "sown", side: 0.5 },
        { day: floweringDay, word: "flowering", side: 0 },
        { day: maturityDay, word: "mature", side: -0.5 },
      ];
  const size = 9.5;
  const widths = marks.map(({ word }) => widthOf(word, size) + 4);
  const middles = apart(
    marks.map(({ day, side }, m) => x(day) + side * widths[m]!),
    widths,
    defaults.axisPx,
    defaults.width - defaults.rightPx,
  );
  return marks.flatMap(({ day, word }, m) => [
    lineBetween(x(day), top - 4, x(day), bottom, rule, 0.8),
    textAt(middles[m]!, top - 8, word, { anchor: "middle", fill: pencil, size }),
  ]);
}

function monthMarks(from: number, to: number, x: Scale, { bottom }: DepthRoom): string[] {
  const every = to - from > 240 ? 2 : 1;
  const marks: string[] = [lineBetween(x(from), bottom, x(to), bottom)];
  let month = monthOf(from);
  let year = yearOf(from);
  for (let count = 0; ; count++) {
    const day = dayNumber(year, month, 1);
    if (day > to) return marks;
    if (day >= from && count % every === 0) {
      marks.push(lineBetween(x(day), bottom, x(day), bottom + 4));
      if (x(day) > x(from) + 40)
        marks.push(
          textAt(x(day), bottom + 14, monthNames[month - 1]!, { anchor: "middle", fill: pencil, size: 9 }),
        );
    }
    month = (month % 12) + 1;
    if (month === 1) year += 1;
  }
}

/** Room for a letter. */
const letterPx = 10.5;

function letters(ends: readonly number[], x: number, { top, bottom }: DepthRoom): string[] {
  const order = ends.map((_, c) => c).sort((a, b) => ends[a]! - ends[b]! || a - b);
  const places = apart(
    order.map((c) => ends[c]!),
    letterPx,
    top - letterPx / 2,
    bottom + letterPx / 2,
  );
  return order.map((c, i) => textAt(x, places[i]! + 3.5, caseLetter(c), { bold: true, fill: caseColour(c) }));
}

function rootsSaid(input: ReportInput): string {
  const { scenario, season, shown } = input;
  const fronts = season.cases.map(({ sowingDay, floweringDay, maturityDay, frontMm }, c) => {
    const depth = (day: number) => `${shown.depth(frontMm[day - sowingDay] ?? 0)} ${shown.length}`;
    const { name, crop } = scenario.cases[c]!;
    if (isSod(crop))
      return `"${name}": ${depth(maturityDay)} deep from ${isoDate(sowingDay)} to ${isoDate(maturityDay)}.`;
    return `"${name}": sown ${isoDate(sowingDay)}, ${depth(floweringDay)} deep at flowering on ${isoDate(floweringDay)}, ${depth(maturityDay)} at maturity on ${isoDate(maturityDay)}.`;
  });
  return [...fronts, ...dugInWords(input)].join(" ");
}
