import fc from "fast-check";
import { describe, expect, test } from "vitest";
import places from "../../../data-reference/scoreboard/places.json" with { type: "json" };
import { layOut } from "../../../src/season/layOut.ts";
import { coverOfMass, firstStageUnderResidue, massUnderCover } from "../../../src/season/residue/mulch.ts";
import { rotResidue } from "../../../src/season/residue/residue.ts";
import { rainFactor, shareLeft, warmthFactor } from "../../../src/season/residue/residueDecay.ts";
import type { Ground } from "../../../src/season/season.ts";
import { snowAndMelt } from "../../../src/season/snow.ts";
import { makeWorkspace } from "../../../src/season/simulate.ts";
import { makeToday } from "../../../src/season/today.ts";
import { column, testCourse, testGround, testInput, testSilt, testWeather } from "../../support/column.ts";

// [Renard et al. 1997] USDA Handbook 703 ch. 5 (memory), worked by hand: with r = (T + 7.7)^2 / 39.9^2, F = 2 r - r^2.
describe("the equations, by hand", () => {
  test.each([
    [-20, 0],
    [-7.7, 0],
    [0, 0.0731],
    [10, 0.3549],
    [20, 0.7316],
    [32.2, 1],
    [60, 0],
  ])("at %s C warmth leaves %s of the pace", (airC, factor) => {
    expect(warmthFactor(airC)).toBeCloseTo(factor, 4);
  });
  test.each([
    [0, 0],
    [2.2, 0.5],
    [4.4, 1],
    [9, 1],
  ])("with %s mm a day rain leaves %s", (rainMmPerDay, factor) => {
    expect(rainFactor(rainMmPerDay)).toBeCloseTo(factor, 12);
  });
  test("what lacks more sets the pace: 15 days at half of it leave exp(-0.06)", () => {
    expect(shareLeft(15, 0.5, 0.7316)).toBeCloseTo(0.9418, 4);
    expect(shareLeft(15, 0.7316, 0.5)).toBeCloseTo(0.9418, 4);
  });
});

/** Mass left after the 14 months from July on, by that place's monthly means. */
function leftAfterFallow(id: string): number {
  const { rainMm, tMaxC, tMinC } = places.places.find((place) => place.id === id)!;
  let left = 1;
  for (let month = 6; month < 20; month++) {
    const m = month % 12;
    left *= shareLeft(30.4, rainFactor(rainMm[m]! / 30.4), warmthFactor((tMaxC[m]! + tMinC[m]!) / 2));
  }
  return left;
}

test("14 months of no-till fallow on the dry plains take a half to two thirds of the mass (memory)", () => {
  for (const id of ["akron", "north-platte", "tribune", "bushland", "mandan"]) {
    expect(leftAfterFallow(id), id).toBeGreaterThan(0.32);
    expect(leftAfterFallow(id), id).toBeLessThan(0.5);
  }
});

test("at Akron about 60 % of it, as CHANGELOG.md has it", () =>
  expect(leftAfterFallow("akron")).toBeCloseTo(0.4, 1));

test("cover and mass are each other's inverse, full cover being 12 t/ha", () => {
  for (const mass of [0, 0.5, 3, 8, 11.9]) expect(massUnderCover(coverOfMass(mass))).toBeCloseTo(mass, 9);
  expect(massUnderCover(1)).toBe(12);
});

const rotting: Ground = { ...testGround, residueDecays: true, residueCoverCrop: null };

/** What lies there every day, and the field as it is in the end. */
function lain(
  ground: Partial<Ground>,
  { rainMm = 2, meanC = 15, days = 400, sowingDay = 300, hasTemperature = true } = {},
  weatherOf: (day: number) => { rainMm: number; meanC: number } = () => ({ rainMm, meanC }),
) {
  const slices = column([testSilt]);
  const input = testInput({
    slices,
    weather: { ...testWeather(days, weatherOf), hasTemperature },
    course: testCourse(days, sowingDay),
    ground: { ...rotting, ...ground },
  });
  const field = layOut(input, makeWorkspace(slices.count));
  const today = makeToday();
  const covers: number[] = [];
  for (let day = 0; day < days; day++) {
    today.day = day;
    today.index = day;
    today.inCrop = day >= sowingDay;
    rotResidue(today, field);
    covers.push(field.residue.cover);
  }
  return { covers, field };
}

describe("residue of a run", () => {
  const cover = fc.integer({ min: 1, max: 1000 }).map((step) => step / 1000);
  const rain = fc.integer({ min: 1, max: 120 }).map((step) => step / 20);
  const warm = fc.integer({ min: -5, max: 30 });

  test("never grows, and less is left at the end than lay at the start", () => {
    fc.assert(
      fc.property(cover, rain, warm, (residueCoverFallow, rainMm, meanC) => {
        const { covers } = lain({ residueCoverFallow }, { rainMm, meanC });
        for (let day = 1; day < covers.length; day++)
          expect(covers[day]).toBeLessThanOrEqual(covers[day - 1]!);
        expect(covers.at(-1)).toBeLessThan(covers[0]!);
      }),
      { numRuns: 60, seed: 7 },
    );
  });
  test("more rain or more warmth never leaves more", () => {
    fc.assert(
      fc.property(cover, rain, rain, warm, warm, (residueCoverFallow, rainA, rainB, warmA, warmB) => {
        const left = (rainMm: number, meanC: number) =>
          lain({ residueCoverFallow }, { rainMm, meanC }).covers.at(-1)!;
        const [dry, wet] = [Math.min(rainA, rainB), Math.max(rainA, rainB)];
        const [cold, warmer] = [Math.min(warmA, warmB), Math.max(warmA, warmB)];
        expect(left(wet, cold)).toBeLessThanOrEqual(left(dry, cold));
        expect(left(dry, warmer)).toBeLessThanOrEqual(left(dry, cold));
      }),
      { numRuns: 60, seed: 8 },
    );
  });
  test("and each of the two can hold it back", () => {
    const left = (rainMm: number, meanC: number) => lain({}, { rainMm, meanC }).covers.at(-1)!;
    expect(left(0, 20)).toBeCloseTo(0.3, 12);
    expect(left(4, -10)).toBeCloseTo(0.3, 12);
    expect(left(2, 20)).toBeLessThan(left(1, 20));
    expect(left(4, 15)).toBeLessThan(left(4, 5));
  });
  test("none stays none, and what is kept stays as it was", () => {
    expect(new Set(lain({ residueCoverFallow: 0 }).covers)).toEqual(new Set([0]));
    expect(new Set(lain({ residueDecays: false, residueCoverFallow: 0.7 }).covers)).toEqual(new Set([0.7]));
  });
  test("a cover stated for sowing lies there then, and rots on", () => {
    const { covers } = lain({ residueCoverFallow: 0.9, residueCoverCrop: 0.4 });
    expect(covers[299]).not.toBeCloseTo(0.4, 2);
    expect(covers[300]).toBeCloseTo(0.4, 12);
    expect(covers.at(-1)).toBeLessThan(0.4);
  });
  test("without fallow the run begins with the crop's", () => {
    const { covers } = lain({ residueCoverFallow: 0.9, residueCoverCrop: 0.4 }, { sowingDay: 0 });
    expect(covers[0]).toBe(0.4);
  });
  test("a record without temperatures rots it by rain alone", () => {
    const [known, unknown] = [true, false].map(
      (hasTemperature) => lain({}, { rainMm: 2.2, meanC: 40, hasTemperature }).covers[15],
    );
    expect(known).toBeCloseTo(unknown!, 12);
    const frozen = lain({}, { rainMm: 2.2, meanC: -10, hasTemperature: false }).covers[15]!;
    expect(massUnderCover(frozen)).toBeCloseTo(massUnderCover(0.3) * Math.exp(-0.06), 12);
  });
  test("snow and runoff follow it in proportion, what was stated stays", () => {
    const ground = {
      residueCoverFallow: 0.8,
      snowCatchByCover: 0.25,
      curveNumberFallow: 80,
      curveNumberBareFallow: 90,
    };
    const { covers, field } = lain(ground);
    const ofFirst = covers.at(-1)! / 0.8;
    expect(field.snowCatchShare).toBeCloseTo(0.25 * covers.at(-1)!, 12);
    expect(field.curveNumbers.fallow.average).toBeCloseTo(90 - 10 * ofFirst, 12);
    const stated = lain({
      ...ground,
      snowCatchBareShare: 0.2,
      snowCatchByCover: 0,
      curveNumberBareFallow: 80,
    }).field;
    expect(stated.snowCatchShare).toBeCloseTo(0.2, 12);
    expect(stated.curveNumbers.fallow.average).toBeCloseTo(80, 12);
  });
  test("each half month rots it by its own rain and warmth", () => {
    const rotted = (weatherOf: Parameters<typeof lain>[2]) => {
      const { covers } = lain({}, {}, weatherOf);
      return [15, 30].map((day) => massUnderCover(covers[day]!) / massUnderCover(covers[day - 15]!));
    };
    const [inDry, inWet] = rotted((day) => ({ rainMm: day < 15 ? 0 : 2.2, meanC: 32.2 }));
    expect([inDry, inWet]).toEqual([1, expect.closeTo(Math.exp(-0.008 * 15 * 0.5), 12)]);
    const [inFrost, inWarmth] = rotted((day) => ({ rainMm: 9, meanC: day < 15 ? -10 : 32.2 }));
    expect([inFrost, inWarmth]).toEqual([1, expect.closeTo(Math.exp(-0.008 * 15), 12)]);
  });
  test("evaporation follows what is left of it: the first stage, and FAO-56's amounts in fallow and in crop", () => {
    const { covers, field } = lain({ residueCoverFallow: 0.8 });
    const left = covers.at(-1)!;
    expect(left).toBeLessThan(0.6);
    expect(field.firstStageShare).toBe(firstStageUnderResidue(left));
    // 5 % less for every 10 % of the ground (FAO-56 ch. 10 and 11, read).
    expect(field.cropResidueFactor).toBeCloseTo(1 - 0.5 * left, 12);
    expect(field.totalEvaporableMm.fallow).toBeCloseTo(field.totalEvaporableMm.crop * (1 - 0.5 * left), 12);
  });
  test("more of it at sowing than in fallow catches more snow from then on", () => {
    const ground = {
      residueCoverFallow: 0,
      residueCoverCrop: 0.8,
      residueDecays: false,
      snowCatchByCover: 0.25,
    };
    expect(lain(ground, { days: 300 }).field.snowCatchShare).toBe(0);
    const { field } = lain(ground, { days: 301 }, () => ({ rainMm: 10, meanC: -5 }));
    expect(field.snowCatchShare).toBeCloseTo(0.2, 12);
    const today = makeToday();
    snowAndMelt(today, field);
    expect([today.snowfallMm, today.snowCaughtMm, today.snowOnGroundMm]).toEqual([10, 2, 12]);
  });
});
