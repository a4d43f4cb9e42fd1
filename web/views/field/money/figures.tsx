import type { MoneyOfPair } from "../../../../src/answer/money/money.ts";
import type { ShownMoney } from "../../../../src/report/sentences/field/moneyText.ts";
import { percent, type Formatters } from "../../../../src/report/tables/formatters.ts";
import { typeset } from "../../../../src/report/tables/typeset.ts";

interface FiguresProps {
  readonly pair: MoneyOfPair;
  readonly say: ShownMoney;
  readonly shown: Formatters;
}

/** The figures that a decision is made on, one by one. */
export function Figures({ pair, say, shown }: FiguresProps) {
  return (
    <dl class="money-figures">
      {figuresOf(pair, say, shown).map(({ name, figure, unit }) => (
        <div key={name}>
          <dt>{name}</dt>
          <dd>
            <span class="big">{figure}</span> {unit}
          </dd>
        </div>
      ))}
    </dl>
  );
}

interface Figure {
  readonly name: string;
  readonly figure: string;
  readonly unit: string;
}

/** A dash where there is nothing that breaks even. */
export function figuresOf(
  { chanceItPays, breakEven, payBack, overYears }: MoneyOfPair,
  say: ShownMoney,
  shown: Formatters,
): Figure[] {
  const { extraYieldKgPerHa, pricePerKg, extraWaterMm } = breakEven;
  const figure = (name: string, value: number | null, text: (value: number) => string, unit: string) => ({
    name,
    figure: value === null ? "–" : typeset(text(value)),
    unit: value === null ? "" : unit,
  });
  const chance = figure(
    "Pays in",
    chanceItPays,
    percent,
    overYears === undefined ? "of the seasons" : "of the chains of years",
  );
  // Without costs nothing has to be broken even.
  if (payBack === null && extraYieldKgPerHa === null) return [chance];
  const figures = [
    chance,
    figure("Breaks even at extra yield of", extraYieldKgPerHa, say.yield, say.yieldUnit),
    figure("which takes extra water of", extraWaterMm, shown.fineWater, shown.length),
    figure("or at a price of", pricePerKg, say.price, `${say.currency}/${say.grain}`),
  ];
  if (payBack === null) return figures;
  return [
    ...figures,
    figure("Paid back by, each year", payBack.haPerYear, say.area, say.land),
    ...(payBack.haOverLife === null ? [] : [figure("over its life", payBack.haOverLife, say.area, say.land)]),
  ];
}
