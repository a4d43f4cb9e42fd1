import type { MoneyOfPair } from "../../../answer/money/money.ts";
import { marksBetween, scaleTo } from "../../../drawing/axis.ts";
import { shortened } from "../../../drawing/text.ts";
import { haPerAcre } from "../../../quantity/constants.ts";
import type { ShownMoney } from "../../sentences/field/moneyText.ts";
import { fixed, percent } from "../../tables/formatters.ts";
import { reachOf } from "../ranges.ts";
import { caseColour, caseLetter, pencil, rule } from "../reportStyle.ts";
import { box, coordinate, lineBetween, svgOf, textAt } from "./drawing.ts";

export const defaults = {
  width: 350,
  height: 126,
  left: 38,
  right: 4,
  headPx: 18,
  footPx: 36,
  /** More years would not be told apart. */
  mostYears: 15,
} as const;

/** What is left so far, year by year: a bar over eight chains in ten, a dot at the middle one, nothing left at the line. */
export function moneyPathPicture({ to, overYears }: MoneyOfPair, p: number, say: ShownMoney): string {
  const { width, height, left, right, headPx, footPx, mostYears } = defaults;
  const perLand = say.land === "ac" ? haPerAcre : 1;
  const path = (overYears?.path ?? []).slice(0, mostYears);
  const [from, most] = reachOf(
    path.flatMap(({ leftSoFarPerHa: { p10, p90 } }) => [p10 * perLand, p90 * perLand]),
  );
  const bottom = height - footPx;
  const y = scaleTo(from, most, bottom, headPx);
  const columnPx = (width - right - left) / Math.max(1, path.length);
  const at = (i: number) => left + (i + 0.5) * columnPx;
  const colour = caseColour(p + 1);
  const half = Math.min(9, columnPx * 0.28);
  const amount = say.perLand(path.map(({ leftSoFarPerHa }) => leftSoFarPerHa.p50));
  const marks = marksBetween(from, most, 4);
  const foot = (i: number, dy: number, text: string) =>
    textAt(at(i), bottom + dy, text, { anchor: "middle", fill: pencil, size: 9 });
  const paidRow = columnPx >= 24;
  return svgOf({
    id: `money-path-${p}`,
    width,
    height,
    title: `What is left so far by year since the change, "${to}"`,
    says: path
      .map(
        ({ year, leftSoFarPerHa: { p50 }, chanceItIsPaid }) =>
          `Year ${year}: ${amount(p50)} ${say.currency}/${say.land} in the middle chain, paid in ${percent(chanceItIsPaid)}.`,
      )
      .join(" "),
    parts: [
      textAt(0, 11, `${caseLetter(p + 1)} against A: ${shortened(to, 36)}`, { bold: true, fill: colour }),
      ...marks.flatMap((mark) => [
        lineBetween(left, y(mark), width - right, y(mark), rule, 0.6),
        textAt(left - 5, y(mark) + 3, fixed(mark, Number.isInteger(mark) ? 0 : 1), {
          anchor: "end",
          fill: pencil,
          size: 9,
        }),
      ]),
      lineBetween(left, y(0), width - right, y(0), pencil, 0.9),
      ...path.flatMap(({ year, leftSoFarPerHa: { p10, p50, p90 }, chanceItIsPaid }, i) => [
        box(
          at(i) - half,
          y(p90 * perLand),
          2 * half,
          Math.max(0.8, y(p10 * perLand) - y(p90 * perLand)),
          `fill="${colour}" fill-opacity="0.2" stroke="${colour}" stroke-width="0.7"`,
        ),
        `<circle cx="${coordinate(at(i))}" cy="${coordinate(y(p50 * perLand))}" r="2.6" fill="${colour}"/>`,
        foot(i, 11, String(year)),
        ...(paidRow || i === path.length - 1 ? [foot(i, 21, percent(chanceItIsPaid))] : []),
      ]),
      textAt(left, bottom + 32, "year since the change, and chains in which it is paid", {
        fill: pencil,
        size: 9,
      }),
    ],
  });
}
