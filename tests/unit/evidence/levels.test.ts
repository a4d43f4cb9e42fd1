import { describe, expect, test } from "vitest";
import { disagreementsOf, type Level } from "../../../src/evidence/levels.ts";
import { disagreementsSaid } from "../../../src/report/sentences/field/levelsText.ts";
import { measuredYield } from "../../../src/report/sentences/field/measuredYield.ts";

const bushel = 62.7677; // kg/ha of a bushel of 56 lb an acre
const level = (
  by: Level["by"],
  middle: number,
  range: readonly [number, number] | null,
  rowPosition: string | null = null,
): Level => ({
  by,
  caseIndex: 0,
  rowPosition,
  range: {
    middle: middle * bushel,
    low: range === null ? null : range[0] * bushel,
    high: range === null ? null : range[1] * bushel,
  },
});

// An invented field: ears counted say 78 bu/ac, strips 58, the model 39.
const counted = level("counts", 78, [70, 86]);
const harvested = level("strips", 58, [54, 62]);
const modeled = level("model", 39, [15, 65]);

describe("levels that disagree by more than their ranges are told", () => {
  test("counts against strips and model; strips and model meet", () => {
    expect(disagreementsOf([counted, harvested, modeled])).toEqual([
      { higher: counted, lower: harvested },
      { higher: counted, lower: modeled },
    ]);
  });
  test("by a hair's breadth they agree or not", () => {
    expect(disagreementsOf([level("counts", 78, [65, 86]), modeled])).toEqual([]);
    expect(disagreementsOf([level("counts", 78, [65.1, 86]), modeled]).length).toBe(1);
  });
  test("of two cases there is nothing to compare", () => {
    expect(disagreementsOf([counted, { ...modeled, caseIndex: 1 }])).toEqual([]);
  });
  test("a level without a range is taken as it stands", () => {
    expect(disagreementsOf([level("counts", 78, null), modeled]).length).toBe(1);
    expect(disagreementsOf([level("counts", 64, null), modeled])).toEqual([]);
  });
  test("counts at one place in the row do not stand for strips, but for the model's case", () => {
    const inTrack = level("counts", 78, [70, 86], "wheel track");
    expect(disagreementsOf([inTrack, harvested, modeled])).toEqual([{ higher: inTrack, lower: modeled }]);
  });
});

describe("what a disagreement casts doubt on", () => {
  const said = measuredYield({ us: "bu/ac", kgPerUsUnit: 25.4012 }, "us");
  const told = (unripe: boolean, inYear: number | null, ...levels: Level[]) =>
    disagreementsSaid({ disagreements: disagreementsOf(levels), inYear }, ["as it is"], said, unripe);
  test("a model too low: start, rain, line, and the early count", () => {
    expect(told(true, null, counted, modeled)).toEqual([
      'The levels of "as it is" disagree by more than their ranges: counts 78.0 bu/ac (70.0 to 86.0), the model 39.0 bu/ac (15.0 to 65.0). That casts doubt on the model\'s water at the start, the rain of that year, its yield line and the count before the grain was ripe, which can read high: its differences are worth no more than its levels.',
    ]);
  });
  test("in the year measured the rain is known, and ripe grain was not counted early", () => {
    const [text] = told(false, 2012, counted, modeled);
    expect(text).not.toContain("rain of that year");
    expect(text).not.toContain("before the grain was ripe");
  });
  test("a model too high may lack what the field lacked", () => {
    expect(told(false, null, level("strips", 20, [18, 22]), level("model", 60, [40, 90])).join()).toContain(
      "or something else was short there: stand, nutrients, lodging, pests and disease.",
    );
  });
});
