import { fineYield } from "../../../src/report/tables/formatters.ts";
import type { PictureTable } from "../kit/frame.tsx";
import { besideAxis, type BesideMark, type BesideRow } from "./measuredBesideLayout.ts";
import { fontFamily, palette, type Palette } from "../kit/palette.ts";
import { SvgPicture } from "../kit/svgPicture.tsx";
import { wrapped } from "../../../src/drawing/text.ts";
import type { Axis } from "../../../src/drawing/axis.ts";
import { Interval, Point } from "../kit/marks.tsx";
import { RowWords, YieldGrid } from "../kit/valueRows.tsx";

export const defaults = { sizePx: 14, lineHeightPx: 18, markPx: 30 } as const;

interface MeasuredBesideProps {
  readonly title: string;
  readonly fileName: string;
  readonly rows: readonly BesideRow[];
  readonly unit: string;
  readonly width: number;
  readonly caption?: string;
  readonly faint?: boolean;
}

export function besideTable(rows: readonly BesideRow[], unit: string): PictureTable {
  const say = (value: number | null) => (value === null ? "–" : fineYield(value, unit));
  return {
    head: ["Difference", "What", `Middle, ${unit}`, "Low", "High"],
    rows: rows.flatMap(({ title, marks }) =>
      marks.map(({ kind, what, middle, low, high }) => [
        title,
        what,
        kind === "weight" ? "–" : say(middle),
        say(low),
        say(high),
      ]),
    ),
  };
}

/** Differences with their intervals, one under the other on one axis; a stroke at nothing. */
export function MeasuredBeside({
  title,
  fileName,
  rows,
  unit,
  width,
  caption,
  faint = false,
}: MeasuredBesideProps) {
  const colours = palette();
  const { sizePx, lineHeightPx, markPx } = defaults;
  const edge = 24;
  const axis = besideAxis(rows, edge, width - edge, width < 480 ? 4 : 8);
  let y = 4;
  const laid = rows.map((row) => {
    const lines = wrapped(row.title, width - 2 * edge - 8, sizePx);
    const top = y;
    y += lines.length * lineHeightPx + 4;
    const marks = row.marks.map((mark) => {
      const told = wrapped(`${mark.what}: ${mark.said}`, width - 2 * edge - 8, sizePx);
      const toldAt = y;
      y += told.length * lineHeightPx + markPx;
      return { mark, told, toldAt, at: y - markPx / 2 };
    });
    y += 8;
    return { row, lines, top, marks };
  });
  const height = y + 2.4 * lineHeightPx;
  return (
    <SvgPicture
      name={`${title}: ${rows.map((row) => `${row.title}: ${row.marks.map(({ what, said }) => `${what} ${said}`).join(", ")}`).join("; ")}`}
      {...(caption === undefined ? {} : { caption })}
      width={width}
      height={height}
      table={besideTable(rows, unit)}
      fileName={fileName}
      faint={faint}
    >
      <rect width={width} height={height} fill={colours.paper} />
      <g font-family={fontFamily} font-size={sizePx} fill={colours.ink}>
        <Ruled
          {...{ axis, width, edge, unit }}
          bottom={y}
          marksAt={laid.flatMap(({ marks }) => marks.map(({ at }) => at))}
        />
        {laid.map(({ row, lines, top, marks }) => (
          <g key={row.title}>
            <RowWords name={lines} said={[]} left={edge + 8} top={top} lineHeightPx={lineHeightPx} />
            {marks.map(({ mark, told, toldAt, at }) => (
              <g key={mark.what}>
                <RowWords name={[]} said={told} left={edge + 8} top={toldAt} lineHeightPx={lineHeightPx} />
                <Mark mark={mark} axis={axis} y={at} colours={colours} />
              </g>
            ))}
          </g>
        ))}
      </g>
    </SvgPicture>
  );
}

interface RuledProps {
  readonly axis: Axis;
  readonly bottom: number;
  readonly width: number;
  readonly edge: number;
  readonly unit: string;
  /** Where marks stand; between them are words. */
  readonly marksAt: readonly number[];
}

/** The line at nothing stands where marks are: words are not struck through. */
function Ruled({ axis, bottom, width, edge, unit, marksAt }: RuledProps) {
  const { pencil, ink } = palette();
  const { lineHeightPx, markPx } = defaults;
  const x = axis.at(0);
  const title = `${unit} more${axis.to > 0 ? " →" : ""}`;
  return (
    <>
      <YieldGrid {...{ axis, bottom, lineHeightPx, title }} right={width - edge} />
      <path
        class="at-nothing"
        d={marksAt.map((at) => `M${x} ${at - markPx / 2 + 2}V${at + markPx / 2}`).join("")}
        stroke={ink}
        stroke-width="2"
      />
      <text x={edge} y={bottom + 2.2 * lineHeightPx} fill={pencil}>
        {axis.from < 0 ? "← less" : ""}
      </text>
    </>
  );
}

function Mark({ mark, axis, y, colours }: { mark: BesideMark; axis: Axis; y: number; colours: Palette }) {
  const { kind, middle, low, high } = mark;
  const [from, to] = [axis.at(low ?? middle), axis.at(high ?? middle)];
  if (kind === "weight")
    return (
      <path
        d={`M${from} ${y}H${to}`}
        stroke={colours.pencil}
        stroke-width="2"
        stroke-dasharray="2 4"
        stroke-linecap="round"
      />
    );
  if (kind === "water")
    return (
      <>
        <rect
          x={from}
          y={y - 7}
          width={Math.max(1, to - from)}
          height="14"
          fill={colours.rain}
          opacity="0.35"
        />
        <Point mark="diamond" x={axis.at(middle)} y={y} color={colours.rain} paper={colours.paper} />
      </>
    );
  return (
    <>
      {low !== null && <Interval low={from} high={to} at={y} color={colours.ink} />}
      <Point
        mark="circle"
        x={axis.at(middle)}
        y={y}
        color={colours.ink}
        paper={colours.paper}
        hollow={low === null}
      />
    </>
  );
}
