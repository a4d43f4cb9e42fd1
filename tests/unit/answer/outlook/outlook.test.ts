import { describe, expect, test } from "vitest";
import { outlookOf } from "../../../../src/answer/outlook/outlookOf.ts";
import { runOutlook, type OutlookRuns } from "../../../../src/answer/outlook/outlookRuns.ts";
import { otherYears, spliced } from "../../../../src/answer/outlook/splice.ts";
import { daysItLasts, usualDemand } from "../../../../src/answer/outlook/usualDemand.ts";
import { newAnswerCache } from "../../../../src/answer/runs/answerCache.ts";
import { prepareOn } from "../../../../src/answer/runs/prepare.ts";
import { readyRun } from "../../../../src/answer/runs/readyRun.ts";
import { runAtRain } from "../../../../src/answer/runs/ensemble.ts";
import { weatherYears } from "../../../../src/answer/runs/weatherYears.ts";
import { InputError } from "../../../../src/problem.ts";
import { dayNumber, isoDate } from "../../../../src/quantity/calendar.ts";
import type { SeasonTotals } from "../../../../src/season/season.ts";
import { spreadOf } from "../../../../src/statistics/quantiles.ts";
import type { Case, Scenario } from "../../../../src/scenario/scenario.ts";
import type { DailyWeather, WeatherRecord } from "../../../../src/weather/records/record.ts";
import { asDug, someRecord, someScenario } from "../someScenario.ts";

/** Eight generated years, 1991 to 1998. */
const record = someRecord(8);
const index = (year: number, month: number, day: number) => dayNumber(year, month, day) - record.firstDay;
const july15 = { day: dayNumber(1995, 7, 15), field: "--date" };

function onRecord(change: Partial<Scenario> = {}, of: WeatherRecord = record): Scenario {
  return someScenario({
    weather: { ...someScenario().weather, source: { kind: "record", record: of, normals: null } },
    ...change,
  });
}

/** The same record, changed from the day after July 15 to the end of the year, in every year but 1995. */
function withOtherRain(factor: number): WeatherRecord {
  const rainMm = record.rainMm.map((mm, i) => {
    const year = 1991 + [...Array(8).keys()].findLastIndex((y) => index(1991 + y, 1, 1) <= i);
    return year !== 1995 && i > index(year, 7, 15) ? mm * factor : mm;
  });
  return { ...record, rainMm };
}

describe("a splice", () => {
  const weather = (): DailyWeather => weatherOfRecord(onRecord()).weather;

  test("of a year to itself is the record, to the last bit", () => {
    const whole = weather();
    const same = spliced(whole, 1600, 1601, whole.days);
    expect(same).toEqual(whole);
  });

  test("keeps the days up to the last known one and takes the others in their order", () => {
    const whole = weather();
    const other = spliced(whole, 1600, 200, 90);
    expect(other.days).toBe(1601 + 90);
    expect([...other.rainMm.subarray(0, 1601)]).toEqual([...whole.rainMm.subarray(0, 1601)]);
    expect([...other.rainMm.subarray(1601)]).toEqual([...whole.rainMm.subarray(200, 290)]);
    expect([...other.et0Mm.subarray(1601)]).toEqual([...whole.et0Mm.subarray(200, 290)]);
  });

  test.each([
    // last day known, and the first day taken from 1992 (a leap year) and 1993
    ["1995-07-15", "1992-07-16", "1993-07-16"],
    ["1995-02-28", "1992-03-01", "1993-03-01"],
    ["1996-02-28", "1992-02-29", "1993-02-28"],
    ["1996-02-29", "1992-03-01", "1993-03-01"],
    ["1994-12-31", "1992-01-01", "1993-01-01"],
  ])("after %s other years go on at %s and %s", (last, inLeapYear, inOther) => {
    const [year, month, day] = last.split("-").map(Number) as [number, number, number];
    const days = otherYears(weather(), dayNumber(year, month, day)).map(({ thenIndex }) =>
      isoDate(record.firstDay + thenIndex),
    );
    expect(days).toContain(inLeapYear);
    expect(days).toContain(inOther);
    expect(days.map((one) => one.slice(0, 4))).not.toContain(
      isoDate(dayNumber(year, month, day) + 1).slice(0, 4),
    );
  });
});

/** The weather of the whole record, worked out. */
function weatherOfRecord(scenario: Scenario) {
  const { weather: plan, site, cases, ensemble } = scenario;
  const years = weatherYears(plan, site, cases, ensemble, newAnswerCache());
  years.workOut(0, years.weather.days);
  return years;
}

describe("laws of an outlook", () => {
  test("ended by days that are its own, it is the run of that year to the last bit", () => {
    // The rest of 1997 is that of 1995, day by day; neither is a leap year, so the sun stands alike.
    const copied = { ...record } as { -readonly [K in keyof WeatherRecord]: WeatherRecord[K] };
    for (const key of ["rainMm", "tMaxC", "tMinC"] as const) {
      const series = record[key]!.slice();
      series.set(record[key]!.subarray(index(1995, 7, 16), index(1996, 1, 1)), index(1997, 7, 16));
      copied[key] = series;
    }
    const scenario = onRecord({}, copied);
    const outlook = runOutlook(scenario, july15);
    const place = outlook.season.others.findIndex(({ year }) => year === 1997);
    const years = weatherOfRecord(scenario);
    const own = years.sowingYears.filter(({ year }) => year === 1995);
    const preparation = prepareOn(
      { ...scenario, ensemble: outlook.ensemble.preparation.scenario.ensemble },
      { ...years, sowingYears: own },
    );
    const runs = [...Array(outlook.ensemble.runs).keys()].filter(
      (run) => run % outlook.season.others.length === place,
    );
    expect(runs.length).toBeGreaterThan(0);
    for (const run of runs) {
      const whole = runAtRain(preparation, readyRun(preparation, run), 0);
      whole.forEach(({ totals }, c) => {
        const { byRun } = outlook.ensemble.byRainTotal[0]!.cases[c]!;
        for (const key of Object.keys(totals) as (keyof SeasonTotals)[])
          expect(byRun[key][run]).toBe(totals[key]);
      });
    }
  });

  test("equal cases differ by exactly 0, now and at the end, measured or not", () => {
    const cases: [Case, Case] = [asDug, { ...asDug, name: "the same" }];
    const water = { kind: "moist depth", moistDepthMm: 400, shareBelow: 0.2 } as const;
    for (const outlook of [null, { day: july15.day, waterByCase: [water, water] }]) {
      const scenario = onRecord({ cases, outlook });
      const [difference] = outlookOf(runOutlook(scenario, july15), scenario, "us").differences;
      const nothing = { p10: 0, p50: 0, p90: 0 };
      expect(difference).toMatchObject({
        extraInRootsNowMm: nothing,
        extraWaterFromNowMm: nothing,
        extraWaterUsedMm: nothing,
        extraYield: nothing,
      });
    }
  });

  test("on the season's last day no other year changes anything", () => {
    const scenario = onRecord({ cases: [asDug] });
    const { byYear, lastDayByCase, season } = runOutlook(scenario, july15);
    // Found with the season's own year: the day after which it is over.
    const own = weatherOfRecord(scenario).weather;
    const ripe = onlyDay(scenario, own);
    expect(byYear.every(({ courses }) => courses[0]!.maturityDay > lastDayByCase[0]!)).toBe(true);
    expect(season.year).toBe(1995);
    const last = runOutlook(scenario, { day: ripe, field: "--date" });
    expect([...last.takenUpAfterMmByCase[0]!].every((mm) => mm === 0)).toBe(true);
    const { now } = outlookOf(last, scenario, "us");
    expect(now[0]!.daysToMaturity).toEqual({ p10: 0, p50: 0, p90: 0 });
    expect(now[0]!.lastsDays.p50).toBeNull();
    expect(() => runOutlook(scenario, { day: ripe + 1, field: "--date" })).toThrow(InputError);
  });

  test("more rain in the other years after the day changes nothing up to it, and brings more water at the end", () => {
    const [dry, wet] = [withOtherRain(0), withOtherRain(2)].map((one) =>
      runOutlook(onRecord({}, one), july15),
    );
    expect([...wet!.stateByCase[0]!.frontMm]).toEqual([...dry!.stateByCase[0]!.frontMm]);
    expect([...wet!.stateByCase[0]!.inRootsMm]).toEqual([...dry!.stateByCase[0]!.inRootsMm]);
    const [less, more] = [dry!, wet!].map((one) => one.takenUpAfterMmByCase[0]!);
    expect(more!.every((mm, run) => mm > less![run]!)).toBe(true);
  });

  test("water known on the day counts: the state is what was measured, and more of it ends in more uptake", () => {
    const measured = (shareBelow: number) =>
      onRecord({
        cases: [asDug],
        outlook: { day: july15.day, waterByCase: [{ kind: "moist depth", moistDepthMm: 0, shareBelow }] },
        ensemble: { ...someScenario().ensemble, deepWaterSd: 0 },
      });
    const runs = [0, 0.5, 1].map((share) => runOutlook(measured(share), null));
    const [empty, half, full] = runs as [OutlookRuns, OutlookRuns, OutlookRuns];
    expect([...empty.stateByCase[0]!.inRootsMm].every((mm) => mm < 1e-9)).toBe(true);
    const after = (one: OutlookRuns) => spreadOf(one.takenUpAfterMmByCase[0]!).p50;
    expect(after(half)).toBeGreaterThan(after(empty));
    expect(after(full)).toBeGreaterThan(after(half));
    for (const one of runs)
      expect(Math.max(...one.ensemble.byRainTotal[0]!.cases[0]!.byRun.balanceErrorMm)).toBeLessThan(1e-9);
    // Up to that day the season was the same.
    expect([...full.stateByCase[0]!.takenUpMm]).toEqual([...empty.stateByCase[0]!.takenUpMm]);
  });

  test("plants dug on the day: the front stands where the middle one had it, and goes on from there", () => {
    const dig = {
      groups: [{ field: "g", caseIndex: 0, day: july15.day, rowPosition: null, depthsMm: [300, 350, 380] }],
      paired: false,
      confidence: 0.9,
      fitted: null,
      drives: true,
    };
    const scenario = onRecord({
      cases: [asDug],
      evidence: { confidence: 0.9, dig, counts: null, strips: null },
    });
    const runs = runOutlook(scenario, july15);
    expect([...runs.stateByCase[0]!.frontMm].every((mm) => mm === 350)).toBe(true);
    const ended = runs.ensemble.byRainTotal[0]!.cases[0]!.byRun.finalRootDepthMm;
    expect(Math.min(...ended)).toBeGreaterThan(350);
    const answer = outlookOf(runs, scenario, "us");
    expect(answer.now[0]!.dugOn).toBe("1995-07-15");
    expect(answer.cautions.join(" ")).toContain("buried lines");
  });

  test("each other year is met equally often", () => {
    const { ensemble, season } = runOutlook(onRecord(), july15);
    expect(season.others.map(({ year }) => year)).toEqual([1991, 1992, 1993, 1994, 1996, 1997, 1998]);
    expect(ensemble.runs % 7).toBe(0);
  });
});

/** Day number of maturity of the crop sown in 1995, in its own year. */
function onlyDay(scenario: Scenario, weather: DailyWeather): number {
  const years = weatherOfRecord(scenario);
  const own = years.sowingYears.filter(({ year }) => year === 1995);
  const preparation = prepareOn(scenario, { ...years, weather, sowingYears: own });
  const [ready] = readyRun(preparation, 0);
  return record.firstDay + ready!.firstIndex + ready!.course.maturityDay;
}

describe("how long the water lasts, worked by hand", () => {
  test.each([
    [10, [4, 4, 4], 2],
    [12, [4, 4, 4], null],
    [3.9, [4, 4, 4], 0],
    [0, [4], 0],
    [5, [], null],
  ])("%d mm at %j mm a day: %s days", (mm, demand, days) => {
    expect(daysItLasts(mm, Float64Array.from(demand))).toBe(days);
  });

  test("the usual demand is the mean of the years, 0 in those that are over", () => {
    const year = (kcb: number[], et0: number[]) =>
      ({
        course: { kcbByDay: Float64Array.from(kcb), maturityDay: kcb.length - 1 },
        weather: { et0Mm: Float64Array.from(et0) },
      }) as unknown as Parameters<typeof usualDemand>[0][number];
    // Days 2 and 3 follow day 1; the run begins at index 1 of the weather.
    const demand = usualDemand([year([0, 0, 1, 0.5], [9, 9, 9, 4, 6]), year([0, 0, 1], [9, 9, 9, 2])], 1, 1);
    expect([...demand]).toEqual([3, 1.5]);
  });
});

describe("what is no season under way is refused in one line", () => {
  const lineOf = (scenario: Scenario, day: number | null): string => {
    try {
      runOutlook(scenario, day === null ? null : { day, field: "--date" });
    } catch (error) {
      if (error instanceof InputError) return error.message;
      throw error;
    }
    throw new Error("it was taken");
  };
  const threeYears: WeatherRecord = someRecord(3);
  test.each([
    [
      "a day after the record",
      onRecord(),
      dayNumber(2001, 7, 1),
      "--date: expected a day of the record, 1991-01-01 to 1998-12-31, found 2001-07-01; give one of these, or bring a record that holds the day",
    ],
    [
      "the file's day after the record",
      onRecord({ outlook: { day: dayNumber(2001, 7, 1), waterByCase: [null, null] } }),
      null,
      "outlook.date: expected a day of the record, 1991-01-01 to 1998-12-31, found 2001-07-01; give one of these, or bring a record that holds the day",
    ],
    [
      "too few other years",
      onRecord({}, threeYears),
      dayNumber(1992, 7, 15),
      "weather.record: expected at least 3 other years that reach from 07-15 to maturity of grain sorghum, found 2 in 1991-01-01 to 1993-12-31; bring a longer record",
    ],
    [
      "weather from normals",
      someScenario(),
      dayNumber(1992, 7, 15),
      "weather.record: expected a station record up to the day of the outlook, with other years before or after, found weather generated from normals; name a record: no generated year is the one under way",
    ],
    [
      "a fallow that begins before the record",
      onRecord({ cases: [{ ...asDug, fallowDays: 300 }] }),
      dayNumber(1991, 7, 15),
      "weather.record: expected a record from 300 days of fallow before sowing of grain sorghum on, 1990-08-05, found one from 1991-01-01 on; bring a longer record, or less fallow and the water measured at sowing",
    ],
    [
      "a day before the record's first sowing",
      onRecord(),
      dayNumber(1991, 3, 1),
      "weather.record: expected a record from sowing of grain sorghum on, 1990-06-01, found one from 1991-01-01 on; bring a longer record, or give a later day",
    ],
  ])("%s", (_, scenario, day, line) => {
    expect(lineOf(scenario, day)).toBe(line);
  });

  test("a day between two seasons, with sowing and maturity", () => {
    expect(lineOf(onRecord(), dayNumber(1995, 12, 20))).toMatch(
      /^--date: expected a day from sowing to maturity of grain sorghum sown 1995-06-01 and ripe 1995-\d\d-\d\d, found 1995-12-20; give a day of a season, as --date or outlook\.date$/,
    );
  });
  test("no day told: the record's last one", () => {
    expect(lineOf(onRecord(), null)).toContain("found nothing, so 1998-12-31, the last day of the record;");
  });
});

test("water within the roots and below them is all there is, and within them what the layers tell, in every run", () => {
  const { stateByCase, ensemble } = runOutlook(onRecord(), july15);
  for (const { inRootsMm, belowRootsMm, layers } of stateByCase)
    for (let run = 0; run < ensemble.runs; run++) {
      const sum = (of: (layer: (typeof layers)[number]) => Float64Array) =>
        layers.reduce((all, layer) => all + of(layer)[run]!, 0);
      expect(inRootsMm[run]!).toBeCloseTo(
        sum((layer) => layer.inRootsMm),
        9,
      );
      expect(inRootsMm[run]! + belowRootsMm[run]!).toBeCloseTo(
        sum((layer) => layer.availableMm),
        9,
      );
      expect(belowRootsMm[run]!).toBeGreaterThan(0);
    }
});
