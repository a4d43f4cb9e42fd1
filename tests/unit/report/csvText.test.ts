import papa from "papaparse";
import { describe, expect, test } from "vitest";
import { csvText } from "../../../src/report/tables/csvText.ts";

const cellsOf = (text: string) => papa.parse<string[]>(text).data;

describe("a text that a spreadsheet would run is disarmed", () => {
  test.each([
    ["=1+1", "'=1+1"],
    ["+1", "'+1"],
    ["-cmd", "'-cmd"],
    ["@SUM(A1)", "'@SUM(A1)"],
    ["\t=1", "' =1"],
    ["\r=1", "' =1"],
    ["=1\n+1", "'=1 +1"],
    ['=HYPERLINK("x","y")', `'=HYPERLINK("x","y")`],
    ["plain, with a comma", "plain, with a comma"],
    ["'quoted'", "'quoted'"],
    ["a=1", "a=1"],
  ])("%j", (text, cell) => {
    expect(cellsOf(csvText([[text, "behind"]]))).toEqual([[cell, "behind"]]);
    expect(cellsOf(csvText([["before", text]]))).toEqual([["before", cell]]);
  });
});

test("numbers stay numbers, and nothing is an empty cell", () => {
  expect(
    csvText([
      ["a", "b"],
      [-1.5, null],
    ]),
  ).toBe("a,b\n-1.5,");
});
