import { describe, expect, test } from "vitest";
import { InputError } from "../../../src/problem.ts";
import { toDailyWeather, weatherOnDemand } from "../../../src/weather/et/dailyWeather.ts";
import type { Site, WeatherRecord } from "../../../src/weather/records/record.ts";
import { every, plains, plainsNormals, recordFrom } from "./sampleRecord.ts";

const byPenman = { method: "penman-monteith", normals: null } as const;

/** FAO-56 examples 18 and 20 (read), put through the record: the whole chain, not one equation. */
describe("the FAO-56 examples as records", () => {
  test("Uccle, 6 July: 3.88 mm from radiation, humidity and wind", () => {
    const uccle: Site = { latitudeDeg: 50.8, elevationM: 100, setting: "inland" };
    const record = recordFrom([2021, 7, 6], 1, {
      tMaxC: every(1, 21.5),
      tMinC: every(1, 12.3),
      solarMjPerM2: every(1, 22.07),
      rhMaxPercent: every(1, 84),
      rhMinPercent: every(1, 63),
      wind2mMPerS: every(1, 2.078),
    });
    const weather = toDailyWeather(record, uccle, byPenman);
    expect(Math.abs(weather.et0Mm[0]! - 3.88)).toBeLessThan(0.01);
    expect(weather.referenceEt).toBe(
      "FAO-56 Penman-Monteith (eq. 6) from daily temperatures, solar radiation, highest and lowest relative humidity (eq. 17) and wind.",
    );
  });

  const lyon: Site = { latitudeDeg: 45.7167, elevationM: 200, setting: "inland" };
  const lyonDay = (rain: number) =>
    recordFrom([2021, 7, 15], 1, {
      rainMm: every(1, rain),
      tMaxC: every(1, 26.6),
      tMinC: every(1, 14.8),
    });

  test("Lyon, mid-July: 4.56 mm from temperatures alone, lowest humidity 48 %", () => {
    const weather = toDailyWeather(lyonDay(5), lyon, byPenman);
    expect(Math.abs(weather.et0Mm[0]! - 4.56)).toBeLessThan(0.02);
    expect(Math.abs(weather.rhMinPercent[0]! - 48)).toBeLessThan(0.5);
    expect(weather.wind2mMPerS[0]).toBe(2);
    expect(weather.referenceEt).toBe(
      "FAO-56 Penman-Monteith (eq. 6) from daily temperatures; radiation missing, taken from the temperature range (eq. 50, 0.16 for inland places); humidity missing, dew point taken as the day's lowest temperature (eq. 48); wind missing, taken as 2 m/s.",
    );
  });

  test("the same day where little rain falls: drier air, more reference ET, and it is said", () => {
    const dry = toDailyWeather(lyonDay(0), lyon, byPenman);
    expect(dry.et0Mm[0]!).toBeGreaterThan(4.7);
    expect(dry.rhMinPercent[0]!).toBeLessThan(44);
    expect(dry.referenceEt).toContain("less 2 C (eq. 48, dry climate)");
  });

  test("Hargreaves at Lyon: 5.0 mm", () => {
    const weather = toDailyWeather(lyonDay(0), lyon, { method: "hargreaves", normals: null });
    expect(Math.abs(weather.et0Mm[0]! - 5.0)).toBeLessThan(0.05);
    expect(weather.referenceEt).toBe("Hargreaves (FAO-56 eq. 52) from daily temperatures alone.");
    expect(weather.notes.join(" ")).toContain("wind 2 m/s and lowest humidity");
  });
});

describe("humidity in order of liking", () => {
  const [tMaxC, tMinC] = [every(1, 25), every(1, 18)];
  const dewPointC = every(1, 14.94);
  test.each<[string, Partial<WeatherRecord>]>([
    [
      "highest and lowest relative humidity",
      {
        rhMaxPercent: every(1, 82),
        rhMinPercent: every(1, 54),
        dewPointC,
      },
    ],
    ["dew point", { dewPointC, rhMaxPercent: every(1, 82), rhMeanPercent: every(1, 68) }],
    ["highest relative humidity", { rhMaxPercent: every(1, 82), rhMeanPercent: every(1, 68) }],
    ["mean relative humidity", { rhMeanPercent: every(1, 68) }],
  ])("%s", (words, elements) => {
    const weather = toDailyWeather(
      recordFrom([2021, 5, 1], 1, { tMaxC, tMinC, ...elements }),
      plains,
      byPenman,
    );
    expect(weather.referenceEt).toContain(`and ${words} (`);
    // FAO-56 example 5: all four describe nearly the same air, whose lowest humidity is 54 %.
    expect(Math.abs(weather.rhMinPercent[0]! - 54)).toBeLessThan(2.5);
  });
});

describe("a record that brings its own reference ET", () => {
  test("keeps it, without temperatures too: no snow, stages on days, coefficients as tabled", () => {
    const record = recordFrom([2021, 5, 1], 2, {
      referenceEtMm: Float64Array.of(5.5, -0.1),
      notes: ["read"],
    });
    const weather = toDailyWeather(record, plains, byPenman);
    expect([...weather.et0Mm]).toEqual([5.5, 0]);
    expect(weather.hasTemperature).toBe(false);
    expect([...weather.rhMinPercent, ...weather.wind2mMPerS]).toEqual([45, 45, 2, 2]);
    expect(weather.referenceEt).toBe("Reference ET as the weather record gives it, unchanged.");
    expect(weather.notes).toEqual([
      "read",
      "The record has no temperatures: nothing counts as snow, and crop stages run on days.",
      "Not in the record, so taken for the crop coefficients: wind 2 m/s and lowest humidity 45 %.",
    ]);
  });

  test("keeps it beside temperatures, whatever method was asked, and says so", () => {
    const record = recordFrom([2021, 5, 1], 1, {
      referenceEtMm: every(1, 6),
      tMaxC: every(1, 25),
      tMinC: every(1, 10),
    });
    const weather = toDailyWeather(record, plains, { method: "hargreaves", normals: null });
    expect(weather.et0Mm[0]).toBe(6);
    expect(weather.hasTemperature).toBe(true);
    expect(weather.notes[0]).toBe("The record brings its own reference ET, so Hargreaves was not used.");
  });
});

describe("a record of rain alone", () => {
  test("takes temperatures and reference ET from monthly normals, and says so", () => {
    const record = recordFrom([2019, 1, 1], 730, { rainMm: every(730, 1) });
    const weather = toDailyWeather(record, plains, { method: "penman-monteith", normals: plainsNormals });
    const [january, july] = [weather.et0Mm[15]!, weather.et0Mm[195]!];
    expect(january).toBeLessThan(2);
    expect(july).toBeGreaterThan(5);
    expect(weather.et0Mm[15 + 365]).toBeCloseTo(january, 5); // a leap year: February bends a little otherwise
    expect(weather.hasTemperature).toBe(true);
    expect(weather.referenceEt).toContain("from the monthly normals' temperatures; radiation missing");
    expect(weather.notes.join(" ")).toContain("they follow the monthly normals, the same every year");
  });

  test("without normals is refused, with the way out", () => {
    const refused = () => toDailyWeather(recordFrom([2019, 1, 1], 10), plains, byPenman);
    expect(refused).toThrow(InputError);
    expect(refused).toThrow(
      "weather.monthlyNormals: expected monthly mean highest and lowest temperatures, since the record has neither temperatures nor reference ET, found none; give weather.monthlyNormals, or a record with both daily temperatures",
    );
  });

  test.each([
    [
      "a month short",
      { tMaxC: plainsNormals.tMaxC.slice(1) },
      "weather.monthlyNormals.tMax: expected twelve",
    ],
    ["no number", { tMinC: [Number.NaN, ...plainsNormals.tMinC.slice(1)] }, "weather.monthlyNormals.tMin[0]"],
    [
      "lowest above highest",
      { tMinC: [6, ...plainsNormals.tMinC.slice(1)] },
      "weather.monthlyNormals.tMin[0]",
    ],
  ])("with normals that cannot be is refused: %s", (_what, wrong, message) => {
    const normals = { ...plainsNormals, ...wrong };
    const run = () => toDailyWeather(recordFrom([2019, 1, 1], 10), plains, { ...byPenman, normals });
    expect(run).toThrow(InputError);
    expect(run).toThrow(message);
  });
});

test("a gap left in a record is our own fault, named by series and day, not a user's mistake", () => {
  const record = recordFrom([2021, 5, 1], 3, {
    tMaxC: Float64Array.of(20, Number.NaN, 20),
    tMinC: every(3, 10),
  });
  const run = () => toDailyWeather(record, plains, byPenman);
  expect(run).toThrow("weather series tMaxC has no number on 2021-05-02");
  expect(run).not.toThrow(InputError);
});

describe("reference ET on demand", () => {
  const days = 400;
  const record = recordFrom([2019, 1, 1], days, {
    rainMm: Float64Array.from({ length: days }, (_, d) => (d % 7 === 0 ? 9 : 0)),
    tMaxC: Float64Array.from({ length: days }, (_, d) => 20 + 10 * Math.sin(d / 58)),
    tMinC: Float64Array.from({ length: days }, (_, d) => 6 + 8 * Math.sin(d / 58)),
  });
  const whole = toDailyWeather(record, plains, byPenman);

  test("of the days asked for is that of the whole record, and of others there is none yet", () => {
    const { weather, workOut } = weatherOnDemand(record, plains, byPenman);
    expect(weather.et0Mm.every(Number.isNaN)).toBe(true);
    workOut(130, 140);
    workOut(380, 1000);
    workOut(-50, 1);
    for (const series of ["et0Mm", "rhMinPercent"] as const) {
      for (const day of [0, 130, 139, 380, 399]) expect(weather[series][day]).toBe(whole[series][day]);
      expect(weather[series][250]).toBeNaN();
    }
    workOut(0, days);
    expect(weather).toEqual(whole);
  });

  test("that the record brings itself is there on demand too, and at once where it has no temperatures", () => {
    const own = { ...record, referenceEtMm: every(days, 4) };
    const { weather, workOut } = weatherOnDemand(own, plains, byPenman);
    workOut(10, 11);
    expect(weather.et0Mm[10]).toBe(4);
    const bare = { ...own, tMaxC: null, tMinC: null };
    expect(weatherOnDemand(bare, plains, byPenman).weather).toEqual(toDailyWeather(bare, plains, byPenman));
  });
});
