import type { MoneyAnswer } from "../../../answer/money/money.ts";
import { marksBetween, scaleTo } from "../../../drawing/axis.ts";
import type { ShownMoney } from "../../sentences/field/moneyText.ts";
import { fixed, percent } from "../../tables/formatters.ts";
import { haPerAcre } from "../../../quantity/constants.ts";
import { bottomAxis, rangeBar, reachOf, zeroLine } from "../ranges.ts";
import { caseColour, caseLetter, pencil } from "../reportStyle.ts";
import { svgOf, textAt } from "./drawing.ts";

export const defaults = {
  title: "What is left a year, costs paid, of each case against the first",
  width: 350,
  labelPx: 22,
  valuePx: 122,
  rowPx: 17,
  mostPairs: 5,
} as const;

/** A bar for each pair, nothing left at the line. */
export function moneyPicture({ pairs, currency }: MoneyAnswer, say: ShownMoney): string {
  const drawn = pairs.slice(0, defaults.mostPairs);
  const perLand = say.land === "ac" ? haPerAcre : 1;
  const nets = drawn.map(({ netPerHa: { p10, p50, p90 } }) => ({
    p10: p10 * perLand,
    p50: p50 * perLand,
    p90: p90 * perLand,
  }));
  const [from, to] = reachOf(nets.flatMap(({ p10, p90 }) => [p10, p90]));
  const x = scaleTo(from, to, defaults.labelPx, defaults.width - defaults.valuePx);
  const bottom = drawn.length * defaults.rowPx + 2;
  const amount = say.perLand(drawn.map(({ netPerHa }) => netPerHa.p50));
  return svgOf({
    id: "money",
    width: defaults.width,
    height: bottom + 15,
    title: defaults.title,
    says: drawn
      .map(
        ({ to: name, netPerHa: { p10, p50, p90 }, chanceItPays }) =>
          `"${name}": ${amount(p10)}, ${amount(p50)} and ${amount(p90)} ${currency}/${say.land}, one in ten below, the middle, one in ten above; pays in ${percent(chanceItPays)}.`,
      )
      .join(" "),
    parts: [
      ...bottomAxis(
        marksBetween(from, to, 4),
        (mark) => fixed(mark, Number.isInteger(mark) ? 0 : 1),
        x,
        0,
        bottom,
        `${currency}/${say.land}`,
      ),
      zeroLine(x, 0, bottom),
      ...drawn.flatMap(({ netPerHa, chanceItPays }, p) => {
        const y = p * defaults.rowPx + 2;
        return [
          textAt(defaults.labelPx - 8, y + 10.5, caseLetter(p + 1), {
            anchor: "end",
            bold: true,
            fill: caseColour(p + 1),
          }),
          rangeBar(nets[p]!, x, y, 13, caseColour(p + 1)),
          textAt(
            defaults.width - defaults.valuePx + 8,
            y + 10.5,
            `${amount(netPerHa.p50)}, pays in ${percent(chanceItPays)}`,
            {
              size: 9.5,
              fill: pencil,
            },
          ),
        ];
      }),
    ],
  });
}
