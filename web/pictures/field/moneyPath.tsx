import type { MoneyOfPair } from "../../../src/answer/money/money.ts";
import type { MoneyOverYears } from "../../../src/answer/money/moneyOverYears.ts";
import { marksBetween, scaleTo } from "../../../src/drawing/axis.ts";
import { haPerAcre } from "../../../src/quantity/constants.ts";
import type { ShownMoney } from "../../../src/report/sentences/field/moneyText.ts";
import { percent } from "../../../src/report/tables/formatters.ts";
import { typeset } from "../../../src/report/tables/typeset.ts";
import type { PictureTable } from "../kit/frame.tsx";
import { Point } from "../kit/marks.tsx";
import { caseStyle, fontFamily, palette } from "../kit/palette.ts";
import { SvgPicture } from "../kit/svgPicture.tsx";

export const defaults = {
  name: "What is left so far, by year since the change",
  fileName: "money-path",
  sizePx: 13,
  heightPx: 300,
  left: 52,
  topPx: 28,
  footPx: 62,
  /** Chains in which it is paid are told below each year while there is so much room. */
  leastColumnPx: 34,
} as const;

export function moneyPathTable({ path }: MoneyOverYears, say: ShownMoney): PictureTable {
  const perLand = say.perLand(
    path.flatMap(({ gainPerHa, leftSoFarPerHa: { p10, p50, p90 } }) => [gainPerHa.mean, p10, p50, p90]),
  );
  const unit = `${say.currency}/${say.land}`;
  return {
    head: [
      "Year since the change",
      `Gain of the year, ${unit}: mean`,
      `Left so far, ${unit}: middle chain`,
      "P10",
      "P90",
      "Chains in which it is paid",
    ],
    rows: path.map(({ year, gainPerHa, leftSoFarPerHa: { p10, p50, p90 }, chanceItIsPaid }) => [
      String(year),
      ...[gainPerHa.mean, p50, p10, p90].map((perHa) => typeset(perLand(perHa))),
      percent(chanceItIsPaid),
    ]),
  };
}

interface MoneyPathProps {
  readonly pair: MoneyOfPair;
  readonly overYears: MoneyOverYears;
  /** Of the later case. */
  readonly c: number;
  readonly say: ShownMoney;
  readonly width: number;
  readonly faint: boolean;
}

/** A bar for each year since the change, over eight chains in ten, with the middle one; nothing left at the line. */
export function MoneyPath({ pair, overYears, c, say, width, faint }: MoneyPathProps) {
  const colours = palette();
  const style = caseStyle(c, colours);
  const { sizePx, heightPx, left, topPx, footPx, leastColumnPx } = defaults;
  const { path } = overYears;
  const factor = say.land === "ac" ? haPerAcre : 1;
  const ends = path.flatMap(({ leftSoFarPerHa: { p10, p90 } }) => [p10 * factor, p90 * factor]);
  const [from, to] = [Math.min(0, ...ends), Math.max(0, ...ends)];
  const bottom = heightPx - footPx;
  const y = scaleTo(from, to > from ? to : from + 1, bottom, topPx);
  const right = width - 6;
  const columnPx = (right - left) / Math.max(1, path.length);
  const half = Math.min(20, columnPx * 0.34);
  const perLand = say.perLand(path.map(({ leftSoFarPerHa }) => leftSoFarPerHa.p50));
  const unit = `${say.currency}/${say.land}`;
  return (
    <SvgPicture
      name={`${defaults.name}, “${pair.to}” against “${pair.from}”: ${path
        .map(({ year, leftSoFarPerHa }) => `${year} ${perLand(leftSoFarPerHa.p50)}`)
        .join(", ")} ${unit}`}
      width={width}
      height={heightPx}
      table={moneyPathTable(overYears, say)}
      fileName={defaults.fileName}
      faint={faint}
      caption="Bar: from P10 to P90 of the chains of years. Mark: the middle one. Above the line it is paid."
    >
      <rect width={width} height={heightPx} fill={colours.paper} />
      <g font-family={fontFamily} font-size={sizePx} fill={colours.pencil}>
        {marksBetween(from, to, 5).map((mark) => (
          <g key={mark}>
            <line x1={left} x2={right} y1={y(mark)} y2={y(mark)} stroke={colours.rule} />
            <text x={left - 6} y={y(mark) + 0.35 * sizePx} text-anchor="end">
              {typeset(String(Number(mark.toFixed(6))))}
            </text>
          </g>
        ))}
        <text x={0} y={14}>
          Left so far, {unit}
        </text>
        <line x1={left} x2={right} y1={y(0)} y2={y(0)} stroke={colours.pencil} stroke-width="1.4" />
        {path.map(({ year, leftSoFarPerHa: { p10, p50, p90 }, chanceItIsPaid }, i) => {
          const x = left + (i + 0.5) * columnPx;
          const [top, low] = [y(p90 * factor), y(p10 * factor)];
          return (
            <g key={year}>
              <rect
                x={x - half}
                y={top}
                width={2 * half}
                height={Math.max(1, low - top)}
                fill={style.color}
                fill-opacity="0.16"
                stroke={style.color}
                stroke-width="0.8"
              />
              <Point {...style} x={x} y={y(p50 * factor)} paper={colours.paper} radiusPx={5} edgePx={1.5} />
              <text x={x} y={bottom + 1.4 * sizePx} text-anchor="middle" fill={colours.ink}>
                {year}
              </text>
              {(columnPx >= leastColumnPx || i === path.length - 1) && (
                <text x={x} y={bottom + 2.7 * sizePx} text-anchor="middle">
                  {percent(chanceItIsPaid)}
                </text>
              )}
            </g>
          );
        })}
        <text x={0} y={heightPx - 8}>
          Year since the change; chains in which it is paid
        </text>
      </g>
    </SvgPicture>
  );
}
