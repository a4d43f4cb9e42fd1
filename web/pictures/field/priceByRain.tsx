import { useId } from "preact/hooks";
import type { MoneyAnswer, MoneyAtPrice } from "../../../src/answer/money/money.ts";
import type { ShownMoney } from "../../../src/report/sentences/field/moneyText.ts";
import { percent, type Formatters } from "../../../src/report/tables/formatters.ts";
import { typeset } from "../../../src/report/tables/typeset.ts";
import type { PictureTable } from "../kit/frame.tsx";
import { Hatch } from "../kit/hatch.tsx";
import { fontFamily, palette, type Palette } from "../kit/palette.ts";
import { priceByRainCells } from "./priceByRainCells.ts";
import { rowsDrawn } from "../answer/shareMatteredMarks.ts";
import { SvgPicture } from "../kit/svgPicture.tsx";

export const defaults = {
  name: "What is left, by price and rainfall",
  fileName: "left-by-price-and-rain",
  sizePx: 14,
  headPx: 58,
  rowPx: 66,
  /** Least and most ink of a cell. */
  faint: 0.1,
  full: 0.5,
} as const;

export function priceByRainTable(
  money: MoneyAnswer,
  p: number,
  say: ShownMoney,
  shown: Formatters,
): PictureTable {
  const { prices, rows, perLand } = priceByRainCells(money, p, say, shown);
  return {
    head: [
      `Rain, ${shown.length}`,
      ...prices.map((price) => `At ${price} ${say.currency}/${say.grain}: left, ${say.currency}/${say.land}`),
    ],
    rows: rows.map(({ rain, cells }) => [
      rain,
      ...cells.map(({ netPerHa, chanceItPays }) => `${perLand(netPerHa.p50)} (${percent(chanceItPays)})`),
    ]),
  };
}

interface PriceByRainProps {
  readonly money: MoneyAnswer;
  /** Place of the pair. */
  readonly p: number;
  readonly say: ShownMoney;
  readonly shown: Formatters;
  readonly width: number;
}

/** Of a heavy letter of the labels, px, with room to spare. */
const letterPx = 8.6;

/** A sheet of figures: the deeper the ink the more is left, hatched where something is lost. */
export function PriceByRain({ money, p, say, shown, width }: PriceByRainProps) {
  const colours = palette();
  const hatch = useId();
  const { sizePx, headPx, rowPx } = defaults;
  const { prices, rows: all, perLand, most } = priceByRainCells(money, p, say, shown);
  const rows = rowsDrawn(all);
  // A number is short; "as it came" takes its own width.
  const labelPx = Math.min(92, Math.max(width * 0.2, ...rows.map(({ rain }) => rain.length * letterPx)));
  const cellPx = (width - labelPx) / prices.length;
  const height = headPx + rows.length * rowPx + 6;
  const { from, to } = money.pairs[p]!;
  return (
    <SvgPicture
      name={`“${to}” against “${from}”, left in a typical year by price and rainfall total`}
      width={width}
      height={height}
      table={priceByRainTable(money, p, say, shown)}
      fileName={defaults.fileName}
    >
      <Hatch id={hatch} stroke={colours.cases[0]!} strokeWidth={2.6} />
      <rect width={width} height={height} fill={colours.paper} />
      <g font-family={fontFamily} font-size={sizePx} fill={colours.ink}>
        <text x="2" y={headPx - 12} fill={colours.pencil}>
          rain, {shown.length}
        </text>
        <text x={labelPx} y="16" fill={colours.pencil}>
          price, {say.currency}/{say.grain}
        </text>
        {prices.map((price, i) => (
          <text
            key={i}
            x={labelPx + (i + 0.5) * cellPx}
            y={headPx - 12}
            text-anchor="middle"
            font-weight={i === 1 ? 600 : 400}
          >
            {price}
          </text>
        ))}
        {rows.map(({ rain, cells, isMiddle }, r) => (
          <g key={r} transform={`translate(0 ${headPx + r * rowPx})`}>
            <text x="2" y={rowPx / 2 + 5} font-weight={isMiddle ? 600 : 400}>
              {rain}
            </text>
            {cells.map((cell, i) => (
              <g key={i} transform={`translate(${labelPx + i * cellPx} 0)`}>
                <Cell
                  cell={cell}
                  said={typeset(perLand(cell.netPerHa.p50))}
                  share={most > 0 ? Math.abs(cell.netPerHa.p50) / most : 0}
                  hatch={hatch}
                  isMiddle={isMiddle && i === 1}
                  width={cellPx}
                  colours={colours}
                />
              </g>
            ))}
          </g>
        ))}
      </g>
    </SvgPicture>
  );
}

interface CellProps {
  readonly cell: MoneyAtPrice;
  readonly said: string;
  /** Of the largest figure, 0 to 1. */
  readonly share: number;
  readonly hatch: string;
  readonly isMiddle: boolean;
  readonly width: number;
  readonly colours: Palette;
}

function Cell({ cell: { netPerHa, chanceItPays }, said, share, hatch, isMiddle, width, colours }: CellProps) {
  const { rowPx, sizePx, faint, full } = defaults;
  const box = { x: 2, y: 2, width: width - 4, height: rowPx - 4 };
  const loses = netPerHa.p50 < 0;
  const bar = { x: 12, y: rowPx - 14, height: 5 };
  return (
    <>
      <rect {...box} fill={colours.cases[loses ? 0 : 1]} fill-opacity={faint + (full - faint) * share} />
      {loses && <rect {...box} fill={`url(#${hatch})`} fill-opacity="0.3" />}
      {isMiddle && <rect {...box} fill="none" stroke={colours.ink} stroke-width="2.5" />}
      <g
        text-anchor="middle"
        stroke={colours.paper}
        stroke-width="3"
        paint-order="stroke"
        stroke-opacity="0.75"
      >
        <text x={width / 2} y="26" font-weight="600" font-size={sizePx + 2}>
          {said}
        </text>
        <text x={width / 2} y="44" font-size={sizePx - 1}>
          pays {percent(chanceItPays)}
        </text>
      </g>
      <rect {...bar} width={width - 24} fill={colours.paper} stroke={colours.pencil} stroke-width="0.8" />
      <rect {...bar} width={(width - 24) * chanceItPays} fill={colours.ink} />
    </>
  );
}
