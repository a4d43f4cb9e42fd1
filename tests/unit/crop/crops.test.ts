import { describe, expect, test } from "vitest";
import { coverUnderCrop } from "../../../src/crop/coverUnderCrop.ts";
import table from "../../../data-reference/crops.json";
import {
  cropDefaults,
  cropNamed,
  cropNames,
  defaultPlan,
  findCrop,
  type Sourced,
} from "../../../src/crop/crops.ts";
import { curveNumberRows } from "../../../src/season/curveNumber.ts";
import { isDate } from "../../../src/quantity/calendar.ts";

describe("the crop table", () => {
  test("holds ten dryland crops and sod", () => {
    expect(cropNames).toEqual([
      "corn",
      "grain sorghum",
      "proso millet",
      "winter wheat",
      "spring wheat",
      "barley",
      "sunflower",
      "field pea",
      "chickpea",
      "canola",
      "perennial grass",
    ]);
  });
  test("no name or alias means two crops", () => {
    const all = cropDefaults.flatMap((crop) => [crop.name, ...crop.aliases]);
    expect(new Set(all).size).toBe(all.length);
  });
  test("every figure read in the published tables keeps its page", () => {
    const values = cropDefaults.flatMap((crop) => Object.values(crop.values) as Sourced<unknown>[]);
    for (const { mark, why } of values) {
      expect(["read", "memory", "common practice, no source", "ours"]).toContain(mark);
      expect(why.length).toBeGreaterThan(10);
    }
    const read = values.filter(({ mark }) => mark === "read");
    expect(read.length).toBeGreaterThan(60);
    for (const { why } of read) expect(why).toMatch(/p\. \d+|et al\. \d{4}/);
  });
  test("studies named with a year are in the list of sources", () => {
    const cited = cropDefaults.flatMap(({ rootDepthsSeen }) => rootDepthsSeen.map(({ source }) => source));
    const named = cited.filter((source) => /^[A-Z][a-z-]+.*(et al\.|&).* \d{4}$/.test(source));
    expect(named.length).toBeGreaterThan(8);
    for (const source of named) expect(Object.keys(table.sources)).toContain(source);
  });
  test("cover and full stand say where they are from", () => {
    for (const { name, cover, fullStandPerAcre } of cropDefaults) {
      const rows = curveNumberRows.filter((row) => row.cover === cover.value);
      expect(rows.length, `${name}: ${cover.value}`).toBeGreaterThan(0);
      expect(cover.mark).toBe("ours");
      expect(fullStandPerAcre === null).toBe(name === "perennial grass");
      if (fullStandPerAcre === null) continue;
      const { value, range, mark, why } = fullStandPerAcre;
      expect(["read", "memory"]).toContain(mark);
      expect(why).toMatch(/Univ\.|Council/);
      expect(value).toBeGreaterThan((range[0] + range[1]) / 2 - 1);
      expect(value).toBeLessThanOrEqual(range[1]);
    }
  });
  test.each([
    ["Milo", "row crops"],
    ["garbanzo bean", "close-seeded legumes"],
    ["broomcorn millet", "small grain"],
    ["sod", "pasture or range"],
    ["pinto bean", "row crops"],
    ["red lentil", "close-seeded legumes"],
    ["cowpea hay", "close-seeded legumes"],
    ["bluestem pasture", "pasture or range"],
    ["crested wheatgrass", "pasture or range"],
    ["native grasses", "pasture or range"],
    ["sudangrass", "small grain"],
    ["sorghum-sudangrass", "row crops"],
    ["alfalfa", "close-seeded legumes"],
    ["camelina", "small grain"],
  ])("the ground under %s is %s, a crop of one's own by its name", (name, cover) =>
    expect(coverUnderCrop(name)).toBe(cover),
  );
  const sown = cropDefaults.filter(({ name }) => name !== "perennial grass");
  test.each(sown.map((crop) => [crop.name, defaultPlan(crop)] as const))(
    "%s is a plan that can run",
    (name, plan) => {
      expect(plan.name).toBe(name);
      expect(isDate(2001, plan.sowing.month, plan.sowing.day)).toBe(true);
      for (const lengths of [plan.stageLengths, plan.stageDaysFallback]) {
        expect(lengths.length).toBe(4);
        for (const length of lengths) expect(length).toBeGreaterThan(0);
      }
      const inRange: readonly (readonly [number, number, number])[] = [
        [plan.baseC, 0, 10],
        [plan.kcbInitial, 0.1, 0.2],
        [plan.kcbMid, 0.9, 1.2],
        [plan.kcbEnd, 0.1, 0.5],
        [plan.heightMm, 400, 2000],
        [plan.standShare, 1, 1],
        [plan.sowingDepthMm, 10, 80],
        [plan.maxRootDepthMm, 800, 2800],
        [plan.uptakeSharePerDay, 0.05, 0.15],
        [plan.depletionFraction, 0.3, 0.65],
      ];
      for (const [value, least, most] of inRange) {
        expect(value).toBeGreaterThanOrEqual(least);
        expect(value).toBeLessThanOrEqual(most);
      }
      expect(plan.frontVelocityMmPerDay).toBeNull();
      expect(plan.springFrom === null).toBe(name !== "winter wheat");
      expect(plan.dormantBelowC === null).toBe(name !== "winter wheat");
    },
  );
});

test("sod begins and stays at its full depth, and takes far less of a layer's water a day than a crop", () => {
  const sod = defaultPlan(cropNamed("sod")!);
  expect(sod.sowingDepthMm).toBe(sod.maxRootDepthMm);
  expect(sod.uptakeSharePerDay).toBeLessThan(0.5 * defaultPlan(cropNamed("winter wheat")!).uptakeSharePerDay);
});

describe("finding a crop", () => {
  test.each([
    ["Sorghum", "grain sorghum"],
    ["milo", "grain sorghum"],
    [" MAIZE ", "corn"],
    ["winter-wheat", "winter wheat"],
    ["Winter  Wheat", "winter wheat"],
    ["rapeseed", "canola"],
    ["garbanzo", "chickpea"],
    ["dry pea", "field pea"],
    ["proso", "proso millet"],
  ])("%s is %s", (said, name) => expect(findCrop(said).name).toBe(name));

  test("wheat asks which", () => {
    expect(cropNamed("wheat")).toBeNull();
    expect(() => findCrop("Wheat")).toThrow(
      'crop.name: expected one crop, found "Wheat"; say "winter wheat" or "spring wheat"',
    );
  });
  test("a slip of the pen is answered with the nearest name", () => {
    expect(() => findCrop("sunflwer", "--crop")).toThrow(
      /^--crop: .*found "sunflwer"; did you mean "sunflower"\?$/,
    );
  });
  test("what is no crop of ours gets the list", () => {
    expect(() => findCrop("quinoa plantation")).toThrow(/one of corn, grain sorghum, .*by its numbers$/);
  });
});
