import type {
  FieldAverage,
  FieldAverageAtRain,
  FieldChange,
  FieldNumbers,
  RowStep,
} from "../../../answer/comparison/fieldAverage.ts";
import { middleOf } from "../../../answer/runs/middleTotal.ts";
import type { Spread } from "../../../statistics/quantiles.ts";
import type { YieldUnit } from "../../../crop/yield/yieldLine.ts";
import { sayNumber } from "../../../quantity/index.ts";
import { bullets, wrap } from "../../../wrap.ts";
import { shownMoney, type ShownMoney } from "./moneyText.ts";
import { rowsSaid } from "./rowsThatChangeText.ts";
import { rangeSaid } from "../../tables/rangeSaid.ts";
import { fixed, type Formatters } from "../../tables/formatters.ts";
import { tableLines } from "../../tables/textTable.ts";

/** The field as its rows are, for people. */
export function fieldAverageLines(field: FieldAverage, unit: YieldUnit, shown: Formatters): string[] {
  const say = shownMoney(field.currency ?? "", unit, shown);
  const hasMoney = field.currency !== null;
  return [
    "The field, rows weighted by their share",
    ...wrap(positionsSaid(field)),
    "",
    ...wrap(
      `Medians, ${shown.length}${hasMoney ? ` and ${say.currency}/${say.land}` : ""}; the right side is the field less one with all rows as "${field.firstCase}", run by run.`,
    ),
    ...averageTable(field, say, shown, hasMoney),
    ...bullets(averageSaid(field, say, shown)),
  ];
}

/** The same as sentences: which rows, what changing those of two cases does to the field, and what a row does. */
export function rowsSentences(field: FieldAverage, unit: YieldUnit, shown: Formatters): string[] {
  return [positionsSaid(field), ...averageSaid(field, shownMoney(field.currency ?? "", unit, shown), shown)];
}

/** At the middle rainfall total. */
function averageSaid(field: FieldAverage, say: ShownMoney, shown: Formatters): string[] {
  const hasMoney = field.currency !== null;
  const middle = middleOf(field.byRainTotal);
  return [
    ...middle.changes.map((change) => changedSaid(change, say, shown, hasMoney)),
    ...middle.steps.flatMap((step) => stepSaid(step, say, hasMoney)),
  ];
}

function positionsSaid({ positions, rowsInAll }: FieldAverage): string {
  const each = positions.map(({ name, share, rows }) =>
    rows === null
      ? `${name} ${sayNumber(100 * share, 1)} %`
      : `${name} ${rows} (${sayNumber(100 * share, 1)} %)`,
  );
  return rowsInAll === null
    ? `Shares of the rows: ${each.join(", ")}.`
    : `Of ${rowsInAll} rows of one pass: ${each.join(", ")}.`;
}

function averageTable(
  { byRainTotal }: FieldAverage,
  say: ShownMoney,
  shown: Formatters,
  hasMoney: boolean,
): string[] {
  const worths = (of: (at: FieldAverageAtRain) => FieldNumbers) =>
    say.perLand(byRainTotal.map((at) => of(at).worthPerHa?.p50 ?? 0));
  const whole = worths(({ field }) => field);
  const extra = worths(({ againstAllAsFirst }) => againstAllAsFirst);
  const cells = ({ transpirationMm, yieldKgPerHa, worthPerHa }: FieldNumbers, difference: boolean) => [
    (difference ? shown.fineWater : shown.water)(transpirationMm.p50),
    say.yield(yieldKgPerHa.p50),
    ...(worthPerHa === null ? [] : [(difference ? extra : whole)(worthPerHa.p50)]),
  ];
  const head = ["by crop", say.yieldUnit, ...(hasMoney ? ["worth"] : [])];
  return tableLines({
    head: [[`rain, ${shown.length}`, ...head, ...head]],
    rows: byRainTotal.map(({ rainTotalMm, field, againstAllAsFirst }) => [
      rainTotalMm === null ? "as is" : shown.total(rainTotalMm),
      ...cells(field, false),
      ...cells(againstAllAsFirst, true),
    ]),
  });
}

/** `"straight" against "turned": 2 of 8 rows change: ... The field then uses 0.12 in more water and yields 1.4 bu/ac more.` */
function changedSaid(
  { from, to, rows, difference }: FieldChange,
  say: ShownMoney,
  shown: Formatters,
  hasMoney: boolean,
): string {
  const which = `"${to}" against "${from}": ${rowsSaid(rows)}`;
  if (rows.share === 0) return which;
  const { transpirationMm, yieldKgPerHa, worthPerHa } = difference;
  const worth = worthPerHa === null || !hasMoney ? "" : `, worth ${worthSaid(worthPerHa, say)}`;
  return `${which} The field then uses ${changeSaid(transpirationMm, shown.fineWater, shown.length)} of water and yields ${changeSaid(yieldKgPerHa, say.yield, say.yieldUnit)}${worth}.`;
}

function stepSaid(
  { position, plain, rows, share, oneMore, oneFewer }: RowStep,
  say: ShownMoney,
  hasMoney: boolean,
): string[] {
  const change = oneMore ?? oneFewer;
  if (change === null) return [];
  const count = rows === null ? `${fixed(share * 100, 0)} % more of the rows` : "One more row";
  const fewer = rows === null ? `${fixed(share * 100, 0)} % fewer of the rows` : "One row fewer";
  const worth = change.worthPerHa === null || !hasMoney ? "" : `, worth ${worthSaid(change.worthPerHa, say)}`;
  const goes =
    oneMore === null
      ? `${fewer} in "${position}" (one more in "${plain}")`
      : `${count} in "${position}" in place of "${plain}"`;
  const back = oneMore !== null && oneFewer !== null ? "; one fewer does the opposite" : "";
  return [
    `${goes}: ${changeSaid(change.yieldKgPerHa, say.fineYield, say.yieldUnit)} over the field${worth}${rows === null ? "" : back}.`,
  ];
}

function worthSaid(worth: Spread, say: ShownMoney): string {
  return changeSaid(worth, say.perLand(Object.values(worth)), `${say.currency}/${say.land}`);
}

/** `0.4 in more (P10 to P90: 0.1 to 0.8)`, `0.4 in less (P10 to P90: 0.1 to 0.8 less)`. */
function changeSaid(spread: Spread, text: (value: number) => string, unit: string): string {
  const { p10, p50, p90 } = spread;
  const middle = text(Math.abs(p50));
  const way = Number(middle) === 0 ? `${middle} ${unit}` : `${middle} ${unit} ${p50 < 0 ? "less" : "more"}`;
  return p10 === p90 ? way : `${way} (P10 to P90: ${rangeSaid(spread, text)})`;
}
