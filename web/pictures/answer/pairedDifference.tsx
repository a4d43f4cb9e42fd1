import type { DifferenceAnswer } from "../../../src/answer/comparison/comparison.ts";
import { fixed, type Formatters } from "../../../src/report/tables/formatters.ts";
import { widthOf } from "../../../src/drawing/text.ts";
import { caseStyle, fontFamily, palette, words } from "../kit/palette.ts";
import { pairedTable, pilesOf } from "./pairedDifferencePiles.ts";
import { SvgPicture } from "../kit/svgPicture.tsx";
import { axisOver, type Axis } from "../../../src/drawing/axis.ts";
import { Interval } from "../kit/marks.tsx";

export const defaults = {
  name: "Every season's difference in water taken up",
  fileName: "paired-difference",
  sizePx: 14,
  dotPx: 8,
  /** Dots stand closer when a pile would be taller than this. */
  pileRoomPx: 150,
} as const;

interface PairedDifferenceProps {
  readonly difference: DifferenceAnswer;
  /** Extra water taken up, by run. */
  readonly extraMm: Float64Array;
  readonly matteredFromMm: number;
  /** Place of the case among all. */
  readonly c: number;
  readonly width: number;
  readonly shown: Formatters;
  /** A figure, with the digits of the sentence. */
  readonly say: (mm: number) => string;
}

/** A dot for every season, piled up by what the other roots took up more in that same season. */
export function PairedDifference(props: PairedDifferenceProps) {
  const { difference, extraMm, matteredFromMm, c, width, shown, say } = props;
  const colours = palette();
  const { sizePx, dotPx, pileRoomPx } = defaults;
  const perUnit = shown.length === "in" ? 25.4 : 1;
  const { p10, p50, p90 } = difference.extraWaterUsedMm;
  const edge = 16;
  const least = Math.min(0, ...extraMm);
  const most = Math.max(matteredFromMm * 2, ...extraMm);
  const axis = axisOver(least / perUnit, most / perUnit, edge, width - edge, width < 420 ? 4 : 7);
  const at = (mm: number) => axis.at(mm / perUnit);
  const count = Math.max(8, Math.floor((width - 2 * edge) / dotPx));
  const piles = pilesOf(extraMm, axis.from * perUnit, axis.to * perUnit, count);
  const tallest = Math.max(1, ...piles.map(({ values }) => values.length));
  const step = Math.min(dotPx, pileRoomPx / tallest);
  const ground = 30 + Math.max(60, tallest * step);
  const height = ground + 92;
  const dots = (mattered: boolean) =>
    piles
      .flatMap(({ from, to, values }) =>
        // What did not matter lies at the bottom of a pile that has both.
        values
          .toSorted((a, b) => Math.abs(a) - Math.abs(b))
          .map((mm, i) => {
            if (Math.abs(mm) >= matteredFromMm !== mattered) return "";
            return `M${at((from + to) / 2).toFixed(1)} ${(ground - (i + 0.6) * step).toFixed(1)}h0`;
          }),
      )
      .join("");
  const { color } = caseStyle(c, colours);
  const round = { fill: "none", "stroke-linecap": "round" } as const;
  return (
    <SvgPicture
      name={`${defaults.name}, ${difference.to} against ${difference.from}: ${say(p50)} ${shown.length} in a typical year, ${say(p10)} to ${say(p90)} in 8 years of 10`}
      width={width}
      height={height}
      table={pairedTable(extraMm, matteredFromMm, shown)}
      fileName={defaults.fileName}
    >
      <rect width={width} height={height} fill={colours.paper} />
      <g font-family={fontFamily} font-size={sizePx} fill={colours.ink}>
        <Threshold at={at} mm={matteredFromMm} bottom={ground} shown={shown} width={width} />
        <path {...round} d={dots(false)} stroke={colours.pencil} stroke-width={dotPx - 1.2} />
        <path {...round} d={dots(false)} stroke={colours.paper} stroke-width={dotPx - 4} />
        <path {...round} d={dots(true)} stroke={color} stroke-width={dotPx - 1.2} />
        <line x1={edge} x2={width - edge} y1={ground + 2} y2={ground + 2} stroke={colours.pencil} />
        <Interval
          low={p10}
          high={p90}
          scale={at}
          at={ground + 14}
          capPx={5}
          color={colours.ink}
          widthPx={2.5}
        />
        <path d={`M${at(p50)} ${ground + 6}l6 8l-6 8l-6 -8z`} fill={colours.ink} />
        <Ticks axis={axis} y={ground + 42} pencil={colours.pencil} />
        <text x={width - edge} y={height - 16} text-anchor="end" fill={colours.pencil}>
          {words.extraWater}, {shown.length}
        </text>
      </g>
    </SvgPicture>
  );
}

interface ThresholdProps {
  readonly at: (mm: number) => number;
  readonly mm: number;
  readonly bottom: number;
  readonly shown: Formatters;
  readonly width: number;
}

function Threshold({ at, mm, bottom, shown, width }: ThresholdProps) {
  const { pencil } = palette();
  const x = at(mm);
  const said = `matters from ${shown.water(mm)} ${shown.length}`;
  const sidePx = 6 + widthOf(said, defaults.sizePx);
  // Beside its line where there is room, else as near to it as the edge lets it.
  const right = x < width * 0.6 || x < sidePx;
  const start = right ? Math.min(x + 6, Math.max(0, width - sidePx)) : x - 6;
  return (
    <>
      <line x1={x} x2={x} y1="4" y2={bottom} stroke={pencil} stroke-dasharray="3 4" />
      <text x={start} y="15" text-anchor={right ? "start" : "end"} fill={pencil}>
        {said}
      </text>
    </>
  );
}

function Ticks({ axis, y, pencil }: { axis: Axis; y: number; pencil: string }) {
  return (
    <>
      {axis.ticks.map((tick) => (
        <text key={tick} x={axis.at(tick)} y={y} text-anchor="middle" fill={pencil}>
          {fixed(tick, axis.digits)}
        </text>
      ))}
    </>
  );
}
