import { readingsInMoney } from "../sentences/field/digReadingsText.ts";
import { moneySentences } from "../sentences/field/moneyText.ts";
import { rowsSentences } from "../sentences/field/rowPositionsText.ts";
import { escaped, list } from "./markup.ts";
import type { Section } from "./reportInput.ts";

/** What the difference is worth (that it is no advice stands among the limits), and the field as its rows are; nothing where neither is told. */
export const money: Section = ({ comparison, scenario, shown }) => {
  const { unit } = scenario.yieldLine;
  const { money: worth, fieldAverage, digReadings } = comparison;
  if (worth === null && fieldAverage === null) return null;
  const sentences = [
    ...(fieldAverage === null ? [] : rowsSentences(fieldAverage, unit, shown)),
    ...(worth === null
      ? []
      : [
          ...moneySentences(worth, unit, shown),
          ...worth.pairs.flatMap((_, d) => readingsInMoney(digReadings, d, worth.currency, unit, shown)),
        ]),
  ];
  const heading = worth === null ? "Rows of the field" : fieldAverage === null ? "Money" : "Rows and money";
  return { heading, body: `<div class="told">${list(sentences.map(escaped))}</div>` };
};
