import { describe, expect, test } from "vitest";
import { dayNumber, isoDate } from "../../../src/quantity/calendar.ts";
import { elementNames, type Element } from "../../../src/weather/records/readers/element.ts";
import { readWeather, weatherFormats, type ReadOptions } from "../../../src/weather/records/readers/index.ts";
import type { WeatherRecord } from "../../../src/weather/records/record.ts";
import { complaintsOf, fixture, read } from "./readersFixture.ts";

/** Figures of an element to two decimals, null where missing. */
function shown(record: WeatherRecord, element: Element): (number | null)[] | null {
  const values = record[element];
  return values && Array.from(values, (value) => (Number.isNaN(value) ? null : Number(value.toFixed(2))));
}

/** 10 m to 2 m: 4.87 / ln(67.8 × 10 − 5.42), FAO-56 eq. 47; its Table 2.9 prints 0.748. */
const from10m = 0.748;

interface Sample {
  readonly file: string;
  readonly options?: Partial<ReadOptions>;
  readonly format: string;
  readonly first: string;
  /** Elements and figures worked out by hand from the file; any other must be null. */
  readonly figures: Partial<Record<Element, readonly (number | null)[]>>;
  readonly notes: readonly RegExp[];
}

const samples: readonly Sample[] = [
  {
    file: "invented-ghcn-summaries-us.csv",
    options: { units: "us" },
    format: 'NOAA GHCN-Daily "daily summaries" CSV, read in inches and °F as stated',
    first: "2021-05-01",
    figures: {
      rainMm: [12.7, 0, 25.4, null],
      tMaxC: [26.67, 30, 20, 25],
      tMinC: [10, 15, null, 5],
      wind2mMPerS: [10, 5, null, 2].map((mph) => mph && Number((mph * 0.44704 * from10m).toFixed(2))),
    },
    notes: [/AWND.*10 m/, /not used: SNOW, WT01/],
  },
  {
    file: "invented-ghcn-summaries-two-stations.csv",
    options: { units: "metric", station: "XXC00000001" },
    format: 'NOAA GHCN-Daily "daily summaries" CSV, read in mm and °C as stated',
    first: "2021-05-01",
    figures: { rainMm: [5, 0, 4.5, 4.5], tMaxC: [25, 26, null, 28], tMinC: [10, 11, 12, 13] },
    notes: [/1 rain total of several days spread evenly over 2 days/, /1 value failed a quality/, /1 trace/],
  },
  {
    file: "invented-uscrn-daily01.txt",
    format: "NOAA USCRN daily01, fixed width",
    first: "2021-05-01",
    figures: {
      rainMm: [5, 0, null, 12.3],
      tMaxC: [25, 26.5, null, 22],
      tMinC: [10, 11, null, 9.5],
      solarMjPerM2: [20.5, 25, null, 12.25],
      rhMaxPercent: [90, 85, null, 99],
      rhMinPercent: [30, 25, null, 50],
      rhMeanPercent: [60, 55, null, 75],
    },
    notes: [/Soil moisture/],
  },
  {
    file: "invented-uscrn.csv",
    format: "NOAA USCRN daily01, CSV",
    first: "2021-05-01",
    figures: {
      rainMm: [5, 0, null, 12.3],
      tMaxC: [25, 26.5, null, 22],
      tMinC: [10, 11, null, 9.5],
      solarMjPerM2: [20.5, 25, null, 12.25],
      rhMaxPercent: [90, 85, null, 99],
      rhMinPercent: [30, 25, null, 50],
      rhMeanPercent: [60, 55, null, 75],
    },
    notes: [/Soil moisture/],
  },
  {
    file: "invented-power-doy.csv",
    format: "NASA POWER daily CSV",
    first: "2020-02-28",
    figures: {
      rainMm: [0.5, 0, 2.5],
      tMaxC: [15, 16, 17],
      tMinC: [1, 2, 3],
      dewPointC: [-2, -1, 0],
      rhMeanPercent: [60, 61, 62],
      wind2mMPerS: [3, 4, 5],
      solarMjPerM2: [14.4, null, 18],
    },
    notes: [/Gridded/],
  },
  {
    file: "invented-power-modydy.csv",
    format: "NASA POWER daily CSV",
    first: "2020-02-28",
    figures: {
      rainMm: [0.5, 0, 2.5],
      tMaxC: [15, 16, 17],
      tMinC: [1, 2, 3],
      dewPointC: [-2, -1, 0],
      rhMeanPercent: [60, 61, 62],
      wind2mMPerS: [2.24, 2.99, 3.74],
      solarMjPerM2: [14.4, null, 18],
    },
    notes: [/WS10M.*2 m/, /UTC/, /Gridded/],
  },
  {
    file: "invented-gridmet.csv",
    format: "gridMET daily columns",
    first: "2021-05-01",
    figures: {
      rainMm: [5, 0],
      tMaxC: [25, 26.5],
      tMinC: [10, 11],
      rhMaxPercent: [90, 85],
      rhMinPercent: [30, 25],
      solarMjPerM2: [21.6, 25.92],
      wind2mMPerS: [2.99, 2.24],
      referenceEtMm: [5.5, 6.5],
    },
    notes: [/read in K, radiation in W\/m2/, /Wind at 10 m/, /not used: etr/],
  },
  {
    file: "invented-plain.csv",
    format: "plain CSV with named columns and units",
    first: "2021-05-01",
    figures: {
      rainMm: [5, 0, null],
      tMaxC: [25, 26.5, 22],
      tMinC: [10, null, 5],
      rhMaxPercent: [90, 85, 99],
      wind2mMPerS: [2.99, 2.24, 1.5],
      referenceEtMm: [5.08, 6.35, 2.54],
    },
    notes: [/Wind at 10 m/, /not used: hail/],
  },
  {
    file: "invented-plain-unit-row.csv",
    format: "plain CSV with named columns and units",
    first: "2021-05-14",
    figures: { rainMm: [12.7, 0], tMaxC: [26.67, 30], tMinC: [10, 15], solarMjPerM2: [21.6, 25.92] },
    notes: [/1 value read with a decimal comma/],
  },
];

describe.each(samples)("$file", ({ file, options, format, first, figures, notes }) => {
  test.each([file, "file", "wrong.dly"])("is known by its content, called %s", (fileName) => {
    const record = readWeather(fixture(file), { ...options, fileName });
    expect(record.station.format).toBe(format);
    expect(isoDate(record.firstDay)).toBe(first);
  });

  test("holds the figures of the file in our units and nothing else", () => {
    const record = read(fixture(file), options);
    for (const element of elementNames)
      expect([element, shown(record, element)]).toEqual([element, figures[element] ?? null]);
    expect(record.days).toBe(figures.rainMm?.length);
  });

  test("says what was done", () => {
    const said = read(fixture(file), options).notes;
    for (const note of notes) expect(said.filter((line) => note.test(line))).toHaveLength(1);
    expect(said).toHaveLength(notes.length);
  });

  test.each([
    ["carriage returns before line feeds", (text: string) => text.replace(/\r?\n/g, "\r\n")],
    ["carriage returns alone", (text: string) => text.replace(/\r?\n/g, "\r")],
    ["a byte-order mark", (text: string) => `\ufeff${text}`],
    ["blank lines at the end", (text: string) => `${text}\n\n`],
    ["no line end at the end", (text: string) => text.trimEnd()],
  ])("reads the same with %s", (_, change) => {
    expect(read(change(fixture(file)), options)).toEqual(read(fixture(file), options));
  });
});

describe("GHCN-Daily fixed width", () => {
  const record = read(fixture("invented-ghcn-daily.dly"));
  const rainOn = (day: number) => record.rainMm[day - 1];

  test.each(["invented-ghcn-daily.dly", "file", "wrong.csv"])(
    "is known by its content, called %s",
    (fileName) => {
      const { station } = readWeather(fixture("invented-ghcn-daily.dly"), { fileName });
      expect(station).toEqual({
        ...station,
        id: "XXC00000001",
        format: "NOAA GHCN-Daily, fixed width (.dly)",
      });
    },
  );
  test("holds the days of the month and no more", () => {
    expect([isoDate(record.firstDay), record.days]).toEqual(["2021-02-01", 28]);
  });
  test("tenths become mm and °C; -9999 is missing", () => {
    expect(rainOn(5)).toBeCloseTo(12.3);
    expect([record.tMaxC?.[0], record.tMinC?.[0]]).toEqual([10, -5]);
  });
  test("a trace is 0 and counted", () => {
    expect(rainOn(2)).toBe(0);
    expect(record.notes).toContain("1 trace of rain taken as 0.");
  });
  test("a failed quality check makes a value missing, and is counted, in elements not used apart", () => {
    expect(record.tMaxC?.[2]).toBeNaN();
    expect(record.notes).toContain("1 value failed a quality check of the agency: taken as missing.");
    expect(record.notes).toContain("1 value with a failed quality check in elements not used here.");
  });
  test("a total of four days is spread over them: 20 mm", () => {
    expect([9, 10, 11, 12, 13, 14].map(rainOn)).toEqual([0, 5, 5, 5, 5, 0]);
    expect(record.notes).toContain("1 rain total of several days spread evenly over 4 days.");
  });
  test("a month given twice alike is taken once", () => {
    const lines = fixture("invented-ghcn-daily.dly").trim().split("\n");
    const twice = read([...lines, lines[0]].join("\n"));
    expect(twice.tMaxC).toEqual(record.tMaxC);
    expect(twice.notes).toContain(
      `1 line repeated a month with the same values: dropped. The first is line ${lines.length + 1}, which repeats line 1.`,
    );
  });
  test("blanks cut off at the ends of lines do no harm", () => {
    const cut = fixture("invented-ghcn-daily.dly").replace(/ +$/gm, "");
    expect(read(cut)).toEqual(record);
  });
});

describe("stations of one file", () => {
  const text = fixture("invented-ghcn-summaries-two-stations.csv");
  test("are listed for choice", () => {
    expect(complaintsOf(() => read(text, { units: "metric" }))).toEqual([
      "file: expected one station, found 2: XXC00000001 (INVENTED EAST, 4 lines); XXC00000002 (INVENTED WEST, 2 lines); " +
        "set weather.station in the scenario, or --weather-station, to one of them",
    ]);
  });
  test.each(["XXC00000002", "xxc00000002", "Invented West"])(
    "are chosen by identifier or name: %s",
    (station) => {
      const record = read(text, { units: "metric", station });
      expect(Array.from(record.rainMm)).toEqual([1, 2]);
      expect(record.station).toMatchObject({
        id: "XXC00000002",
        name: "INVENTED WEST",
        latitudeDeg: 38.6,
        elevationM: 1100.2,
      });
    },
  );
  test("one that is not there is refused with those that are", () => {
    const [line] = complaintsOf(() => read(text, { units: "metric", station: "XX" }));
    expect(line).toMatch(
      /^weather.station: expected a station of file: XXC00000001 .* found "XX"; set weather.station/,
    );
  });
  test("and units are asked for in one go", () => {
    const lines = complaintsOf(() => read(text));
    expect(lines).toHaveLength(2);
    expect(lines[1]).toMatch(
      /^weather.units: expected the units of file, which does not state them \(its highest TMAX is 28\)/,
    );
    expect(lines[1]).toMatch(/set weather.units in the scenario, or --weather-units, to "us"/);
  });
  test("in a file that names none are not looked for, and that is said", () => {
    const { notes } = read("date,rain_mm\n2020-01-01,1\n", { station: "A" });
    expect(notes).toEqual(["The file does not name its stations: weather.station is not used."]);
  });
  test("of a plain table and of fixed width are listed too", () => {
    const plain = "date,site,rain_mm\n2020-01-01,A,1\n2020-01-01,B,2\n";
    expect(complaintsOf(() => read(plain))[0]).toMatch(/one station, found 2: A \(1 line\); B/);
    expect(Array.from(read(plain, { station: "b" }).rainMm)).toEqual([2]);
    const fixed = fixture("invented-uscrn-daily01.txt");
    expect(complaintsOf(() => read(fixed + fixed.replaceAll("99999 2", "88888 2")))[0]).toMatch(
      /found 2: 99999/,
    );
    const monthly = fixture("invented-ghcn-daily.dly");
    expect(complaintsOf(() => read(monthly + monthly.replaceAll("XXC00000001", "XXC00000002")))[0]).toMatch(
      /found 2: XXC/,
    );
  });
});

describe("units", () => {
  const us = fixture("invented-ghcn-summaries-us.csv");
  test("are asked for where the file does not state them", () => {
    expect(complaintsOf(() => read(us))[0]).toMatch(/its highest TMAX is 86/);
  });
  test("of NOAA's archive are tenths", () => {
    const record = read('"STATION","DATE","PRCP","TMAX","AWND"\n"X","2020-01-01","  123"," -45","  40"\n', {
      units: "tenths",
    });
    expect([shown(record, "rainMm"), shown(record, "tMaxC"), shown(record, "wind2mMPerS")]).toEqual([
      [12.3],
      [-4.5],
      [2.99],
    ]);
  });
  test("that look wrong are doubted", () => {
    const rows = Array.from({ length: 30 }, (_, i) => `X,2020-04-${String(i + 1).padStart(2, "0")},0,50,40`);
    const whole = ["STATION,DATE,PRCP,TMAX,TMIN", ...rows].join("\n");
    expect(read(whole, { units: "metric" }).notes[0]).toMatch(
      /metric was stated, but all temperatures are whole/,
    );
    expect(read(whole, { units: "us" }).notes).toEqual([]);
    expect(read(whole.replaceAll("50,40", "20.5,10.5"), { units: "us" }).notes[0]).toMatch(
      /us was stated, but most/,
    );
  });
  test("of plain columns without any can be stated, and that is said", () => {
    const record = read("date,rain,tmax,tmin\n2020-01-01,1,68,50\n", { units: "us" });
    expect([shown(record, "rainMm"), shown(record, "tMaxC")]).toEqual([[25.4], [20]]);
    expect(record.notes).toEqual(["Units of rain, tmax, tmin are not in the file: us, as stated."]);
  });
  test("stated for a format that has its own are not used, and that is said", () => {
    expect(read(fixture("invented-uscrn.csv"), { units: "us" }).notes.at(-1)).toMatch(
      /weather.units \(us\) is not used/,
    );
  });
  test("of gridMET passed on in °C and MJ are told by the figures, in a season or more", () => {
    const days = Array.from({ length: 90 }, (_, i) => `${isoDate(dayNumber(2020, 4, 1) + i)},0,20,5,15`);
    const header = "date,pr,tmmx,tmmn,srad";
    const record = read([header, ...days].join("\n"));
    expect([record.tMaxC?.[0], record.solarMjPerM2?.[0]]).toEqual([20, 15]);
    expect(complaintsOf(() => read([header, ...days.slice(1)].join("\n")))[0]).toMatch(
      /90 days or more, to tell W\/m2/,
    );
  });
});

describe("dates", () => {
  const rainBy = (dates: readonly string[]) =>
    read(["date,rain_mm", ...dates.map((date, i) => `${date},${i}`)].join("\n"));
  test.each([
    ["2020-05-14"],
    ["20200514"],
    ["2020/5/14"],
    ["5/14/2020"],
    ["14.5.2020"],
    ["14-05-2020"],
    ["2020-05-14T00:00:00Z"],
    ["2020-05-14 06:00"],
  ])("%s is 14 May 2020", (text) => {
    expect(isoDate(rainBy([text]).firstDay)).toBe("2020-05-14");
  });
  test("one date shows the order of all", () => {
    expect(isoDate(rainBy(["12/1/2020", "13/1/2020"]).firstDay)).toBe("2020-01-12");
    expect(isoDate(rainBy(["1/12/2020", "1/13/2020"]).firstDay)).toBe("2020-01-12");
  });
  test("that read two ways are asked for", () => {
    expect(complaintsOf(() => rainBy(["3/4/2020", "3/5/2020"]))).toEqual([
      'file line 2: expected dates that read one way only, such as 2020-05-14, found "3/4/2020"; write all dates as year-month-day',
    ]);
  });
  test("year, month and day, or day of the year, in columns of their own", () => {
    expect(isoDate(read("year,month,day,rain_mm\n2020,2,29,1\n").firstDay)).toBe("2020-02-29");
    expect(isoDate(read("Year,DOY,rain_mm\n2020,60,1\n").firstDay)).toBe("2020-02-29");
  });
  test("out of order are sorted, twice alike taken once, left out missing; all but the last said", () => {
    const record = read("date,rain_mm\n2020-01-04,4\n2020-01-01,1\n2020-01-02,2\n2020-01-02,2\n");
    expect(shown(record, "rainMm")).toEqual([1, 2, null, 4]);
    expect(record.notes).toEqual([
      "Days were not in order: sorted. The first out of order is 2020-01-01 on line 3.",
      "1 line repeated a day with the same figures: dropped. The first is line 5, which repeats line 4.",
    ]);
  });
});

describe("figures", () => {
  const notesOf = (cell: string, name = "rain_mm") => {
    const record = read(
      `date,rain_mm,${name === "rain_mm" ? "tmax_C" : name}\n2020-01-01,1,1\n2020-01-02,${name === "rain_mm" ? `${cell},1` : `0,${cell}`}\n`,
    );
    return record;
  };
  test.each(["", "NA", "N/A", "M", "-", "null", "-9999", "-999", "-99", "-99.9", "-9999.0"])(
    "%j is missing",
    (cell) => {
      expect(notesOf(cell).rainMm[1]).toBeNaN();
    },
  );
  test("marks of missing values are counted where the format does not define them", () => {
    expect(notesOf("-9999").notes).toEqual(["1 value such as -9999 or -99 taken as missing."]);
  });
  test("T is a trace of rain", () => {
    expect(notesOf("T").rainMm[1]).toBe(0);
    expect(notesOf("T").notes).toEqual(["1 trace of rain taken as 0."]);
  });
  test("humidity a little over 100 % and ET a little under 0 are set to the limit, and counted", () => {
    expect(notesOf("100.6", "rhmax_%").rhMaxPercent?.[1]).toBe(100);
    expect(notesOf("-0.04", "eto_mm").referenceEtMm?.[1]).toBe(0);
    expect(notesOf("-0.04", "eto_mm").notes[0]).toMatch(/^1 value a little outside/);
  });
  test.each([
    ["1e-2", 0.01],
    ["+5", 5],
    [".5", 0.5],
    ["5.", 5],
    ['"5"', 5],
    ["0", 0],
    ["0e0", 0],
  ])("%s is a number", (cell, value) => {
    expect(notesOf(cell).rainMm[1]).toBe(value);
  });
  test("more than 500 mm of rain a day is read, and its line named; from US inches too", () => {
    expect(notesOf("500").notes).toEqual([]);
    expect(notesOf("1825").rainMm[1]).toBe(1825);
    expect(notesOf("501").notes).toEqual([
      "More rain in a day than most places ever see, above 19.7 in (500 mm), on line 3 with 19.7 in (501 mm): check the figures and their unit.",
    ]);
    const seven = Array.from({ length: 7 }, (_, i) => `2020-01-0${i + 1},30`).join("\n");
    const [note] = read(`date,rain_in\n${seven}`).notes;
    expect(note).toContain("on line 2 with 30 in (762 mm), line 3");
    expect(note).toContain("line 6 with 30 in (762 mm) and 2 more: check");
  });
  test("so it is in fixed width", () => {
    const dly = fixture("invented-ghcn-daily.dly").replace("  123", " 5123");
    const line = 1 + dly.split("\n").findIndex((text) => text.includes(" 5123"));
    expect(read(dly).notes.join(" ")).toContain(`on line ${line} with 20.2 in (512 mm)`);
  });
  test("an element with no figure at all is not there", () => {
    expect(read("date,rain_mm,tmax_C\n2020-01-01,1,\n").tMaxC).toBeNull();
  });
});

test("a station far from the site is warned of", () => {
  const site = { latitudeDeg: 45, elevationM: 300, setting: "inland" } as const;
  expect(read(fixture("invented-uscrn.csv"), { site }).notes.at(-1)).toMatch(
    /latitude 38.50, the site at 45.00/,
  );
  expect(read(fixture("invented-uscrn.csv"), { site: { ...site, latitudeDeg: 38 } }).notes).toHaveLength(1);
});

test("a file that nobody knows is refused with the formats that are read", () => {
  const [line] = complaintsOf(() => read("when,how much\nyesterday,a lot\n"));
  for (const format of weatherFormats) expect(line).toContain(format);
});
