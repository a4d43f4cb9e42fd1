import { axisOver } from "../../../src/drawing/axis.ts";
import { dayOfMonth, isoDate, monthOf } from "../../../src/quantity/calendar.ts";
import { mmPerInch } from "../../../src/quantity/constants.ts";
import { monthNames } from "../../../src/quantity/dates.ts";
import { fixed, type Formatters } from "../../../src/report/tables/formatters.ts";
import type { OutlookShown } from "../../worker/protocol.ts";
import type { PictureTable } from "../kit/frame.tsx";
import { strokeDashes } from "../kit/caseLooks.ts";
import { caseStyle, fontFamily, palette } from "../kit/palette.ts";
import { SvgPicture } from "../kit/svgPicture.tsx";

export const defaults = {
  name: "Water within reach of the roots: as it was up to today, and as the other years may have it from today on",
  fileName: "season-under-way",
  sizePx: 13,
  heightPx: 314,
  left: 40,
  topPx: 54,
  footPx: 34,
} as const;

/** Every so many days, as a table. */
const tableStepDays = 10;

export function outlookTable(
  { names, firstDay, today, byCase }: OutlookShown,
  shown: Formatters,
): PictureTable {
  const last = Math.max(...byCase.map(({ p50 }) => p50.length));
  const days = Array.from({ length: last }, (_, day) => day).filter(
    (day) => (day - today) % tableStepDays === 0,
  );
  return {
    head: ["Day", ...names.flatMap((name) => [`${name}, ${shown.length}`, `${name}: P10`, `${name}: P90`])],
    rows: days.map((day) => [
      isoDate(firstDay + day),
      ...byCase.flatMap(({ p10, p50, p90 }) =>
        [p50, p10, p90].map((values) => (day < values.length ? shown.water(values[day]!) : "ripe")),
      ),
    ]),
  };
}

interface OutlookLineProps {
  readonly outlook: OutlookShown;
  readonly width: number;
  readonly shown: Formatters;
  readonly faint: boolean;
}

/** A line for each case: whole up to today, from then on the middle of the other years in the band that holds eight of ten. */
export function OutlookLine({ outlook, width, shown, faint }: OutlookLineProps) {
  const colours = palette();
  const { sizePx, heightPx, left, topPx, footPx } = defaults;
  const { byCase, firstDay, today, names } = outlook;
  const perUnit = shown.length === "in" ? mmPerInch : 1;
  const days = Math.max(today + 1, ...byCase.map(({ p50 }) => p50.length));
  const right = width - 10;
  const bottom = heightPx - footPx;
  const most = Math.max(1, ...byCase.flatMap(({ p90 }) => p90)) / perUnit;
  const axis = axisOver(0, most, bottom, topPx, 5);
  const x = (day: number) => left + (day / Math.max(1, days - 1)) * (right - left);
  const place = (mm: number, day: number) => `${x(day).toFixed(1)} ${axis.at(mm / perUnit).toFixed(1)}`;
  const lineOf = (values: readonly number[], from: number, to: number) =>
    values
      .slice(from, to)
      .map((mm, i) => `${i === 0 ? "M" : "L"}${place(mm, from + i)}`)
      .join("");
  return (
    <SvgPicture
      name={`${defaults.name}: ${names.join(", ")}`}
      width={width}
      height={heightPx}
      table={outlookTable(outlook, shown)}
      fileName={defaults.fileName}
      faint={faint}
      caption={`Up to today as the record's rain had it; from then on the middle of ${outlook.otherYears} other years, the band from P10 to P90. A line ends when half of the years are ripe.`}
    >
      <rect width={width} height={heightPx} fill={colours.paper} />
      <g font-family={fontFamily} font-size={sizePx} fill={colours.pencil}>
        <text x={0} y={14}>
          Water within reach of the roots, {shown.length}
        </text>
        {axis.ticks.map((tick) => (
          <g key={tick}>
            <line x1={left} x2={right} y1={axis.at(tick)} y2={axis.at(tick)} stroke={colours.rule} />
            <text x={left - 6} y={axis.at(tick) + 0.35 * sizePx} text-anchor="end">
              {fixed(tick, axis.digits)}
            </text>
          </g>
        ))}
        {Array.from({ length: days }, (_, day) => firstDay + day)
          .filter((day) => dayOfMonth(day) === 1)
          .map((day) => (
            <g key={day}>
              <path d={`M${x(day - firstDay).toFixed(1)} ${bottom}v6`} stroke={colours.pencil} />
              <text x={x(day - firstDay)} y={bottom + 20} text-anchor="middle">
                {monthNames[monthOf(day) - 1]}
              </text>
            </g>
          ))}
        {byCase.map(({ p10, p90 }, c) => (
          <path
            key={c}
            d={`${lineOf(p90, today, p90.length)}${[...p10.keys()]
              .slice(today)
              .reverse()
              .map((day) => `L${place(p10[day]!, day)}`)
              .join("")}z`}
            fill={caseStyle(c, colours).color}
            fill-opacity="0.14"
          />
        ))}
        {byCase.map(({ p50 }, c) => {
          const { color, dash } = caseStyle(c, colours);
          return (
            <g key={c} fill="none" stroke={color} stroke-width="2.6">
              <path d={lineOf(p50, 0, today + 1)} />
              <path d={lineOf(p50, today, p50.length)} stroke-dasharray={strokeDashes[dash]} />
            </g>
          );
        })}
        <path d={`M${x(today).toFixed(1)} ${topPx - 10}V${bottom}`} stroke={colours.ink} stroke-width="1.4" />
        <text
          x={x(today)}
          y={topPx - 14}
          fill={colours.ink}
          font-weight="600"
          text-anchor={today > days / 2 ? "end" : "start"}
        >
          today, {isoDate(firstDay + today)}
        </text>
      </g>
    </SvgPicture>
  );
}
