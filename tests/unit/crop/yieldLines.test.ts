import { describe, expect, test } from "vitest";
import { cropNames } from "../../../src/crop/crops.ts";
import {
  floweringLossOf,
  floweringWindows,
  shareLeftByStress,
  stressSeverity,
} from "../../../src/crop/yield/floweringStress.ts";
import { positionOf, seasonSlope, slopeAt } from "../../../src/crop/yield/seasonSlope.ts";
import {
  bushelsPerAcre,
  poundsPerAcre,
  seasonYieldKgPerHa,
  usOfKgPerHa,
  usPerInchOfSlope,
  yieldKgPerHa,
} from "../../../src/crop/yield/yieldLine.ts";
import { cropLines, lineChoiceNames, linesOfCrop, yieldLineFor } from "../../../src/crop/yield/yieldLines.ts";

/** Slopes, thresholds and caps as published, in the unit the crop is counted in: see data-reference/yield-lines.json. */
const published: readonly (readonly [string, number, number, number, number, number | null])[] = [
  ["corn", 7.8, 10.4, 13.3, 9.1, 135],
  ["grain sorghum", 4.9, 6.27, 8.9, 4.96, 140],
  ["winter wheat", 3.68, 4.61, 5.93, 8.19, 90],
  ["spring wheat", 3.4, 4.3, 5.1, 3.95, 76],
  ["barley", 5.9, 6.75, 7.6, 3.8, 95],
  ["proso millet", 0, 6.0, 9.0, 3.5, null],
  ["sunflower", 100, 150, 218, 7, 3926],
  ["chickpea", 160, 240, 240, 3.94, 3374],
  ["field pea", 120, 181, 181, 3.94, 2425],
  ["canola", 115, 175.2, 175.2, 6.22, null],
  ["perennial grass", 91, 136, 136, 2.24, null],
];

describe("the usual line of every crop", () => {
  test("each crop of the crop table has one", () => {
    expect(published.map(([crop]) => crop).sort()).toEqual([...cropNames].sort());
  });
  test.each(published)(
    "%s: %d, %d, %d an inch after %d in, at most %s",
    (crop, low, middle, high, ...rest) => {
      const [thresholdIn, cap] = rest;
      const line = yieldLineFor(crop);
      const { slopeKgPerHaPerMm: slope, unit } = line;
      expect(usPerInchOfSlope(slope.low, unit)).toBeCloseTo(low, 9);
      expect(usPerInchOfSlope(slope.middle, unit)).toBeCloseTo(middle, 9);
      expect(usPerInchOfSlope(slope.high, unit)).toBeCloseTo(high, 9);
      expect(line.thresholdMm / 25.4).toBeCloseTo(thresholdIn, 9);
      const capUs = line.capKgPerHa === null ? null : Math.round(usOfKgPerHa(line.capKgPerHa, unit));
      expect(capUs).toBe(cap);
      expect(line.capSource ?? "none").toMatch(cap === null ? /^none$/ : /\((read|memory)\)$/);
      expect(line.source).toMatch(/\((read|memory|ours)\)/);
      expect(line.region).toMatch(/\w{4}/);
    },
  );

  test("slope and threshold are of one place, but for proso, of which none is published", () => {
    const mixed = cropLines.filter(({ defaultChoice, choices }) => {
      const { slopeUsPerInch, note } = choices.find(({ name }) => name === defaultChoice)!;
      return slopeUsPerInch === null && !/half-way/.test(note ?? "");
    });
    expect(mixed.map(({ crop }) => crop)).toEqual(["proso millet"]);
  });

  test("winter wheat has one for the north", () => {
    const at = (latitude: number | null) => lineChoiceNames("winter wheat", latitude)[0];
    expect([at(null), at(38), at(-34), at(45), at(48.5)]).toEqual([
      "Bushland, Texas",
      "Bushland, Texas",
      "Bushland, Texas",
      "north-central Montana",
      "north-central Montana",
    ]);
    expect(yieldLineFor("winter wheat", undefined, "yield.line", 48.5).region).toBe("northern Great Plains");
    expect(lineChoiceNames("corn", 48.5)[0]).toBe("Akron, Colorado");
  });
});

describe("dry and wet seasons (Schlegel et al. 2018, abstract, read)", () => {
  test.each([
    // crop, season rain mm (middles of what was measured), kg/ha per mm: low, middle, high
    ["corn", 205.5, 27, 30, 33],
    ["corn", 321, 9, 17, 25],
    ["grain sorghum", 222, 12, 17, 22],
    ["grain sorghum", 348.5, 0, 3, 6],
  ])("%s with %d mm in the season: %d, %d, %d", (crop, rainMm, low, middle, high) => {
    const seasons = yieldLineFor(crop).seasons!;
    expect([-1, 0, 1].map((position) => seasonSlope(seasons, position, rainMm))).toEqual([low, middle, high]);
  });
  test("half-way between them, half of each; beyond them, no further", () => {
    const seasons = yieldLineFor("corn").seasons!;
    expect(seasonSlope(seasons, 0, (205.5 + 321) / 2)).toBeCloseTo(23.5, 9);
    expect(seasonSlope(seasons, 0, 50)).toBe(30);
    expect(seasonSlope(seasons, 0, 900)).toBe(17);
  });
  test("a draw keeps its place between low and high", () => {
    const { slopeKgPerHaPerMm: slope } = yieldLineFor("corn");
    expect(positionOf(slope.low, slope)).toBeCloseTo(-1, 9);
    expect(positionOf(slope.middle, slope)).toBe(0);
    expect(positionOf((slope.middle + slope.high) / 2, slope)).toBeCloseTo(0.5, 9);
    expect(slopeAt(positionOf(20, slope), slope)).toBeCloseTo(20, 9);
    expect(positionOf(181, { low: 120, middle: 181, high: 181 })).toBe(0);
  });
  test("what holds up to the season's rain and 6 in is the line itself", () => {
    const line = yieldLineFor("grain sorghum");
    const slope = line.slopeKgPerHaPerMm.middle;
    const fed = { metBeforeFlowering: 1, metAtFlowering: 1, metAfterFlowering: 1 };
    const at = (waterUseMm: number) => seasonYieldKgPerHa(line, slope, { waterUseMm, rainMm: 350, ...fed });
    expect(at(500)).toBeCloseTo(yieldKgPerHa(line, slope, 500), 9);
    expect(at(600)).toBeCloseTo(yieldKgPerHa(line, slope, 500) + 3 * 100, 9);
  });
});

describe("corn stressed around silking (Claassen & Shaw 1970, abstract, read)", () => {
  const loss = floweringLossOf("corn")!;
  const fed = { metBeforeFlowering: 1, metAtFlowering: 1, metAfterFlowering: 1 };
  test.each([
    // where it gets nothing, percent lost
    ["metBeforeFlowering", 12, 15],
    ["metAtFlowering", 53, 53],
    ["metAfterFlowering", 30, 30],
  ] as const)("%s: %d to %d %%", (window, from, to) => {
    const lost = 100 * (1 - shareLeftByStress(loss, { ...fed, [window]: 0 }));
    expect(lost).toBeGreaterThanOrEqual(from - 1e-9);
    expect(lost).toBeLessThanOrEqual(to + 1e-9);
  });
  test("a quarter of the demand brings a quarter of the loss, half none", () => {
    expect(stressSeverity(0.25)).toBeCloseTo(0.25, 9);
    expect([stressSeverity(0.5), stressSeverity(1), stressSeverity(0)]).toEqual([0, 0, 1]);
  });
  test("the windows are six weeks without a gap", () => {
    const { before, at, after } = floweringWindows;
    expect([at[0] - before[1], after[0] - at[1], after[1] - before[0]]).toEqual([1, 1, 42]);
  });
  test("of no other crop is a loss published", () => {
    expect(cropNames.filter((crop) => floweringLossOf(crop) !== null)).toEqual(["corn"]);
  });
});

describe("choices", () => {
  test.each(cropLines.map((lines) => [lines.crop, lines] as const))(
    "%s: low <= middle <= high in each",
    (crop, lines) => {
      expect(lineChoiceNames(crop)[0]).toBe(lines.defaultChoice);
      expect(new Set(lineChoiceNames(crop)).size).toBe(lines.choices.length);
      for (const { name } of lines.choices) {
        const { low, middle, high } = yieldLineFor(crop, name).slopeKgPerHaPerMm;
        expect(low).toBeGreaterThanOrEqual(0);
        expect(low).toBeLessThanOrEqual(middle);
        expect(middle).toBeLessThanOrEqual(high);
      }
    },
  );
  test("a place with its own slope brings it along", () => {
    const { slopeKgPerHaPerMm, source } = yieldLineFor("winter wheat", "bushland, texas");
    expect(usPerInchOfSlope(slopeKgPerHaPerMm.middle, bushelsPerAcre(60))).toBeCloseTo(4.61, 9);
    expect(source).toContain("Musick");
  });
  test("a crop by its alias", () => expect(linesOfCrop("milo").crop).toBe("grain sorghum"));
  test("an unknown place is answered with the nearest, or the list", () => {
    expect(() => yieldLineFor("corn", "Kansa")).toThrow(
      /^yield\.line: .*found "Kansa"; did you mean "Kansas"\?$/,
    );
    expect(() => yieldLineFor("corn", "the moon and beyond")).toThrow(
      /Akron, Colorado; Kansas; .*slope and threshold$/,
    );
  });
  test("where an inch stored at sowing was measured, the result says so", () => {
    expect(yieldLineFor("corn").storedInchNote).toMatch(/4 to 27 bu\/ac.*\(.*read\)$/);
    expect(yieldLineFor("sunflower").storedInchNote).toBeNull();
  });
});

describe("yield of a season", () => {
  const line = { ...yieldLineFor("sunflower"), capKgPerHa: 2000 };
  const slope = line.slopeKgPerHaPerMm.middle;
  test.each([
    ["nothing up to the threshold", line.thresholdMm, 0],
    ["nothing below it", 20, 0],
    ["the cap beyond it", 2000, 2000],
    ["the straight line between", line.thresholdMm + 100, 100 * slope],
  ])("%s", (_, waterUseMm, kgPerHa) => expect(yieldKgPerHa(line, slope, waterUseMm)).toBeCloseTo(kgPerHa, 9));
  test("the slope is the caller's draw", () => {
    expect(yieldKgPerHa(line, 5, line.thresholdMm + 10)).toBeCloseTo(50, 9);
  });
  test("a pound an acre is a unit like a bushel", () => expect(poundsPerAcre.kgPerUsUnit).toBe(0.45359237));
});
