import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { InputError } from "../../../src/problem.ts";
import { dayNumber } from "../../../src/quantity/calendar.ts";
import { scaleToMean, scaleToTotals } from "../../../src/weather/generate/scaleRain.ts";
import { every, weatherWithRain } from "./sampleRecord.ts";

/** Sum from one date up to but not including another. */
function sumOf(
  weather: { firstDay: number; rainMm: Float64Array },
  from: [number, number, number],
  to: [number, number, number],
) {
  const at = (date: [number, number, number]) => dayNumber(...date) - weather.firstDay;
  return weather.rainMm.subarray(at(from), at(to)).reduce((sum, mm) => sum + mm, 0);
}

/** 2019, 2020 (leap), 2021: 1, 2 and 3 mm every day. */
const threeYears = weatherWithRain(
  [2019, 1, 1],
  Float64Array.of(...every(365, 1), ...every(366, 2), ...every(365, 3)),
);

describe("scaled by calendar year", () => {
  const scaled = scaleToTotals(threeYears, 330, "year");

  test("every year brings the total", () => {
    for (const year of [2019, 2020, 2021])
      expect(sumOf(scaled, [year, 1, 1], [year + 1, 1, 1])).toBeCloseTo(330, 9);
  });

  test("only rain and notes change, and the weather given stays as it was", () => {
    const { rainMm: _rain, notes: _notes, ...others } = scaled;
    expect(threeYears).toMatchObject(others);
    expect(threeYears.rainMm[0]).toBe(1);
    expect(scaled.notes).toEqual([
      "before",
      "Rain of each calendar year scaled to 13 in (330 mm): multiplied by 0.30 to 0.90.",
    ]);
  });

  test("a year cut off by the record's end takes the factor of the whole years together", () => {
    const cut = weatherWithRain([2019, 1, 1], Float64Array.of(...every(365, 1), ...every(10, 1)));
    expect(scaleToTotals(cut, 730, "year").rainMm[370]).toBeCloseTo(2, 12);
  });

  test("a year without rain takes the rainy days of the nearest with rain, in a leap year too, and says so", () => {
    const rain = Float64Array.of(...every(365, 0), ...every(366, 2), ...every(365, 0));
    rain[365 + 365] = 50; // 31 December 2020: day 366 of its year
    const mended = scaleToTotals(weatherWithRain([2019, 1, 1], rain), 300, "year");
    for (const year of [2019, 2020, 2021])
      expect(sumOf(mended, [year, 1, 1], [year + 1, 1, 1])).toBeCloseTo(300, 9);
    expect(mended.notes.at(-1)).toBe(
      "With less than 0.04 in (1 mm) to scale, these took the rainy days of another: 2019 those of 2020; 2021 those of 2020.",
    );
  });

  test("to 0 mm is dry, from no rain at all too", () => {
    expect(scaleToTotals(threeYears, 0, "year").rainMm.every((mm) => mm === 0)).toBe(true);
    const dry = weatherWithRain([2019, 1, 1], every(365, 0));
    expect(scaleToTotals(dry, 0, "year").rainMm.every((mm) => mm === 0)).toBe(true);
  });
});

describe("scaled by season", () => {
  const summer = { from: { month: 5, day: 1 }, to: { month: 9, day: 30 } };
  const winter = { from: { month: 9, day: 15 }, to: { month: 7, day: 10 } };

  test("every season brings the total, days outside stay as they were", () => {
    const scaled = scaleToTotals(threeYears, 200, "season", summer);
    for (const year of [2019, 2020, 2021])
      expect(sumOf(scaled, [year, 5, 1], [year, 10, 1])).toBeCloseTo(200, 9);
    expect(sumOf(scaled, [2020, 1, 1], [2020, 5, 1])).toBe(242);
    expect(scaled.notes.at(-1)).toContain("Rain of each season scaled to 7.87 in (200 mm)");
  });

  test("across the new year: whole seasons to the total, the cut ones at both ends by the mean factor", () => {
    const scaled = scaleToTotals(threeYears, 100, "season", winter);
    expect(sumOf(scaled, [2019, 9, 15], [2020, 7, 11])).toBeCloseTo(100, 9);
    expect(sumOf(scaled, [2020, 9, 15], [2021, 7, 11])).toBeCloseTo(100, 9);
    const mean = (108 + 2 * 192 + (2 * 108 + 3 * 191)) / 2;
    expect(scaled.rainMm[0]).toBeCloseTo(100 / mean, 12);
    expect(scaled.rainMm.at(-1)).toBeCloseTo((3 * 100) / mean, 12);
    expect(scaled.rainMm[dayNumber(2020, 8, 1) - scaled.firstDay]).toBe(2);
  });
});

test("any year with rain comes to the total, no day below 0, dry days dry (fast-check)", () => {
  const rain = fc.array(fc.double({ min: 0, max: 80, noNaN: true }), { minLength: 365, maxLength: 365 });
  fc.assert(
    fc.property(rain, fc.double({ min: 0, max: 2000, noNaN: true }), (mm, total) => {
      fc.pre(mm.some((each) => each >= 1));
      const scaled = scaleToTotals(weatherWithRain([2019, 1, 1], Float64Array.from(mm)), total, "year");
      expect(Math.abs(scaled.rainMm.reduce((sum, each) => sum + each, 0) - total)).toBeLessThan(1e-9);
      expect(scaled.rainMm.every((each, day) => each >= 0 && (mm[day] !== 0 || each === 0))).toBe(true);
    }),
    { numRuns: 100 },
  );
});

describe("scaled to a mean", () => {
  test("whole years bring it on average, each as much above or below it as it was", () => {
    const scaled = scaleToMean(threeYears, 330, "year");
    const sums = [2019, 2020, 2021].map((year) => sumOf(scaled, [year, 1, 1], [year + 1, 1, 1]));
    expect(sums.reduce((a, b) => a + b) / 3).toBeCloseTo(330, 9);
    const before = [2019, 2020, 2021].map((year) => sumOf(threeYears, [year, 1, 1], [year + 1, 1, 1]));
    sums.forEach((mm, i) => expect(mm / sums[0]!).toBeCloseTo(before[i]! / before[0]!, 9));
    expect(scaled.notes.at(-1)).toContain("so that calendar years bring 13 in (330 mm) on average");
  });

  test("of seasons likewise, with the days outside them multiplied too", () => {
    const summer = { from: { month: 5, day: 1 }, to: { month: 9, day: 30 } };
    const scaled = scaleToMean(threeYears, 200, "season", summer);
    const seasons = [2019, 2020, 2021].map((year) => sumOf(scaled, [year, 5, 1], [year, 10, 1]));
    expect(seasons.reduce((a, b) => a + b) / 3).toBeCloseTo(200, 9);
    expect(scaled.rainMm[0]! / threeYears.rainMm[0]!).toBeCloseTo(
      scaled.rainMm[200]! / threeYears.rainMm[200]!,
      9,
    );
  });
});

describe("refused", () => {
  const half = weatherWithRain([2019, 1, 1], every(180, 1));
  test.each<[string, () => unknown, string]>([
    [
      "a total below 0",
      () => scaleToTotals(threeYears, -1, "year"),
      "weather.annualRain: expected a total of 0 or more, found -1",
    ],
    ["no number", () => scaleToTotals(threeYears, Number.NaN, "year"), "expected a total of 0 or more"],
    [
      "no whole year",
      () => scaleToTotals(half, 300, "year"),
      "weather.annualRain: expected a record with at least one whole calendar year to scale, found 2019-01-01 to 2019-06-29; give a longer record, or scale the season's total",
    ],
    [
      "no rain",
      () => scaleToTotals(weatherWithRain([2019, 1, 1], every(365, 0)), 300, "year"),
      "weather.annualRain: expected at least 0.04 in (1 mm) of rain in one year to scale, found less; check the record's rain column",
    ],
    [
      "no whole season",
      () => scaleToTotals(half, 300, "season", { from: { month: 5, day: 1 }, to: { month: 9, day: 30 } }),
      "weather.seasonRain: expected a record with at least one whole season to scale, found 2019-01-01",
    ],
  ])("%s", (_what, run, message) => {
    expect(run).toThrow(InputError);
    expect(run).toThrow(message);
  });
});
