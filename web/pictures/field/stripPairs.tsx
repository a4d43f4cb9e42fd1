import { fineYield, fixed } from "../../../src/report/tables/formatters.ts";
import type { PictureTable } from "../kit/frame.tsx";
import { caseStyle, fontFamily, palette } from "../kit/palette.ts";
import { apart } from "../../../src/drawing/labels.ts";
import { stripSpan, type StripPairsShown } from "./stripPairsLayout.ts";
import { SvgPicture } from "../kit/svgPicture.tsx";
import { wrapped } from "../../../src/drawing/text.ts";
import { axisOver, multiplesWithin, type Axis } from "../../../src/drawing/axis.ts";
import { Interval, Point } from "../kit/marks.tsx";

export const defaults = {
  name: "Strips, pair by pair",
  fileName: "strip-pairs",
  sizePx: 14,
  lineHeightPx: 18,
  heightPx: 330,
  topPx: 14,
} as const;

interface StripPairsProps {
  readonly shown: StripPairsShown;
  /** Places of the two cases in the scenario: their colours and marks. */
  readonly caseIndexes: readonly [number, number];
  readonly unit: string;
  readonly width: number;
  readonly faint?: boolean;
}

export function stripTable({ names, pairs, means, difference }: StripPairsShown, unit: string): PictureTable {
  const say = (value: number | null) => (value === null ? "missing" : fineYield(value, unit));
  return {
    head: ["Pair", `${names[0]}, ${unit}`, names[1], "Difference"],
    rows: [
      ...pairs.map(([a, b], p) => [
        String(p + 1),
        say(a),
        say(b),
        a === null || b === null ? "left out" : say(b - a),
      ]),
      ...(means === null || difference === null
        ? []
        : [["Mean", say(means[0]), say(means[1]), say(difference.value)]]),
    ],
  };
}

/**
 * A line for each pair, from the first case's yield to the second's; a lone strip without its neighbour stands by itself. To the
 * right the mean difference with its interval, nothing level with the first case's mean.
 */
export function StripPairs({ shown, caseIndexes, unit, width, faint = false }: StripPairsProps) {
  const colours = palette();
  const { sizePx, lineHeightPx, heightPx, topPx } = defaults;
  const { names, pairs, means, difference } = shown;
  const [low, high] = stripSpan(shown);
  const bottom = topPx + heightPx;
  const axis = axisOver(low, high, bottom, topPx, 6);
  const right = 54;
  const left = 52;
  const span = width - left - right;
  const [x1, x2, xd] = [left + 0.14 * span, left + 0.56 * span, left + 0.92 * span];
  const [first, second] = caseIndexes.map((c) => caseStyle(c, colours));
  const heads = [wrapped(names[0], 0.4 * span, sizePx), wrapped(names[1], 0.38 * span, sizePx)];
  const headLines = Math.max(...heads.map((lines) => lines.length), 2);
  const height = bottom + (headLines + 2.4) * lineHeightPx;
  const numbered = pairs.flatMap(([a], p) => (a === null ? [] : [{ p, y: axis.at(a) }]));
  const numbersAt = apart(
    numbered.map(({ y }) => y),
    14,
    4,
    bottom + lineHeightPx,
  );
  const zero = means === null ? null : axis.at(means[0]);
  const onMean = (by: number) => axis.at((means?.[0] ?? 0) + by);
  return (
    <SvgPicture
      name={nameOf(shown)}
      caption="A line is a pair of neighboring strips, numbered; a strip without its neighbor stands alone and is left out. To the right the mean difference with its interval, on the same scale: on the dotted line there is none."
      width={width}
      height={height}
      table={stripTable(shown, unit)}
      fileName={defaults.fileName}
      faint={faint}
    >
      <rect width={width} height={height} fill={colours.paper} />
      <g font-family={fontFamily} font-size={sizePx} fill={colours.ink}>
        {axis.ticks.map((tick) => (
          <g key={tick}>
            <line x1={left} x2={x2 + 18} y1={axis.at(tick)} y2={axis.at(tick)} stroke={colours.rule} />
            <text x={left - 6} y={axis.at(tick) + 5} text-anchor="end" fill={colours.pencil}>
              {fixed(tick, axis.digits)}
            </text>
          </g>
        ))}
        {pairs.map(([a, b], p) => (
          <g key={p}>
            {a !== null && b !== null && (
              <line
                class="strip-pair"
                x1={x1}
                x2={x2}
                y1={axis.at(a)}
                y2={axis.at(b)}
                stroke={colours.pencil}
                stroke-width="2"
                stroke-dasharray={b < a ? "6 4" : undefined}
              />
            )}
            {a !== null && <Strip x={x1} y={axis.at(a)} style={first!} whole={b !== null} />}
            {b !== null && <Strip x={x2} y={axis.at(b)} style={second!} whole={a !== null} />}
          </g>
        ))}
        {numbered.map(({ p }, i) => (
          <text
            key={p}
            x={x1 - 14}
            y={numbersAt[i]! + 4}
            text-anchor="end"
            font-size="12"
            fill={colours.pencil}
          >
            {p + 1}
          </text>
        ))}
        {heads.map((lines, side) =>
          lines.map((line, i) => (
            <text
              key={`${side} ${i}`}
              x={side === 0 ? x1 : x2}
              y={bottom + (i + 1.6) * lineHeightPx}
              text-anchor="middle"
              font-weight="600"
            >
              {line}
            </text>
          )),
        )}
        <text x={4} y={height - 6} fill={colours.pencil}>
          {unit}; dashed: the second yields less
        </text>
        {zero !== null && difference !== null && means !== null && (
          <g>
            <line
              x1={x1 + 12}
              x2={width - right + 4}
              y1={zero}
              y2={zero}
              stroke={colours.pencil}
              stroke-dasharray="1 5"
              stroke-width="2"
              stroke-linecap="round"
            />
            <DifferenceTicks axis={axis} base={means[0]} x={width - right + 10} />
            {difference.interval !== null && (
              <Interval {...difference.interval} scale={onMean} at={xd} upright color={colours.ink} />
            )}
            <Point
              mark="circle"
              x={xd}
              y={onMean(difference.value)}
              color={colours.ink}
              paper={colours.paper}
            />
            {["mean", "difference"].map((line, i) => (
              <text
                key={line}
                x={xd}
                y={bottom + (i + 1.6) * lineHeightPx}
                text-anchor="middle"
                font-weight="600"
              >
                {line}
              </text>
            ))}
          </g>
        )}
      </g>
    </SvgPicture>
  );
}

/** The same scale counted from the first case's mean. */
function DifferenceTicks({ axis, base, x }: { axis: Axis; base: number; x: number }) {
  const { pencil } = palette();
  return (
    <>
      {multiplesWithin(axis.from - base, axis.to - base, axis.step).map((by) => (
        <g key={by}>
          <line x1={x - 5} x2={x} y1={axis.at(base + by)} y2={axis.at(base + by)} stroke={pencil} />
          <text x={x + 3} y={axis.at(base + by) + 5} fill={pencil}>
            {by > 0 ? "+" : ""}
            {fixed(by, axis.digits).replace("-", "\u2212")}
          </text>
        </g>
      ))}
    </>
  );
}

interface StripProps {
  readonly x: number;
  readonly y: number;
  readonly style: ReturnType<typeof caseStyle>;
  /** Its neighbour has a yield too. */
  readonly whole: boolean;
}

function Strip({ x, y, style: { color, mark }, whole }: StripProps) {
  return (
    <Point
      {...{ x, y, mark, color }}
      class={whole ? "strip" : "strip is-alone"}
      paper={palette().paper}
      hollow={!whole}
    />
  );
}

function nameOf({ names, pairs, difference }: StripPairsShown): string {
  const whole = pairs.filter(([a, b]) => a !== null && b !== null).length;
  const said = difference === null ? "nothing to compare" : `“${names[1]}” yields ${difference.said}`;
  return `${defaults.name}: ${whole} whole of ${pairs.length}; ${said} than “${names[0]}”`;
}
