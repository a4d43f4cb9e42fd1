import { describe, expect, test } from "vitest";
import { reachOf } from "../../../../src/statistics/howMany.ts";
import { narrowing } from "../../../../src/report/tables/narrowing.ts";
import { countedSpan, levels } from "../../../../web/pictures/field/countedYieldLayout.ts";
import { besideAxis } from "../../../../web/pictures/field/measuredBesideLayout.ts";
import { stripSpan } from "../../../../web/pictures/field/stripPairsLayout.ts";
import { changed, getAt, setAt } from "../../../../web/state/path.ts";
import { columnsOf, wayOf, waysOf } from "../../../../web/views/field/counts/columns.ts";
import {
  addGroup,
  addSpot,
  firstCounts,
  groupsIn,
  oddRows,
  removeGroup,
  removeSpot,
} from "../../../../web/views/field/counts/edits.ts";
import { lengthSaid, rowToWalk, rowWidthMm } from "../../../../web/views/field/counts/rowToWalk.ts";
import { addPair, firstStrips, pairsIn, removePair } from "../../../../web/views/field/strips/edits.ts";

describe("the row to walk for a thousandth of an acre", () => {
  // Extension tables of row widths: see data-reference/counts-checks.json.
  test.each([
    ["30 in", 1, "17 ft 5 in"],
    ["36 in", 1, "14 ft 6 in"],
    ["20 in", 1, "26 ft 2 in"],
    ["7.5 in", 1, "69 ft 8 in"],
    ["30 in", 2, "8 ft 9 in"],
  ])("%s rows, %i side by side: %s", (width, rows, said) => {
    expect(rowToWalk(width, rows, "us")).toBe(said);
  });
  test("in metres, and whole feet", () => {
    expect(rowToWalk("76.2 cm", 1, "metric")).toBe("5.31 m");
    expect(lengthSaid(304.8, "us")).toBe("1 ft");
    expect(lengthSaid(254, "us")).toBe("10 in");
  });
  test("is left to the engine where the text is anything else", () => {
    expect(["", "30", "thirty in", "-3 in", "0 in", "2 ft 6 in"].map(rowWidthMm)).toEqual(
      Array.from({ length: 6 }, () => null),
    );
    const widths = ["2.5 ft", '30"', "0.75 m", "750mm"].map(rowWidthMm);
    [762, 762, 750, 750].forEach((mm, i) => expect(widths[i]).toBeCloseTo(mm, 9));
  });
});

describe("columns follow the crop and what is written", () => {
  const keys = (...args: Parameters<typeof columnsOf>) => columnsOf(...args).map(({ key }) => key);
  test("corn by rows with second ears, grain by kernels, sunflower by diameters", () => {
    expect(keys("corn", "rows", [{}], false)).toEqual([
      "ears",
      "kernelRows",
      "kernelsPerRow",
      "secondEars",
      "secondEarKernels",
    ]);
    expect(keys("grain sorghum", "kernels", [{}], true)).toEqual(["heads", "kernelsPerHead", "rowLength"]);
    expect(keys("winter wheat", "spikelets", [{}], false)).toEqual([
      "heads",
      "spikeletsPerHead",
      "kernelsPerSpikelet",
    ]);
    expect(keys("sunflower", "diameters", [{}], false)).toEqual([
      "heads",
      "headDiameters",
      "filled",
      "centre",
    ]);
  });
  test("nothing that is written is hidden", () => {
    const spot = { heads: 3, secondEarShare: "50 %", rows: 2, area: "1 m^2" };
    expect(keys("corn", "rows", [spot], false)).toEqual(
      expect.arrayContaining(["heads", "secondEarShare", "rows", "area"]),
    );
    expect(wayOf([{ heads: 3 }, { kernelsPerSpikelet: 2 }])).toBe("spikelets");
    expect(wayOf([{ heads: 3 }])).toBeNull();
    expect(waysOf("maize")[0]).toBe("rows");
    expect(waysOf("a crop of one's own")).toEqual(["kernels", "heads"]);
  });
});

describe("changes to counts", () => {
  const begun = changed({ name: "x" }, firstCounts(["a", "b", "c"], "corn", "us"));
  test("begin with the first two cases, a row each", () => {
    expect(groupsIn(begun)).toEqual([
      { case: "a", crop: "corn", rowWidth: "30 in", spots: [{}] },
      { case: "b", crop: "corn", rowWidth: "30 in", spots: [{}] },
    ]);
    expect(groupsIn(changed(begun, addGroup(begun, ["a", "b", "c"])))[2]).toEqual({
      case: "c",
      crop: "corn",
      rowWidth: "30 in",
      spots: [{}],
    });
  });
  test("a new spot takes the length of row along, not the counts", () => {
    const filled = setAt(begun, "evidence.counts[0].spots[0]", { heads: 9, rowLength: "10 ft" });
    expect(getAt(changed(filled, addSpot(filled, 0)), "evidence.counts[0].spots[1]")).toEqual({
      rowLength: "10 ft",
    });
  });
  test("the last one removed takes the key along", () => {
    const paired = setAt(begun, "evidence.spotsPaired", true);
    const one = changed(paired, removeSpot(paired, 0, 0));
    expect(groupsIn(one).map((group) => group["case"])).toEqual(["b"]);
    expect(changed(one, removeGroup(one, 0))).toEqual({ name: "x" });
    expect(changed(one, removeSpot(one, 0, 0))).toEqual({ name: "x" });
  });
  test("odd kernel rows are found", () => {
    expect(oddRows([14, 15, "16", 17])).toEqual([15, 17]);
    expect(oddRows(undefined)).toEqual([]);
  });
});

describe("changes to strips", () => {
  const begun = changed({}, firstStrips(["a", "b", "c"]));
  test("begin with four empty pairs of the first two cases", () => {
    expect(getAt(begun, "evidence.strips.cases")).toEqual(["a", "b"]);
    expect(pairsIn(begun)).toEqual(Array.from({ length: 4 }, () => [null, null]));
    expect(pairsIn(changed(begun, addPair(begun)))).toHaveLength(5);
  });
  test("the last pair takes all along", () => {
    const one = setAt(begun, "evidence.strips.yields", [["60 bu/ac", null]]);
    expect(changed(one, removePair(one, 0))).toEqual({});
    expect(pairsIn(changed(begun, removePair(begun, 3)))).toHaveLength(3);
  });
});

describe("pictures of measured yields", () => {
  test("dots that would cover each other stand on one another", () => {
    expect(levels([10, 12, 40], 8)).toEqual([0, 1, 0]);
    expect(levels([12, 40, 10, 11], 8)).toEqual([2, 0, 0, 1]);
    expect(levels([], 8)).toEqual([]);
  });
  test("hold the intervals as well as what was measured", () => {
    expect(
      countedSpan([
        {
          title: "a",
          caseIndex: 0,
          spots: [5, 7],
          mean: 6,
          interval: { low: 1, high: 11 },
          byWeight: { low: 3, high: 12 },
        },
      ]),
    ).toEqual([1, 12]);
    const pairs = [
      [60, 64],
      [55, null],
    ] as const;
    const difference = { value: 4, interval: { low: -10, high: 18 }, said: "" };
    expect(stripSpan({ names: ["a", "b"], pairs, means: [60, 64], difference })).toEqual([50, 78]);
    expect(stripSpan({ names: ["a", "b"], pairs: [[null, null]], means: null, difference: null })).toEqual([
      0, 1,
    ]);
  });
  test("nothing is always in sight", () => {
    const row = (middle: number) => ({
      title: "",
      marks: [{ kind: "measured" as const, what: "", said: "", middle, low: null, high: null }],
    });
    for (const middle of [-7, 0, 7]) {
      const axis = besideAxis([row(middle)], 0, 100, 5);
      expect(axis.from).toBeLessThanOrEqual(0);
      expect(axis.to).toBeGreaterThanOrEqual(0);
      expect(axis.at(0)).toBeGreaterThanOrEqual(0);
      expect(axis.at(0)).toBeLessThanOrEqual(100);
    }
  });
});

test("the interval narrows with twice and four times as many", () => {
  const layout = { kind: "one set", sd: 3 } as const;
  const rows = narrowing(layout, 3, 7.5, 0.95);
  expect(rows.map(({ n }) => n)).toEqual([3, 6, 12]);
  expect(rows[0]!.reach).toBe(7.5);
  // t at 5 and at 11 degrees of freedom, from any table of t: 2.571 and 2.201.
  expect(rows[1]!.reach).toBeCloseTo((2.571 * 3) / Math.sqrt(6), 2);
  expect(rows[2]!.reach).toBeCloseTo((2.201 * 3) / Math.sqrt(12), 2);
  expect(rows[2]!.reach).toBe(reachOf(layout, 12, 0.95));
});
