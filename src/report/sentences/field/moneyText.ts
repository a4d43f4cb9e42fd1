import type { MoneyAnswer, MoneyOfPair } from "../../../answer/money/money.ts";
import { moneyPathLines, payBackYearsSaid } from "./moneyPathText.ts";
import { rowsSaid } from "./rowsThatChangeText.ts";
import type { Spread } from "../../../statistics/quantiles.ts";
import { usOfKgPerHa, type YieldUnit } from "../../../crop/yield/yieldLine.ts";
import { haPerAcre } from "../../../quantity/constants.ts";
import { sayNumber } from "../../../quantity/index.ts";
import { bullets, wrap } from "../../../wrap.ts";
import { rangeSaid } from "../../tables/rangeSaid.ts";
import { fixed, percent, type Formatters } from "../../tables/formatters.ts";
import { tableLines } from "../../tables/textTable.ts";

/** Money in the units people count it in. */
export interface ShownMoney {
  readonly currency: string;
  readonly land: "ac" | "ha";
  readonly grain: "bu" | "lb" | "kg";
  readonly yieldUnit: "bu/ac" | "lb/ac" | "kg/ha";
  /** How money for each hectare is told beside the others: to the cent while all are small, or in whole units. */
  readonly perLand: (allPerHa: readonly number[]) => (perHa: number) => string;
  readonly whole: (amount: number) => string;
  readonly price: (perKg: number) => string;
  readonly area: (ha: number) => string;
  readonly yield: (kgPerHa: number) => string;
  /** A digit finer, for what one row does. */
  readonly fineYield: (kgPerHa: number) => string;
}

/** Amounts for each acre that all stay below this are told to the cent. */
const smallAmount = 100;

export function shownMoney(currency: string, unit: YieldUnit, { system }: Formatters): ShownMoney {
  const us = system === "us";
  const bushels = unit.us === "bu/ac";
  const price = (perKg: number) => {
    const each = us ? perKg * unit.kgPerUsUnit : perKg;
    // A pound's price may need a third digit; none is shown that says nothing.
    return fixed(each, Math.abs(each) < 1 && !(us && bushels) ? 3 : 2).replace(/(\.\d\d)0$/, "$1");
  };
  const yieldTo = (finer: 0 | 1) => (kgPerHa: number) =>
    us ? fixed(usOfKgPerHa(kgPerHa, unit), (bushels ? 1 : 0) + finer) : fixed(kgPerHa, finer);
  return {
    currency,
    land: us ? "ac" : "ha",
    grain: us ? (bushels ? "bu" : "lb") : "kg",
    yieldUnit: us ? unit.us : "kg/ha",
    perLand(allPerHa) {
      const factor = us ? haPerAcre : 1;
      const small = allPerHa.every((perHa) => Math.abs(perHa) * factor < smallAmount);
      return (perHa) => fixed(perHa * factor, small ? 2 : 0);
    },
    whole: (amount) => fixed(amount, 0),
    price,
    area: (ha) => fixed(us ? ha / haPerAcre : ha, 0),
    yield: yieldTo(0),
    fineYield: yieldTo(1),
  };
}

export const moneyCaution =
  "An estimate to think with, not advice, and no basis for insurance or credit; a licensed local adviser and local rules come first.";

/** The partial budget of each pair, with ranges, break-even, and the table by price and rainfall. */
export function moneyLines(money: MoneyAnswer, unit: YieldUnit, shown: Formatters): string[] {
  const say = shownMoney(money.currency, unit, shown);
  return [
    "Money",
    ...[priceSaid(money, say), ...alikeSaid(money)].flatMap((line) => wrap(line)),
    ...money.pairs.flatMap((pair, p) => ["", ...pairLines(money, pair, p, say, shown)]),
    "",
    ...bullets([moneyCaution]),
  ];
}

/** The same as sentences: the price, then each pair. */
export function moneySentences(money: MoneyAnswer, unit: YieldUnit, shown: Formatters): string[] {
  const say = shownMoney(money.currency, unit, shown);
  return [
    priceSaid(money, say),
    ...alikeSaid(money),
    ...money.pairs.flatMap((pair) => {
      const [first = "", ...others] = pairSaid(pair, money, say, shown);
      return [`"${pair.to}" against "${pair.from}": ${first[0]?.toLowerCase()}${first.slice(1)}`, ...others];
    }),
  ];
}

/** What one pair leaves, where it breaks even, and what pays it back. */
export function pairSentences(
  money: MoneyAnswer,
  pair: MoneyOfPair,
  unit: YieldUnit,
  shown: Formatters,
): string[] {
  return [...pairSaid(pair, money, shownMoney(money.currency, unit, shown), shown), ...alikeSaid(money)];
}

function priceSaid({ pricePerKg: { low, middle, high }, pairs }: MoneyAnswer, say: ShownMoney): string {
  const price = `${say.price(middle)} ${say.currency}/${say.grain}`;
  const range = low < high ? `, drawn from ${say.price(low)} to ${say.price(high)}` : "";
  const each =
    pairs[0]?.overYears === undefined
      ? "Each run has its own weather, yield line and price."
      : "Each chain of years has its own soil and price, each of its years its own weather and yield line.";
  return `Price ${price}${range}. ${each}`;
}

function pairSaid(pair: MoneyOfPair, money: MoneyAnswer, say: ShownMoney, shown: Formatters): string[] {
  const { areaHa } = money;
  return [
    netSaid(pair, money, say),
    ...(pair.rows === undefined ? [] : [rowsSaid(pair.rows)]),
    ...breakEvenSaid(pair, money, say, shown),
    ...payBackYearsSaid(pair, say),
    ...payBackSaid(pair, areaHa, say),
  ];
}

/** Seasons by themselves do not know that deep water may be there only once. */
function alikeSaid({ alikeForYears: years }: MoneyAnswer): string[] {
  if (years === null) return [];
  return [
    `What is bought once is spread over ${sayNumber(years)} years as if each were like these seasons; deep water used once may not come back: a rotation tells each year's own gain.`,
  ];
}

function pairLines(
  money: MoneyAnswer,
  pair: MoneyOfPair,
  p: number,
  say: ShownMoney,
  shown: Formatters,
): string[] {
  return [
    ...wrap(`"${pair.to}" against "${pair.from}"`),
    ...budgetTable(pair, money, say),
    ...bullets(pairSaid(pair, money, say, shown)),
    ...(pair.overYears === undefined ? [] : ["", ...moneyPathLines(pair.overYears, say)]),
    "",
    ...priceTable(money, p, say, shown),
  ];
}

function budgetTable({ budgetPerHa, overYears }: MoneyOfPair, money: MoneyAnswer, say: ShownMoney): string[] {
  const { addedReturns, reducedCosts, addedCosts, reducedReturns, net } = budgetPerHa;
  const perLand = say.perLand(Object.values(budgetPerHa));
  return tableLines({
    head: [
      [
        `a year, at the ${overYears === undefined ? "extra yield of a typical year" : "gain of a typical chain"} and ${say.price(money.pricePerKg.middle)}`,
        `${say.currency}/${say.land}`,
      ],
    ],
    rows: [
      ["added returns", perLand(addedReturns)],
      ["reduced costs", perLand(reducedCosts)],
      ["added costs", perLand(-addedCosts)],
      ["reduced returns", perLand(-reducedReturns)],
      ["left", perLand(net)],
    ],
  });
}

function netSaid(
  { netPerHa, netForField, chanceItPays, overYears }: MoneyOfPair,
  { areaHa, pricePerKg: { low, high } }: MoneyAnswer,
  say: ShownMoney,
): string {
  const perLand = amountSaid(netPerHa, say.perLand(Object.values(netPerHa)), `${say.currency}/${say.land}`);
  const whole =
    netForField === null || areaHa === null
      ? ""
      : `, or ${amountSaid(netForField, say.whole, say.currency)} on ${say.area(areaHa)} ${say.land}`;
  const verb = netPerHa.p50 < 0 ? "loses" : "leaves";
  const at = low < high ? " at a price drawn for each year" : "";
  if (overYears === undefined)
    return `A typical year${at} ${verb} ${perLand}${whole}. It pays in ${percent(chanceItPays)} of the seasons.`;
  const interest = overYears.interest > 0 ? ` at ${sayNumber(100 * overYears.interest, 1)} % interest` : "";
  return `Over ${sayNumber(overYears.years)} years, each with its own gain, a typical chain of years${at} ${verb} ${perLand} a year${interest}${whole === "" ? "" : `${whole}`}. It pays in ${chainsSaid(chanceItPays, overYears.chains)}.`;
}

/** `14 of 17 chains of years` */
function chainsSaid(share: number, chains: number): string {
  return `${Math.round(share * chains)} of ${chains} chains of years`;
}

/** `12 USD/ac (P10 to P90: 3 to 20)`, the amount without its sign. */
function amountSaid(spread: Spread, say: (value: number) => string, unit: string): string {
  const middle = `${say(Math.abs(spread.p50))} ${unit}`;
  return spread.p10 === spread.p90 ? middle : `${middle} (P10 to P90: ${rangeSaid(spread, say)})`;
}

/** A price beyond so many times the one told is no figure to think with. Ours. */
const farFromPrice = 10;

/** At the middle price, as the budget; nothing where nothing is costed. */
function breakEvenSaid(
  { breakEven, rows, overYears }: MoneyOfPair,
  { pricePerKg: { middle } }: MoneyAnswer,
  say: ShownMoney,
  shown: Formatters,
): string[] {
  const { extraYieldKgPerHa, pricePerKg, extraWaterMm } = breakEven;
  if (extraYieldKgPerHa === null) return [];
  if (extraYieldKgPerHa <= 0)
    return [
      `It pays for itself without extra yield, and with up to ${say.yield(-extraYieldKgPerHa)} ${say.yieldUnit} less.`,
    ];
  const water =
    extraWaterMm === null ? "" : `, which takes ${shown.fineWater(extraWaterMm)} ${shown.length} more water`;
  const everyYear =
    overYears === undefined ? "" : " in an average year, years without its harvest among them";
  const ofRows =
    rows === undefined || rows.share <= 0 || rows.share >= 1
      ? ""
      : ` over the field (${say.yield(extraYieldKgPerHa / rows.share)} on the rows that change)`;
  const price = `${say.currency}/${say.grain}`;
  return [
    `At ${say.price(middle)} ${price} it breaks even at ${say.yield(extraYieldKgPerHa)} ${say.yieldUnit} more${everyYear}${ofRows}${water}${
      pricePerKg === null
        ? "; there is no extra yield, so no price breaks even"
        : pricePerKg > farFromPrice * middle
          ? `; with so little extra yield only a price of more than ${farFromPrice} times that would`
          : `, or at ${say.price(pricePerKg)} ${price} with the ${overYears === undefined ? "extra yield of a typical year" : "extra yield of a typical chain"}`
    }.`,
  ];
}

function payBackSaid({ payBack }: MoneyOfPair, areaHa: number | null, say: ShownMoney): string[] {
  if (payBack === null) return [];
  const spent = `What is spent on the field as a whole comes to ${say.whole(payBack.yearly)} ${say.currency} a year`;
  if (payBack.haPerYear === null) return [`${spent}; with no gain per ${say.land} no area pays it back.`];
  const life =
    payBack.haOverLife === null ? "" : `, ${say.area(payBack.haOverLife)} ${say.land} over its life`;
  const field = areaHa === null ? "" : `; the field has ${say.area(areaHa)}`;
  return [`${spent}, paid back by ${say.area(payBack.haPerYear)} ${say.land} a year${life}${field}.`];
}

/** Median net and chance, by price across and rainfall total down. */
function priceTable(money: MoneyAnswer, p: number, say: ShownMoney, shown: Formatters): string[] {
  const { byRainTotal } = money;
  const prices = byRainTotal[0]!.pairs[p]!.byPrice.map(({ pricePerKg }) => say.price(pricePerKg));
  const perLand = say.perLand(
    byRainTotal.flatMap(({ pairs }) => pairs[p]!.byPrice.map(({ netPerHa }) => netPerHa.p50)),
  );
  const table = tableLines({
    head: [
      ["", ...prices.map((price) => `at ${price}`)],
      [`rain, ${shown.length}`, ...prices.map(() => `${say.currency}/${say.grain}`)],
    ],
    rows: byRainTotal.map(({ rainTotalMm, pairs }) => [
      rainTotalMm === null ? "as is" : shown.total(rainTotalMm),
      ...pairs[p]!.byPrice.map(
        ({ netPerHa, chanceItPays }) => `${perLand(netPerHa.p50)} (${percent(chanceItPays)})`,
      ),
    ]),
  });
  const { low, high } = money.pricePerKg;
  const years = byRainTotal[0]!.pairs[p]!.overYears;
  const left = years === undefined ? "Left in a typical year" : "Left a year in a typical chain of years";
  const share = years === undefined ? "share of the seasons" : "share of the chains";
  return [
    ...wrap(
      `${left}, ${say.currency}/${say.land}, and ${share} in which it pays; each column holds one price${low < high ? ", above each draws its own" : ": yours, a fifth less and a fifth more"}:`,
    ),
    ...table,
  ];
}
