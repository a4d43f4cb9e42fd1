/**
 * Open files as users hold them (../shared/data, see its SOURCES.md), each read with and without its usual name.
 * Expectations are what SOURCES.md and NOAA's format notes say, or cells counted in the files themselves.
 */
import { existsSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { isoDate } from "../../../src/quantity/calendar.ts";
import { describeHoldings } from "../../../src/weather/records/holdings.ts";
import { readWeather, type ReadOptions } from "../../../src/weather/records/readers/index.ts";
import type { WeatherRecord } from "../../../src/weather/records/record.ts";
import { complaintsOf } from "./readersFixture.ts";

const folder = "../shared/data";
const absent = !existsSync(folder);
const orSkipped = absent ? ` (skipped: ${folder} is absent)` : "";

function open(path: string, options: Partial<ReadOptions> = {}): WeatherRecord {
  const text = readFileSync(`${folder}/${path}`, "utf8");
  const named = readWeather(text, { ...options, fileName: path });
  expect(readWeather(text, { ...options, fileName: "file" })).toEqual(named);
  return named;
}

const missingOf = (record: WeatherRecord) =>
  Object.fromEntries(
    describeHoldings(record).elements.map(({ element, missingDays }) => [element, missingDays]),
  );

/** SOURCES.md (read): rain in 2020, printed to 1 mm; a half may have been rounded either way. */
describe.skipIf(absent)(
  `USCRN: rain in 2020 by SOURCES.md (read; within 0.51 mm: printed to 1 mm)${orSkipped}`,
  () => {
    test.each([
      ["uscrn-2020-goodwell-ok.csv", "53182", 478],
      ["uscrn-2020-cortez-co.csv", "03061", 289],
      ["uscrn-2020-aberdeen-sd.csv", "54933", 384],
      ["soil-moisture/CRND0103-2020-TX_Bronte_11_NNE.txt", "03072", 548],
      ["soil-moisture/CRND0103-2020-CO_La_Junta_17_WSW.txt", "03063", 262],
      ["soil-moisture/CRND0103-2020-SD_Pierre_24_S.txt", "94085", 500],
      ["soil-moisture/CRND0103-2020-SD_Aberdeen_35_WNW.txt", "54933", 384],
      ["soil-moisture/CRND0103-2020-NE_Whitman_5_ENE.txt", "94079", 365],
      ["soil-moisture/CRND0103-2020-OR_John_Day_35_WNW.txt", "04125", 214],
    ])("%s, station %s: %d mm", (path, id, rainMm) => {
      const record = open(path);
      const [year, ...others] = describeHoldings(record).years;
      expect(Math.abs(year!.rainMm - rainMm)).toBeLessThanOrEqual(0.51);
      expect([record.station.id, year!.year, year!.days, others]).toEqual([id, 2020, 366, []]);
      expect(record.wind2mMPerS).toBeNull();
    });

    test("one station in two layouts holds the same figures", () => {
      const csv = open("uscrn-2020-aberdeen-sd.csv");
      const fixed = open("soil-moisture/CRND0103-2020-SD_Aberdeen_35_WNW.txt");
      expect({ ...fixed, station: csv.station, notes: csv.notes }).toEqual(csv);
      expect([csv.station.latitudeDeg, fixed.station.latitudeDeg]).toEqual([45.71, 45.71]);
    });

    test("Manhattan KS: 14 years, humidity only in the later ones", () => {
      const record = open("soil-moisture/uscrn_KS_Manhattan_6_SSW_2003-2017.csv");
      expect([isoDate(record.firstDay), isoDate(record.firstDay + record.days - 1)]).toEqual([
        "2003-10-01",
        "2017-10-04",
      ]);
      // -9999 counted in the columns of the file; days without a line are none.
      expect(missingOf(record)).toEqual({
        rainMm: 72,
        tMaxC: 41,
        tMinC: 41,
        solarMjPerM2: 39,
        rhMaxPercent: 2092,
        rhMinPercent: 2092,
        rhMeanPercent: 2092,
      });
    });
  },
);

describe.skipIf(absent)(`NOAA GHCN-Daily${orSkipped}`, () => {
  test(".dly: Central Park, 1990 to 2019: flags", () => {
    const record = open("weather-daily/USW00094728_1990-2019_core.dly");
    const { years, completeYears } = describeHoldings(record);
    expect([isoDate(record.firstDay), record.days]).toEqual(["1990-01-01", 10957]);
    expect(years.map(({ complete }) => complete)).toEqual(Array.from({ length: 30 }, () => true));
    expect(completeYears).toHaveLength(30);
    // SOURCES.md: six lines with a failed quality check; they hold eight such values, none of rain, TMAX or TMIN.
    expect(record.notes).toContain("8 values with a failed quality check in elements not used here.");
    expect(record.notes.filter((note) => /failed a quality check of the agency/.test(note))).toEqual([]);
    // T flags counted on the PRCP lines.
    expect(record.notes).toContain("877 traces of rain taken as 0.");
  });

  test(".dly: the first days of January 1990, as they stand in the file", () => {
    const record = open("weather-daily/USW00094728_1990-2019_core.dly");
    const first = (values: Float64Array | null) =>
      Array.from(values!.slice(0, 4), (value) => Number(value.toFixed(1)));
    expect([first(record.rainMm), first(record.tMaxC), first(record.tMinC)]).toEqual([
      [6.1, 0, 0, 0.3],
      [8.9, 6.7, 11.7, 10.6],
      [0.6, -1.1, 1.7, 4.4],
    ]);
  });

  test.each([
    [
      "weather-daily/ghcnd_cdo_death_valley_2021_us-units.csv",
      "USC00042319",
      130,
      { rainMm: 0, tMaxC: 1, tMinC: 0 },
    ],
    [
      "weather-daily/ghcnd_cdo_sitka_2021_us-units.csv",
      "USW00025333",
      78,
      { rainMm: 0, tMaxC: 1, tMinC: 0, wind2mMPerS: 2 },
    ],
  ])("%s: units are asked for; with them 365 days", (path, id, highestF, missing) => {
    const [asked] = complaintsOf(() => open(path));
    expect(asked).toMatch(
      new RegExp(
        `^weather.units: expected the units of .*its highest TMAX is ${highestF}\\).*--weather-units`,
      ),
    );
    const record = open(path, { units: "us" });
    expect([record.station.id, isoDate(record.firstDay), record.days]).toEqual([id, "2021-01-01", 365]);
    expect(missingOf(record)).toEqual(missing);
    const highestC = record.tMaxC!.reduce((most, value) => (value > most ? value : most));
    expect(highestC).toBeCloseTo(((highestF - 32) * 5) / 9, 9);
  });

  test("US units stated as metric are found out by the desert's heat", () => {
    const path = "weather-daily/ghcnd_cdo_death_valley_2021_us-units.csv";
    expect(complaintsOf(() => open(path, { units: "metric" }))[0]).toMatch(
      /line 2: expected highest temperature from -90 to 60/,
    );
  });

  test("two stations in one file are asked for", () => {
    const [a, b] = ["death_valley", "sitka"].map((name) =>
      readFileSync(`${folder}/weather-daily/ghcnd_cdo_${name}_2021_us-units.csv`, "utf8")
        .trimEnd()
        .split("\n"),
    );
    const rows = b!.slice(1).map((row) =>
      row
        .split(/,(?=")|,(?=,)|,$/)
        .slice(0, 9)
        .join(","),
    );
    const both = [...a!, ...rows].join("\n");
    expect(complaintsOf(() => readWeather(both, { fileName: "file", units: "us" }))[0]).toMatch(
      /^file: expected one station, found 2: USC00042319 \(DEATH VALLEY NATIONAL PARK, CA US, 365 lines\); USW00025333 \(SITKA/,
    );
  });
});

describe.skipIf(absent)(`NASA POWER, two answers of the service${orSkipped}`, () => {
  const samples = ["formats/power_daily_point_LST_sample.csv", "formats/power_daily_point_UTC_sample.csv"];
  test.each(samples)("%s has no rain: refused, with what to order", (path) => {
    expect(complaintsOf(() => open(path))[0]).toMatch(
      /line 1[45]: expected rain \(PRECTOTCORR\).*order the file again/,
    );
  });
  test.each(samples)("%s with rain added under its name is read", (path) => {
    const text = readFileSync(`${folder}/${path}`, "utf8")
      .replace("-END HEADER-", "PRECTOTCORR     MERRA-2 Precipitation Corrected (mm/day) \r\n-END HEADER-")
      .replace(/(YEAR,.*)\r\n(1983,.*)\r\n/, "$1,PRECTOTCORR\r\n$2,0.25\r\n");
    const record = readWeather(text, { fileName: "file" });
    expect([isoDate(record.firstDay), record.days, record.rainMm[0]]).toEqual(["1983-01-01", 1, 0.25]);
    expect(record.station).toMatchObject({ latitudeDeg: -89.5, elevationM: 2885.03 });
    // Printed in the file: LST -24.88, -25.67, 94.43, 2.32; UTC -22.7, -25.37, 92.61, 1.93 (10 m; FAO-56 factor 0.748).
    const [tMaxC, tMinC, rh, wind10m] = path.includes("LST")
      ? [-24.88, -25.67, 94.43, 2.32]
      : [-22.7, -25.37, 92.61, 1.93];
    expect([record.tMaxC?.[0], record.tMinC?.[0], record.rhMeanPercent?.[0]]).toEqual([tMaxC, tMinC, rh]);
    expect(record.wind2mMPerS?.[0]).toBeCloseTo(wind10m! * 0.748, 2);
  });
});

describe.skipIf(absent)(`gridMET Johnson KS, 2011 to 2020${orSkipped}`, () => {
  test("3,653 days, none missing, in °C and MJ/m2 (SOURCES.md, read)", () => {
    const record = open("weather-daily/gridmet_Johnson_KS_2011-2020.csv");
    expect([isoDate(record.firstDay), record.days, record.station.latitudeDeg]).toEqual([
      "2011-01-01",
      3653,
      38.88376123,
    ]);
    expect(Object.values(missingOf(record))).toEqual([0, 0, 0, 0, 0, 0, 0, 0]);
    expect(record.notes[0]).toBe("Temperatures read in °C, radiation in MJ/m2, which the figures show.");
    // First line of the file: tmmx -0.622930908, srad 8.539960254, vs 6.397283554 at 10 m, eto 1.539753795.
    expect([record.tMaxC?.[0], record.solarMjPerM2?.[0], record.referenceEtMm?.[0]]).toEqual([
      -0.622930908, 8.539960254, 1.539753795,
    ]);
    expect(record.wind2mMPerS?.[0]).toBeCloseTo(6.397283554 * 0.748, 2);
  });
});

describe.skipIf(absent)(`files of another kind${orSkipped}`, () => {
  test.each(["yields/nass_sorghum_grain_yield_kansas_1929-2023.csv", "formats/ghcnd-readme-v3.26.txt"])(
    "%s",
    (path) => {
      expect(complaintsOf(() => open(path))[0]).toMatch(
        /expected a daily weather record in one of these formats/,
      );
    },
  );
});
