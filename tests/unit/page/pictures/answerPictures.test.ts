import { describe, expect, test } from "vitest";
import type { Comparison } from "../../../../src/answer/comparison/comparison.ts";
import { shownIn } from "../../../../src/report/tables/formatters.ts";
import { pairedTable, pilesOf } from "../../../../web/pictures/answer/pairedDifferencePiles.ts";
import { askedRain } from "../../../../web/pictures/answer/rainFanAsked.ts";
import { marksThatMattered, rowsDrawn } from "../../../../web/pictures/answer/shareMatteredMarks.ts";

describe("seasons in which it mattered, as marks", () => {
  test.each([
    // share, marks of 20
    [0, 0],
    [0.005, 1],
    [0.26, 5],
    [0.67, 13],
    [0.99, 19],
    [1, 20],
  ])("%d of all are %d of 20", (share, marks) => expect(marksThatMattered(share, 20)).toBe(marks));

  test("of many totals some are drawn, the first and the last among them", () => {
    const all = Array.from({ length: 25 }, (_, i) => i);
    expect(rowsDrawn(all, 7)).toEqual([0, 4, 8, 12, 16, 20, 24]);
    expect(rowsDrawn([1, 2], 7)).toEqual([1, 2]);
  });
});

describe("piles of seasons", () => {
  test("hold every season once, the highest in the last", () => {
    const piles = pilesOf([0, 0.4, 1, 2.6, 4], 0, 4, 4);
    expect(piles.map(({ values }) => values)).toEqual([[0, 0.4], [1], [2.6], [4]]);
  });
  test("as a table lie in steps of what matters, less than nothing included", () => {
    const table = pairedTable(Float64Array.of(-1, 0, 4.9, 5, 12), 5, shownIn("metric"));
    expect(table.rows).toEqual([
      ["-5.0 to 0.0", "1"],
      ["0.0 to 5.0", "2"],
      ["5.0 to 10.0", "1"],
      ["10.0 to 15.0", "1"],
    ]);
  });
  test("are there when all seasons are the same", () =>
    expect(pairedTable(new Float64Array(3), 5, shownIn("metric")).rows).toEqual([["0.0 to 5.0", "3"]]));
});

describe("the user's own rain", () => {
  const at = (rainTotalMm: number | null) => ({
    rainTotalMm,
    annualRainMm: null,
    cases: [],
    differences: [],
  });
  const asked = (
    totals: readonly (number | null)[],
    more: Partial<Comparison> = {},
    over = "year",
    source: "record" | "normals" = "record",
  ) =>
    askedRain(
      {
        byRainTotal: totals.map(at),
        annualRainMm: null,
        method: { rainTotalOver: over },
        ...more,
      } as Comparison,
      source,
      shownIn("us"),
    );
  test("is the span of the totals asked for", () =>
    expect(asked([355.6, 304.8, 330.2])).toMatchObject({
      fromMm: 304.8,
      toMm: 355.6,
      said: "your 12 to 14 in",
    }));
  test("may be one total", () => expect(asked([330.2])?.said).toBe("your 13 in"));
  test("is that of the record where the rain is as it came", () => {
    const annualRainMm = { p10: 254, p50: 381, p90: 508 };
    expect(asked([null], { annualRainMm })).toMatchObject({
      fromMm: 254,
      toMm: 508,
      said: "your record, 10 to 20 in",
      answers: [],
    });
    expect(asked([null], { annualRainMm }, "year", "normals")?.said).toBe("generated years, 10 to 20 in");
    expect(asked([null], { annualRainMm }, "season")).toBeNull();
    expect(asked([null])).toBeNull();
  });
});
