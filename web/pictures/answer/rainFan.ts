import { mmPerInch } from "../../../src/quantity/constants.ts";
import type { DifferenceAnswer } from "../../../src/answer/comparison/comparison.ts";
import type { Spread } from "../../../src/statistics/quantiles.ts";
import { fineYield, shownIn } from "../../../src/report/tables/formatters.ts";
import type { RainFan } from "../../worker/protocol.ts";
import type { PictureTable } from "../kit/frame.tsx";
import { caseStyle, palette, words, type Palette } from "../kit/palette.ts";
import { apart } from "../../../src/drawing/labels.ts";
import { chartDash, type Data, type Figure, type Layout } from "../kit/plotly.ts";
import type { AskedRain } from "./rainFanAsked.ts";
import { widthOf, wrapped } from "../../../src/drawing/text.ts";

export const defaults = {
  name: "What depth is worth, against the total of rain",
  /** Where more than the roots differs. */
  nameOfDifference: "What the difference is worth, against the total of rain",
  height: 380,
  fileName: "depth-by-rain",
  /** Opacity of the band from one season in ten to nine in ten. */
  bandOpacity: 0.2,
  /** Labels keep this far apart, px. */
  apartPx: 20,
  sizePx: 14,
} as const;

/** What the fan is of. */
export type FanOf = "water" | "yield";

export interface FanView {
  readonly of: FanOf;
  /** The difference that has its band; the others are lines. */
  readonly chosen: number;
  readonly asked: AskedRain | null;
  /** Room for the chart, px. */
  readonly width: number;
}

/** The paired difference of each later case over rainfall totals, the user's own totals marked behind. */
export function rainFanFigure(fan: RainFan, view: FanView, colours: Palette = palette()): Figure {
  const { mmPerUnit } = unitsOf(fan);
  const rain = fan.points.map(({ rainTotalMm }) => rainTotalMm / mmPerUnit);
  const pairs = fan.points[0]?.differences ?? [];
  const lines = pairs.flatMap(({ to }, d): Data[] => {
    const { color, dash } = caseStyle(d + 1, colours);
    const spreads = fan.points.map(({ differences }) => spreadIn(differences[d]!, view.of, mmPerUnit));
    const isChosen = d === view.chosen;
    const line: Data = {
      type: "scatter",
      mode: "lines",
      name: to,
      x: rain,
      y: spreads.map(({ p50 }) => p50),
      line: { color, dash: chartDash(dash), width: isChosen ? 3.5 : 2 },
      hovertemplate: `%{x:.1f} ${unitsOf(fan).length} of rain: %{y:.2f} ${unitOf(fan, view.of)}<extra>${escaped(to)}</extra>`,
      showlegend: false,
    };
    return isChosen ? [...band(rain, spreads, color), line] : [line];
  });
  return {
    data: [...lines, ...askedPoints(fan, view, colours)],
    layout: layoutOf(fan, view, colours),
  };
}

/** Every difference in water and in yield, at every total of the fan. */
export function rainFanTable(fan: RainFan): PictureTable {
  const shown = shownIn(fan.units);
  const pairs = fan.points[0]?.differences ?? [];
  return {
    head: [
      `Rain, ${shown.length}`,
      ...pairs.flatMap(({ to, extraYield }) => [
        `${to}: extra water, ${shown.length} (P10 to P90)`,
        `${to}: extra yield, ${extraYield.unit} (P10 to P90)`,
      ]),
    ],
    rows: fan.points.map(({ rainTotalMm, differences }) => [
      shown.total(rainTotalMm),
      ...differences.flatMap(({ extraWaterUsedMm, extraYield }) => [
        spreadSaid(extraWaterUsedMm, shown.fineWater),
        spreadSaid(extraYield, (value) => fineYield(value, extraYield.unit)),
      ]),
    ]),
  };
}

function band(rain: readonly number[], spreads: readonly Spread[], color: string): Data[] {
  const edge = {
    type: "scatter",
    mode: "lines",
    line: { width: 1, color },
    opacity: 0.6,
    hoverinfo: "skip",
    showlegend: false,
  } as const;
  return [
    { ...edge, x: [...rain], y: spreads.map(({ p10 }) => p10) },
    {
      ...edge,
      x: [...rain],
      y: spreads.map(({ p90 }) => p90),
      fill: "tonexty",
      fillcolor: faded(color),
    },
  ];
}

/** The answer itself, from all runs, where the user asked for it: the numbers of the sentence are to be found in the fan. */
function askedPoints(fan: RainFan, { of, chosen, asked }: FanView, colours: Palette): Data[] {
  const answers = asked?.answers ?? [];
  if (answers.length === 0 || answers[0]!.differences[chosen] === undefined) return [];
  const { mmPerUnit, length } = unitsOf(fan);
  const spreads = answers.map(({ differences }) => spreadIn(differences[chosen]!, of, mmPerUnit));
  const { color, mark } = caseStyle(chosen + 1, colours);
  return [
    {
      type: "scatter",
      mode: "markers",
      name: "the answer, from all runs",
      x: answers.map(({ rainTotalMm }) => rainTotalMm / mmPerUnit),
      y: spreads.map(({ p50 }) => p50),
      error_y: {
        type: "data",
        symmetric: false,
        array: spreads.map(({ p50, p90 }) => p90 - p50),
        arrayminus: spreads.map(({ p10, p50 }) => p50 - p10),
        color: colours.ink,
        thickness: 2,
        width: 5,
      },
      marker: { color, symbol: mark, size: 10, line: { color: colours.paper, width: 1.5 } },
      hovertemplate: `%{x:.1f} ${length} of rain, all runs: %{y:.2f} ${unitOf(fan, of)}<extra></extra>`,
      showlegend: false,
    },
  ];
}

function layoutOf(fan: RainFan, view: FanView, colours: Palette): Figure["layout"] {
  const { length, mmPerUnit } = unitsOf(fan);
  const { asked } = view;
  const [from, to] = [fan.fromMm / mmPerUnit, fan.toMm / mmPerUnit];
  const own = asked === null ? null : ([asked.fromMm / mmPerUnit, asked.toMm / mmPerUnit] as const);
  const range: [number, number] = [Math.min(from, own?.[0] ?? from), Math.max(to, own?.[1] ?? to)];
  const heights = rangeOf(fan, view);
  const title = view.of === "water" ? words.extraWater : words.extraYield;
  return {
    margin: { l: 56, r: 14, t: 30, b: 48 },
    xaxis: { title: { text: `${words.rain} in the ${fan.over}, ${length}` }, range },
    yaxis: { title: { text: `${title}, ${unitOf(fan, view.of)}` }, range: heights, zeroline: true },
    shapes:
      own === null
        ? []
        : [
            {
              type: "rect",
              xref: "x",
              yref: "paper",
              x0: own[0],
              x1: own[1],
              y0: 0,
              y1: 1,
              fillcolor: colours.asked,
              line: { width: 1.5, color: colours.pencil, dash: "dot" },
              layer: "below",
            },
          ],
    annotations: [
      ...(own === null ? [] : [askedNote(own, range, asked!.said, colours)]),
      ...lineLabels(fan, view, heights, colours),
    ],
  };
}

type Annotation = NonNullable<Layout["annotations"]>[number];

/** Above the marked range, pushed inward where it would leave the chart. */
function askedNote(
  own: readonly [number, number],
  range: readonly [number, number],
  said: string,
  { pencil }: Palette,
): Annotation {
  const middle = (own[0] + own[1]) / 2;
  const place = (middle - range[0]) / (range[1] - range[0]);
  return {
    xref: "x",
    yref: "paper",
    x: place < 0.25 ? own[0] : place > 0.75 ? own[1] : middle,
    xanchor: place < 0.25 ? "left" : place > 0.75 ? "right" : "center",
    y: 1,
    yanchor: "bottom",
    text: escaped(said),
    showarrow: false,
    font: { color: pencil },
  };
}

/** Each line's name at its right end, kept apart where ends lie close. */
function lineLabels(
  fan: RainFan,
  view: FanView,
  [low, high]: readonly [number, number],
  colours: Palette,
): Annotation[] {
  const last = fan.points.at(-1);
  if (last === undefined) return [];
  const { mmPerUnit } = unitsOf(fan);
  const plotPx = defaults.height - 78;
  const roomPx = Math.max(90, view.width * 0.5);
  const ends = last.differences.map((difference, d) => {
    const y = spreadIn(difference, view.of, mmPerUnit).p50;
    const text = wrapped(difference.to, roomPx, defaults.sizePx);
    return { d, y, text, px: ((y - low) / (high - low)) * plotPx };
  });
  const heights = apart(
    ends.map(({ px }) => px + 12),
    ends.map(({ text }) => text.length * defaults.apartPx),
    0,
    plotPx,
  );
  return ends.map(({ d, y, text, px }, i) => ({
    x: last.rainTotalMm / mmPerUnit,
    y,
    xanchor: "right",
    yanchor: "middle",
    yshift: heights[i]! - px,
    align: "right",
    text: text.map(escaped).join("<br>"),
    showarrow: false,
    bgcolor: faded(colours.paper, 0.75),
    width: Math.max(...text.map((line) => widthOf(line, defaults.sizePx))),
    font: { color: caseStyle(d + 1, colours).color, size: defaults.sizePx },
  }));
}

/** All that is drawn, and 0. */
function rangeOf(fan: RainFan, { of, chosen, asked }: FanView): [number, number] {
  const { mmPerUnit } = unitsOf(fan);
  const drawn = [...fan.points, ...(asked?.answers ?? [])].flatMap(({ differences }) =>
    differences.flatMap((difference, d) => {
      const { p10, p50, p90 } = spreadIn(difference, of, mmPerUnit);
      return d === chosen ? [p10, p50, p90] : [p50];
    }),
  );
  const low = Math.min(0, ...drawn);
  const high = Math.max(0, ...drawn);
  const span = high - low || 1;
  return [low < 0 ? low - 0.06 * span : 0, high + 0.1 * span];
}

function spreadIn(difference: DifferenceAnswer, of: FanOf, mmPerUnit: number): Spread {
  if (of === "yield") return difference.extraYield;
  const { p10, p50, p90 } = difference.extraWaterUsedMm;
  return { p10: p10 / mmPerUnit, p50: p50 / mmPerUnit, p90: p90 / mmPerUnit };
}

function spreadSaid({ p10, p50, p90 }: Spread, say: (value: number) => string): string {
  return `${say(p50)} (${say(p10)} to ${say(p90)})`;
}

function unitOf(fan: RainFan, of: FanOf): string {
  return of === "water" ? unitsOf(fan).length : (fan.points[0]?.differences[0]?.extraYield.unit ?? "");
}

function unitsOf({ units }: RainFan): { length: "in" | "mm"; mmPerUnit: number } {
  return units === "us" ? { length: "in", mmPerUnit: mmPerInch } : { length: "mm", mmPerUnit: 1 };
}

function faded(color: string, opacity: number = defaults.bandOpacity): string {
  const [r, g, b] = [1, 3, 5].map((at) => Number.parseInt(color.slice(at, at + 2), 16));
  return `rgba(${r}, ${g}, ${b}, ${opacity})`;
}

/** Chart text reads a little markup; names are the user's. */
function escaped(text: string): string {
  return text.replaceAll("&", "&amp;").replaceAll("<", "&lt;");
}
