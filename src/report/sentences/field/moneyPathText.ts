import type { MoneyOfPair } from "../../../answer/money/money.ts";
import type { MoneyOverYears } from "../../../answer/money/moneyOverYears.ts";
import { sayNumber } from "../../../quantity/index.ts";
import { wrap } from "../../../wrap.ts";
import { percent } from "../../tables/formatters.ts";
import { tableLines } from "../../tables/textTable.ts";

/** The gains of a change year by year, in words and as a table. */

/** How money is told; see `shownMoney`. */
interface Shown {
  readonly currency: string;
  readonly land: "ac" | "ha";
  readonly perLand: (allPerHa: readonly number[]) => (perHa: number) => string;
}

/** So many columns fit. */
const mostYears = 8;

/** How long until what is bought once is earned back, from each year's own gain; nothing without a rotation. */
export function payBackYearsSaid({ overYears }: MoneyOfPair, say: Shown): string[] {
  if (overYears === undefined) return [];
  const { path, paidAtStartPerHa, payBackYears, isOfItem, years } = overYears;
  const [first, ...later] = path;
  const mean = (of: readonly { readonly gainPerHa: { readonly mean: number } }[]) =>
    of.reduce((sum, { gainPerHa }) => sum + gainPerHa.mean, 0) / Math.max(1, of.length);
  const perLand = say.perLand(path.map(({ gainPerHa }) => gainPerHa.mean));
  const unit = `${say.currency}/${say.land}`;
  const gains =
    later.length === 0
      ? `The first year's gain is ${perLand(mean(path))} ${unit} on average.`
      : `The first year's gain is ${perLand(first!.gainPerHa.mean)} ${unit} on average, that of the years after it ${perLand(mean(later))} a year: each is counted once.`;
  if (payBackYears === null) return [gains];
  const spent = `The ${say.perLand([paidAtStartPerHa])(paidAtStartPerHa)} ${unit} paid at the start`;
  const within = isOfItem ? `within its ${sayNumber(years)} years` : "within these years";
  const { p10, p50, p90 } = payBackYears;
  if (p50 === null)
    return [
      gains,
      `${spent} is not earned back ${within} in a typical chain of years${p10 === null ? "" : `; in the best tenth after ${yearsSaid(p10)}`}.`,
    ];
  const range = p10 === p90 ? "" : ` (P10 to P90: ${p10 ?? p50} to ${p90 ?? "more than it lasts"})`;
  return [gains, `${spent} is earned back after ${yearsSaid(p50)} in a typical chain of years${range}.`];
}

const yearsSaid = (years: number): string => `${years} ${years === 1 ? "year" : "years"}`;

/** Gain of each year, what is left up to it, and how often that is more than nothing. */
export function moneyPathLines(overYears: MoneyOverYears, say: Shown): string[] {
  const { path, interest } = overYears;
  const years = path.slice(0, mostYears);
  const perLand = say.perLand(
    years.flatMap(({ gainPerHa, leftSoFarPerHa }) => [gainPerHa.mean, leftSoFarPerHa.p50]),
  );
  const row = (name: string, of: (year: (typeof years)[number]) => string) => [name, ...years.map(of)];
  const more = path.length > years.length ? `; ${path.length} years are counted` : "";
  return [
    ...wrap(
      `Year by year since the change, ${say.currency}/${say.land}: the gain before costs (mean), what is left so far in a typical chain of years, worth on the first day${interest > 0 ? ` at ${sayNumber(100 * interest, 1)} %` : ""}, and the share of chains in which that is more than nothing${more}`,
    ),
    ...tableLines({
      head: [["year", ...years.map(({ year }) => String(year))]],
      rows: [
        row("gain", ({ gainPerHa }) => perLand(gainPerHa.mean)),
        row("left so far", ({ leftSoFarPerHa }) => perLand(leftSoFarPerHa.p50)),
        row("paid", ({ chanceItIsPaid }) => percent(chanceItIsPaid)),
      ],
    }),
  ];
}
