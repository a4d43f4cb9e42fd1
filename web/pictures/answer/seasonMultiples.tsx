import type { Traces } from "../../worker/protocol.ts";
import { caseStyle, fontFamily, palette, type CaseStyle, type Palette } from "../kit/palette.ts";

export const defaults = {
  name: "The seasons side by side",
  fileName: "seasons",
  widthPx: 168,
  /** Above the ground: water used. */
  abovePx: 52,
  /** Below it: the root front. */
  belowPx: 78,
  /** Of a saved sheet: room for the words under each season, and how many stand in a row. */
  wordsPx: 60,
  sheetColumns: 8,
} as const;

export const dashArrays: Readonly<Record<CaseStyle["dash"], string | undefined>> = {
  solid: undefined,
  dash: "6 3",
  dot: "1.5 3",
  dashdot: "6 3 1.5 3",
  longdash: "10 4",
};

/** What all seasons of one sheet are drawn by, so that they can be compared. */
export interface SeasonScale {
  readonly days: number;
  readonly waterMm: number;
  readonly depthMm: number;
}

/** Wide enough for every run of the cases shown. */
export function seasonScale({ cases, stepDays }: Traces, places: readonly number[]): SeasonScale {
  const shown = places.map((c) => cases[c]!);
  const most = (values: ArrayLike<number>): number => {
    let found = 0;
    for (let i = 0; i < values.length; i++) found = Math.max(found, values[i]!);
    return found;
  };
  return {
    days: Math.max(1, ...shown.map(({ count }) => (most(count) - 1) * stepDays)),
    waterMm: Math.max(1, ...shown.map(({ waterUsedMm }) => most(waterUsedMm))),
    depthMm: Math.max(1, ...shown.map(({ frontMm }) => most(frontMm))),
  };
}

interface SeasonLinesProps {
  readonly traces: Traces;
  readonly run: number;
  /** Cases to draw: the first, and the one against it. */
  readonly places: readonly number[];
  readonly scale: SeasonScale;
  readonly width: number;
  readonly above: number;
  readonly below: number;
  readonly colours: Palette;
}

/** One season from sowing to maturity: above the ground what the crop and the soil used, below it how deep the roots were. */
export function SeasonLines({ traces, run, places, scale, width, above, below, colours }: SeasonLinesProps) {
  const { stepDays, points } = traces;
  const x = (point: number) => ((point * stepDays) / scale.days) * (width - 4) + 2;
  const up = (mm: number) => above - (mm / scale.waterMm) * (above - 4);
  const down = (mm: number) => above + (mm / scale.depthMm) * (below - 4);
  const path = (values: Float32Array, count: number, y: (mm: number) => number) => {
    let d = "";
    for (let p = 0; p < count; p++) {
      d += `${p === 0 ? "M" : "L"}${x(p).toFixed(1)} ${y(values[run * points + p]!).toFixed(1)}`;
    }
    return d;
  };
  return (
    <>
      <rect width={width} height={above} fill={colours.paper} />
      <rect y={above} width={width} height={below} fill={colours.rule} fill-opacity="0.55" />
      {places.map((c) => {
        const { color, dash } = caseStyle(c, colours);
        const { frontMm, waterUsedMm, count } = traces.cases[c]!;
        const line = {
          fill: "none",
          stroke: color,
          "stroke-width": "2.2",
          "stroke-linejoin": "round",
          "stroke-dasharray": dashArrays[dash],
        } as const;
        return (
          <g key={c}>
            <path {...line} d={path(waterUsedMm, count[run]!, up)} />
            <path {...line} d={path(frontMm, count[run]!, down)} />
          </g>
        );
      })}
      <line x1="0" x2={width} y1={above} y2={above} stroke={colours.pencil} stroke-width="1.5" />
    </>
  );
}

/** A season as told under its drawing. */
export interface SeasonTold {
  readonly run: number;
  readonly title: string;
  readonly lines: readonly string[];
}

interface SeasonSheetProps extends Pick<SeasonLinesProps, "traces" | "places" | "scale" | "colours"> {
  readonly seasons: readonly SeasonTold[];
  /** Which of how many these are, and by what order. */
  readonly which: string;
  /** Names of the cases drawn, in order. */
  readonly names: readonly string[];
}

/** All seasons on one sheet, with their words: for saving as a picture. */
export function SeasonSheet({ seasons, which, names, traces, places, scale, colours }: SeasonSheetProps) {
  const { widthPx, abovePx, belowPx, wordsPx, sheetColumns } = defaults;
  const columns = Math.min(sheetColumns, Math.max(4, seasons.length));
  const gap = 14;
  const [stepX, stepY] = [widthPx + gap, abovePx + belowPx + wordsPx + gap];
  const head = 26 + 22 * names.length;
  const width = columns * stepX + gap;
  const height = head + Math.ceil(seasons.length / columns) * stepY + gap;
  return (
    <svg viewBox={`0 0 ${width} ${height}`} width={width} height={height}>
      <rect width={width} height={height} fill={colours.paper} />
      <g font-family={fontFamily} font-size="13" fill={colours.ink}>
        <text x={gap} y="20">
          Above the ground: water used by crop and soil since sowing. Below: the root front. {which}.
        </text>
        {names.map((name, i) => (
          <g key={i} transform={`translate(${gap} ${38 + 22 * i})`}>
            <CaseLine c={places[i]!} colours={colours} />
            <text x="38" y="5">
              {name}
            </text>
          </g>
        ))}
        {seasons.map(({ run, title, lines }, i) => (
          <g
            key={run}
            transform={`translate(${gap + (i % columns) * stepX} ${head + Math.floor(i / columns) * stepY})`}
          >
            <SeasonLines
              {...{ traces, run, places, scale, colours }}
              width={widthPx}
              above={abovePx}
              below={belowPx}
            />
            <text y={abovePx + belowPx + 14} font-weight="600">
              {title}
            </text>
            {lines.map((line, l) => (
              <text key={l} y={abovePx + belowPx + 29 + 14 * l} font-size="12" fill={colours.pencil}>
                {line}
              </text>
            ))}
          </g>
        ))}
      </g>
    </svg>
  );
}

/** How the line of a case looks, about its own origin. */
export function CaseLine({ c, colours = palette() }: { c: number; colours?: Palette }) {
  const { color, dash } = caseStyle(c, colours);
  return (
    <line
      x1="0"
      x2="30"
      y1="0"
      y2="0"
      stroke={color}
      stroke-width="2.5"
      stroke-dasharray={dashArrays[dash]}
    />
  );
}
