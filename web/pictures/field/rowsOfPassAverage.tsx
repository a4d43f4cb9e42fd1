import type {
  FieldAverage,
  FieldAverageAtRain,
  FieldNumbers,
} from "../../../src/answer/comparison/fieldAverage.ts";
import { middleOf } from "../../../src/answer/runs/middleTotal.ts";
import type { Spread } from "../../../src/statistics/quantiles.ts";
import type { ShownMoney } from "../../../src/report/sentences/field/moneyText.ts";
import { rangeSaid, rangeSigned } from "../../../src/report/tables/rangeSaid.ts";
import type { Formatters } from "../../../src/report/tables/formatters.ts";
import type { PictureTable } from "../kit/frame.tsx";
import { caseStyle, fontFamily, palette, type Palette } from "../kit/palette.ts";
import { rangeScale } from "./rowsOfPassLayout.ts";
import { SvgPicture } from "../kit/svgPicture.tsx";
import { wrapped } from "../../../src/drawing/text.ts";

export const defaults = {
  name: "The field as its rows are, beside all rows alike",
  fileName: "field-average",
  sizePx: 14,
  /** Three side by side from this width on. */
  wideFromPx: 760,
  blockPx: 154,
} as const;

/** One thing that is averaged, with its unit and how its figures are written. */
export interface Averaged {
  readonly title: string;
  readonly unit: string;
  readonly of: (numbers: FieldNumbers) => Spread;
  readonly say: (value: number) => string;
  /** For the difference. */
  readonly sayFine: (value: number) => string;
}

/** Water, yield and, where there is a price, money. */
export function averagedOf(
  { byRainTotal, currency }: FieldAverage,
  say: ShownMoney,
  shown: Formatters,
): Averaged[] {
  const worths = (of: (at: FieldAverageAtRain) => FieldNumbers) =>
    say.perLand(byRainTotal.flatMap((at) => Object.values(of(at).worthPerHa ?? {})));
  const things: Averaged[] = [
    {
      title: "Water taken up by the crop",
      unit: shown.length,
      of: ({ transpirationMm }) => transpirationMm,
      say: shown.water,
      sayFine: shown.fineWater,
    },
    {
      title: "Yield",
      unit: say.yieldUnit,
      of: ({ yieldKgPerHa }) => yieldKgPerHa,
      say: say.yield,
      sayFine: say.fineYield,
    },
  ];
  if (currency === null) return things;
  return [
    ...things,
    {
      title: "What the yield is worth",
      unit: `${say.currency}/${say.land}`,
      of: ({ worthPerHa }) => worthPerHa ?? { p10: 0, p50: 0, p90: 0 },
      say: worths(({ field }) => field),
      sayFine: worths(({ againstAllAsFirst }) => againstAllAsFirst),
    },
  ];
}

export function fieldAverageTable(
  { byRainTotal, firstCase }: FieldAverage,
  things: readonly Averaged[],
  shown: Formatters,
): PictureTable {
  return {
    head: [
      `Rain, ${shown.length}`,
      "What",
      "The field",
      "P10 to P90",
      `All as “${firstCase}”`,
      "P10 to P90, all alike",
      "Difference, run by run",
      "P10 to P90 of it",
    ],
    rows: byRainTotal.flatMap(({ rainTotalMm, field, allAsFirst, againstAllAsFirst }) =>
      things.map(({ title, unit, of, say, sayFine }) => [
        rainTotalMm === null ? "as it came" : shown.total(rainTotalMm),
        `${title}, ${unit}`,
        say(of(field).p50),
        rangeSigned(of(field), say),
        say(of(allAsFirst).p50),
        rangeSigned(of(allAsFirst), say),
        sayFine(of(againstAllAsFirst).p50),
        rangeSigned(of(againstAllAsFirst), sayFine),
      ]),
    ),
  };
}

interface FieldAverageProps {
  readonly field: FieldAverage;
  readonly say: ShownMoney;
  readonly shown: Formatters;
  readonly width: number;
}

/** Ranges of the field, each over the range of a field with all rows as the first case. */
export function FieldAverageDrawn({ field, say, shown, width }: FieldAverageProps) {
  const colours = palette();
  const things = averagedOf(field, say, shown);
  const wide = width >= defaults.wideFromPx;
  const column = wide ? width / things.length : width;
  const { blockPx } = defaults;
  const height = wide ? blockPx : blockPx * things.length;
  const middle = middleOf(field.byRainTotal);
  const said = things.map(
    ({ title, unit, of, say: text }) =>
      `${title} ${text(of(middle.field).p50)} against ${text(of(middle.allAsFirst).p50)} ${unit}`,
  );
  return (
    <SvgPicture
      name={`${defaults.name}: ${said.join(", ")}`}
      width={width}
      height={height}
      table={fieldAverageTable(field, things, shown)}
      fileName={defaults.fileName}
    >
      <rect width={width} height={height} fill={colours.paper} />
      <g font-family={fontFamily} font-size={defaults.sizePx} fill={colours.ink}>
        {things.map((thing, t) => (
          <g
            key={thing.title}
            transform={wide ? `translate(${t * column} 0)` : `translate(0 ${t * blockPx})`}
          >
            <Block
              thing={thing}
              ranges={[thing.of(middle.field), thing.of(middle.allAsFirst)]}
              names={["the field", `all “${field.firstCase}”`]}
              width={column - (wide ? 28 : 4)}
              colours={colours}
            />
          </g>
        ))}
      </g>
    </SvgPicture>
  );
}

interface BlockProps {
  readonly thing: Averaged;
  readonly ranges: readonly [Spread, Spread];
  readonly names: readonly [string, string];
  readonly width: number;
  readonly colours: Palette;
}

function Block({ thing: { title, unit, say }, ranges, names, width, colours }: BlockProps) {
  const x = rangeScale(ranges, width);
  const looks = [colours.ink, caseStyle(0, colours).color] as const;
  return (
    <>
      <text x="2" y="18" font-weight="600">
        {title}, {unit}
      </text>
      {ranges.map((range, i) => {
        const y = 62 + i * 60;
        const single = range.p10 === range.p90;
        const figures = single ? say(range.p50) : `${say(range.p50)} (${rangeSaid(range, say)})`;
        const [name = ""] = wrapped(names[i]!, width - figures.length * 8.2 - 14, defaults.sizePx);
        return (
          <g key={i}>
            <text x="2" y={y - 16}>
              {name.length < names[i]!.length ? `${name.replace(/[”\s]+$/, "")} …` : name}
            </text>
            <text x={width} y={y - 16} text-anchor="end" font-weight="600">
              {figures}
            </text>
            <line x1="0" x2={width} y1={y} y2={y} stroke={colours.rule} />
            <rect
              x={x(range.p10)}
              y={y - 7}
              width={Math.max(2, x(range.p90) - x(range.p10))}
              height="14"
              fill={looks[i]}
              fill-opacity="0.32"
              stroke={looks[i]}
              stroke-dasharray={i === 0 ? undefined : "5 3"}
            />
            <line
              x1={x(range.p50)}
              x2={x(range.p50)}
              y1={y - 11}
              y2={y + 11}
              stroke={looks[i]}
              stroke-width="4"
            />
          </g>
        );
      })}
    </>
  );
}
