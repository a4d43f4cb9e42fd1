import type { Comparison, DifferenceAnswer } from "../../answer/comparison/comparison.ts";
import type { Spread } from "../../statistics/quantiles.ts";
import { differenceDigits } from "../tables/differenceDigits.ts";
import { firstLines } from "../sentences/firstLine.ts";
import { fixed, percent, type Formatters } from "../tables/formatters.ts";
import { differencePicture } from "./pictures/differencePicture.ts";
import { caseLetter } from "./reportStyle.ts";
import { called, escaped, table } from "./markup.ts";
import { numbersPicture } from "./pictures/numbersPicture.ts";
import type { Section } from "./reportInput.ts";
import { yieldPicture } from "./pictures/yieldPicture.ts";

/** The answer in plain words, in pictures and in numbers. */
export const answer: Section = (input) => {
  const { comparison, shown } = input;
  const [first = "", ...others] = firstLines(comparison, shown);
  const compared = comparison.differences.length > 0;
  // Year after year, what stands above tells the water of each year: once is enough on paper.
  const inARow = comparison.chain === undefined ? "" : "on-screen";
  const figures = [
    ...(compared
      ? [
          figure(
            numbersPicture(input),
            `Water for the extra depth${atRain(comparison, shown)}, ${shown.length}. 1 extra depth times what the soil can hold; 2 held there when sown; 3 taken up by the crop; the line holds eight seasons in ten.`,
            inARow,
          ),
        ]
      : []),
    figure(
      yieldPicture(input),
      `Yield${atRain(comparison, shown)}: bar over eight seasons in ten, mark at the middle one. Each case by itself; most of the width is the seasons' and meets all cases alike.`,
    ),
    ...(compared
      ? [
          figure(
            differencePicture(input),
            `Extra water taken up by rainfall total, ${shown.length}, each season against the same season of A; beside it the yield it is worth and in how many seasons it was ${shown.water(comparison.method.matteredFromMm)} ${shown.length} or more.`,
            inARow,
          ),
        ]
      : []),
  ];
  return {
    heading: comparison.chain === undefined ? "The answer" : `Year after year, ${comparison.chain.asked}`,
    body: [
      `<p class="said">${escaped(first)}</p>`,
      ...others.map((line) => `<p>${escaped(line)}</p>`),
      `<div class="pair flows">${figures.join("")}${inARow === "" ? caseTable(comparison, shown) : ""}</div>`,
      ...(inARow === "" ? [] : [`<div class="${inARow}">${caseTable(comparison, shown)}</div>`]),
      // On paper the last picture says the same.
      ...(compared ? [`<div class="on-screen">${differenceTable(comparison, shown)}</div>`] : []),
    ].join(""),
  };
};

function figure(svg: string, caption: string, where = ""): string {
  return `<figure${where === "" ? "" : ` class="${where}"`}>${svg}<figcaption>${escaped(caption)}</figcaption></figure>`;
}

function atRain({ rainTotalMm }: Comparison, shown: Formatters): string {
  return rainTotalMm === null ? "" : ` at ${shown.total(rainTotalMm)} ${shown.length} of rain`;
}

function caseTable(comparison: Comparison, shown: Formatters): string {
  const { cases, method } = comparison;
  const many = method.runs > 1;
  return table({
    caption: `${many ? `A typical year (medians of ${method.runs} runs)` : "One run"}${atRain(comparison, shown)}, ${shown.length}; yield, ${cases[0]!.yield.unit}${many ? ". Low and high: one season in ten is below, one above" : ""}`,
    head: ["", "roots", "stored at sowing", "by crop", "by soil", "yield", ...(many ? ["low", "high"] : [])],
    rows: cases.map((one, c) => [
      `<b>${caseLetter(c)}</b> ${called(one.name)}`,
      shown.depth(one.finalRootDepthMm),
      shown.water(one.storedAtSowingMm),
      shown.water(one.transpirationMm),
      shown.water(one.evaporationMm),
      fixed(one.yield.p50, 0),
      ...(many ? [fixed(one.yield.p10, 0), fixed(one.yield.p90, 0)] : []),
    ]),
  });
}

function differenceTable(comparison: Comparison, shown: Formatters): string {
  const { byRainTotal, differences, method } = comparison;
  const many = method.runs > 1;
  const unit = differences[0]!.extraYield.unit;
  return table({
    caption: `The differences to A by rainfall total, ${shown.length}; yield, ${unit}${many ? ". Low and high: one season in ten is below, one above" : ""}`,
    head: [
      "",
      "rain",
      "extra depth",
      "1 rule of thumb",
      "2 stored there",
      "3 taken up",
      ...(many ? ["low", "high"] : []),
      "yield",
      ...(many ? ["low", "high"] : []),
      "seasons it mattered",
    ],
    rows: differences.flatMap((difference, d) => {
      const digits = differenceDigits(comparison, d, shown);
      return byRainTotal.map((at) => {
        const one: DifferenceAnswer = at.differences[d]!;
        const ends = ({ p10, p90 }: Spread, say: (value: number) => string) =>
          many ? [say(p10), say(p90)] : [];
        return [
          `<b>${caseLetter(d + 1)}</b> ${called(difference.to)}`,
          at.rainTotalMm === null ? "as it came" : shown.total(at.rainTotalMm),
          shown.depth(one.extraDepthMm),
          digits.water(one.ruleOfThumbMm),
          digits.water(one.storedInExtraDepthMm),
          digits.water(one.extraWaterUsedMm.p50),
          ...ends(one.extraWaterUsedMm, digits.water),
          digits.yield(one.extraYield.p50),
          ...ends(one.extraYield, digits.yield),
          percent(one.shareOfSeasonsItMattered),
        ];
      });
    }),
  });
}
