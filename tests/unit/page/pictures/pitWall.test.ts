import { describe, expect, test } from "vitest";
import { dayNumber } from "../../../../src/quantity/calendar.ts";
import { pitWallLayout, placeAtPoint } from "../../../../web/pictures/pit/pitWallLayout.ts";
import { availableAboveMm, readingAt, stageParts } from "../../../../web/pictures/pit/pitWallReading.ts";
import { pitWallTable } from "../../../../web/pictures/pit/pitWallTable.ts";
import { placedMarks } from "../../../../web/pictures/kit/placedMarks.ts";
import { rainTop, snowfallMm } from "../../../../web/pictures/pit/rainBars.ts";
import {
  colourTable,
  shareAvailable,
  sliceAt,
  waterPixels,
} from "../../../../web/pictures/pit/waterHeatmap.ts";
import type { CaseSeason, LayerShown, SeasonShown } from "../../../../web/worker/protocol.ts";
import { leastPassageIn } from "../../../../web/pictures/kit/layerBands.ts";

/** Five days from 30 January on, sown on the second; two slices of 100 and 50 mm that hold 20 and 10 mm. */
const one: CaseSeason = {
  name: "first",
  isSod: false,
  startsAt: 0,
  days: 5,
  sowingDay: 1,
  floweringDay: 3,
  maturityDay: 4,
  stages: [
    { name: "initial", fromDay: 1 },
    { name: "mid-season", fromDay: 3 },
  ],
  frontMm: Float32Array.of(0, 30, 60, 100, 125),
  transpirationMm: new Float32Array(5),
  demandMm: new Float32Array(5),
  evaporationMm: new Float32Array(5),
  runoffMm: new Float32Array(5),
  drainageMm: new Float32Array(5),
  snowOnGroundMm: Float32Array.of(2, 6, 4, 0, 0),
  sliceTopMm: Float32Array.of(0, 100),
  sliceThicknessMm: Float32Array.of(100, 50),
  capacityMm: Float32Array.of(20, 10),
  passage: Float32Array.of(1, 0.25),
  availableMm: Float32Array.of(20, 5, 25, 5, 10, 5, 0, 5, 0, 2.5),
  totals: {} as CaseSeason["totals"],
  yield: { unit: "kg/ha", value: 0 },
};
/** Begins two days later and is sown at once. */
const late: CaseSeason = { ...one, name: "late", startsAt: 2, days: 3, sowingDay: 0 };
const season: SeasonShown = {
  run: 0,
  runs: 1,
  year: 2021,
  isGenerated: false,
  totalIndex: 0,
  rainTotalMm: null,
  firstDay: dayNumber(2021, 1, 30),
  days: 5,
  rainMm: Float32Array.of(2, 10, 0, 30, 0),
  referenceEtMm: new Float32Array(5),
  cases: [one, late],
};
const layers = [
  { name: "topsoil", topMm: 0, bottomMm: 100 },
  { name: "subsoil", topMm: 100, bottomMm: 150 },
] as unknown as LayerShown[];
const window = { fromDay: 0, toDay: 5, depthMm: 150 };

describe("the water on the pit wall", () => {
  test.each([
    [0, 0],
    [99.9, 0],
    [100, 1],
    [149.9, 1],
    [150, null],
    [-1, null],
  ])("%d mm down lies in slice %s", (depthMm, slice) => expect(sliceAt(one, depthMm)).toBe(slice));

  test("is a share of what the slice holds; what still drains counts as full, a slice that holds none as empty", () => {
    expect(shareAvailable(one, 0, 1)).toBe(0.5);
    expect(shareAvailable(one, 1, 0)).toBe(1);
    expect(shareAvailable({ ...one, capacityMm: Float32Array.of(0, 10) }, 0, 0)).toBe(0);
  });

  test("is coloured by the scale, a column a day; days outside the case's run stay clear", () => {
    const scale = [
      [0, "#000000"],
      [0.5, "#804020"],
      [1, "#ffffff"],
    ] as const;
    const { width, height, rgba } = waterPixels(late, window, scale, 3);
    const at = (day: number, row: number) => [...rgba.subarray(4 * (row * 5 + day), 4 * (row * 5 + day) + 4)];
    expect([width, height]).toEqual([5, 3]);
    expect(at(1, 0)).toEqual([0, 0, 0, 0]);
    expect(at(2, 0)).toEqual([255, 255, 255, 255]);
    expect(at(2, 2)).toEqual([...colourTable(scale).subarray(3 * 128, 3 * 128 + 3), 255]);
    expect(at(4, 0)).toEqual([...colourTable(scale).subarray(3 * 128, 3 * 128 + 3), 255]);
  });

  test("in reach counts the last slice in part", () => {
    expect(availableAboveMm(one, 4, 125)).toBeCloseTo(1.25, 6);
    expect(availableAboveMm(one, 0, 150, 100)).toBeCloseTo(5, 6);
  });
});

describe("a reading", () => {
  test("is of the chosen case; fronts are of every case that has roots that day", () => {
    const { date, stage, sinceSowing, layer, share, inReachMm, fronts } = readingAt(
      season,
      0,
      layers,
      3,
      120,
    );
    expect(date).toBe(dayNumber(2021, 2, 2));
    expect([stage, sinceSowing, layer]).toEqual(["mid-season", 2, "subsoil"]);
    expect(share).toBe(0.5);
    expect(inReachMm).toBe(0);
    expect(fronts).toEqual([
      { name: "first", mm: 100 },
      { name: "late", mm: 30 },
    ]);
  });

  test("before sowing has no roots, before the run no water, below the soil neither water nor layer", () => {
    expect(readingAt(season, 0, layers, 0, 10)).toMatchObject({ stage: "fallow", inReachMm: null, share: 1 });
    expect(readingAt(season, 0, layers, 0, 10).fronts[0]!.mm).toBeNull();
    expect(readingAt(season, 1, layers, 1, 10).share).toBeNull();
    expect(readingAt(season, 0, layers, 3, 151)).toMatchObject({ share: null, layer: null });
  });

  test("tells the least pace that a layer leaves", () => {
    expect(leastPassageIn(one, 0, 100)).toBe(1);
    expect(leastPassageIn(one, 100, 150)).toBe(0.25);
  });
});

describe("rain and stages", () => {
  test("snow is what lies and did not lie before, and never more than fell", () => {
    expect([0, 1, 2, 3].map((day) => snowfallMm(season, one, day))).toEqual([2, 4, 0, 0]);
    expect(snowfallMm({ ...season, rainMm: new Float32Array(5) }, one, 1)).toBe(0);
  });

  test("the axis of rain ends at a round number", () => {
    expect(rainTop(season, window, 1)).toBe(30);
    expect(rainTop(season, window, 25.4)).toBeCloseTo(2 * 25.4, 6);
  });

  test("stages follow fallow without a gap", () => {
    expect(stageParts(one, 5)).toEqual([
      { name: "fallow", from: 0, to: 1 },
      { name: "initial", from: 1, to: 3 },
      { name: "mid-season", from: 3, to: 5 },
    ]);
  });
});

describe("the drawing", () => {
  test.each([288, 358, 700, 1246])("%i px wide keeps its parts inside and apart", (width) => {
    const { soil, water, names, day, height, legendY } = pitWallLayout(width);
    expect(soil.x + soil.width).toBeLessThan(water.x);
    expect(water.width).toBeGreaterThan(0.4 * width);
    const right = day ?? water;
    expect(right.x + right.width).toBeLessThanOrEqual(width);
    expect(soil.y).toBe(water.y);
    expect(soil.height).toBe(water.height);
    expect(legendY).toBeLessThan(height);
    expect(names === null ? 0 : names.x + names.width).toBeLessThanOrEqual(day?.x ?? 0);
  });

  test("a point tells its day and depth, also from outside", () => {
    const box = { x: 10, y: 20, width: 50, height: 300 };
    expect(placeAtPoint(box, window, 35, 170)).toEqual({ day: 2, depthMm: 75 });
    expect(placeAtPoint(box, window, 0, 0)).toEqual({ day: 0, depthMm: 0 });
    expect(placeAtPoint(box, window, 99, 999)).toMatchObject({ day: 4 });
  });

  test("as a table has a row a month: rain, fronts and water of each layer on its last day", () => {
    expect(pitWallTable(season, 0, layers, "metric")).toEqual({
      head: [
        "Month, to its last day",
        "Rain and snow, mm",
        "Root front, first, mm",
        "Root front, late, mm",
        "Available water in topsoil, mm",
        "Available water in subsoil, mm",
      ],
      rows: [
        ["Jan 2021, to 31 Jan", "12.0", "30", "not sown", "20.0", "5.0"],
        ["Feb 2021, to 3 Feb", "30.0", "125", "60", "0.0", "2.5"],
      ],
    });
  });
});

describe("words of sowing, flowering and maturity", () => {
  const marks = [
    { word: "sown", date: "1 Jun", day: 0, side: "before" },
    { word: "flowers", date: "25 Jul", day: 54, side: "over" },
    { word: "mature", date: "17 Sep", day: 108, side: "after" },
  ] as const;
  const said = (perDay: number, to: number) =>
    placedMarks(marks, (day) => 20 + day * perDay, 12, [10, to])
      .filter(({ left }) => left !== null)
      .map(({ word }) => word);

  test("have their dates where there is room, and lose flowering's first", () => {
    expect(said(6, 760)).toEqual(["sown 1 Jun", "flowers 25 Jul", "mature 17 Sep"]);
    expect(said(2.2, 290)).toEqual(["sown 1 Jun", "flowers", "mature 17 Sep"]);
  });
  test("never lie over one another, and maturity goes before flowering", () => {
    for (let to = 60; to < 500; to += 7) {
      const placed = placedMarks(marks, (day) => 20 + (day * (to - 40)) / 108, 12, [10, to]);
      const there = placed.filter(({ left }) => left !== null);
      there.slice(1).forEach(({ left }, i) => {
        const { left: before, word } = there[i]!;
        expect(left!).toBeGreaterThan(before! + word.length * 12 * 0.6);
      });
    }
    for (let to = 115; to < 500; to += 7) {
      const placed = placedMarks(marks, (day) => 20 + (day * (to - 40)) / 108, 12, [10, to]);
      expect(placed.find(({ word }) => word.startsWith("mature"))!.left).not.toBe(null);
    }
  });
});
