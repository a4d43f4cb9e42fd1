import type { AnswerAtRain, Comparison } from "../../../src/answer/comparison/comparison.ts";
import { percent, type Formatters } from "../../../src/report/tables/formatters.ts";
import type { PictureTable } from "../kit/frame.tsx";
import { caseStyle, fontFamily, palette, type Palette } from "../kit/palette.ts";
import { marksFor, marksThatMattered, rowsDrawn } from "./shareMatteredMarks.ts";
import { SvgPicture } from "../kit/svgPicture.tsx";

export const defaults = {
  name: "Seasons in which the depth mattered",
  fileName: "seasons-it-mattered",
  sizePx: 14,
  rowPx: 66,
} as const;

export function shareMatteredTable(comparison: Comparison, d: number, shown: Formatters): PictureTable {
  return {
    head: [rainHead(comparison, shown), "Share of the seasons", "Seasons", "of"],
    rows: sorted(comparison.byRainTotal).map((at) => {
      const share = at.differences[d]!.shareOfSeasonsItMattered;
      const { runs } = comparison.method;
      return [rainSaid(at, shown), percent(share), String(Math.round(share * runs)), String(runs)];
    }),
  };
}

interface ShareMatteredProps {
  readonly comparison: Comparison;
  readonly d: number;
  readonly width: number;
  readonly shown: Formatters;
}

/** A row of plants for each total: deep roots where the depth mattered, short ones where it did not. */
export function ShareMattered({ comparison, d, width, shown }: ShareMatteredProps) {
  const colours = palette();
  const { rowPx, sizePx } = defaults;
  const rows = rowsDrawn(sorted(comparison.byRainTotal));
  const marks = marksFor(comparison.method.runs);
  const height = rows.length * rowPx + 4;
  const { color } = caseStyle(d + 1, colours);
  const share = comparison.differences[d]!.shareOfSeasonsItMattered;
  return (
    <SvgPicture
      name={`${defaults.name}: ${percent(share)}`}
      width={width}
      height={height}
      table={shareMatteredTable(comparison, d, shown)}
      fileName={defaults.fileName}
    >
      <rect width={width} height={height} fill={colours.paper} />
      <g font-family={fontFamily} font-size={sizePx} fill={colours.ink}>
        {rows.map((at, r) => {
          const shareThere = at.differences[d]!.shareOfSeasonsItMattered;
          return (
            <g key={r} transform={`translate(0 ${r * rowPx})`}>
              <text x="2" y="15">
                {rainLabel(at, shown)}
              </text>
              <text x={width - 2} y="15" text-anchor="end" font-weight="600">
                {percent(shareThere)}
              </text>
              <Plants
                marks={marks}
                mattered={marksThatMattered(shareThere, marks)}
                width={width}
                color={color}
                colours={colours}
              />
            </g>
          );
        })}
      </g>
    </SvgPicture>
  );
}

interface PlantsProps {
  readonly marks: number;
  readonly mattered: number;
  readonly width: number;
  readonly color: string;
  readonly colours: Palette;
}

function Plants({ marks, mattered, width, color, colours }: PlantsProps) {
  const ground = 35;
  const gap = width / marks;
  const place = (i: number) => (gap * (i + 0.5)).toFixed(1);
  const shoot = "v-7m0 3c-1 -3 -3 -4 -5 -4m5 4c1 -3 3 -4 5 -4";
  const all = Array.from({ length: marks }, (_, i) => i);
  const deep = all.slice(0, mattered).map((i) => `M${place(i)} ${ground}${shoot}M${place(i)} ${ground}`);
  const short = all.slice(mattered).map((i) => `M${place(i)} ${ground}${shoot}M${place(i)} ${ground}`);
  const line = { fill: "none", "stroke-linecap": "round" } as const;
  return (
    <>
      <line x1="0" x2={width} y1={ground} y2={ground} stroke={colours.pencil} />
      <path
        {...line}
        d={deep.map((plant) => `${plant}v24m0 -15l-4 6m4 1l4 6`).join("")}
        stroke={color}
        stroke-width="2.6"
      />
      <path
        {...line}
        d={short.map((plant) => `${plant}v7`).join("")}
        stroke={colours.pencil}
        stroke-width="1.4"
      />
    </>
  );
}

function sorted(all: readonly AnswerAtRain[]): AnswerAtRain[] {
  return all.toSorted((a, b) => (a.rainTotalMm ?? 0) - (b.rainTotalMm ?? 0));
}

function rainHead({ method }: Comparison, shown: Formatters): string {
  return `Rain in the ${method.rainTotalOver}, ${shown.length}`;
}

function rainSaid({ rainTotalMm }: AnswerAtRain, shown: Formatters): string {
  return rainTotalMm === null ? "as it came" : shown.total(rainTotalMm);
}

function rainLabel(at: AnswerAtRain, shown: Formatters): string {
  return at.rainTotalMm === null ? "Rain as it came" : `${rainSaid(at, shown)} ${shown.length} of rain`;
}
