import type { MoneyAnswer, MoneyOfPair } from "../../answer/money/money.ts";
import { readingsInMoney } from "../sentences/field/digReadingsText.ts";
import { moneySentences, shownMoney, type ShownMoney } from "../sentences/field/moneyText.ts";
import { rowsSentences } from "../sentences/field/rowPositionsText.ts";
import { rowsSaid } from "../sentences/field/rowsThatChangeText.ts";
import { percent } from "../tables/formatters.ts";
import { called, escaped, list, table } from "./markup.ts";
import { moneyPathPicture } from "./pictures/moneyPathPicture.ts";
import { moneyPicture } from "./pictures/moneyPicture.ts";
import type { ReportInput, Section } from "./reportInput.ts";
import { caseLetter } from "./reportStyle.ts";

/** More pairs than these stand in the table only. */
const mostPaths = 2;

/** What the difference is worth (that it is no advice stands among the limits), as picture and table; nothing where no price is told. */
export const money: Section = (input) => {
  const { comparison, scenario, shown } = input;
  const { money: worth, digReadings } = comparison;
  const { unit } = scenario.yieldLine;
  if (worth === null || worth.pairs.length === 0) return null;
  const say = shownMoney(worth.currency, unit, shown);
  const inARow = worth.pairs.some(({ overYears }) => overYears !== undefined);
  const figures = [
    figure(
      moneyPicture(worth, say),
      `Left a year, ${say.currency}/${say.land}, costs paid: bar from the worst to the best but for one ${inARow ? "chain of years" : "season"} in ten at either end, mark at the middle one.`,
      // On paper the paths say it, and the table.
      inARow ? "on-screen" : "",
    ),
    ...worth.pairs
      .slice(0, mostPaths)
      .flatMap((pair, p) =>
        pair.overYears === undefined
          ? []
          : [
              figure(
                moneyPathPicture(pair, p, say),
                `What is left so far, year by year since the change, ${say.currency}/${say.land}, counted on the first day; below, in how many chains of years it is paid by then.`,
              ),
            ],
      ),
  ];
  const sentences = [
    ...new Set(worth.pairs.flatMap(({ rows }) => (rows === undefined ? [] : [rowsSaid(rows)]))),
    ...worth.pairs.flatMap((_, d) => readingsInMoney(digReadings, d, worth.currency, unit, shown)),
  ];
  return {
    heading: "Money",
    body: `<div class="many">${figures.join("")}${pairsTable(worth, say)}${sentences.length > 0 ? `<div class="told">${list(sentences.map(escaped))}</div>` : ""}</div>`,
  };
};

function figure(svg: string, caption: string, where = ""): string {
  return `<figure${where === "" ? "" : ` class="${where}"`}>${svg}<figcaption>${escaped(caption)}</figcaption></figure>`;
}

function pairsTable(worth: MoneyAnswer, say: ShownMoney): string {
  const { areaHa, pairs, pricePerKg } = worth;
  const inARow = pairs.some(({ overYears }) => overYears !== undefined);
  const breaksEven = pairs.some(({ breakEven }) => breakEven.extraYieldKgPerHa !== null);
  const perLand = say.perLand(pairs.map(({ netPerHa }) => netPerHa.p50));
  return table({
    caption: escaped(
      `A year, against A, at ${say.price(pricePerKg.middle)} ${say.currency}/${say.grain}: the middle ${inARow ? "chain of years" : "season"}`,
    ),
    head: [
      "",
      `left, ${say.currency}/${say.land}`,
      ...(areaHa === null ? [] : [`on ${say.area(areaHa)} ${say.land}, ${escaped(say.currency)}`]),
      inARow ? "pays in, chains" : "pays in, seasons",
      ...(breaksEven ? [`breaks even at, ${say.yieldUnit}`] : []),
      ...(inARow ? ["earned back after, years"] : []),
    ],
    rows: pairs.map((pair, p) => [
      `<b>${caseLetter(p + 1)}</b> ${called(pair.to)}`,
      perLand(pair.netPerHa.p50),
      ...(areaHa === null ? [] : [pair.netForField === null ? "–" : say.whole(pair.netForField.p50)]),
      percent(pair.chanceItPays),
      ...(breaksEven ? [evenSaid(pair, say)] : []),
      ...(inARow ? [yearsSaid(pair)] : []),
    ]),
  });
}

function evenSaid({ breakEven: { extraYieldKgPerHa } }: MoneyOfPair, say: ShownMoney): string {
  return extraYieldKgPerHa === null ? "–" : `${say.yield(extraYieldKgPerHa)}`;
}

function yearsSaid({ overYears }: MoneyOfPair): string {
  const back = overYears?.payBackYears ?? null;
  return back === null ? "–" : back.p50 === null ? "not in its life" : String(back.p50);
}

/** Every sentence about rows and money, with their ranges. */
export function moneyInFull({ comparison, scenario, shown }: ReportInput): string[] {
  const { unit } = scenario.yieldLine;
  const { money: worth, fieldAverage } = comparison;
  return [
    ...(fieldAverage === null ? [] : rowsSentences(fieldAverage, unit, shown)),
    ...(worth === null ? [] : moneySentences(worth, unit, shown)),
  ];
}
