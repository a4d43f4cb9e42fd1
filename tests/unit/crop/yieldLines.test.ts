import { describe, expect, test } from "vitest";
import { cropNames } from "../../../src/crop/crops.ts";
import {
  bushelsPerAcre,
  poundsPerAcre,
  usPerInchOfSlope,
  yieldKgPerHa,
} from "../../../src/crop/yieldLine.ts";
import { cropLines, lineChoiceNames, linesOfCrop, yieldLineFor } from "../../../src/crop/yieldLines.ts";

/** Slopes and thresholds as agreed for the tool, per inch in the unit the crop is counted in. */
const agreed: readonly (readonly [string, number, number, number, number])[] = [
  ["corn", 4.0, 10.4, 13.4, 9.1],
  ["grain sorghum", 1.0, 4.9, 8.9, 7],
  ["winter wheat", 4.0, 5.5, 6.9, 4.2],
  ["spring wheat", 3.4, 4.3, 5.1, 3.95],
  ["barley", 5.9, 7.0, 8.5, 3.8],
  ["proso millet", 0, 6.0, 9.0, 3.5],
  ["sunflower", 100, 150, 200, 7],
  ["chickpea", 120, 190, 240, 3.94],
  ["field pea", 80, 130, 181, 3.94],
  ["canola", 115, 155, 175, 6.22],
];

describe("the default line of every crop", () => {
  test("each crop of the crop table has one", () => {
    expect(agreed.map(([crop]) => crop).sort()).toEqual([...cropNames].sort());
  });
  test.each(agreed)("%s: %d, %d, %d an inch after %d in", (crop, low, middle, high, thresholdIn) => {
    const { slopeKgPerHaPerMm: slope, thresholdMm, unit, capKgPerHa, source } = yieldLineFor(crop);
    expect(usPerInchOfSlope(slope.low, unit)).toBeCloseTo(low, 9);
    expect(usPerInchOfSlope(slope.middle, unit)).toBeCloseTo(middle, 9);
    expect(usPerInchOfSlope(slope.high, unit)).toBeCloseTo(high, 9);
    expect(thresholdMm / 25.4).toBeCloseTo(thresholdIn, 9);
    expect(capKgPerHa).toBeNull();
    expect(source).toMatch(/\((read|ours)\)/);
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
