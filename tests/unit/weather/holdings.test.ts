import { describe, expect, test } from "vitest";
import { dayNumber, monthOf, yearOf } from "../../../src/quantity/calendar.ts";
import { describeHoldings, monthlyNormalsOf, seasonTotals } from "../../../src/weather/records/holdings.ts";
import { complaintsOf, recordOf } from "./readersFixture.ts";

/** From 1 July 2019 to 30 June 2022: 1 mm a day, 2 mm in 2021; highest as many °C as the month, lowest 10 less. */
const first = dayNumber(2019, 7, 1);
const days = Array.from({ length: dayNumber(2022, 6, 30) - first + 1 }, (_, i) => first + i);
const rainMm = days.map((day) => (yearOf(day) === 2021 ? 2 : 1));
const record = recordOf(
  { rainMm, tMaxC: days.map(monthOf), tMinC: days.map((day) => monthOf(day) - 10) },
  first,
);
const without = (from: number, count: number) =>
  rainMm.map((rain, i) => (first + i >= from && first + i < from + count ? NaN : rain));

describe("a record", () => {
  test("its years with their totals, the ends being part years", () => {
    expect(describeHoldings(record).years).toEqual([
      { year: 2019, days: 184, missingRainDays: 0, rainMm: 184, complete: false },
      { year: 2020, days: 366, missingRainDays: 0, rainMm: 366, complete: true },
      { year: 2021, days: 365, missingRainDays: 0, rainMm: 730, complete: true },
      { year: 2022, days: 181, missingRainDays: 0, rainMm: 181, complete: false },
    ]);
  });

  test("a year with a day of rain or temperature missing is not complete", () => {
    const oneDay = recordOf({ rainMm: without(dayNumber(2020, 3, 1), 1) }, first);
    expect(describeHoldings(oneDay).years[1]).toMatchObject({
      missingRainDays: 1,
      rainMm: 365,
      complete: false,
    });
    const cold = recordOf(
      { rainMm, tMaxC: days.map((day) => (day === dayNumber(2020, 3, 1) ? NaN : 5)) },
      first,
    );
    expect(describeHoldings(cold).completeYears).toEqual([2021]);
  });

  test("its elements with their gaps, before any filling", () => {
    const { elements } = describeHoldings(
      recordOf({ rainMm: [1, NaN, NaN, 1, NaN, 1], dewPointC: [1, 1, 1, 1, 1, 1] }),
    );
    expect(elements).toEqual([
      {
        element: "rainMm",
        words: "rain",
        unit: "mm",
        missingDays: 3,
        longestGapDays: 2,
        gaps: [
          { element: "rainMm", firstDay: dayNumber(2020, 1, 2), days: 2 },
          { element: "rainMm", firstDay: dayNumber(2020, 1, 5), days: 1 },
        ],
      },
      { element: "dewPointC", words: "dew point", unit: "°C", missingDays: 0, longestGapDays: 0, gaps: [] },
    ]);
  });
});

describe("totals of a season", () => {
  test("within the year", () => {
    const window = { from: { month: 5, day: 1 }, to: { month: 5, day: 31 } };
    expect(seasonTotals(record, window).map(({ year, rainMm: total }) => [year, total])).toEqual([
      [2020, 31],
      [2021, 62],
      [2022, 31],
    ]);
    expect(describeHoldings(record, window).season).toEqual({ window, totals: seasonTotals(record, window) });
  });
  test("over the new year belong to the year they end in; part seasons are left out", () => {
    const window = { from: { month: 12, day: 1 }, to: { month: 1, day: 31 } };
    expect(seasonTotals(record, window).map(({ year, days, rainMm: total }) => [year, days, total])).toEqual([
      [2020, 62, 62],
      [2021, 62, 31 + 62],
      [2022, 62, 62 + 31],
    ]);
    const long = { from: { month: 6, day: 15 }, to: { month: 6, day: 14 } };
    expect(seasonTotals(record, long).map(({ year }) => year)).toEqual([2021, 2022]);
  });
  test("to 29 February end on 28 in other years", () => {
    const window = { from: { month: 2, day: 1 }, to: { month: 2, day: 29 } };
    expect(seasonTotals(record, window).map(({ days }) => days)).toEqual([29, 28, 28]);
  });
});

describe("monthly means", () => {
  test("are means over the years of the month's total and temperatures", () => {
    const { rainMm: rain, wetDays, tMaxC, tMinC } = describeHoldings(record).monthly;
    // Three of each month, one of them in 2021 with twice the rain; February has 29, 28, 28 days.
    const lengths = [31, (29 + 56 + 28) / 4, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
    for (const [month, length] of lengths.entries()) expect(rain[month]).toBeCloseTo((length * 4) / 3, 9);
    expect(wetDays[1]).toBeCloseTo(85 / 3, 9);
    expect(tMaxC).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12]);
    expect(tMinC).toEqual([-9, -8, -7, -6, -5, -4, -3, -2, -1, 0, 1, 2]);
  });

  test("a wet day has 0.25 mm", () => {
    const rain = [...Array.from({ length: 10 }, () => 0.25), ...Array.from({ length: 21 }, () => 0.24)];
    expect(describeHoldings(recordOf({ rainMm: rain })).monthly.wetDays[0]).toBe(10);
  });

  test("a month with a fifth of its days missing or less is scaled up, with more it is not counted", () => {
    const six = recordOf({ rainMm: without(dayNumber(2021, 1, 1), 6) }, first);
    expect(describeHoldings(six).monthly.rainMm[0]).toBeCloseTo((31 + 62 + 31) / 3, 9);
    const seven = recordOf({ rainMm: without(dayNumber(2021, 1, 1), 7) }, first);
    expect(describeHoldings(seven).monthly.rainMm[0]).toBeCloseTo(31, 9);
  });

  test("a month that no year holds is null; a record without temperatures has none", () => {
    const { monthly } = describeHoldings(recordOf({ rainMm: [1, 2, 3] }));
    expect([monthly.rainMm[0], monthly.rainMm[5], monthly.tMaxC, monthly.tMinC]).toEqual([
      null,
      null,
      null,
      null,
    ]);
  });
});

describe("monthly normals from a record", () => {
  test("are its monthly means", () => {
    expect(monthlyNormalsOf(record)).toEqual(describeHoldings(record).monthly);
  });
  test("need every month and both temperatures", () => {
    const short = recordOf({ rainMm: rainMm.slice(0, 31) }, first);
    expect(complaintsOf(() => monthlyNormalsOf(short))).toEqual([
      "weather: expected rain in every month of the year, to make monthly normals, " +
        'found "none in month 1, 2, 3, 4, 5, 6, 8, 9, 10, 11, 12"; ' +
        "give a record of a whole year or more, or state weather.monthlyNormals",
    ]);
    expect(complaintsOf(() => monthlyNormalsOf(recordOf({ rainMm }, first)))[0]).toMatch(
      /highest temperature in every month of the year, .* found "no such element"/,
    );
  });
});
