import type { DugDifference } from "../../../src/answer/dig/digAnswer.ts";
import { percent, type Formatters } from "../../../src/report/tables/formatters.ts";
import type { Looks } from "./dugRootsFace.tsx";
import type { DugLayout } from "./dugRootsLayout.ts";
import { caseStyle } from "../kit/palette.ts";
import { apart } from "../../../src/drawing/labels.ts";
import { depthY, type Box } from "../kit/box.ts";
import { wrapped } from "../../../src/drawing/text.ts";
import { Interval, Point } from "../kit/marks.tsx";

const sizePx = 13;

interface DifferenceProps extends Looks {
  readonly difference: DugDifference;
  readonly layout: DugLayout;
  readonly box: Box;
  /** Nothing on this scale: the mean that the difference counts from. */
  readonly fromMm: number;
  readonly confidence: number;
  readonly c: number;
  readonly shown: Formatters;
}

/** How much deeper, on the same depths: nothing stands at the mean of the first. */
export function Difference(props: DifferenceProps) {
  const { difference, layout, box, fromMm, confidence, c, window, colours, shown } = props;
  const { value, interval } = difference.depthMm;
  if (value === null) return null;
  const { color, mark } = caseStyle(c, colours);
  const at = (mm: number) => depthY(box, window, Math.max(0, fromMm + mm));
  const x = box.x + box.width * (layout.wide ? 0.3 : 0.2);
  const zero = at(0);
  const size = layout.wide ? sizePx : 11.5;
  const names = wrapped(difference.to, box.width - 12, size).slice(0, 2);
  const than = value < 0 ? "shallower than" : "deeper than";
  const head = [
    ...names,
    ...wrapped(`${than} ${difference.from}`, box.width, size - 1).slice(0, layout.wide ? 2 : 3),
  ];
  const ends = interval === null ? [] : [interval.low, interval.high];
  const labels = [value, ...ends];
  const centres = apart(
    labels.map(at),
    labels.map((_, i) => (i === 0 ? 17 : 14)),
    box.y,
    box.y + box.height - 18,
  );
  const signed = (mm: number) => `${mm > 0 ? "+" : mm < 0 ? "\u2212" : ""}${shown.depth(Math.abs(mm))}`;
  return (
    <g data-difference-mm={value}>
      <title>
        {difference.to} against {difference.from}
      </title>
      <g font-size={size}>
        {head.map((text, l) => (
          <text
            key={l}
            x={box.x}
            y={box.y - 10 - (head.length - 1 - l) * (size + 2)}
            fill={l < names.length ? color : colours.pencil}
            font-weight={l < names.length ? 700 : 400}
          >
            {text}
          </text>
        ))}
      </g>
      <path
        d={`M${layout.face.x + layout.face.width} ${zero}H${box.x + box.width}`}
        stroke={colours.pencil}
        stroke-width="1.2"
        stroke-dasharray="2 4"
      />
      <path d={`M${box.x} ${box.y}v${box.height}`} stroke={colours.rule} />
      <text
        x={box.x - 3}
        y={zero - 4}
        text-anchor="end"
        fill={colours.pencil}
        font-size={size - 1}
        stroke={colours.paper}
        stroke-width="4"
        paint-order="stroke"
      >
        0
      </text>
      {interval !== null && (
        <>
          <Interval {...interval} scale={at} at={x} upright capPx={6} color={color} widthPx={2.6} />
          {ends.map((mm, i) => (
            <text
              key={i}
              x={x + 13}
              y={centres[i + 1]! + 4}
              font-size={size - 1}
              fill={colours.pencil}
              stroke={colours.paper}
              stroke-width="4"
              paint-order="stroke"
            >
              {signed(mm)}
            </text>
          ))}
        </>
      )}
      <Point {...{ mark, x, color }} y={at(value)} paper={colours.paper} radiusPx={6.4} edgePx={1.2} />
      <text
        x={x + 13}
        y={centres[0]! + 5}
        font-weight="700"
        stroke={colours.paper}
        stroke-width="4"
        paint-order="stroke"
      >
        {signed(value)}
        {layout.wide ? ` ${shown.length}` : ""}
      </text>
      <text x={box.x + 5} y={box.y + box.height - 4} font-size={size - 1} fill={colours.pencil}>
        {layout.wide ? `${percent(confidence)} interval` : percent(confidence)}
      </text>
    </g>
  );
}
