import { fixed } from "../../../src/report/tables/formatters.ts";
import { palette } from "./palette.ts";
import type { Axis } from "../../../src/drawing/axis.ts";

/** What pictures of yields, a row a case, have in common. */

interface YieldGridProps {
  readonly axis: Axis;
  readonly bottom: number;
  readonly lineHeightPx: number;
  /** What the axis counts, at its right end. */
  readonly title: string;
  readonly right: number;
}

/** A rule at each round yield, its number below. */
export function YieldGrid({ axis, bottom, lineHeightPx, title, right }: YieldGridProps) {
  const { rule, pencil } = palette();
  return (
    <>
      {axis.ticks.map((tick) => (
        <g key={tick}>
          <line x1={axis.at(tick)} x2={axis.at(tick)} y1="4" y2={bottom} stroke={rule} />
          <text x={axis.at(tick)} y={bottom + lineHeightPx} text-anchor="middle" fill={pencil}>
            {fixed(tick, axis.digits)}
          </text>
        </g>
      ))}
      <line x1={axis.at(axis.from)} x2={axis.at(axis.to)} y1={bottom} y2={bottom} stroke={pencil} />
      <text x={right} y={bottom + 2.2 * lineHeightPx} text-anchor="end" fill={pencil}>
        {title}
      </text>
    </>
  );
}

interface RowWordsProps {
  /** Its name, which may run over lines, and what is said of it. */
  readonly name: readonly string[];
  readonly said: readonly string[];
  readonly left: number;
  readonly top: number;
  readonly lineHeightPx: number;
}

/** A row's words, over the rules. */
export function RowWords({ name, said, left, top, lineHeightPx }: RowWordsProps) {
  return (
    <>
      {[...name, ...said].map((line, i) => (
        <text
          key={i}
          x={left}
          y={top + (i + 0.8) * lineHeightPx}
          font-weight={i < name.length ? "600" : undefined}
          stroke={palette().paper}
          stroke-width="4"
          paint-order="stroke"
        >
          {line}
        </text>
      ))}
    </>
  );
}
