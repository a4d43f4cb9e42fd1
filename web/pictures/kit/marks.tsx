import { caseStyle, type CaseStyle, type Palette } from "./palette.ts";
import { markPath, strokeDashes } from "./caseLooks.ts";
import type { Scale } from "../../../src/drawing/axis.ts";

interface PointProps {
  readonly mark: CaseStyle["mark"];
  readonly x: number;
  readonly y: number;
  readonly color: string;
  readonly paper: string;
  readonly radiusPx?: number;
  readonly edgePx?: number;
  /** Only its edge is drawn. */
  readonly hollow?: boolean;
  readonly class?: string;
}

/** A value, by the mark of its case. */
export function Point(props: PointProps) {
  const { mark, x, y, color, paper, radiusPx = 8, edgePx = 2, hollow = false } = props;
  return (
    <path
      class={props.class}
      d={markPath(mark, x, y, radiusPx)}
      fill={hollow ? paper : color}
      stroke={hollow ? color : paper}
      stroke-width={edgePx}
    />
  );
}

interface IntervalProps {
  readonly low: number;
  readonly high: number;
  /** Its ends to their places; they are places already where there is none. */
  readonly scale?: Scale;
  /** Where it lies across. */
  readonly at: number;
  /** Drawn down the page, not along it. */
  readonly upright?: boolean;
  /** Half a cap's length. */
  readonly capPx?: number;
  readonly color: string;
  readonly widthPx?: number;
  readonly dash?: string | undefined;
}

/** A line from the low end to the high one, with a cap at either. */
export function Interval(props: IntervalProps) {
  const { scale = (value) => value, at, upright = false, capPx = 7, color, widthPx = 3, dash } = props;
  const [low, high] = [scale(props.low), scale(props.high)];
  const d = upright
    ? `M${at} ${low}V${high}M${at - capPx} ${low}h${2 * capPx}M${at - capPx} ${high}h${2 * capPx}`
    : `M${low} ${at}H${high}M${low} ${at - capPx}v${2 * capPx}M${high} ${at - capPx}v${2 * capPx}`;
  return <path d={d} fill="none" stroke={color} stroke-width={widthPx} stroke-dasharray={dash} />;
}

/** A case's line as it is drawn, for a legend. */
export function LineSample({ c, colours }: { readonly c: number; readonly colours: Palette }) {
  const { color, dash, mark } = caseStyle(c, colours);
  return (
    <svg viewBox="0 0 38 14" width="38" height="14" aria-hidden="true" class="line-sample">
      <path
        d="M1 7h36"
        stroke={color}
        stroke-width="3"
        stroke-dasharray={strokeDashes[dash]}
        stroke-linecap={dash === "dot" ? "round" : "butt"}
      />
      <Point {...{ mark, color }} x={19} y={7} paper={colours.paper} radiusPx={5} edgePx={1.2} />
    </svg>
  );
}
