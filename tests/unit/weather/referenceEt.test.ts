import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { toDailyWeather } from "../../../src/weather/et/dailyWeather.ts";
import { hargreavesMm } from "../../../src/weather/et/hargreaves.ts";
import { meanSaturationKPa } from "../../../src/weather/et/humidity.ts";
import { clearSkyMj, netLongwaveMj, solarFromTemperaturesMj } from "../../../src/weather/et/radiation.ts";
import type { Site } from "../../../src/weather/records/record.ts";
import { daylightHours, extraterrestrialMj } from "../../../src/weather/et/sun.ts";
import { every, recordFrom } from "./sampleRecord.ts";

describe("the sun at the ends of the earth", () => {
  test.each([
    ["polar night", 80, 355, 0, 0],
    ["polar day", 80, 172, 24, 40],
    ["the pole itself", 90, 172, 24, 40],
    ["southern night", -80, 172, 0, 0],
  ])("%s", (_name, latitudeDeg, dayOfYear, hours, leastMj) => {
    expect(daylightHours(latitudeDeg, dayOfYear)).toBeCloseTo(hours, 9);
    const ra = extraterrestrialMj(latitudeDeg, dayOfYear);
    expect(ra).toBeGreaterThanOrEqual(leastMj);
    expect(ra).toBeLessThan(50);
  });
});

describe("radiation", () => {
  test("from temperatures never passes a clear sky's", () => {
    const ra = 30;
    const clear = clearSkyMj(ra, 0);
    const day = { tMinC: 0, extraterrestrialMj: ra, clearSkyMj: clear, perRootRange: 0.19 };
    expect(solarFromTemperaturesMj({ ...day, tMaxC: 40 })).toBe(clear);
    expect(solarFromTemperaturesMj({ ...day, tMaxC: -1 })).toBe(0);
  });

  test("longwave counts radiation above a clear sky's as a clear sky's, and has a value in the polar night", () => {
    expect(netLongwaveMj(20, 10, 1, 30, 25)).toBe(netLongwaveMj(20, 10, 1, 25, 25));
    expect(netLongwaveMj(-20, -30, 0.05, 0, 0)).toBeGreaterThan(0);
  });
});

describe("reference ET", () => {
  const place = fc.record({
    latitudeDeg: fc.double({ min: -90, max: 90, noNaN: true }),
    elevationM: fc.double({ min: -400, max: 5000, noNaN: true }),
    setting: fc.constantFrom("inland" as const, "coastal" as const),
  });
  const airOfDay = fc.record({
    tMaxC: fc.double({ min: -60, max: 55, noNaN: true }),
    range: fc.double({ min: -2, max: 40, noNaN: true }),
    start: fc.integer({ min: 1, max: 28 }),
    month: fc.integer({ min: 1, max: 12 }),
    solar: fc.option(fc.double({ min: 0, max: 45, noNaN: true })),
    rh: fc.option(fc.double({ min: 0, max: 110, noNaN: true })),
    wind: fc.option(fc.double({ min: 0, max: 40, noNaN: true })),
    method: fc.constantFrom("penman-monteith" as const, "hargreaves" as const),
  });

  test("is a number from 0 to 150 mm for any weather, gales in desert heat too, with whatever is missing", () => {
    fc.assert(
      fc.property(place, airOfDay, (site: Site, day) => {
        const series = (value: number | null) => (value === null ? null : every(3, value));
        const record = recordFrom([2020, day.month, day.start], 3, {
          tMaxC: every(3, day.tMaxC),
          tMinC: every(3, day.tMaxC - day.range),
          solarMjPerM2: series(day.solar),
          rhMeanPercent: series(day.rh),
          wind2mMPerS: series(day.wind),
        });
        const { et0Mm, rhMinPercent } = toDailyWeather(record, site, { method: day.method, normals: null });
        for (const mm of et0Mm) expect(mm).toBeGreaterThanOrEqual(0);
        for (const mm of et0Mm) expect(mm).toBeLessThan(150);
        for (const percent of rhMinPercent) expect(percent >= 0 && percent <= 100).toBe(true);
      }),
      { numRuns: 500 },
    );
  });

  test("more vapour than the air can hold counts as saturation", () => {
    const site: Site = { latitudeDeg: 40, elevationM: 0, setting: "inland" };
    const foggy = (rh: number) =>
      toDailyWeather(
        recordFrom([2020, 6, 1], 1, {
          tMaxC: every(1, 20),
          tMinC: every(1, 20),
          rhMeanPercent: every(1, rh),
          solarMjPerM2: every(1, 0),
        }),
        site,
        { method: "penman-monteith", normals: null },
      ).et0Mm[0]!;
    expect(meanSaturationKPa(20, 20)).toBeGreaterThan(2.3);
    expect(foggy(100)).toBeLessThan(0.6);
    expect(foggy(150)).toBeLessThan(0.6);
  });

  test("Hargreaves is 0 in deep cold and without a range", () => {
    expect(hargreavesMm(-25, 10, 10)).toBe(0);
    expect(hargreavesMm(20, 0, 30)).toBe(0);
    expect(hargreavesMm(20, -3, 30)).toBe(0);
  });
});
