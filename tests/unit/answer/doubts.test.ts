import { describe, expect, test } from "vitest";
import { doubtsOf } from "../../../src/answer/comparison/doubts.ts";
import { mmPerInch } from "../../../src/quantity/constants.ts";
import { someScenario } from "./someScenario.ts";

const withRain = (rainTotalOver: "year" | "season", ...inches: number[]) => {
  const scenario = someScenario();
  const rainTotalsMm = inches.map((total) => total * mmPerInch);
  return doubtsOf({ ...scenario, weather: { ...scenario.weather, rainTotalsMm, rainTotalOver } });
};

describe("a rainfall total that no dryland field gets is doubted", () => {
  test("130 in where 13 in was meant", () => {
    expect(withRain("year", 13, 130)).toEqual([
      "Rain of 130 in (3302 mm) a year is asked for, which is hard to believe of a dryland field, where a year has 2 in (50.8 mm) to 80 in (2032 mm): check the number and its unit.",
    ]);
  });
  test("1.3 in a year is a desert's, but a season's may be that", () => {
    expect(withRain("year", 1.3).join()).toContain("Rain of 1.3 in (33 mm) a year is asked for");
    expect(withRain("season", 1.3)).toEqual([]);
  });
  test("what dryland fields get is believed", () => expect(withRain("year", 8, 14, 45)).toEqual([]));
  test("what the reader doubted comes along", () => {
    expect(doubtsOf({ ...someScenario(), doubts: ["depths in inches"] })).toEqual(["depths in inches"]);
  });
});

describe("strips are doubted where their unit cannot be", () => {
  const withStrips = (capKgPerHa: number | null, ...kgPerHa: (number | null)[]) => {
    const scenario = someScenario();
    const strips = {
      caseIndexes: [0, 1],
      pairs: kgPerHa.map((one) => [one, one] as const),
      year: null,
      confidence: 0.95,
      detectKgPerHa: null,
      chance: 0.8,
    } as const;
    const evidence = { confidence: 0.95, dig: null, counts: null, strips };
    return doubtsOf({ ...scenario, evidence, yieldLine: { ...scenario.yieldLine, capKgPerHa } });
  };
  test("61 kg/ha where 61 bu/ac was meant", () => {
    expect(withStrips(8400, 58, null, 61).join()).toMatch(
      /^The best strip is given [\d.]+ \S+ \(61 kg\/ha\), which is hard to believe/,
    );
  });
  test("a poor crop, a failed one, and one without a best year to hold it against are believed", () => {
    expect(withStrips(8400, 300, 20)).toEqual([]);
    expect(withStrips(8400, 0, 0)).toEqual([]);
    expect(withStrips(null, 61)).toEqual([]);
  });
});
