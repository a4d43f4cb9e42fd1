import { describe, expect, test } from "vitest";
import { dayNumber } from "../../../src/quantity/calendar.ts";
import { fillGaps } from "../../../src/weather/records/gaps.ts";
import { readWeather } from "../../../src/weather/records/readers/index.ts";

/** An invented rain book: a line only for a day with rain, one of them unread. */
const book = ["date,rain_mm", "2020-01-05,3", "2020-03-01,12.5", "2020-03-02,", "2020-11-20,8"].join("\n");
const read = (more: object) => readWeather(book, { fileName: "book.csv", ...more });
const at = (record: { firstDay: number; rainMm: Float64Array }, month: number, day: number) =>
  record.rainMm[dayNumber(2020, month, day) - record.firstDay];

describe("a book of rainy days", () => {
  test("told so, a day without a line is dry, one with an empty line is missing", () => {
    const record = read({ daysNotListed: "dry" });
    expect([at(record, 1, 6), at(record, 3, 1), at(record, 3, 2), at(record, 11, 20)]).toEqual([
      0,
      12.5,
      NaN,
      8,
    ]);
    expect(record.notes).toContain(
      "Only days with rain are listed, as told: 317 days from 2020-01-05 to 2020-11-20 without a line taken as dry.",
    );
    expect(fillGaps(record).record.rainMm.reduce((a, b) => a + b)).toBeCloseTo(23.5, 12);
  });

  test("it covers the days to use, before its first rain and after its last", () => {
    const whole = { from: dayNumber(2020, 1, 1), to: dayNumber(2020, 12, 31) };
    const record = read({ daysNotListed: "dry", ...whole });
    expect([record.firstDay, record.days]).toEqual([whole.from, 366]);
    expect([at(record, 1, 1), at(record, 12, 31)]).toEqual([0, 0]);
    expect(fillGaps(record, whole).record.days).toBe(366);
  });

  test("not told so, they are missing, and the book is refused", () => {
    expect(at(read({}), 1, 6)).toBeNaN();
    expect(() => fillGaps(read({}))).toThrow(/at most 5 days missing in a row/);
    expect(read({ daysNotListed: "missing" })).toEqual(read({}));
  });
});
