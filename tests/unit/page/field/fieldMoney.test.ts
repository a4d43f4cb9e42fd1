import { describe, expect, test } from "vitest";
import { moneyOfExtraYield, type MoneyAnswer, type MoneyOfPair } from "../../../../src/answer/money/money.ts";
import type { MoneyPlan } from "../../../../src/scenario/moneyPlan.ts";
import { countTracks, type RowPositions } from "../../../../src/scenario/rowPositions.ts";
import { bushelsPerAcre } from "../../../../src/crop/yield/yieldLine.ts";
import {
  moneySentences,
  pairSentences,
  shownMoney,
} from "../../../../src/report/sentences/field/moneyText.ts";
import { shownIn } from "../../../../src/report/tables/formatters.ts";
import { caseNamedIn } from "../../../../web/forms/edits/caseEdits.ts";
import { budgetLayout } from "../../../../web/pictures/field/budgetLayout.ts";
import { priceByRainCells } from "../../../../web/pictures/field/priceByRainCells.ts";
import {
  numberEvery,
  passLayout,
  placeAtShare,
  rangeScale,
  rowsByTyre,
  rowsSorted,
  sayPlace,
  wholeShares,
} from "../../../../web/pictures/field/rowsOfPassLayout.ts";
import { firstPrice, rangeWith } from "../../../../web/views/field/money/edits.ts";
import {
  countedStart,
  sharesOf,
  tyresFromText,
  tyresIn,
  tyreTurned,
} from "../../../../web/views/field/rows/edits.ts";

describe("rows of one pass", () => {
  test("are drawn as they are counted", () => {
    for (const tyres of [[6, 11], [6.5, 10.5], [1, 16], [0.5], []]) {
      const drawn = rowsByTyre(16, tyres, { inTrack: 2, besideTrack: 1, other: 0 });
      const count = (c: number) => drawn.filter(({ caseIndex }) => caseIndex === c).length;
      expect({ inTrack: count(2), besideTrack: count(1), other: count(0) }).toEqual(countTracks(16, tyres));
    }
  });

  test("stand for shares in whole rows that make all of them", () => {
    expect(wholeShares([0.125, 0.875], 50)).toEqual([6, 44]);
    expect(wholeShares([1 / 3, 1 / 3, 1 / 3], 50).reduce((a, b) => a + b)).toBe(50);
    expect(wholeShares([0, 1], 50)).toEqual([0, 50]);
    const positions: RowPositions["positions"] = [
      { name: "a", caseIndex: 1, afterIndex: null, share: 0.3, rows: null },
      { name: "b", caseIndex: 0, afterIndex: null, share: 0.7, rows: null },
    ];
    const drawn = rowsSorted({ positions, rowsInAll: null, plainIndex: 1 }, 10);
    expect(drawn.map(({ caseIndex }) => caseIndex).join("")).toBe("1110000000");
  });

  test("have a place under every point, on a row or between two", () => {
    const { left, right, x, gap } = passLayout(16, 400);
    for (let place = 0.5; place <= 16.5; place += 0.5)
      expect(placeAtShare((x(place) - left) / (right - left), 16)).toBe(place);
    expect(gap).toBeCloseTo(392 / 16, 9);
    expect([placeAtShare(-1, 16), placeAtShare(2, 16)]).toEqual([0.5, 16.5]);
    expect([0.5, 1, 6.5, 16.5].map((place) => sayPlace(place, 16))).toEqual([
      "left of row 1",
      "row 1",
      "between rows 6 and 7",
      "right of row 16",
    ]);
    expect([30, 12, 7, 3, 0.9].map(numberEvery)).toEqual([1, 2, 5, 10, 20]);
  });
});

describe("what is written of rows", () => {
  test("a tyre is set in order, and taken away again", () => {
    const set = tyreTurned({ tyreRows: [6, 11], inTrack: "a" }, 8.5);
    expect(set[0]).toEqual(["rowPositions.tyreRows", [6, 8.5, 11]]);
    expect(tyreTurned({ tyreRows: [6, 8.5, 11] }, 8.5)[0]).toEqual(["rowPositions.tyreRows", [6, 11]]);
  });

  test("without its last tyre no row is tracked, and the empty list is not written", () => {
    expect(tyreTurned({ tyreRows: [6] }, 6)).toEqual([
      ["rowPositions.tyreRows", undefined],
      ["rowPositions.rowsInTrack", 0],
    ]);
    expect(tyreTurned({ rowsInTrack: 0 }, 3)).toEqual([
      ["rowPositions.tyreRows", [3]],
      ["rowPositions.rowsInTrack", undefined],
      ["rowPositions.rowsBesideTrack", undefined],
    ]);
  });

  test("places typed stay as typed where they are no numbers", () => {
    expect(tyresFromText("6, 11.5, x")).toEqual([6, 11.5, "x"]);
    expect(tyresFromText(" ")).toBeUndefined();
    expect(tyresIn({ tyreRows: [11, "x", 6, 0] })).toEqual([6, 11]);
  });

  test("a first pass puts the case named after the track, or the shallower one, into it", () => {
    expect(countedStart(["left", "removed", "wheel track"], [])).toMatchObject({
      inTrack: "wheel track",
      other: "left",
    });
    expect(countedStart(["over the pan", "loosened"], [600, 800])).toMatchObject({
      inTrack: "over the pan",
      other: "loosened",
    });
    expect(countedStart(["deep", "shallow"], [900, 800])).toMatchObject({
      inTrack: "shallow",
      other: "deep",
    });
  });

  test("rows counted become shares", () => {
    const positions = [
      { name: "wheel track", caseIndex: 1, afterIndex: null, share: 1 / 16, rows: 1 },
      { name: "beside the track", caseIndex: 0, afterIndex: null, share: 0, rows: 0 },
      { name: "other", caseIndex: 0, afterIndex: null, share: 15 / 16, rows: 15 },
    ];
    expect(sharesOf({ positions, rowsInAll: 16, plainIndex: 2 }, ["as is", "pressed"])).toEqual([
      { name: "wheel track", case: "pressed", share: "6.25 %" },
      { name: "other", case: "as is", share: "93.75 %" },
    ]);
  });
});

describe("what is written of money", () => {
  test("a first price is in the crop's own unit", () => {
    expect(firstPrice("bu/ac", "us")).toBe("5 USD/bu");
    expect(firstPrice("lb/ac", "us")).toBe("0.2 USD/lb");
    expect(firstPrice("bu/ac", "metric")).toBe("0.2 USD/kg");
  });

  test("a price range keeps both ends, and goes with the last of them", () => {
    expect(rangeWith([], 1, "6 USD/bu")).toEqual(["", "6 USD/bu"]);
    expect(rangeWith(["4 USD/bu", "6 USD/bu"], 0, "")).toEqual(["", "6 USD/bu"]);
    expect(rangeWith(["", "6 USD/bu"], 1, "")).toBeUndefined();
  });
});

const spread = (p50: number, half = 0) => ({ p10: p50 - half, p50, p90: p50 + half });

describe("pictures of money", () => {
  const pair = {
    budgetPerHa: { addedReturns: 10, reducedCosts: 2, addedCosts: 5, reducedReturns: 1, net: 6 },
    netPerHa: spread(6, 14),
  };

  test("the four parts and what is left stand on one scale, to their own sides, within the drawing", () => {
    const { middle, lines, left, whisker } = budgetLayout(pair, 400);
    expect(middle).toBe(200);
    const scale = left.width / 6;
    for (const { takes, brings } of lines) {
      expect(takes.width).toBeCloseTo(takes.perHa * scale, 9);
      expect(takes.x + takes.width).toBeCloseTo(middle, 9);
      expect(brings.width).toBeCloseTo(brings.perHa * scale, 9);
      expect(brings.x).toBe(middle);
    }
    expect(whisker![0]).toBeCloseTo(middle - 8 * scale, 9);
    expect(whisker![1]).toBeLessThanOrEqual(400);
    expect(lines.map(({ takes, brings }) => [takes.name, brings.name])).toEqual([
      ["Added costs", "Added returns"],
      ["Reduced returns", "Reduced costs"],
    ]);
  });

  test("where nothing changes nothing is drawn, and nothing is divided by it", () => {
    const nothing = { addedReturns: 0, reducedCosts: 0, addedCosts: 0, reducedReturns: 0, net: 0 };
    const { lines, left, whisker } = budgetLayout({ budgetPerHa: nothing, netPerHa: spread(0) }, 400);
    expect([left.width, ...lines.map(({ takes }) => takes.width)]).toEqual([0, 0, 0]);
    expect(whisker).toBeNull();
  });

  test("prices stand across and totals down, the driest first, the middle one marked", () => {
    const at = (rainTotalMm: number, net: number) => ({
      rainTotalMm,
      pairs: [
        {
          byPrice: [1, 2, 3].map((times) => ({
            pricePerKg: 0.1 * times,
            netPerHa: spread(net * times),
            chanceItPays: 0.5,
          })),
        } as unknown as MoneyOfPair,
      ],
    });
    const money = { byRainTotal: [at(355.6, 3), at(304.8, -1), at(330.2, 1)] } as unknown as MoneyAnswer;
    const say = shownMoney("USD", bushelsPerAcre(60), shownIn("metric"));
    const { prices, rows, most, perLand } = priceByRainCells(money, 0, say, shownIn("us"));
    expect(prices).toEqual(["0.10", "0.20", "0.30"]);
    expect(rows.map(({ rain, isMiddle }) => [rain, isMiddle])).toEqual([
      ["12", false],
      ["13", true],
      ["14", false],
    ]);
    expect(rows.map(({ cells }) => cells.map(({ netPerHa }) => perLand(netPerHa.p50)))).toEqual([
      ["-1.00", "-2.00", "-3.00"],
      ["1.00", "2.00", "3.00"],
      ["3.00", "6.00", "9.00"],
    ]);
    expect(most).toBe(9);
  });

  test("two ranges share one scale; ranges without width stand in the middle", () => {
    const x = rangeScale([spread(10, 2), spread(11, 2)], 212);
    expect([x(8), x(10.5), x(13)]).toEqual([6, 106, 206]);
    expect(rangeScale([spread(5), spread(5)], 212)(5)).toBe(106);
  });
});

test("rows counted follow when their case is given another name", () => {
  const scenario = {
    cases: [{ name: "as it is" }, { name: "pressed" }],
    rowPositions: { rows: 8, tyreRows: [3], inTrack: "pressed", other: "as it is" },
  };
  expect(caseNamedIn(scenario, "pressed")).toEqual(["rowPositions.inTrack"]);
  expect(caseNamedIn(scenario, "as it is")).toEqual(["rowPositions.other"]);
});

test("the sentences of a pair are those that the whole is told with", () => {
  const plan: MoneyPlan = {
    currency: "USD",
    pricePerKg: { low: 0.1, middle: 0.2, high: 0.3 },
    areaHa: 50,
    items: [{ name: "a pass", part: "addedCosts", amount: 10, per: "hectare", once: null }],
  };
  const pair: MoneyOfPair = {
    from: "as it is",
    to: "deeper",
    ...moneyOfExtraYield(Float64Array.of(100, 100), plan, Float64Array.of(0.2, 0.2), 10),
  };
  const { currency, areaHa, pricePerKg } = plan;
  const money: MoneyAnswer = {
    currency,
    areaHa,
    pricePerKg,
    alikeForYears: null,
    pairs: [pair],
    byRainTotal: [],
  };
  const [bushel, metric] = [bushelsPerAcre(60), shownIn("metric")];
  const own = pairSentences(money, pair, bushel, metric);
  expect(own).toEqual([
    "A typical year at a price drawn for each year leaves 10.00 USD/ha, or 500 USD on 50 ha. It pays in 100 % of the seasons.",
    "At 0.20 USD/kg it breaks even at 50 kg/ha more, which takes 5.0 mm more water, or at 0.10 USD/kg with the extra yield of a typical year.",
  ]);
  expect(moneySentences(money, bushel, metric)).toEqual([
    "Price 0.20 USD/kg, drawn from 0.10 to 0.30. Each run has its own weather, yield line and price.",
    '"deeper" against "as it is": a typical year at a price drawn for each year leaves 10.00 USD/ha, or 500 USD on 50 ha. It pays in 100 % of the seasons.',
    own[1],
  ]);
});
