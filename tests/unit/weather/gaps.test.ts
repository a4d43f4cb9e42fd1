import { describe, expect, test } from "vitest";
import { dayNumber, isoDate } from "../../../src/quantity/calendar.ts";
import { fillGaps, gapsOf } from "../../../src/weather/records/gaps.ts";
import { complaintsOf, recordOf } from "./readersFixture.ts";

const no = NaN;
const jan = (day: number) => dayNumber(2020, 1, day);
const ones = (count: number, value = 1) => Array.from({ length: count }, () => value);
const gap = (count: number) => ones(count, no);

describe("gaps up to the limit", () => {
  test("of temperature, humidity, dew point, wind, radiation and ET lie on a straight line", () => {
    const steps = [1, no, no, 4];
    const { record, filledDays } = fillGaps(
      recordOf({
        rainMm: ones(4),
        tMaxC: [11, no, no, 14],
        tMinC: steps,
        solarMjPerM2: steps,
        rhMaxPercent: [11, no, no, 14],
        rhMinPercent: steps,
        rhMeanPercent: steps,
        dewPointC: steps,
        wind2mMPerS: steps,
        referenceEtMm: steps,
      }),
    );
    for (const values of [record.tMinC, record.solarMjPerM2, record.rhMinPercent, record.rhMeanPercent]) {
      expect(Array.from(values!)).toEqual([1, 2, 3, 4]);
    }
    for (const values of [record.dewPointC, record.wind2mMPerS, record.referenceEtMm]) {
      expect(Array.from(values!)).toEqual([1, 2, 3, 4]);
    }
    expect(Array.from(record.tMaxC!)).toEqual([11, 12, 13, 14]);
    expect([...filledDays.values()]).toEqual(ones(9, 2));
  });

  test("of rain are 0; what they would bring at the mean of their month is said", () => {
    const { record, filledDays } = fillGaps(recordOf({ rainMm: [4, no, no, 0, 2] }));
    expect(Array.from(record.rainMm)).toEqual([4, 0, 0, 0, 2]);
    expect(filledDays.get("rainMm")).toBe(2);
    // Mean of the three days held: 2 mm; two days missing.
    expect(record.notes).toEqual([
      "2 days of rain missing, taken as 0: at the mean of their months they would bring 0.16 in (4 mm) in all.",
    ]);
  });

  test("are counted by element and named in the notes", () => {
    const { record } = fillGaps(recordOf({ rainMm: ones(3), tMaxC: [9, no, 9], tMinC: ones(3) }));
    expect(record.notes).toEqual(["1 day of highest temperature interpolated."]);
  });

  test("never bring the lowest above the highest: the measured one rules", () => {
    const { record } = fillGaps(
      recordOf({
        rainMm: ones(3),
        tMaxC: [0, no, 2],
        tMinC: [-5, 1.5, -5],
        rhMaxPercent: [90, 40, 90],
        rhMinPercent: [50, no, 50],
      }),
    );
    expect([record.tMaxC?.[1], record.tMinC?.[1]]).toEqual([1.5, 1.5]);
    expect([record.rhMaxPercent?.[1], record.rhMinPercent?.[1]]).toEqual([40, 40]);
  });

  test("at the ends of an element that may be missing hold the nearest figure", () => {
    const { record } = fillGaps(recordOf({ rainMm: ones(4), wind2mMPerS: [no, 2, 3, no] }));
    expect(Array.from(record.wind2mMPerS!)).toEqual([2, 2, 3, 3]);
  });

  test("of exactly five days are filled, of six not; the limit can be chosen", () => {
    const five = recordOf({ rainMm: [1, ...gap(5), 1] });
    const six = recordOf({ rainMm: [1, ...gap(6), 1] });
    expect(fillGaps(five).filledDays.get("rainMm")).toBe(5);
    expect(() => fillGaps(six)).toThrow("at most 5 days missing in a row");
    expect(fillGaps(six, { maxGapDays: 6 }).filledDays.get("rainMm")).toBe(6);
    expect(() => fillGaps(recordOf({ rainMm: [1, no, 1] }), { maxGapDays: 0 })).toThrow(
      "at most 0 days missing",
    );
  });

  test("none: the record comes back as it was", () => {
    const whole = recordOf({ rainMm: [1, 2], tMaxC: [5, 6], tMinC: [1, 2] });
    expect(fillGaps(whole)).toEqual({ record: whole, filledDays: new Map(), dropped: [] });
  });
});

describe("longer gaps", () => {
  test("of rain and temperature are listed, with the longest stretch without", () => {
    const record = recordOf({
      rainMm: [1, ...gap(6), ...ones(13)],
      tMaxC: [...ones(12, 9), ...gap(7), 9],
      tMinC: ones(20),
    });
    expect(complaintsOf(() => fillGaps(record))).toEqual([
      "weather: expected at most 5 days missing in a row, found 2 longer gaps: rain 2020-01-02 to 2020-01-07 (6 days); " +
        "highest temperature 2020-01-13 to 2020-01-19 (7 days); use part of the record (the longest stretch without: " +
        "weather.from 2020-01-08, weather.to 2020-01-12), give another station, or raise weather.maxGapDays",
    ]);
    const part = fillGaps(record, { from: jan(8), to: jan(12) }).record;
    expect([isoDate(part.firstDay), part.days]).toEqual(["2020-01-08", 5]);
  });

  test("eight are listed, the others counted", () => {
    const rainMm = Array.from({ length: 11 }, () => [1, ...gap(6)]).flat();
    const [line] = complaintsOf(() => fillGaps(recordOf({ rainMm: [...rainMm, 1] })));
    expect(line).toMatch(/found 11 longer gaps: .*; and 3 more; use part/);
    expect(line!.match(/rain 2020/g)).toHaveLength(8);
  });

  test.each([
    "solarMjPerM2",
    "rhMaxPercent",
    "rhMinPercent",
    "rhMeanPercent",
    "dewPointC",
    "wind2mMPerS",
  ] as const)("of %s leave that element out, and that is said", (element) => {
    const { record, dropped } = fillGaps(recordOf({ rainMm: ones(9), [element]: [1, ...gap(7), 1] }));
    expect(record[element]).toBeNull();
    expect(dropped).toEqual([element]);
    expect(record.notes[0]).toMatch(/is left out: it has a gap of 7 days\.$/);
  });

  test("of reference ET leave it out where temperatures remain, and are an error where not", () => {
    const referenceEtMm = [3, ...gap(7), 3];
    const both = fillGaps(recordOf({ rainMm: ones(9), tMaxC: ones(9, 9), tMinC: ones(9), referenceEtMm }));
    expect(both.dropped).toEqual(["referenceEtMm"]);
    expect(() => fillGaps(recordOf({ rainMm: ones(9), referenceEtMm }))).toThrow(
      "reference ET 2020-01-02 to 2020-01-08",
    );
  });
});

describe("the ends", () => {
  test("without rain or temperature are left off, and that is said", () => {
    const { record } = fillGaps(
      recordOf({ rainMm: [...gap(8), 1, 2, 3, no], tMaxC: ones(12, 9), tMinC: [...ones(10), no, 1] }),
    );
    expect([isoDate(record.firstDay), Array.from(record.rainMm)]).toEqual(["2020-01-09", [1, 2]]);
    expect(record.notes[0]).toBe(
      "10 days without rain or temperature at the ends of the record left off: 2020-01-09 to 2020-01-10 is used.",
    );
  });

  test("are chosen by from and to, included", () => {
    const whole = recordOf({ rainMm: [1, 2, 3, 4, 5], tMaxC: [9, 9, no, no, no], tMinC: ones(5) });
    const { record } = fillGaps(whole, { from: jan(1), to: jan(2) });
    expect([Array.from(record.rainMm), Array.from(record.tMaxC!)]).toEqual([
      [1, 2],
      [9, 9],
    ]);
    // Days without any temperature at all: the element is gone, not the days.
    expect(
      fillGaps(recordOf({ rainMm: [1, 2, 3], wind2mMPerS: [1, no, no] }), { from: jan(2) }).record
        .wind2mMPerS,
    ).toBeNull();
    expect(fillGaps(whole, { from: jan(1) - 99, to: jan(2) + 999 }).record.days).toBe(2);
  });

  test.each([
    [
      { from: jan(4), to: jan(2) },
      'weather.from: expected a day not after weather.to (2020-01-02), found "2020-01-04"',
    ],
    [
      { from: jan(9) },
      'weather.from: expected a day within the record, 2020-01-01 to 2020-01-05, found "2020-01-09"',
    ],
    [
      { to: jan(1) - 1 },
      'weather.to: expected a day within the record, 2020-01-01 to 2020-01-05, found "2019-12-31"',
    ],
    [{ maxGapDays: -1 }, "weather.maxGapDays: expected whole days from 0 to 366, found -1"],
    [{ maxGapDays: 2.5 }, "weather.maxGapDays: expected whole days from 0 to 366, found 2.5"],
  ])("%j is refused", (options, line) => {
    expect(() => fillGaps(recordOf({ rainMm: ones(5) }), options)).toThrow(line);
  });

  test("rain and temperature that do not overlap are refused", () => {
    const record = recordOf({ rainMm: [1, 1, no, no], tMaxC: [no, no, 9, 9], tMinC: [no, no, 1, 1] });
    expect(() => fillGaps(record)).toThrow("expected days that have rain and temperature");
  });

  test("rain missing on all chosen days is refused", () => {
    expect(() => fillGaps(recordOf({ rainMm: [1, no, no] }), { from: jan(2) })).toThrow(
      "weather: expected rain on some day",
    );
  });
});

test("gaps of an element are runs of days", () => {
  const record = recordOf({ rainMm: [no, 1, no, no, 1, no] });
  expect(gapsOf(record, "rainMm").map(({ firstDay, days }) => [isoDate(firstDay), days])).toEqual([
    ["2020-01-01", 1],
    ["2020-01-03", 2],
    ["2020-01-06", 1],
  ]);
  expect(gapsOf(record, "tMaxC")).toEqual([]);
});
