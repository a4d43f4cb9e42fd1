import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { CropPlan } from "../../../src/crop/crop.ts";
import { cropCourse } from "../../../src/crop/cropCourse.ts";
import { cropDefaults, defaultPlan, findCrop } from "../../../src/crop/crops.ts";
import { depthShare } from "../../../src/crop/potentialDescent.ts";
import {
  endedAt,
  endStageOf,
  progressAt,
  shareBetween,
  stageReading,
} from "../../../src/crop/rootDescent.ts";
import type { DailyWeather } from "../../../src/weather/records/record.ts";
import { lindon, normalWeather, sowingIndexOf, swingingWeather } from "./siteWeather.ts";

const plans = cropDefaults.map(defaultPlan);
const lengths = [20, 40, 40, 30] as const;

const depths = (plan: CropPlan, weather: DailyWeather): number[] => {
  const sowing = sowingIndexOf(plan, weather);
  let depth = plan.sowingDepthMm;
  return Array.from(cropCourse(plan, weather, sowing, sowing).descentMmByDay, (mm) => (depth += mm));
};

describe("the scale of stages", () => {
  test("examples of the docstrings", () => {
    expect(stageReading(40, lengths)).toBe(1.5);
    expect(progressAt(1.5, lengths)).toBe(40);
  });
  test("before sowing, beyond maturity, and past a stage of no length", () => {
    expect([stageReading(-1, lengths), stageReading(999, lengths)]).toEqual([0, 4]);
    expect(stageReading(20, [20, 0, 40, 30])).toBe(2);
    expect([progressAt(-1, lengths), progressAt(9, lengths)]).toEqual([0, 130]);
  });
  test("there and back", () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 4, noNaN: true }), (stage) => {
        expect(stageReading(progressAt(stage, lengths), lengths)).toBeCloseTo(stage, 9);
      }),
    );
  });
});

describe("the descents of the crop table", () => {
  test.each(plans)(
    "$name: points rise from sowing to the whole depth, and it ends by maturity",
    ({ descent }) => {
      expect(endStageOf(descent)).toBeGreaterThan(1);
      expect(endStageOf(descent)).toBeLessThanOrEqual(4);
      if (descent.shape !== "points") return;
      descent.points.forEach(([stage, share], p) => {
        const [stageBefore, shareBefore] = descent.points[p - 1] ?? [0, 0];
        expect(stage).toBeGreaterThan(stageBefore);
        expect(share).toBeGreaterThan(shareBefore);
      });
      expect(descent.points.at(-1)?.[1]).toBe(1);
    },
  );
  test("corn's descent has ended where others still go on", () => {
    const weather = normalWeather(lindon);
    const gainInLateSeason = (name: string) => {
      const plan = defaultPlan(findCrop(name));
      const sowing = sowingIndexOf(plan, weather);
      const { descentMmByDay, stageByDay } = cropCourse(plan, weather, sowing, sowing);
      return descentMmByDay.filter((_, day) => stageByDay[day] === 4).reduce((sum, mm) => sum + mm, 0);
    };
    expect(gainInLateSeason("corn")).toBe(0);
    // The day that ends mid-season still counts.
    expect(gainInLateSeason("winter wheat")).toBeLessThan(30);
    expect(gainInLateSeason("grain sorghum")).toBeGreaterThan(50);
  });
});

describe("laws of the unhindered front", () => {
  const anyCrop = fc.constantFrom(...plans);
  const anyWeather = fc.integer({ min: 1, max: 20 }).map((seed) => swingingWeather(lindon, 4, seed));

  test.each(plans)("$name: a change of pace is no step in depth", ({ descent, stageLengths }) => {
    const at = (reading: number): number => {
      const progress = progressAt(reading, stageLengths);
      return depthShare(descent, progress, stageLengths, progress, stageLengths);
    };
    const changes = descent.shape === "points" ? descent.points.map(([stage]) => stage) : [];
    for (const stage of [0, 0.5, 1, 2, 3, endStageOf(descent), ...changes]) {
      const steps = [-1e-6, 0, 1e-6].map((past) => at(Math.max(0, stage + past)));
      expect(steps[1]! - steps[0]!, `before ${stage}`).toBeLessThan(1e-5);
      expect(steps[2]! - steps[1]!, `after ${stage}`).toBeLessThan(1e-5);
      expect(Math.min(steps[1]! - steps[0]!, steps[2]! - steps[1]!)).toBeGreaterThanOrEqual(-1e-12);
    }
  });
  test("a crop that can root deeper is never shallower on any day", () => {
    fc.assert(
      fc.property(
        anyCrop,
        anyWeather,
        fc.double({ min: 0, max: 2000, noNaN: true }),
        (plan, weather, more) => {
          const here = depths(plan, weather);
          const deeper = depths({ ...plan, maxRootDepthMm: plan.maxRootDepthMm + more }, weather);
          here.forEach((depth, day) => expect(deeper[day]!).toBeGreaterThanOrEqual(depth - 1e-9));
        },
      ),
      { numRuns: 60 },
    );
  });
  test("no front goes beyond its greatest depth, nor down after its stage", () => {
    fc.assert(
      fc.property(anyCrop, anyWeather, (plan, weather) => {
        const sowing = sowingIndexOf(plan, weather);
        const { descentMmByDay, stageByDay } = cropCourse(plan, weather, sowing, sowing);
        expect(Math.max(...depths(plan, weather))).toBeLessThanOrEqual(plan.maxRootDepthMm + 1e-9);
        const lastStage = Math.ceil(endStageOf(plan.descent));
        // The day that ends the stage may still be one of descent.
        const after = descentMmByDay.filter((_, day) => (stageByDay[day - 1] ?? 0) > lastStage);
        expect(after.every((mm) => mm === 0)).toBe(true);
      }),
      { numRuns: 60 },
    );
  });
});

describe("roots told to end at another stage", () => {
  const weather = normalWeather(lindon);
  const corn = defaultPlan(findCrop("corn"));
  test("corn to maturity: later and as deep", () => {
    const slow = depths({ ...corn, descent: endedAt(corn.descent, 4) }, weather);
    const usual = depths(corn, weather);
    expect(slow.at(-1)).toBeCloseTo(usual.at(-1)!, 6);
    expect(slow[60]!).toBeLessThan(usual[60]! - 200);
  });
  test("wheat to flowering: at its pace, and less deep", () => {
    const wheat = defaultPlan(findCrop("spring wheat"));
    const short = depths({ ...wheat, descent: endedAt(wheat.descent, 2) }, weather);
    const usual = depths(wheat, weather);
    expect(short[50]).toBe(usual[50]);
    expect(short.at(-1)!).toBeLessThan(usual.at(-1)! - 300);
  });
  test("between points the share is on the line", () => {
    expect(
      shareBetween(1, [
        [2, 0.5],
        [4, 1],
      ]),
    ).toBe(0.25);
    expect(
      shareBetween(3, [
        [2, 0.5],
        [4, 1],
      ]),
    ).toBe(0.75);
    expect(
      shareBetween(9, [
        [2, 0.5],
        [3, 0.9],
      ]),
    ).toBe(0.9);
  });
  test("a given velocity ends with the descent, too", () => {
    const driven = depths({ ...corn, frontVelocityMmPerDay: 5 }, weather);
    expect(driven.at(-1)!).toBeLessThan(500);
    expect(driven.at(-1)).toBe(driven.at(-30));
  });
});

test("without temperatures roots in step with heat share their descent out among the stages", () => {
  const wheat = defaultPlan(findCrop("spring wheat"));
  const blind = { ...normalWeather(lindon), hasTemperature: false };
  const known = depths(wheat, normalWeather(lindon));
  const guessed = depths(wheat, blind);
  expect(guessed.at(-1)).toBeCloseTo(wheat.maxRootDepthMm, 6);
  expect(Math.abs(guessed[60]! - known[60]!)).toBeLessThan(350);
});
