import { useId } from "preact/hooks";
import type { MoneyOfPair } from "../../../src/answer/money/money.ts";
import type { ShownMoney } from "../../../src/report/sentences/field/moneyText.ts";
import { rangeSigned } from "../../../src/report/tables/rangeSaid.ts";
import { percent } from "../../../src/report/tables/formatters.ts";
import { budgetLayout, type BudgetBar } from "./budgetLayout.ts";
import type { PictureTable } from "../kit/frame.tsx";
import { Hatch } from "../kit/hatch.tsx";
import { fontFamily, palette, type Palette } from "../kit/palette.ts";
import { handLine } from "../kit/handDrawn.ts";
import { marksFor, marksThatMattered } from "../answer/shareMatteredMarks.ts";
import { SvgPicture } from "../kit/svgPicture.tsx";
import { Interval } from "../kit/marks.tsx";

export const defaults = {
  name: "What the change takes and brings",
  fileName: "partial-budget",
  sizePx: 14,
  barPx: 26,
  rowPx: 78,
  emptyRowPx: 44,
} as const;

/** The four parts, what is left, and how often anything is. */
export function budgetTable(pair: MoneyOfPair, say: ShownMoney): PictureTable {
  const { addedReturns, reducedCosts, addedCosts, reducedReturns, net } = pair.budgetPerHa;
  const perLand = say.perLand(Object.values(pair.budgetPerHa));
  const seasons = say.perLand(Object.values(pair.netPerHa));
  return {
    head: [
      `A year, at the ${pair.overYears === undefined ? "extra yield of a typical year" : "middle chain"}`,
      `${say.currency}/${say.land}`,
    ],
    rows: [
      ["Added returns", perLand(addedReturns)],
      ["Reduced costs", perLand(reducedCosts)],
      ["Added costs", perLand(-addedCosts)],
      ["Reduced returns", perLand(-reducedReturns)],
      ["Left", perLand(net)],
      [
        pair.overYears === undefined ? "Left in a typical year" : "Left in the middle chain",
        seasons(pair.netPerHa.p50),
      ],
      ["Left, P10 to P90", rangeSigned(pair.netPerHa, seasons)],
      ["Pays in", percent(pair.chanceItPays)],
    ],
  };
}

interface BudgetProps {
  readonly pair: MoneyOfPair;
  readonly say: ShownMoney;
  readonly runs: number;
  readonly width: number;
}

/** The four parts of a partial budget against each other on one scale, what is left below them, and in how many seasons it pays. */
export function Budget({ pair, say, runs, width }: BudgetProps) {
  const colours = palette();
  const hatch = useId();
  const { sizePx, rowPx, emptyRowPx, barPx } = defaults;
  const { middle, lines, left, whisker } = budgetLayout(pair, width);
  const perLand = say.perLand(Object.values(pair.budgetPerHa));
  const unit = `${say.currency}/${say.land}`;
  // Two parts that are nothing need no room for bars.
  const tall = lines.map(({ takes, brings }) =>
    takes.perHa === 0 && brings.perHa === 0 ? emptyRowPx : rowPx,
  );
  const tops = [30, 30 + tall[0]!];
  const netTop = 30 + tall[0]! + tall[1]! + 12;
  const seasonsTop = netTop + rowPx + 20;
  const height = seasonsTop + 62;
  const takesLook = { fill: `url(#${hatch})`, stroke: colours.cases[0]! };
  const bringsLook = { fill: colours.cases[1]!, stroke: colours.cases[1]! };
  return (
    <SvgPicture
      name={`“${pair.to}” against “${pair.from}”: ${perLand(left.perHa)} ${unit} is left; it pays in ${percent(pair.chanceItPays)} of the ${ofWhat(pair)}`}
      width={width}
      height={height}
      table={budgetTable(pair, say)}
      fileName={defaults.fileName}
    >
      <Hatch id={hatch} stroke={colours.cases[0]!} strokeWidth={3.4} gapPx={7} tint={0.25} />
      <rect width={width} height={height} fill={colours.paper} />
      <g font-family={fontFamily} font-size={sizePx} fill={colours.ink}>
        <text x="2" y="16" fill={colours.pencil}>
          it takes
        </text>
        <text x={width - 2} y="16" text-anchor="end" fill={colours.pencil}>
          it brings
        </text>
        {lines.map(({ takes, brings }, i) => (
          <g key={takes.name} transform={`translate(0 ${tops[i]!})`}>
            <Bar bar={takes} look={takesLook} value={perLand(-takes.perHa)} x={2} anchor="start" />
            <Bar bar={brings} look={bringsLook} value={perLand(brings.perHa)} x={width - 2} anchor="end" />
          </g>
        ))}
        <path d={handLine(0, netTop - 6, width, 3)} stroke={colours.ink} fill="none" stroke-width="1.4" />
        <g transform={`translate(0 ${netTop})`}>
          <text x={left.perHa < 0 ? 2 : width - 2} y="18" text-anchor={left.perHa < 0 ? "start" : "end"}>
            Left, <tspan font-weight="600">{perLand(left.perHa)}</tspan> {unit}
          </text>
          <rect
            x={left.x}
            y="28"
            width={Math.max(1, left.width)}
            height={barPx}
            {...(left.perHa < 0 ? takesLook : bringsLook)}
            stroke-width="2"
          />
          {whisker !== null && <Whisker ends={whisker} y={28 + barPx + 14} colours={colours} />}
        </g>
        <line
          x1={middle}
          x2={middle}
          y1="24"
          y2={netTop + 28 + barPx + 24}
          stroke={colours.ink}
          stroke-width="1.5"
        />
        <Seasons
          share={pair.chanceItPays}
          what={ofWhat(pair)}
          runs={pair.overYears?.chains ?? runs}
          top={seasonsTop}
          width={width}
          colours={colours}
        />
      </g>
    </SvgPicture>
  );
}

interface BarProps {
  readonly bar: BudgetBar;
  readonly look: { readonly fill: string; readonly stroke: string };
  readonly value: string;
  readonly x: number;
  readonly anchor: "start" | "end";
}

function Bar({ bar, look, value, x, anchor }: BarProps) {
  return (
    <>
      <text x={x} y="14" text-anchor={anchor}>
        {bar.name}
      </text>
      <text x={x} y="32" text-anchor={anchor} font-weight="600">
        {value}
      </text>
      {bar.width > 0 && (
        <rect x={bar.x} y="40" width={bar.width} height={defaults.barPx} {...look} stroke-width="2" />
      )}
    </>
  );
}

/** Eight of ten seasons, each with its own price. */
function Whisker({
  ends: [low, high],
  y,
  colours,
}: {
  ends: readonly [number, number];
  y: number;
  colours: Palette;
}) {
  return <Interval {...{ low, high }} at={y} color={colours.ink} widthPx={2.5} />;
}

interface SeasonsProps {
  readonly share: number;
  readonly what: string;
  readonly runs: number;
  readonly top: number;
  readonly width: number;
  readonly colours: Palette;
}

/** What a share in which it pays is a share of. */
function ofWhat({ overYears }: MoneyOfPair): string {
  return overYears === undefined ? "seasons" : "chains of years";
}

/** A ring for each season, or for so many of them; filled where it pays. */
function Seasons({ share, what, runs, top, width, colours }: SeasonsProps) {
  const marks = marksFor(runs);
  const paid = marksThatMattered(share, marks);
  const gap = width / marks;
  const radius = Math.min(7, gap * 0.36);
  return (
    <g transform={`translate(0 ${top})`}>
      <text x="2" y="16">
        {what[0]!.toUpperCase() + what.slice(1)} in which it pays
      </text>
      <text x={width - 2} y="16" text-anchor="end" font-weight="600">
        {percent(share)}
      </text>
      {Array.from({ length: marks }, (_, i) => (
        <circle
          key={i}
          cx={gap * (i + 0.5)}
          cy="40"
          r={radius}
          fill={i < paid ? colours.cases[1] : "none"}
          stroke={i < paid ? colours.cases[1] : colours.pencil}
          stroke-width="1.6"
        />
      ))}
    </g>
  );
}
