import type { ChainAnswer } from "../../answer/chain/chainAnswer.ts";
import {
  caseTimesSaid,
  chainIntroduction,
  chainSentences,
  otherCropsHead,
  otherCropsSaid,
  pathSaid,
} from "../sentences/chainText.ts";
import { caseTimesTable, sideBySideTable } from "../tables/chainTables.ts";
import type { Formatters } from "../tables/formatters.ts";
import { called, escaped, list, table } from "./markup.ts";
import { pathPicture } from "./pictures/pathPicture.ts";
import type { Section } from "./reportInput.ts";
import { caseLetter } from "./reportStyle.ts";

/** More cases than these are told in words and tables. */
const mostPaths = 4;

/** First year and year after year; nothing where the scenario has no rotation. */
export const years: Section = ({ comparison: { chain }, shown }) => {
  if (chain === undefined) return null;
  const { differences, cases } = chain.byCrop[0]!;
  const [first = "", ...others] = chainSentences(chain, shown);
  const paths = differences.slice(0, mostPaths).map((one, d) => {
    return `<figure>${pathPicture(one, d, shown)}<figcaption>${escaped(`${pathSaid(one, shown)}. Bar over eight chains in ten, dot at the mean.`)}</figcaption></figure>`;
  });
  const times = caseTimesTable(chain, shown);
  return {
    heading: "First year and year after year",
    body: [
      `<p class="said">${escaped(first)}</p>`,
      ...others.map((line) => `<p>${escaped(line)}</p>`),
      `<div class="beside">${differences.map((_, d) => bothAnswers(chain, d, shown)).join("")}</div>`,
      `<div class="pair">${paths.join("")}</div>`,
      table({
        caption: escaped(caseTimesSaid(chain)),
        head: times.head.map(escaped),
        rows: times.rows.map(([, ...cells], c) => [
          `<b>${caseLetter(c)}</b> ${called(cases[c]!.name)}`,
          ...cells.map(escaped),
        ]),
      }),
      ...(chain.byCrop.length > 1 && differences.length > 0
        ? [`<p>${escaped(otherCropsHead)}</p>${list(otherCropsSaid(chain, shown).map(escaped))}`]
        : []),
      `<p class="fine">${escaped(chainIntroduction(chain))}</p>`,
    ].join(""),
  };
};

function bothAnswers(chain: ChainAnswer, d: number, shown: Formatters): string {
  const { head, rows } = sideBySideTable(chain, d, shown);
  const { from, to } = chain.byCrop[0]!.differences[d]!;
  return table({
    caption: escaped(`Extra water taken up, ${shown.length}, and yield: "${to}" against "${from}"`),
    head: head.map(escaped),
    rows: rows.map((cells) => cells.map(escaped)),
  });
}
