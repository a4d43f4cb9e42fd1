import type { DifferenceAnswer } from "../../../src/answer/comparison/comparison.ts";
import type { Formatters } from "../../../src/report/tables/formatters.ts";
import { caseStyle, fontFamily, words, type Palette } from "./palette.ts";
import { clamp } from "./box.ts";
import { axisOver } from "../../../src/drawing/axis.ts";

export const defaults = {
  name: "Guess and truth on one axis",
  /** Of the type, as the drawing is wide: read from the last row on a projector. */
  sizePx: { share: 0.041, least: 16, most: 26 },
  /** Kept free at either end, px: as far as a letter's halo goes. */
  edgePx: 4,
} as const;

interface GuessAxisProps {
  /** Null: nothing was guessed. */
  readonly guessMm: number | null;
  readonly difference: DifferenceAnswer;
  /** Place of the case among all. */
  readonly c: number;
  readonly runs: number;
  readonly width: number;
  /** Nothing is written smaller: on a projector. */
  readonly leastTextPx: number;
  readonly colours: Palette;
  readonly shown: Formatters;
  readonly say: (mm: number) => string;
}

/** Extra water on one axis: the class's guess above it, the seasons and the rule of thumb below. */
export function GuessAxis(props: GuessAxisProps) {
  const { guessMm, difference, c, runs, width, leastTextPx, colours, shown, say } = props;
  const { p10, p50, p90 } = difference.extraWaterUsedMm;
  const rule = difference.ruleOfThumbMm;
  const perUnit = shown.system === "us" ? 25.4 : 1;
  const inside = [0, p10, p50, p90, rule, ...(guessMm === null ? [] : [guessMm])].map((mm) => mm / perUnit);
  const size = Math.max(
    leastTextPx,
    clamp(width * defaults.sizePx.share, defaults.sizePx.least, defaults.sizePx.most),
  );
  const axis = axisOver(Math.min(...inside), Math.max(...inside), 12, width - 12, width > 22 * size ? 5 : 3);
  const x = (mm: number) => axis.at(mm / perUnit);
  const { color } = caseStyle(c, colours);
  const [guessY, truthY, ruleY, axisY] = [1.4 * size, 3.1 * size, 6.1 * size, 6.8 * size];
  const said = [
    ...(guessMm === null ? [] : [`guess ${say(guessMm)}`]),
    `${runs === 1 ? "the one season run" : "a typical year"} ${say(p50)}`,
    ...(runs === 1 ? [] : [`8 years of 10 ${say(p10)} to ${say(p90)}`]),
    `${words.ruleOfThumb.toLowerCase()} ${say(rule)} ${shown.length}`,
  ].join(", ");
  return (
    <svg
      class="guess-axis"
      viewBox={`0 0 ${width} ${axisY + 2 * size}`}
      role="img"
      aria-label={`${defaults.name}: ${said}`}
      data-p50={p50}
    >
      <g font-family={fontFamily} font-size={size} fill={colours.ink} text-anchor="middle">
        {axis.ticks.map((tick) => (
          <g key={tick} fill={colours.pencil}>
            <path d={`M${axis.at(tick)} ${1.9 * size}V${axisY}`} stroke={colours.rule} />
            <text
              {...placed(axis.at(tick), tick.toFixed(axis.digits), size, width)}
              y={axisY + 1.2 * size}
              font-size={size - 1}
            >
              {tick.toFixed(axis.digits)}
            </text>
          </g>
        ))}
        <path d={`M${x(0)} ${1.9 * size}V${axisY}`} stroke={colours.pencil} stroke-width="1.5" />
        <path d={`M12 ${axisY}H${width - 12}`} stroke={colours.pencil} stroke-width="1.5" />
        {runs > 1 && (
          <rect
            x={Math.min(x(p10), x(p90))}
            y={truthY - 11}
            width={Math.max(2, Math.abs(x(p90) - x(p10)))}
            height="22"
            rx="3"
            fill={color}
            fill-opacity="0.32"
            stroke={color}
          />
        )}
        <path d={`M${x(p50)} ${truthY - 16}v32`} stroke={color} stroke-width="6" stroke-linecap="round" />
        <Label
          at={x(p50)}
          y={truthY + 1.75 * size}
          text={`truth ${say(p50)}`}
          color={color}
          {...{ width, size }}
        />
        <path
          d={`M${x(rule)} ${truthY - 12}V${axisY}`}
          stroke={colours.pencil}
          stroke-width="2"
          stroke-dasharray="4 4"
        />
        <Label
          at={x(rule)}
          y={ruleY}
          text={`${width > 13 * size ? "rule of thumb" : "rule"} ${say(rule)}`}
          color={colours.pencil}
          {...{ width, size }}
        />
        {guessMm !== null && (
          <>
            <path
              d={`M${x(guessMm)} ${guessY + 14}l-8 -13h16z`}
              fill={colours.ink}
              stroke={colours.paper}
              stroke-width="1"
            />
            <path d={`M${x(guessMm)} ${guessY + 12}V${axisY}`} stroke={colours.ink} stroke-width="1.5" />
            <Label
              at={x(guessMm)}
              y={guessY - 6}
              text={`guess ${say(guessMm)}`}
              color={colours.ink}
              {...{ width, size }}
            />
          </>
        )}
      </g>
    </svg>
  );
}

interface LabelProps {
  readonly at: number;
  readonly y: number;
  readonly text: string;
  readonly color: string;
  readonly width: number;
  readonly size: number;
}

/** A letter of the boldest and widest face that may stand in for ours, against the size of its type. */
const widestLetter = 0.72;

/** Centred on its mark, or, where it might not have the room, with its end at the drawing's. */
function placed(at: number, text: string, size: number, width: number) {
  const { edgePx } = defaults;
  const half = (text.length * size * widestLetter) / 2;
  if (at + half > width - edgePx) return { x: width - edgePx, "text-anchor": "end" } as const;
  if (at - half < edgePx) return { x: edgePx, "text-anchor": "start" } as const;
  return { x: at, "text-anchor": "middle" } as const;
}

/** Under or over its mark, but within the drawing. */
function Label({ at, y, text, color, width, size }: LabelProps) {
  return (
    <text
      {...placed(at, text, size, width)}
      y={y}
      font-weight="700"
      fill={color}
      stroke="var(--sheet)"
      stroke-width="5"
      paint-order="stroke"
    >
      {text}
    </text>
  );
}
