import type { DigFitAnswer, FittedCase } from "../../../src/answer/dig/digAnswer.ts";
import { fixed } from "../../../src/report/tables/formatters.ts";
import { fittedAxis, fittedSaid, fittedTable, type What } from "../kit/fittedAxis.ts";
import { caseStyle, fontFamily, palette, type Palette } from "../kit/palette.ts";
import { apart } from "../../../src/drawing/labels.ts";
import { SvgPicture } from "../kit/svgPicture.tsx";
import { widthOf } from "../../../src/drawing/text.ts";
import { Interval, Point } from "../kit/marks.tsx";
import type { Axis } from "../../../src/drawing/axis.ts";

export const defaults = {
  fileName: "fitted-to-the-dig",
  sizePx: 14,
  rowPx: 74,
} as const;

interface FittedValuesProps {
  readonly fit: DigFitAnswer;
  readonly confidence: number;
  readonly caseNames: readonly string[];
  readonly width: number;
}

/** What is fitted to each case with its interval, and what would be taken without the dig, on one axis. */
export function FittedValues({ fit, confidence, caseNames, width }: FittedValuesProps) {
  const colours = palette();
  const { sizePx, rowPx } = defaults;
  const axis = fittedAxis(fit, 16, width - 22);
  const bottom = fit.cases.length * rowPx + 10;
  const height = bottom + 2.9 * sizePx;
  const say = fittedSaid(fit.what);
  const said = fit.cases.map(({ case: name, value }) => `${name} ${say(value)}`).join(", ");
  const title =
    fit.what === "passage" ? `passage of ${fit.layer}` : "penetrometer reading at which roots stop, MPa";
  return (
    <SvgPicture
      name={`Fitted ${title}: ${said}`}
      width={width}
      height={height}
      table={fittedTable(fit, confidence)}
      fileName={defaults.fileName}
    >
      <rect width={width} height={height} fill={colours.paper} />
      <g font-family={fontFamily} font-size={sizePx} fill={colours.ink}>
        {axis.ticks.map((tick) => (
          <g key={tick}>
            <path d={`M${axis.at(tick)} 4V${bottom}`} stroke={colours.rule} />
            <text
              x={axis.at(tick)}
              y={bottom + sizePx + 4}
              text-anchor="middle"
              font-size={sizePx - 1}
              fill={colours.pencil}
            >
              {fit.what === "passage" ? fixed(tick * 100, 0) : tick.toFixed(axis.digits)}
            </text>
          </g>
        ))}
        <path
          d={`M${axis.at(axis.from)} ${bottom}H${axis.at(axis.to)}`}
          stroke={colours.pencil}
          stroke-width="1.5"
        />
        <g font-size={sizePx - 1} fill={colours.pencil}>
          <text x={axis.at(axis.from)} y={bottom + 2.4 * sizePx} text-anchor="start">
            {fit.what === "passage" ? "% of its pace: shut" : "MPa"}
          </text>
          {fit.what === "passage" && (
            <text x={axis.at(axis.to)} y={bottom + 2.4 * sizePx} text-anchor="end">
              open
            </text>
          )}
        </g>
        {fit.cases.map((one, r) => (
          <Row
            key={one.case}
            {...{ one, axis, colours, width, say }}
            what={fit.what}
            top={r * rowPx}
            c={Math.max(0, caseNames.indexOf(one.case))}
          />
        ))}
      </g>
    </SvgPicture>
  );
}

interface RowProps {
  readonly one: FittedCase;
  readonly axis: Axis;
  readonly what: What;
  readonly top: number;
  readonly c: number;
  readonly colours: Palette;
  readonly width: number;
  readonly say: (value: number) => string;
}

function Row({ one, axis, what, top, c, colours, width, say }: RowProps) {
  const { color, mark } = caseStyle(c, colours);
  const { sizePx } = defaults;
  const y = top + 38;
  const x = (value: number) => axis.at(Math.min(axis.to, Math.max(axis.from, value)));
  const meets = one.verdict === "meets";
  const under =
    what === "passage" ? `density or reading says ${say(one.otherwise)}` : `usual ${say(one.otherwise)}`;
  const [underX = 0] = apart([x(one.otherwise)], [widthOf(under, sizePx - 1)], 0, width);
  const valueText = `${say(one.value)} (${say(one.low)} to ${say(one.high)})`;
  const nameRoom = widthOf(`${one.case}  `, sizePx);
  const fits = nameRoom + widthOf(valueText, sizePx) < width - 24;
  return (
    <g data-case={one.case}>
      <text x={axis.at(axis.from)} y={top + 18} fill={color} font-weight="700">
        {one.case}
        <tspan fill={colours.ink} font-weight="600">
          {"  "}
          {meets ? (fits ? valueText : say(one.value)) : one.verdict}
        </tspan>
      </text>
      <path d={`M${x(one.low)} ${y}H${x(one.high)}`} stroke={color} stroke-width="9" stroke-opacity="0.3" />
      <Interval low={one.low} high={one.high} scale={x} at={y} color={color} widthPx={2.2} />
      <Point
        {...{ mark, y, color }}
        x={x(one.value)}
        paper={colours.paper}
        radiusPx={7.2}
        edgePx={1.6}
        hollow={!meets}
      />
      <path
        d={`M${x(one.otherwise)} ${y - 11}v22`}
        stroke={colours.ink}
        stroke-width="2.4"
        stroke-dasharray="4 3"
      />
      <text x={underX} y={y + 25} text-anchor="middle" font-size={sizePx - 1} fill={colours.pencil}>
        {under}
      </text>
    </g>
  );
}
