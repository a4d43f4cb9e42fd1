import { useId } from "preact/hooks";
import type { DifferenceAnswer } from "../../../src/answer/comparison/comparison.ts";
import { typeset } from "../../../src/report/tables/typeset.ts";
import type { PictureTable } from "../kit/frame.tsx";
import { Hatch } from "../kit/hatch.tsx";
import { caseStyle, fontFamily, palette, words, type Palette } from "../kit/palette.ts";
import { SvgPicture } from "../kit/svgPicture.tsx";
import { widthOf, wrapped } from "../../../src/drawing/text.ts";

export const defaults = {
  name: "Rule of thumb, water stored there and extra water taken up",
  fileName: "three-numbers",
  barsPx: 190,
  sizePx: 14,
  lineHeightPx: 18,
} as const;

interface Bar {
  readonly name: string;
  readonly mm: number;
  readonly what: string;
  /** P10 and P90, where there is a range. */
  readonly range: readonly [number, number] | null;
}

/** The three, in the order in which they shrink more often than not. */
export function threeBars(
  { ruleOfThumbMm, storedInExtraDepthMm, extraWaterUsedMm: { p10, p50, p90 } }: DifferenceAnswer,
  runs: number,
): Bar[] {
  const single = runs === 1;
  return [
    { name: words.ruleOfThumb, mm: ruleOfThumbMm, what: "extra depth × capacity", range: null },
    { name: words.stored, mm: storedInExtraDepthMm, what: "in the extra depth", range: null },
    {
      name: words.used,
      mm: p50,
      what: single ? "in the one season run" : "in a typical year; the whisker spans 8 years of 10",
      range: single ? null : [p10, p90],
    },
  ];
}

export function threeNumbersTable(
  difference: DifferenceAnswer,
  { say, length }: Pick<ThreeNumbersProps, "say" | "length">,
  runs: number,
): PictureTable {
  return {
    head: ["Number", `Typical year, ${length}`, "P10", "P90"],
    rows: threeBars(difference, runs).map(({ name, mm, range }) => [
      name,
      say(mm),
      range === null ? "–" : say(range[0]),
      range === null ? "–" : say(range[1]),
    ]),
  };
}

interface ThreeNumbersProps {
  readonly difference: DifferenceAnswer;
  /** Place of the case among all. */
  readonly c: number;
  readonly runs: number;
  readonly width: number;
  /** A figure, with the digits of the sentence. */
  readonly say: (mm: number) => string;
  readonly length: "in" | "mm";
}

/** The three numbers that are so often taken for one another, side by side on one scale. */
export function ThreeNumbers({ difference, c, runs, width, say, length }: ThreeNumbersProps) {
  const colours = palette();
  const hatch = useId();
  const { sizePx, lineHeightPx, barsPx } = defaults;
  const bars = threeBars(difference, runs);
  const column = width / bars.length;
  const texts = bars.map(({ name, what }) => ({
    name: wrapped(name, column - 10, sizePx),
    what: wrapped(what, column - 10, sizePx - 1),
  }));
  const nameLines = Math.max(...texts.map(({ name }) => name.length));
  const scale = scaleOf(bars, 2.2 * lineHeightPx, barsPx);
  const textTop = scale.bottom + lineHeightPx + 6;
  const height = textTop + (nameLines + Math.max(...texts.map(({ what }) => what.length))) * lineHeightPx - 4;
  const said = typeset(bars.map(({ name, mm }) => `${name} ${say(mm)} ${length}`).join(", "));
  return (
    <SvgPicture
      name={`${difference.to} against ${difference.from}: ${said}`}
      width={width}
      height={height}
      table={threeNumbersTable(difference, { say, length }, runs)}
      fileName={defaults.fileName}
    >
      <Hatch id={hatch} stroke={colours.pencil} strokeWidth={1.6} />
      <rect width={width} height={height} fill={colours.paper} />
      <g font-family={fontFamily} font-size={sizePx} text-anchor="middle" fill={colours.ink}>
        {bars.map((bar, b) => (
          <g key={bar.name} transform={`translate(${column * (b + 0.5)} 0)`}>
            <BarDrawn
              bar={bar}
              half={halfOf(column)}
              y={scale.y}
              {...barLook(b, c, hatch, colours)}
              colours={colours}
              say={say}
            />
            <Figure bar={bar} y={scale.y} column={column} text={typeset(`${say(bar.mm)} ${length}`)} />
            {texts[b]!.name.map((line, i) => (
              <text key={line} y={textTop + i * lineHeightPx} font-weight="600">
                {line}
              </text>
            ))}
            {texts[b]!.what.map((line, i) => (
              <text
                key={line}
                y={textTop + (nameLines + i) * lineHeightPx}
                font-size={sizePx - 1}
                fill={colours.pencil}
              >
                {line}
              </text>
            ))}
          </g>
        ))}
        <line x1="0" x2={width} y1={scale.y(0)} y2={scale.y(0)} stroke={colours.pencil} stroke-width="1.5" />
      </g>
    </SvgPicture>
  );
}

interface BarDrawnProps {
  readonly bar: Bar;
  readonly half: number;
  readonly y: (mm: number) => number;
  readonly fill: string;
  readonly stroke: string;
  readonly dash: string | undefined;
  readonly colours: Palette;
  readonly say: (mm: number) => string;
}

function BarDrawn({ bar: { mm, range }, half, y, fill, stroke, dash, colours, say }: BarDrawnProps) {
  const [top, bottom] = [Math.min(y(mm), y(0)), Math.max(y(mm), y(0))];
  return (
    <>
      <rect
        x={-half}
        y={top}
        width={2 * half}
        height={bottom - top}
        fill={fill}
        stroke={stroke}
        stroke-width="2"
        stroke-dasharray={dash}
      />
      {range !== null && <Whisker range={range} y={y} x={whiskerX(half)} colours={colours} say={say} />}
    </>
  );
}

interface WhiskerProps extends Pick<BarDrawnProps, "y" | "colours" | "say"> {
  readonly range: readonly [number, number];
  /** Left of the bar's middle, for its figures to have room on the outer side, and the bar's own on the inner. */
  readonly x: number;
}

/** From P10 to P90, each end with its figure where there is room for both. */
function Whisker({ range, y, x, colours: { ink, paper }, say }: WhiskerProps) {
  const [low, high] = [y(range[0]), y(range[1])];
  const path = `M${x - 8} ${low}h16M${x} ${low}V${high}M${x - 8} ${high}h16`;
  const small = defaults.sizePx - 1;
  const apart = Math.abs(low - high) > small;
  return (
    <>
      <path d={path} fill="none" stroke={paper} stroke-width="5" />
      <path d={path} fill="none" stroke={ink} stroke-width="2.5" />
      {apart &&
        range.map((mm, i) => (
          <text
            key={i}
            x={x - 12}
            y={y(mm) + 5}
            text-anchor="end"
            font-size={small}
            stroke={paper}
            stroke-width="4"
            paint-order="stroke"
          >
            {typeset(say(mm))}
          </text>
        ))}
    </>
  );
}

/** The rule of thumb is pencilled in, the stored water is water, the used has the colour of its case. */
function barLook(
  b: number,
  c: number,
  hatch: string,
  colours: Palette,
): Pick<BarDrawnProps, "fill" | "stroke" | "dash"> {
  if (b === 0) return { fill: `url(#${hatch})`, stroke: colours.pencil, dash: "5 4" };
  if (b === 1) return { fill: colours.water[2]![1], stroke: colours.rain, dash: undefined };
  const { color } = caseStyle(c, colours);
  return { fill: color, stroke: color, dash: undefined };
}

/** Room is left above and below for the figures. */
function scaleOf(bars: readonly Bar[], marginPx: number, barsPx: number) {
  const all = bars.flatMap(({ mm, range }) => [mm, ...(range ?? [])]);
  const low = Math.min(0, ...all);
  const high = Math.max(0, ...all);
  const span = high - low || 1;
  const below = low < 0 ? marginPx : 0;
  const y = (mm: number): number => marginPx + ((high - mm) / span) * barsPx;
  return { y, bottom: y(low) + below };
}

/** Half a bar's width. */
function halfOf(column: number): number {
  return Math.min(44, column * 0.28);
}

function whiskerX(half: number): number {
  return -0.75 * half;
}

interface FigureProps {
  readonly bar: Bar;
  readonly y: (mm: number) => number;
  readonly column: number;
  readonly text: string;
}

/** The bar's own figure at the bar's own end, away from 0; beside the whisker where there is one. */
function Figure({ bar: { mm, range }, y, column, text }: FigureProps) {
  const { paper } = palette();
  // Bold letters are wider than `widthOf` takes them.
  const size = defaults.sizePx + (column < 130 ? 1 : 4);
  const room = 1.12 * widthOf(text, size);
  const x = whiskerX(halfOf(column)) + 12;
  return (
    <text
      x={range === null ? 0 : Math.min(x, column / 2 - room)}
      y={mm < 0 ? y(mm) + size + 3 : y(mm) - 8}
      text-anchor={range === null ? "middle" : "start"}
      font-size={size}
      font-weight="600"
      stroke={paper}
      stroke-width="4"
      paint-order="stroke"
    >
      {text}
    </text>
  );
}
