import type { Traces } from "../../worker/protocol.ts";
import { strokeDashes } from "../kit/caseLooks.ts";
import { caseStyle, palette, type Palette } from "../kit/palette.ts";

/** What all seasons are drawn by, so that they can be compared. */
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
          "stroke-dasharray": strokeDashes[dash],
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
      stroke-dasharray={strokeDashes[dash]}
    />
  );
}
