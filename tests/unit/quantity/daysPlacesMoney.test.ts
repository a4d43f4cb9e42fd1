import { beforeAll, describe, expect, test } from "vitest";
import {
  loadUnits,
  tryDate,
  tryLatitude,
  tryMoney,
  tryMonthDay,
  tryRainTotals,
} from "../../../src/quantity/index.ts";

beforeAll(loadUnits);

const wrong = { expected: expect.any(String), mend: expect.any(String) };

describe("latitude", () => {
  test.each([
    [38.5, 38.5],
    ["38.5", 38.5],
    ["38.5 N", 38.5],
    ["38.5\u00b0N", 38.5],
    ["N 38.5", 38.5],
    ["38\u00b030' N", 38.5],
    ["38 30 0 N", 38.5],
    ["38 deg 30 min north", 38.5],
    ["33.2 S", -33.2],
    ["-33.2", -33.2],
    ["-33 30", -33.5],
    ["90 N", 90],
  ])("%j is %d", (text, expected) => expect(tryLatitude(text)).toBeCloseTo(expected, 10));

  test.each([
    "",
    "north",
    "98 N",
    "-33 S",
    "38.5 E",
    "38 N S",
    "38\u00b075' N",
    "38 30 10 5",
    null,
    [38],
    91,
  ])("%j is none", (text) => expect(tryLatitude(text)).toEqual(wrong));
});

describe("a day of the year", () => {
  test.each([
    ["Jun 1", 6, 1],
    ["June 1", 6, 1],
    ["1 June", 6, 1],
    ["1st june", 6, 1],
    ["Sept. 25", 9, 25],
    ["06-01", 6, 1],
    ["Feb 29", 2, 29],
  ])("%j", (text, month, day) => expect(tryMonthDay(text)).toEqual({ month, day }));

  test.each(["", "6/1", "Jun 31", "Feb 30", "Ju 1", "June", "13-01", "00-10", "2020-06-01", 61, null])(
    "%j is none",
    (text) => expect(tryMonthDay(text)).toEqual(wrong),
  );
});

describe("a date", () => {
  test("counts days from 1970", () => expect(tryDate("1971-01-01")).toBe(365));
  test("knows leap years", () => expect(tryDate("2020-02-29")).toBeTypeOf("number"));
  test.each(["2021-02-29", "2021-13-01", "2021-6-1", "6/1/2021", "", 20210601])("%j is none", (text) =>
    expect(tryDate(text)).toEqual(wrong),
  );
});

describe("rainfall totals", () => {
  test.each([
    ["13 in", [330.2]],
    [330, [330]],
    ["12..14 in", [304.8, 330.2, 355.6]],
    ["12 in .. 14 in", [304.8, 330.2, 355.6]],
    ["300...340 mm", [300, 320, 340]],
    ["13..13 in", [330.2]],
    ["300..340", [300, 320, 340]],
    [
      ["12 in", 330.2, "355.6"],
      [304.8, 330.2, 355.6],
    ],
    ["12–14 in", [304.8, 330.2, 355.6]],
    ["12-14 in", [304.8, 330.2, 355.6]],
    ["12 to 14 in", [304.8, 330.2, 355.6]],
    ["13 IN", [330.2]],
  ])("%j", (text, expected) => expect(tryRainTotals(text)).toEqual(expected));

  test.each([["14..12 in"], ["12..14 kg"], ["..14 in"], ["12.. in"], [""], [[]], [["12 in", "x"]], [null]])(
    "%j are none",
    (text) => expect(tryRainTotals(text)).toEqual(wrong),
  );
});

describe("money", () => {
  test.each([
    ["5 USD/bu", "mass", 0.2, "USD"],
    ["$5/bu", "mass", 0.2, "USD"],
    ["0.18 EUR/kg", "mass", 0.18, "EUR"],
    ["200 EUR per t", "mass", 0.2, "EUR"],
    ["0.45359237 USD/lb", "mass", 1, "USD"],
    ["25 eur/ha", "land", 25, "EUR"],
    ["0.40468564224 USD/ac", "land", 1, "USD"],
    ["4000 USD", "whole", 4000, "USD"],
  ] as const)("%j", (text, per, amount, currency) => {
    const money = tryMoney(text, per, { kgPerBushel: 25 });
    expect(money).toEqual({ amount: expect.closeTo(amount, 8), currency });
  });

  test.each([
    ["5", "mass"],
    ["5/bu", "mass"],
    ["5 USD", "mass"],
    ["5 USD/ac", "mass"],
    ["5 USD/bu", "land"],
    ["USD", "whole"],
    ["5 USD/bu/in", "mass"],
    [5, "mass"],
  ] as const)("%j is none", (text, per) => expect(tryMoney(text, per, { kgPerBushel: 25 })).toEqual(wrong));

  test("bushels of a crop that is not counted in them", () =>
    expect(tryMoney("5 USD/bu", "mass")).toEqual(wrong));
});
