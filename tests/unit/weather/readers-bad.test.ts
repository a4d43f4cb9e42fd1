import { complain, noComplaints, refuseIfAny } from "../../../src/weather/records/readers/complaints.ts";
import { describe, expect, test } from "vitest";
import type { ReadOptions } from "../../../src/weather/records/readers/index.ts";
import { complaintsOf, fixture, read } from "./readersFixture.ts";

const ghcn = fixture("invented-ghcn-summaries-us.csv");
const dly = fixture("invented-ghcn-daily.dly");
const power = fixture("invented-power-doy.csv");
const uscrn = fixture("invented-uscrn-daily01.txt");

/** A plain table of one bad line below a good one. */
const plain = (line: string, header = "date,rain_mm,tmax_C,tmin_C") =>
  `${header}\n2020-01-01,0,5,1\n${line}\n`;
const oneColumn = (name: string, cell: string) => `date,rain_mm,${name}\n2020-01-01,0,${cell}\n`;

/** What is wrong, the text, and the whole line that a person reads. */
const bad: readonly (readonly [what: string, text: string, line: string, options?: Partial<ReadOptions>])[] =
  [
    [
      "empty file",
      "",
      "file: expected a weather record, found nothing; give a file that holds daily weather",
    ],
    [
      "blanks only",
      " \n\n",
      'file: expected a weather record, found "   "; give a file that holds daily weather',
    ],
    [
      "header only",
      "date,rain_mm\n",
      "file: expected daily rows below the header, found none; give a file with data",
    ],
    [
      "binary",
      "PK\u0003\u0004\u0000\u0000date,rain_mm",
      'file: expected a plain text file in UTF-8, found "PK    date,rain_mm"; save the sheet as CSV (UTF-8), or unpack the archive, and give that file',
    ],
    [
      "two figures of a day",
      plain("2020-01-01,3,5,1"),
      "file line 3: expected each day once, found 2020-01-01 again, with other figures than on line 2; keep the line that is right",
    ],
    [
      "no leap day",
      plain("2019-02-29,0,5,1"),
      'file line 3: expected a day of the calendar (2019 is no leap year), found "2019-02-29"; remove the line or mend the date',
    ],
    [
      "no such day",
      plain("2020-04-31,0,5,1"),
      'file line 3: expected a day of the calendar, found "2020-04-31"; mend the date',
    ],
    [
      "no such month",
      plain("20201301,0,5,1"),
      'file line 3: expected a day of the calendar, found "20201301"; mend the date',
    ],
    [
      "no such day in their order",
      "date,rain_mm\n1/13/2020,0\n13/13/2020,0\n",
      'file line 3: expected a day of the calendar, read month first as the other dates are, found "13/13/2020"; mend the date',
    ],
    [
      "a far year",
      plain("0202-01-02,0,5,1"),
      'file line 3: expected a year from 1700 to 2200, found "0202-01-02"; mend the year',
    ],
    [
      "two-digit year",
      plain("1/2/20,0,5,1"),
      'file line 3: expected a date such as 2020-05-14 or 20200514, found "1/2/20"; write the year with four digits',
    ],
    [
      "no date",
      plain(",0,5,1"),
      'file line 3: expected a date such as 2020-05-14 or 20200514, found ""; write it so',
    ],
    [
      "words for a date",
      plain("soon,0,5,1"),
      'file line 3: expected a date such as 2020-05-14 or 20200514, found "soon"; write it so',
    ],
    [
      "day 366 of a common year",
      "year,doy,rain_mm\n2019,366,0\n",
      'file line 2: expected a year and a day of it, 1 to 365 (366 in leap years), found "2019 366"; mend the date',
    ],
    [
      "month 13 in its own column",
      "year,month,day,rain_mm\n2019,13,1,0\n",
      'file line 2: expected a day of the calendar, found "2019-13-1"; mend the date',
    ],
    [
      "lowest above highest",
      plain("2020-01-02,0,5,6.5"),
      "file line 3: expected lowest temperature at or below the highest, found 6.5 above 5 °C on 2020-01-02; mend the figures, or leave both empty",
    ],
    [
      "negative rain",
      plain("2020-01-02,-0.2,5,1"),
      'file line 3: expected rain of 0 or more in rain_mm, found "-0.2"; mend it, or leave it empty',
    ],
    [
      "too much rain",
      plain("2020-01-02,2001,5,1"),
      'file line 3: expected rain from 0 to 1829 mm in rain_mm, found "2001"; mend it, or state the unit it is in',
    ],
    [
      "too hot",
      plain("2020-01-02,0,78,1"),
      'file line 3: expected highest temperature from -90 to 60 °C in tmax_C, found "78"; mend it, or state the unit it is in',
    ],
    [
      "too cold",
      plain("2020-01-02,0,5,-91"),
      'file line 3: expected lowest temperature from -90 to 60 °C in tmin_C, found "-91"; mend it, or state the unit it is in',
    ],
    [
      "too hot in °F",
      oneColumn("tmax_F", "150"),
      'file line 2: expected highest temperature from -90 to 60 °C in tmax_F, found "150" (65.556 °C); mend it, or state the unit it is in',
    ],
    [
      "humidity over 101",
      oneColumn("rhmax_%", "101.1"),
      'file line 2: expected highest humidity from 0 to 100 % in rhmax_%, found "101.1"; mend it, or state the unit it is in',
    ],
    [
      "negative humidity",
      oneColumn("rhmin_%", "-5"),
      'file line 2: expected lowest humidity of 0 or more in rhmin_%, found "-5"; mend it, or leave it empty',
    ],
    [
      "humidity upside down",
      "date,rain_mm,rhmax_%,rhmin_%\n2020-01-01,0,40,50\n",
      "file line 2: expected lowest humidity at or below the highest, found 50 above 40 % on 2020-01-01; mend the figures, or leave both empty",
    ],
    [
      "a storm too strong",
      oneColumn("wind_2m_m/s", "76"),
      'file line 2: expected wind from 0 to 75 m/s in wind_2m_m/s, found "76"; mend it, or state the unit it is in',
    ],
    [
      "too much sun",
      oneColumn("solar_MJ/m2", "46"),
      'file line 2: expected solar radiation from 0 to 45 MJ/m2 in solar_MJ/m2, found "46"; mend it, or state the unit it is in',
    ],
    [
      "too much ET",
      oneColumn("eto_mm", "32"),
      'file line 2: expected reference ET from 0 to 30 mm in eto_mm, found "32"; mend it, or state the unit it is in',
    ],
    [
      "dew point above the day",
      "date,rain_mm,tmax_C,dewpoint_C\n2020-01-01,0,10,12.5\n",
      "file line 2: expected dew point at or below the highest temperature, found 12.5 above 10 °C on 2020-01-01; mend the figures, or leave both empty",
    ],
    [
      "a word",
      plain("2020-01-02,wet,5,1"),
      'file line 3: expected a number in column rain_mm, found "wet"; write a number, or nothing where it is missing',
    ],
    [
      "NaN",
      plain("2020-01-02,NaN,5,1"),
      'file line 3: expected a number in column rain_mm, found "NaN"; write a number, or nothing where it is missing',
    ],
    [
      "Infinity",
      plain("2020-01-02,0,Infinity,1"),
      'file line 3: expected a number in column tmax_C, found "Infinity"; write a number, or nothing where it is missing',
    ],
    [
      "overflow",
      plain("2020-01-02,1e999,5,1"),
      'file line 3: expected a number in column rain_mm, found "1e999"; write a number, or nothing where it is missing',
    ],
    [
      "hexadecimal",
      plain("2020-01-02,0x1F,5,1"),
      'file line 3: expected a number in column rain_mm, found "0x1F"; write a number, or nothing where it is missing',
    ],
    [
      "digits of another script",
      plain("2020-01-02,٣,5,1"),
      'file line 3: expected a number in column rain_mm, found "٣"; write a number, or nothing where it is missing',
    ],
    [
      "decimal comma in quotes",
      plain('2020-01-02,"0,5",5,1'),
      'file line 3: expected a number in column rain_mm, found "0,5"; write it with a decimal point',
    ],
    [
      "decimal commas between commas",
      plain("2020-01-02,0,5,5,1"),
      "file line 3: expected 4 cells, one for each column, found 5; write numbers with a decimal point, and put text with a delimiter in quotes",
    ],
    [
      "a short row",
      plain("2020-01-02,0"),
      "file line 3: expected 4 cells, one for each column, found 2; complete the row",
    ],
    [
      "a file cut short",
      ghcn.slice(0, -25),
      "file line 5: expected 9 cells, one for each column, found 4; complete the row",
      { units: "us" },
    ],
    [
      "no unit",
      "date,rain,tmax_C\n2020-01-01,0,5\n",
      'file line 1: expected a unit of rain in the column\'s name (mm, cm or in), found "rain"; write it as, for instance, rain_mm, or set weather.units or --weather-units to "us" or "metric"',
    ],
    [
      "unit unknown",
      "date,rain_furlongs\n2020-01-01,0\n",
      'file line 1: expected a unit of rain in the column\'s name (mm, cm or in), found "rain_furlongs" with unit "furlongs"; write it as, for instance, rain_mm',
    ],
    [
      "no height of the wind",
      "date,rain_mm,wind (m/s)\n2020-01-01,0,5\n",
      'file line 1: expected the height of the wind in the column\'s name, 0.5 to 100 m, found "wind (m/s)"; write it as, for instance, wind_10m_m/s or wind_2m_mph, or remove the column',
    ],
    [
      "rain twice",
      "date,rain_mm,rain_in\n2020-01-01,0,0\n",
      'file line 1: expected one column of rain, found "rain_mm" and "rain_in"; keep or rename one',
    ],
    [
      "no rain column",
      "date,tmax_C,tmin_C\n2020-01-01,5,1\n",
      "file line 1: expected a column of rain, found the columns date, tmax_C, tmin_C; name it, for instance rain_mm or rain_in",
    ],
    [
      "rain all missing",
      "date,rain_mm,tmax_C\n2020-01-01,,5\n",
      "file: expected rain on at least one day, found none; order the file with daily precipitation, or name the rain column",
    ],
    [
      "NOAA: °F read as °C",
      ghcn,
      'file line 2: expected highest temperature from -90 to 60 °C in TMAX, found "80" (and 3 more like it, in lines 3, 4, 5); mend it, or state the unit it is in',
      { units: "metric" },
    ],
    [
      "POWER without rain",
      power.replaceAll("PRECTOTCORR", "PS"),
      'file line 16: expected rain (PRECTOTCORR), found "YEAR,DOY,T2M_MAX,T2M_MIN,T2MDEW,RH2M,WS2M,PS,ALLSKY_SFC_S..."; order the file again with PRECTOTCORR',
    ],
    [
      "POWER without a unit",
      power.replace("Downward Irradiance (MJ/m^2/day)", "Downward Irradiance"),
      "file line 16: expected the unit of ALLSKY_SFC_SW_DWN in brackets in the header block (MJ/m2 (a day), W/m2 or kWh/m2), found none; give the file with the header block that the service sends",
    ],
    [
      "POWER in an odd unit",
      power.replace("Maximum (C)", "Maximum (R)"),
      'file line 16: expected the unit of T2M_MAX in brackets in the header block (C, F or K), found "R"; give the file with the header block that the service sends',
    ],
    [
      "POWER cut in its header",
      power.slice(0, 300),
      "file: expected -END HEADER- and below it columns YEAR and DOY, or YEAR, MO and DY, found nothing; give the file as the service sends it",
    ],
    [
      "USCRN row cut short",
      `${uscrn.trimEnd().slice(0, -60)}\n`,
      "file line 4: expected 28 cells, one for each column, found 21; complete the row",
    ],
    [
      ".dly: no number",
      dly.replace("TMAX  100", "TMAX  1x0"),
      'file line 1: expected TMAX of day 1 as a whole number in columns 22 to 26, found "1x0"; mend it, or write -9999',
    ],
    [
      ".dly: a line cut short",
      dly.slice(0, 60),
      "file line 1: expected TMAX of day 6 as a whole number in columns 62 to 66, found nothing; mend it, or write -9999",
    ],
    [
      ".dly: 30 February",
      `${dly.slice(0, 253)}   50${dly.slice(258)}`,
      'file line 1: expected -9999 on day 30, which 2021-02 does not have, found "50"; mend the year, the month or the value',
    ],
    [
      ".dly: a month twice",
      `${dly}${dly.slice(0, 269).replace("TMAX  100", "TMAX  101")}\n`,
      "file line 8: expected each month of an element once, found TMAX of 2021-02 again, with other values than on line 1; keep the line that is right",
    ],
    [
      ".dly: too hot",
      dly.replace("TMAX  100", "TMAX  780"),
      'file line 1: expected highest temperature from -90 to 60 °C in TMAX, found "780" (78 °C); mend it, or state the unit it is in',
    ],
    [
      ".dly: lowest above highest",
      dly.replace("TMIN  -50", "TMIN  101"),
      "file line 2: expected lowest temperature at or below the highest, found 10.1 above 10 °C on 2021-02-01; mend the figures, or leave both empty",
    ],
    [
      ".dly: another kind of line",
      `${dly}what is this\n`,
      'file line 8: expected station, year, month, element and 31 values in fixed columns, found "what is this"; give the file as the agency sends it',
    ],
    [
      ".dly: nothing of use",
      dly
        .split("\n")
        .filter((line) => line.includes("SNOW"))
        .join("\n"),
      "file: expected months of PRCP, TMAX or TMIN, found none; give a file that has them",
    ],
  ];

describe("each fault is one clear line with its place", () => {
  test.each(bad.map(([what, text, line, options]) => ({ what, text, line, options })))(
    "$what",
    ({ text, line, options }) => {
      expect(complaintsOf(() => read(text, options))).toContain(line);
    },
  );
  test("a span of more than 300 years is refused before memory is taken for it", () => {
    const text = "date,rain_mm\n1750-01-01,0\n2150-12-31,0\n";
    expect(complaintsOf(() => read(text))).toEqual([
      "file: expected a record of at most 300 years, found 1750-01-01 to 2150-12-31; mend the years",
    ]);
  });
});

test("a fault that many lines have is told once, with some of them and their number", () => {
  const rows = Array.from({ length: 30 }, (_, i) => `2020-01-${String(i + 1).padStart(2, "0")},wet`);
  const lines = complaintsOf(() => read(["date,rain_mm", ...rows].join("\n")));
  expect(lines).toHaveLength(1);
  expect(lines[0]).toMatch(
    /^file line 2: expected a number in column rain_mm, found "wet" \(and 29 more like it, in lines 3, 4, 5, 6, 7 \.\.\.\); /,
  );
});

test("faults stand in the order of the file, whichever is found first", () => {
  // Lowest above highest is looked for when all cells are read: line 2 is found after the words.
  const lines = complaintsOf(() =>
    read("date,rain_mm,tmax_C,tmin_C\n2019-12-31,0,1,9\n2020-01-01,wet,9,1\n2020-01-02,wet,9,1\n"),
  );
  expect(lines.map((line) => /^file line (\d+)/.exec(line)?.[1])).toEqual(["2", "3"]);
  expect(lines[1]).toContain("(and 1 more like it, in line 4)");
});

test("a dozen faults are worded, those of the first lines, the others counted", () => {
  const complaints = noComplaints("file");
  for (let line = 20; line > 0; line--) {
    complain(complaints, line, `fault ${line}`, "x", "mend it");
    complain(complaints, line + 100, `fault ${line}`, "x", "mend it");
  }
  const lines = complaintsOf(() => refuseIfAny(complaints));
  expect(lines).toHaveLength(13);
  expect(lines[0]).toBe(
    'file line 1: expected fault 1, found "x" (and 1 more like it, in line 101); mend it',
  );
  expect(lines[11]).toMatch(/^file line 12: /);
  expect(lines[12]).toBe(
    "file: expected no other lines like these, found 16 more; mend the lines above first",
  );
});

test("faults of several kinds come together, in the order of their lines", () => {
  const lines = complaintsOf(() =>
    read(plain("2020-01-02,-1,5,1\n2020-01-03,0,1,5\nsoon,0,5,1\n2020-01-01,9,5,1")),
  );
  expect(lines.map((line) => line.slice(0, 11))).toEqual([
    "file line 3",
    "file line 4",
    "file line 5",
    "file line 6",
  ]);
});

test.each([
  ["another script", "日期,降水\n2020-01-01,5\n"],
  ["one line without end", "date,rain_mm,".repeat(200_000)],
  ["a page", "<!DOCTYPE html><html><body>404</body></html>"],
  ["data of another kind", '{"format": "rootfront-scenario/1"}'],
])("%s is refused with the formats that are read", (_, text) => {
  const [line, ...more] = complaintsOf(() => read(text));
  expect(line).toMatch(/^file: expected a daily weather record in one of these formats: NOAA GHCN-Daily/);
  expect(line!.length).toBeLessThan(700);
  expect(more).toEqual([]);
});

test("a column named in another script is left aside", () => {
  expect(read("date,rain_mm,降水\n2020-01-01,5,x\n").notes).toEqual(["Columns not used: 降水."]);
});
