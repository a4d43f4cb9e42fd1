import { yearBriefly } from "../../../src/report/tables/yearSaid.ts";
import { mmPerInch } from "../../../src/quantity/constants.ts";
import { dayOfMonth, monthOf, yearOf } from "../../../src/quantity/calendar.ts";
import type { Formatters } from "../../../src/report/tables/formatters.ts";
import type { CaseSeason, SeasonShown } from "../../worker/protocol.ts";
import { dayX, type Window } from "../kit/box.ts";
import type { PitWallLayout } from "./pitWallLayout.ts";
import { monthNames } from "../../../src/quantity/dates.ts";
import { sayMonthDay, stageParts } from "./pitWallReading.ts";
import { placedMarks, type EventMark } from "../kit/placedMarks.ts";
import { rainBars, rainTop } from "./rainBars.ts";
import { words, type Palette } from "../kit/palette.ts";
import { hatching } from "../../../src/drawing/denseLayer.ts";

interface TimeProps {
  readonly season: SeasonShown;
  readonly one: CaseSeason;
  readonly layout: PitWallLayout;
  readonly window: Window;
  readonly colours: Palette;
}

/** Rain and snow as bars, on the dates of the water below. */
export function RainBars({
  season,
  one,
  layout,
  window,
  colours,
  shown,
}: TimeProps & { readonly shown: Formatters }) {
  const { rain: box, wide } = layout;
  const mmPerUnit = shown.system === "us" ? mmPerInch : 1;
  const topMm = rainTop(season, window, mmPerUnit);
  const bars = rainBars(season, one, window, box, topMm);
  const bottom = box.y + box.height;
  const size = wide ? 12 : 10.5;
  const hasSnow = bars.snow !== "";
  const caption = `${words.rain}${hasSnow ? " and snow (white)" : ""}, ${shown.length} per day`;
  const short = `${words.rain}${hasSnow ? ", snow white" : ""}, ${shown.length}/day`;
  const fits = 4 + caption.length * size * 0.54 < box.width;
  return (
    <g font-size={size} fill={colours.pencil}>
      <path
        d={`M${box.x} ${box.y}h${box.width}M${box.x} ${bottom}h${box.width}`}
        stroke={colours.rule}
        fill="none"
      />
      <path d={bars.rain} fill={colours.rain} />
      <path d={bars.snow} fill={colours.paper} stroke={colours.snow} stroke-width="0.9" />
      <text x={box.x - 5} y={box.y + 9} text-anchor="end">
        {trimmed(topMm / mmPerUnit)}
      </text>
      <text x={box.x - 5} y={bottom} text-anchor="end">
        0
      </text>
      <text
        x={box.x + 4}
        y={box.y + 11}
        fill={colours.ink}
        stroke={colours.paper}
        stroke-width="3"
        paint-order="stroke"
      >
        {fits ? caption : short}
      </text>
    </g>
  );
}

/** Fallow and the crop's stages as a strip, and sowing, flowering and maturity through the water. */
export function Stages({ season, one, layout, window, colours }: TimeProps) {
  const { stages: box, events, water, wide } = layout;
  const size = wide ? 12 : 10.5;
  const parts = stageParts(one, season.days)
    .map((part) => ({
      ...part,
      x: dayX(box, window, Math.max(part.from, window.fromDay)),
      end: dayX(box, window, part.to),
    }))
    .filter(({ x, end }) => end - x > 0.5);
  const marks = placedMarks(
    eventMarks(season, one).filter(({ day }) => day >= window.fromDay && day < window.toDay),
    (day) => dayX(water, window, day + 0.5),
    size,
    [water.x, layout.width - 2],
  );
  return (
    <g font-size={size}>
      {parts.map(({ name, x, end }, i) => (
        <g key={name}>
          <rect
            x={x}
            y={box.y + 2}
            width={end - x}
            height={box.height - 2}
            fill={name === "fallow" ? colours.paper : colours.rule}
            fill-opacity={name === "fallow" ? 1 : 0.45 + 0.18 * (i % 3)}
            stroke={colours.pencil}
            stroke-width="0.7"
          />
          {name === "fallow" && (
            <path
              d={hatching({ x, y: box.y + 2, width: end - x, height: box.height - 2 }, 9)}
              stroke={colours.pencil}
              stroke-width="0.6"
              stroke-opacity="0.55"
            />
          )}
          <StageName
            name={name}
            width={end - x}
            x={(x + end) / 2}
            y={box.y + box.height - (wide ? 6 : 4)}
            size={size}
            colours={colours}
          />
        </g>
      ))}
      {marks.map(({ word, x, left }) => {
        return (
          <g key={word}>
            {left !== null && (
              <text x={left} y={events.y + 14} fill={colours.ink} font-weight="600">
                {word}
              </text>
            )}
            <path
              d={`M${x.toFixed(1)} ${events.y + 17}V${water.y + water.height}`}
              stroke={colours.ink}
              stroke-width="1.2"
              stroke-dasharray="2 3"
              fill="none"
            />
          </g>
        );
      })}
    </g>
  );
}

interface StageNameProps {
  readonly name: string;
  readonly width: number;
  readonly x: number;
  readonly y: number;
  readonly size: number;
  readonly colours: Palette;
}

/** The stage's name where there is room for it; a halo lifts it off the hatching. */
function StageName({ name, width, x, y, size, colours }: StageNameProps) {
  if (name.length * size * 0.56 > width - 6) return null;
  return (
    <text
      {...{ x, y }}
      text-anchor="middle"
      fill={colours.ink}
      stroke={colours.paper}
      stroke-width="3"
      paint-order="stroke"
    >
      {name}
    </text>
  );
}

/** Months along the lower edge; the year under its first month. */
export function Dates({ season, layout, window, colours }: Omit<TimeProps, "one">) {
  const { water: box, wide } = layout;
  const y = box.y + box.height;
  const firsts: { day: number; date: number }[] = [];
  for (let day = window.fromDay; day < window.toDay; day++) {
    if (dayOfMonth(season.firstDay + day) === 1) firsts.push({ day, date: season.firstDay + day });
  }
  const monthPx = (box.width / (window.toDay - window.fromDay)) * 30.4;
  const each = monthPx >= 32 ? 1 : monthPx >= 16 ? 2 : 3;
  let year = 0;
  return (
    <g font-size={wide ? 12 : 10.5} fill={colours.pencil}>
      <path
        d={firsts.map(({ day }) => `M${dayX(box, window, day).toFixed(1)} ${y}v6`).join("")}
        stroke={colours.pencil}
      />
      {firsts.map(({ day, date }, i) => {
        const x = dayX(box, window, day);
        if (i % each !== 0 || x > box.x + box.width - 18) return null;
        const newYear = yearOf(date) !== year;
        year = yearOf(date);
        return (
          <g key={day}>
            <text x={x + 2} y={y + 18}>
              {monthNames[monthOf(date) - 1]}
            </text>
            {newYear && (
              <text x={x + 2} y={y + 33} fill={colours.ink} font-weight="600">
                {yearBriefly(year, season.isGenerated)}
              </text>
            )}
          </g>
        );
      })}
    </g>
  );
}

function eventMarks(season: SeasonShown, one: CaseSeason): EventMark[] {
  const events: readonly (readonly [string, number, EventMark["side"]])[] = one.isSod
    ? [
        ["growth begins", one.sowingDay, "before"],
        ["ends", one.maturityDay, "after"],
      ]
    : [
        ["sown", one.sowingDay, "before"],
        ["flowers", one.floweringDay, "over"],
        ["mature", one.maturityDay, "after"],
      ];
  return events.map(([word, ownDay, side]) => {
    const day = one.startsAt + ownDay;
    return { day, side, word, date: sayMonthDay(season.firstDay + day) };
  });
}

function trimmed(value: number): string {
  return String(Number(value.toFixed(2)));
}
