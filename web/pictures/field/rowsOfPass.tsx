import type { PictureTable } from "../kit/frame.tsx";
import { markPath } from "../kit/caseLooks.ts";
import { caseStyle, fontFamily, palette, type CaseStyle, type Palette } from "../kit/palette.ts";
import { handLine } from "../kit/handDrawn.ts";
import { numberEvery, passLayout, type PassLayout, type RowDrawn } from "./rowsOfPassLayout.ts";
import { SvgPicture } from "../kit/svgPicture.tsx";
import { wrapped } from "../../../src/drawing/text.ts";

export const defaults = {
  name: "The rows of one pass, from above",
  fileName: "rows-of-one-pass",
  sizePx: 14,
  linePx: 20,
} as const;

/** A kind of row, as it is told under the drawing. */
export interface RowKind {
  /** `wheel track` */
  readonly name: string;
  readonly caseIndex: number | null;
  readonly caseName: string;
  /** `4 rows, 8.3 %` */
  readonly said: string;
}

export interface RowsOfPassProps {
  readonly rows: readonly RowDrawn[];
  /** In rows from the left, halves between two. */
  readonly tyreRows: readonly number[];
  readonly kinds: readonly RowKind[];
  /** The rows drawn are those of the pass, and not shares of the field. */
  readonly numbered: boolean;
  readonly width: number;
}

/** The size of the drawing, for what is laid over it. */
export function rowsOfPassSize({ rows, kinds, width }: Pick<RowsOfPassProps, "rows" | "kinds" | "width">) {
  const layout = passLayout(rows.length, width);
  const texts = kinds.map((kind) => wrapped(kindSaid(kind), width - 26, defaults.sizePx));
  const lines = texts.reduce((sum, one) => sum + one.length, 0);
  return { layout, texts, height: layout.bottom + 26 + lines * defaults.linePx + 4 };
}

/** One pass over the field from above: a line of plants for each row, the treads of the tyres over them. */
export function RowsOfPass(props: RowsOfPassProps) {
  const { rows, tyreRows, kinds, numbered, width } = props;
  const colours = palette();
  const { layout, texts, height } = rowsOfPassSize(props);
  const { left, right, top, bottom, x, gap } = layout;
  const every = numberEvery(gap);
  return (
    <SvgPicture
      name={nameOf(props)}
      width={width}
      height={height}
      table={rowsOfPassTable(kinds)}
      fileName={defaults.fileName}
    >
      <rect width={width} height={height} fill={colours.paper} />
      <rect
        x={left}
        y={top}
        width={right - left}
        height={bottom - top}
        fill={colours.rule}
        fill-opacity="0.4"
      />
      <path d={handLine(left, top, right - left, 1)} stroke={colours.pencil} fill="none" />
      <path d={handLine(left, bottom, right - left, 2)} stroke={colours.pencil} fill="none" />
      {tyreRows.map((place) => (
        <Tread key={place} x={x(place)} layout={layout} colours={colours} />
      ))}
      {rows.map(({ caseIndex }, r) => (
        <Row key={r} x={x(r + 1)} style={styleOf(caseIndex, colours)} layout={layout} />
      ))}
      <g font-family={fontFamily} font-size={defaults.sizePx - 2} fill={colours.pencil} text-anchor="middle">
        {numbered &&
          rows.map((_, r) =>
            r === 0 || (r + 1) % every === 0 ? (
              <text key={r} x={x(r + 1)} y={top - 9}>
                {r === 0 && every > 2 ? 1 : r + 1}
              </text>
            ) : null,
          )}
      </g>
      <Kinds kinds={kinds} texts={texts} top={bottom + 26} colours={colours} />
    </SvgPicture>
  );
}

function nameOf({ rows, tyreRows, kinds, numbered }: RowsOfPassProps): string {
  const tyres = tyreRows.length === 0 ? "" : `; tires at ${tyreRows.join(", ")}`;
  const all = numbered ? `${rows.length} rows of one pass${tyres}` : "Rows of the field by their share";
  return `${all}: ${kinds.map(kindSaid).join("; ")}`;
}

function kindSaid({ name, caseName, said }: RowKind): string {
  return name === caseName ? `${name}, ${said}` : `${name}, ${said}: “${caseName}”`;
}

export function rowsOfPassTable(kinds: readonly RowKind[]): PictureTable {
  return {
    head: ["Where", "Case", "How many"],
    rows: kinds.map(({ name, caseName, said }) => [name, caseName, said]),
  };
}

function styleOf(caseIndex: number | null, colours: Palette): CaseStyle {
  return caseIndex === null
    ? { color: colours.pencil, dash: "dot", mark: "cross" }
    : caseStyle(caseIndex, colours);
}

/** Plants along a row, with the mark of its case at its foot. */
function Row({ x, style, layout }: { x: number; style: CaseStyle; layout: PassLayout }) {
  const { top, bottom, gap } = layout;
  const leaf = Math.min(6, gap * 0.42);
  const step = 16;
  const count = Math.floor((bottom - top - 10) / step);
  const plants = Array.from({ length: count }, (_, i) => {
    // A hand sets no plant exactly on the line.
    const off = Math.sin(i * 2.1 + x) * Math.min(1, gap * 0.06);
    const y = top + 14 + i * step;
    return `M${(x + off).toFixed(1)} ${y.toFixed(1)}l${(-leaf).toFixed(1)} -4.5m${leaf.toFixed(1)} 4.5l${leaf.toFixed(1)} -4.5m${(-leaf).toFixed(1)} 4.5v-6.5`;
  }).join("");
  return (
    <g>
      <path
        d={plants}
        stroke={style.color}
        stroke-width={gap < 9 ? 1.2 : 1.8}
        stroke-linecap="round"
        fill="none"
      />
      <CaseMark x={x} y={bottom + 9} size={Math.min(5, gap * 0.42)} style={style} />
    </g>
  );
}

/** What a tyre leaves behind. */
function Tread({ x, layout, colours }: { x: number; layout: PassLayout; colours: Palette }) {
  const { top, bottom, gap } = layout;
  const half = Math.max(3, Math.min(13, gap * 0.62));
  const lugs = Array.from({ length: Math.floor((bottom - top) / 9) }, (_, i) => {
    const y = top + 5 + i * 9;
    return `M${x - half} ${y - 3}L${x - 1} ${y + 3}M${x + half} ${y - 3}L${x + 1} ${y + 3}`;
  }).join("");
  return (
    <g>
      <rect
        x={x - half}
        y={top}
        width={2 * half}
        height={bottom - top}
        fill={colours.ink}
        fill-opacity="0.2"
      />
      <path d={lugs} stroke={colours.ink} stroke-opacity="0.5" stroke-width="2" fill="none" />
    </g>
  );
}

/** The mark that a case has in every picture. */
export function CaseMark({
  x,
  y,
  size,
  style: { color, mark },
}: {
  x: number;
  y: number;
  size: number;
  style: CaseStyle;
}) {
  return <path d={markPath(mark, x, y, size)} fill={color} />;
}

function Kinds({
  kinds,
  texts,
  top,
  colours,
}: {
  kinds: readonly RowKind[];
  texts: readonly (readonly string[])[];
  top: number;
  colours: Palette;
}) {
  let line = 0;
  return (
    <g font-family={fontFamily} font-size={defaults.sizePx} fill={colours.ink}>
      {kinds.map(({ caseIndex }, k) => {
        const y = top + 14 + line * defaults.linePx;
        line += texts[k]!.length;
        return (
          <g key={k}>
            <CaseMark x={10} y={y - 5} size={6} style={styleOf(caseIndex, colours)} />
            {texts[k]!.map((text, i) => (
              <text key={i} x="24" y={y + i * defaults.linePx}>
                {text}
              </text>
            ))}
          </g>
        );
      })}
    </g>
  );
}
