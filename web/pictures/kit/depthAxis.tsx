import type { ComponentChildren } from "preact";
import { depthTicks } from "../../../src/drawing/depths.ts";
import type { Formatters } from "../../../src/report/tables/formatters.ts";
import { depthY, type Box } from "./box.ts";
import { words, type Palette } from "./palette.ts";

interface DepthAxisProps {
  /** The soil, from the surface down to `depthMm`. */
  readonly box: Box;
  readonly depthMm: number;
  readonly shown: Formatters;
  readonly colours: Palette;
  /** Where the numbers end. */
  readonly x: number;
  readonly sizePx: number;
  /** From one number to the next. */
  readonly leastPx?: number;
  /** A stroke at each depth, across. */
  readonly stroke?: { readonly from: number; readonly to: number; readonly color: string };
  /** Base line of the unit over the numbers. */
  readonly unitY: number;
  /** In place of the unit. */
  readonly children?: ComponentChildren;
}

/** Round depths down the left of a soil, in the unit on show. */
export function DepthAxis(props: DepthAxisProps) {
  const { box, depthMm, shown, colours, x, sizePx, leastPx, stroke, unitY, children } = props;
  return (
    <g font-size={sizePx} fill={colours.pencil} text-anchor="end">
      {depthTicks(depthMm, box.height, shown.system === "us", leastPx).map(({ mm, text }) => {
        const y = depthY(box, { depthMm }, mm);
        return (
          <g key={mm}>
            {stroke && <path d={`M${stroke.from} ${y.toFixed(1)}H${stroke.to}`} stroke={stroke.color} />}
            <text x={x} y={y + 0.35 * sizePx}>
              {text}
            </text>
          </g>
        );
      })}
      {children ?? (
        <text x={x} y={unitY}>
          {shown.length}
          <title>{words.depth}</title>
        </text>
      )}
    </g>
  );
}
