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
