import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { CropPlan } from "../../../src/crop/crop.ts";
import { cropCourse } from "../../../src/crop/cropCourse.ts";
import { cropDefaults, defaultPlan, findCrop } from "../../../src/crop/crops.ts";
import { longestSeasonDays, seasonClock, waitDays } from "../../../src/crop/stages.ts";
import { dayNumber } from "../../../src/quantity/calendar.ts";
import type { DailyWeather } from "../../../src/weather/records/record.ts";
import {
  lindon,
  monthDayOf,
  normalWeather,
  sowingIndexOf,
  swingingWeather,
  weatherOf,
} from "./siteWeather.ts";
import { casesOf } from "../../support/laws.ts";

const plans = cropDefaults.map(defaultPlan);
const plan = (name: string): CropPlan => defaultPlan(findCrop(name));

const sum = (values: Float64Array): number => values.reduce((total, value) => total + value, 0);

describe("a run of fallow and crop", () => {
  const weather = normalWeather(lindon);
  test.each(plans)("$name: fallow, then stages in order, to the end of the arrays", (crop) => {
    const sowing = sowingIndexOf(crop, weather);
    const course = cropCourse(crop, weather, sowing - 60, sowing);
    const { stageByDay, sowingDay, floweringDay, maturityDay } = course;
    expect(sowingDay).toBe(60);
    expect(course.sowingDepthMm).toBe(crop.sowingDepthMm);
    for (const byDay of [
      course.kcbByDay,
      course.kcMaxByDay,
      course.coverByDay,
      course.descentMmByDay,
      stageByDay,
    ]) {
      expect(byDay.length).toBe(maturityDay + 1);
    }
    for (let day = 1; day <= maturityDay; day++) {
      expect(stageByDay[day]! - stageByDay[day - 1]!).toBeOneOf([0, 1]);
    }
    expect([stageByDay[59], stageByDay[60], stageByDay[maturityDay]]).toEqual([0, 1, 4]);
    expect([stageByDay[floweringDay - 1], stageByDay[floweringDay]]).toEqual([2, 3]);
  });

  test("fallow is bare soil of FAO-56 eq. 72, whatever the wind, where there is no frost", () => {
    const windy = {
      ...weather,
      tMinC: weather.tMinC.map((c) => Math.max(1, c)),
      wind2mMPerS: weather.wind2mMPerS.map(() => 6),
    };
    const course = cropCourse(plan("corn"), windy, 100, 129);
    for (let day = 0; day < 29; day++) {
      expect([course.kcbByDay[day], course.coverByDay[day], course.descentMmByDay[day]]).toEqual([0, 0, 0]);
      expect(course.kcMaxByDay[day]).toBeCloseTo(1.2, 12);
    }
  });

  test("wind and dry air of mid-season raise mid-season's coefficient only", () => {
    const crop: CropPlan = { ...plan("corn"), clock: "days", stageLengths: [20, 30, 40, 30] };
    const still = weatherOf(() => 20);
    const windy: DailyWeather = {
      ...still,
      wind2mMPerS: still.wind2mMPerS.map((u, i) => (i >= 50 && i < 90 ? 4 : u)),
    };
    const a = cropCourse(crop, still, 0, 0).kcbByDay;
    const b = cropCourse(crop, windy, 0, 0).kcbByDay;
    expect(b[70]! - a[70]!).toBeCloseTo(0.08 * (2 / 3) ** 0.3, 9);
    expect(b[10]).toBe(a[10]);
    expect(b[119]).toBe(a[119]);
  });
});

describe("winter wheat sleeps", () => {
  const wheat = plan("winter wheat");
  const weather = swingingWeather(lindon, 4, 5);
  const sowing = sowingIndexOf(wheat, weather);
  const { kcbByDay, coverByDay } = cropCourse(wheat, weather, sowing, sowing);
  const january = 100; // day of the run: 3 January
  test("its coefficient falls to that of dormant cover in mid-winter, with its leaves still there", () => {
    expect(kcbByDay[january]).toBe(wheat.kcbDormant);
    expect(coverByDay[january]!).toBeGreaterThan(0);
  });
  test("without sleep it would use more water from December to February", () => {
    const awake = cropCourse({ ...wheat, dormantBelowC: null }, weather, sowing, sowing).kcbByDay;
    const winter = (kcb: Float64Array): number => sum(kcb.slice(67, 157));
    expect(winter(awake)).toBeGreaterThan(1.3 * winter(kcbByDay));
  });
  test("a given velocity stands still while it sleeps", () => {
    const driven = cropCourse({ ...wheat, frontVelocityMmPerDay: 5 }, weather, sowing, sowing);
    expect(driven.descentMmByDay[january]).toBe(0);
    expect(driven.descentMmByDay[10]).toBe(5);
  });
  test.each([0, 30, 50])(
    "without temperatures stages run on calendar days from 1 March, sown %d days later too",
    (later) => {
      const blind = { ...weather, hasTemperature: false };
      const course = cropCourse(wheat, blind, sowing + later, sowing + later);
      const [, ...fromSpring] = wheat.stageDaysFallback;
      expect(monthDayOf(weather, sowing + later + course.maturityDay)).toBe("07-02");
      const spring = course.maturityDay + 1 - fromSpring.reduce((a, b) => a + b, 0);
      expect([course.stageByDay[spring - 1], course.stageByDay[spring]]).toEqual([1, 2]);
    },
  );
  test("a warm autumn brings it no nearer to heading", () => {
    const warm = { ...weather, tMeanC: weather.tMeanC.map((c, i) => (i < sowing + 90 ? c + 5 : c)) };
    expect(seasonClock(wheat, warm, sowing).days).toBe(seasonClock(wheat, weather, sowing).days);
    expect(seasonClock({ ...wheat, springFrom: null }, warm, sowing).days).toBeLessThan(
      seasonClock({ ...wheat, springFrom: null }, weather, sowing).days - 5,
    );
  });
  test("sown in spring it does not wait for the next one", () => {
    expect(waitDays(wheat, dayNumber(2001, 3, 20))).toBe(0);
    expect(waitDays(wheat, dayNumber(2001, 9, 25))).toBe(157);
  });
});

describe("a season always ends", () => {
  test("without heat: after 1.15 times its calendar days", () => {
    const cold = weatherOf(() => 5);
    const clock = seasonClock(plan("corn"), cold, 0);
    expect([clock.days, clock.end]).toEqual([161, "ended by days"]);
    const course = cropCourse(plan("corn"), cold, 0, 0);
    expect([course.floweringDay, course.maturityDay]).toEqual([160, 160]);
  });
  test("weather that ends first is the user's to mend", () => {
    const short = weatherOf(() => 20, 60);
    expect(() => cropCourse(plan("corn"), short, 0, 0)).toThrow(
      'weather: expected weather until corn sown 2001-01-01 is mature (at most 161 days), found "weather that ends 2001-03-01"; give a longer record',
    );
  });
  test("weather that begins too late is, too", () => {
    expect(() =>
      cropCourse(
        plan("corn"),
        weatherOf(() => 20),
        -10,
        0,
      ),
    ).toThrow("weather: expected weather from 2000-12-22 on, where this run begins");
  });
});

describe("for any plan and weather", () => {
  const stage = fc.double({ min: 0, max: 900, noNaN: true });
  const days = fc.integer({ min: 0, max: 120 });
  const coefficient = fc.double({ min: 0, max: 1.5, noNaN: true });
  const anyPlan: fc.Arbitrary<CropPlan> = fc.record({
    name: fc.constant("any"),
    sowing: fc.constant({ month: 1, day: 1 }),
    clock: fc.constantFrom("thermal time" as const, "days" as const),
    stageLengths: fc.tuple(stage, stage, stage, stage),
    stageDaysFallback: fc.tuple(days, days, days, days),
    baseC: fc.double({ min: -5, max: 15, noNaN: true }),
    springFrom: fc.constantFrom(null, { month: 3, day: 1 }, { month: 1, day: 20 }),
    kcbInitial: coefficient,
    kcbMid: coefficient,
    kcbEnd: coefficient,
    heightMm: fc.double({ min: 0, max: 6000, noNaN: true }),
    dormantBelowC: fc.option(fc.double({ min: -5, max: 20, noNaN: true }), { nil: null }),
    kcbDormant: coefficient,
    standShare: fc.double({ min: 0, max: 1, noNaN: true }),
    sowingDepthMm: fc.double({ min: 0, max: 300, noNaN: true }),
    maxRootDepthMm: fc.double({ min: 0, max: 6000, noNaN: true }),
    descent: fc.oneof(
      fc.record({
        shape: fc.constant("sine" as const),
        endStage: fc.double({ min: 0, max: 4, noNaN: true }),
      }),
      fc.record({
        shape: fc.constant("heat" as const),
        degreeDays: fc.double({ min: 1, max: 3000, noNaN: true }),
        endStage: fc.double({ min: 0, max: 4, noNaN: true }),
      }),
      fc
        .tuple(fc.double({ min: 0.1, max: 1.9, noNaN: true }), fc.double({ min: 0, max: 1, noNaN: true }))
        .map(([stage, share]) => ({
          shape: "points" as const,
          points: [[stage, share] as const, [2.4, 1] as const],
        })),
    ),
    frontVelocityMmPerDay: fc.option(fc.double({ min: 0, max: 100, noNaN: true }), { nil: null }),
    uptakeSharePerDay: fc.constant(0.096),
    denseRootsMm: fc.constant(600),
    uptakeHalvingMm: fc.constant(800),
    depletionFraction: fc.constant(0.5),
  });
  const anyWeather = fc
    .record({
      meanC: fc.double({ min: -30, max: 40, noNaN: true }),
      swingC: fc.double({ min: 0, max: 15, noNaN: true }),
      wind: fc.double({ min: 0, max: 15, noNaN: true }),
      rhMin: fc.double({ min: 0, max: 100, noNaN: true }),
      hasTemperature: fc.boolean(),
    })
    .map(({ meanC, swingC, wind, rhMin, hasTemperature }) => {
      const weather = weatherOf((day) => meanC + swingC * Math.sin(day), 3700, hasTemperature);
      return {
        ...weather,
        wind2mMPerS: weather.wind2mMPerS.map(() => wind),
        rhMinPercent: weather.rhMinPercent.map(() => rhMin),
      };
    });

  test("coefficients, cover and descent are finite and in range, and roots end within their depth", () => {
    fc.assert(
      fc.property(anyPlan, anyWeather, fc.integer({ min: 0, max: 30 }), (crop, weather, fallow) => {
        const sown = { ...crop, sowing: { month: 1, day: fallow + 1 } };
        const course = cropCourse(sown, weather, 0, fallow);
        const { sowingDay, floweringDay, maturityDay } = course;
        expect(sowingDay <= floweringDay && floweringDay <= maturityDay).toBe(true);
        for (let day = 0; day <= maturityDay; day++) {
          const kcb = course.kcbByDay[day]!;
          const kcMax = course.kcMaxByDay[day]!;
          const cover = course.coverByDay[day]!;
          const descent = course.descentMmByDay[day]!;
          const fine =
            kcb >= 0 &&
            kcb < 2.5 &&
            kcMax >= kcb + 0.05 - 1e-12 &&
            kcMax < 2.6 &&
            cover >= 0 &&
            cover <= 0.99;
          // A plain throw: an `expect` for each day would take most of the time.
          if (!(fine && descent >= 0 && Number.isFinite(descent)))
            throw new Error(`day ${day}: ${kcb} ${kcMax} ${cover} ${descent}`);
        }
        const deepest = Math.max(0, crop.maxRootDepthMm - crop.sowingDepthMm);
        expect(sum(course.descentMmByDay)).toBeLessThanOrEqual(deepest + 1e-9);
        const days = maturityDay - sowingDay + 1;
        expect(days).toBeLessThanOrEqual(longestSeasonDays(sown, weather.hasTemperature));
      }),
      { numRuns: casesOf({ whole: 400, usually: 100 }) },
    );
  });

  test("a thinner stand never has a larger coefficient or more cover", () => {
    const weather = normalWeather(lindon);
    fc.assert(
      fc.property(
        fc.constantFrom(...plans),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (crop, standShare) => {
          const sowing = sowingIndexOf(crop, weather);
          const full = cropCourse(crop, weather, sowing, sowing);
          const thin = cropCourse({ ...crop, standShare }, weather, sowing, sowing);
          for (let day = 0; day <= full.maturityDay; day++) {
            const [thinKcb, thinCover] = [thin.kcbByDay[day]!, thin.coverByDay[day]!];
            if (!(thinKcb <= full.kcbByDay[day]! + 1e-12)) throw new Error(`day ${day}: ${thinKcb}`);
            if (!(thinCover <= full.coverByDay[day]! + 1e-12)) throw new Error(`day ${day}: ${thinCover}`);
          }
        },
      ),
      { numRuns: 60 },
    );
  });

  test("a warmer season is never a longer one", () => {
    fc.assert(
      fc.property(fc.constantFrom(...plans), fc.double({ min: 0, max: 5, noNaN: true }), (crop, warmerC) => {
        const here = normalWeather(lindon);
        const there = { ...here, tMeanC: here.tMeanC.map((c) => c + warmerC) };
        const sowing = sowingIndexOf(crop, here);
        expect(seasonClock(crop, there, sowing).days).toBeLessThanOrEqual(
          seasonClock(crop, here, sowing).days,
        );
      }),
      { numRuns: 60 },
    );
  });
});
