import { expect, test } from "vitest";
import type { ChainAnswer, ChainDifference } from "../../../src/answer/chain/chainAnswer.ts";
import { chainSentences, wettedSaid } from "../../../src/report/sentences/chainText.ts";
import { shownIn } from "../../../src/report/tables/formatters.ts";

const extra = (meanMm: number) => ({
  years: 100,
  extraWaterUsedMm: { mean: meanMm, p10: 0, p50: meanMm, p90: meanMm },
  extraYield: { unit: "bu/ac" as const, mean: 1, p10: 0, p50: 1, p90: 2 },
});

const one = (name: string, after: number, met: number) => ({
  name,
  finalRootDepthMm: 600,
  depthWettedMm: 500,
  storedAtSowingMm: 80,
  fallowStorageShare: 0.25,
  transpirationMm: 150,
  shareAfterFlowering: after,
  demandMetAroundFlowering: met,
});

function answer(change: Partial<ChainDifference>, ...cases: ReturnType<typeof one>[]): ChainAnswer {
  const byCrop = [
    {
      crop: "grain sorghum",
      isAsked: true,
      cases: cases.length > 0 ? cases : [one("as now", 0.4, 0.3), one("two inches deeper", 0.41, 0.3)],
      differences: [
        {
          from: "as now",
          to: "two inches deeper",
          onlyRootsDiffer: true,
          extraDepthMm: 50.8,
          firstYear: extra(7.62),
          yearAfterYear: extra(0.508),
          wettedShare: 0.11,
          path: [],
          timingDiffers: false,
          ...change,
        },
      ],
    },
  ];
  return {
    rotation: "every year",
    crops: ["grain sorghum"],
    asked: "grain sorghum",
    startsAsStated: false,
    chains: 17,
    warmUpYears: 6,
    settlingYears: 4,
    rainTotalMm: 355.6,
    byCrop,
    byRainTotal: [{ rainTotalMm: 355.6, byCrop }],
  };
}

const said = (chain: ChainAnswer, system: "us" | "metric" = "us") => chainSentences(chain, shownIn(system));

test.each([
  [0, "no year"],
  [0.11, "1 year of 9"],
  [0.25, "1 year of 4"],
  [0.5, "1 year of 2"],
  [0.33, "1 year of 3"],
  [0.4, "2 years of 5"],
  [0.54, "1 year of 2"],
  [0.66, "7 years of 10"],
  [0.949, "9 years of 10"],
  [0.95, "nearly every year"],
  [1, "nearly every year"],
])("wetted in %d of the years: %s", (share, text) => expect(wettedSaid(share)).toBe(text));

test("first year and each after in one plain sentence", () => {
  expect(said(answer({}))).toEqual([
    "At 14 in of rain, the deeper roots bring 0.30 inches of water in the first year and next to nothing in a year after that, on average: the rain wetted that depth in 1 year of 9.",
  ]);
  expect(said(answer({ yearAfterYear: extra(2.54) }))[0]).toContain(
    "bring 0.30 inches of water in the first year and 0.10 in a year after that, on average:",
  );
  expect(said(answer({}), "metric")[0]).toContain(
    "bring 7.6 mm of water in the first year and next to nothing in a year",
  );
});

test("what is the same in every year says that alone, and no rain as its reason", () => {
  const none = { mean: 0, p10: 0, p50: 0, p90: 0 };
  const same = { years: 9, extraWaterUsedMm: none, extraYield: { unit: "bu/ac" as const, ...none } };
  const equal = { extraDepthMm: 0, firstYear: same, yearAfterYear: same, wettedShare: 0.25 };
  expect(said(answer(equal))).toEqual([
    'At 14 in of rain, "two inches deeper" took up exactly as much water as "as now" in every year: no difference in water or yield.',
  ]);
  const rarely = { ...same, extraYield: { ...same.extraYield, mean: 0.1 } };
  expect(said(answer({ ...equal, yearAfterYear: rarely }))[0]).toContain("next to nothing");
});

test("what brings and then costs says so; a case that differs in more than roots goes by its name", () => {
  expect(said(answer({ onlyRootsDiffer: false, yearAfterYear: extra(-2.54) }))[0]).toContain(
    '"two inches deeper" brings 0.30 inches of water in the first year and costs 0.10 in a year after that, on average: the rain wetted the soil below the shallower roots in',
  );
});

test("shallower roots cost, and no depth of theirs is wetted", () => {
  const change = { extraDepthMm: -50.8, firstYear: extra(-5.08), yearAfterYear: extra(-2.54) };
  expect(said(answer(change))[0]).toBe(
    "At 14 in of rain, the shallower roots cost 0.20 inches of water in the first year and 0.10 in a year after that, on average: the rain wetted the soil below the shallower roots in 1 year of 9.",
  );
});

test("a hundredth of an inch is called next to nothing, as in the first sentence of a comparison", () => {
  expect(said(answer({ firstYear: extra(0.254), yearAfterYear: extra(0), wettedShare: 0 }))[0]).toBe(
    "At 14 in of rain, the deeper roots bring next to nothing, in the first year and in a year after that: the rain wetted that depth in no year.",
  );
  expect(said(answer({ firstYear: extra(0), yearAfterYear: extra(2.54) }))[0]).toContain(
    "bring next to nothing in the first year and 0.10 inches of water in a year after that, on average: the rain",
  );
});

test("timing is told where it, not the amount, is the difference", () => {
  const [text] = said(
    answer(
      { firstYear: extra(0), yearAfterYear: extra(0.1), timingDiffers: true },
      one("as now", 0.4, 0.3),
      one("two inches deeper", 0.5, 0.42),
    ),
  );
  expect(text).toContain(
    '"two inches deeper" 50 % after flowering and 42 % of the demand met around it, "as now" 40 % after flowering and 30 % of the demand met around it. Timing, not amount, is the difference.',
  );
});
