import { describe, expect, test } from "vitest";
import { embeddedText } from "../../src/report/page/embedded.ts";
import { readHorizonTable, numberIn } from "../../src/soil/horizons/horizonTable.ts";
import { readColumnName } from "../../src/weather/records/readers/columnName.ts";
import { readWeather } from "../../src/weather/records/readers/index.ts";
import { cellValue, pastedCells } from "../../web/forms/edits/cells.ts";
import { tryDate, tryMonthDay } from "../../src/quantity/index.ts";
import { call, ownFolder } from "../cli/callCli.ts";

/** What is read from files and pasted is of any length: every pattern goes through it once. The test's time limit is the guard. */
const letters = 200_000;

describe("a text of 200,000 letters", () => {
  test("in a cell of a horizon file is no number", () => {
    const table = readHorizonTable(`sand\n${"1".repeat(letters)}x\n`, "soil.csv");
    expect(() => numberIn(table, table.rows[0]!, "sand", [0, 100])).toThrow(
      /^soil\.csv line 2 column sand: expected a number with a decimal point, found "1{57}\.\.\."/,
    );
  });

  test("as the name of a column is no name", () => {
    expect(readColumnName("rain ".repeat(letters / 5))).toBeNull();
    expect(readColumnName("rain_mm")).toMatchObject({ unit: "mm" });
  });

  test("in the header of a file of NASA POWER is read over", () => {
    const line = "elevation missing ".repeat(letters / 18);
    const text = `-BEGIN HEADER-\nNASA/POWER\n${line}\n-END HEADER-\nYEAR,DOY,PRECTOTCORR\n2001,1,0\n`;
    expect(() => readWeather(text, { fileName: "power.csv" })).toThrow(/^power\.csv/);
  });

  test.each([
    ["of one tag", `<script ${'id="rootfront-scenario" '.repeat(letters / 24)}`],
    ["of tags", "<script>".repeat(letters / 8)],
  ])("as a page %s holds no scenario", (_, html) => expect(embeddedText(html)).toBeNull());

  test("pasted from a spreadsheet is one row, or rows", () => {
    const blank = "\n".repeat(letters);
    expect(pastedCells(`1${blank}`)).toBeNull();
    expect(pastedCells(`1${blank}2`)).toHaveLength(letters + 1);
  });

  test("typed into a cell of counts stays what it is", () => {
    const blanks = " ".repeat(letters);
    const column = { kind: "quantities", unit: "in" } as const;
    expect(cellValue(`3 in${blanks};${blanks}4 in`, column)).toEqual(["3 in", "4 in"]);
    expect(cellValue(`3${blanks}x`, column)).toEqual([`3${blanks}x`]);
  });

  test("as a header of a horizon file is refused by its number of columns", () => {
    const header = Array.from({ length: letters / 8 }, (_, c) => `c${c}`).join(",");
    expect(() => readHorizonTable(`${header}\n1\n`, "soil.csv")).toThrow(
      "soil.csv header: expected at most 1000 columns, found 25000; export fewer, or put each horizon on a line of its own",
    );
  });

  test.each([
    ["digits", "1".repeat(letters)],
    ["dashes", "2001-".repeat(letters / 5)],
    ["blanks", `2001-01-01${" ".repeat(letters)}x`],
    ["months", `${"jan ".repeat(letters / 4)}1`],
  ])("is no date: %s", (_, text) => {
    expect(tryDate(text)).toMatchObject({ mend: expect.any(String) as string });
    expect(tryMonthDay(text)).toMatchObject({ mend: expect.any(String) as string });
    expect(() => readWeather(`date,rain_mm\n${text},1\n`, { fileName: "w.csv" })).toThrow(/^w\.csv/);
  });

  test.each([
    ["digits", "1".repeat(letters)],
    ["a comma", `${"1".repeat(letters)},5`],
    ["blanks", `1${" ".repeat(letters)}x`],
    ["dashes", "-".repeat(letters)],
  ])("in a cell of a weather file is no rain: %s", (_, text) => {
    expect(() => readWeather(`date,rain_mm\n2001-01-01,"${text}"\n`, { fileName: "w.csv" })).toThrow(
      /^w\.csv/,
    );
  });

  test.each([
    ["a word", "rain_".repeat(letters / 5)],
    ["brackets", `rain ${"(".repeat(letters)}`],
    ["a unit", `rain_${"m".repeat(letters)}`],
    ["many columns", "rain_mm,".repeat(letters / 8)],
  ])("as the header of a weather file is none of ours: %s", (_, header) => {
    expect(() => readWeather(`date,${header}\n2001-01-01,1\n`, { fileName: "w.csv" })).toThrow(/^w\.csv/);
  });

  const flags = [
    ["--texture", "silt loam"],
    ["--rain", "13 in"],
    ["--crop", "corn"],
    ["--deeper", "2 in"],
    ["--sowing", "May 25"],
    ["--latitude", "38 N"],
    ["--elevation", "3000 ft"],
  ] as const;
  test.each(flags)("as %s of a quick question is refused in one short line", async (flag) => {
    const of = (count: number) => [
      "1".repeat(count),
      `1${" ".repeat(count)}x`,
      "1 to ".repeat(count / 5),
      `+${"a/".repeat(count / 2)}`,
    ];
    // The longer ones are no argument at all; the shorter ones come to the reader of the field.
    for (const text of [...of(letters), ...of(4000)]) {
      const answers = flags.flatMap(([one, usual]) => (one === flag ? [`${one}=${text}`] : [one, usual]));
      const { code, err } = await call(ownFolder(), "compare", ...answers);
      expect(code).not.toBe(0);
      expect(code).toBeLessThan(3);
      const lines = err.trimEnd().split("\n");
      for (const line of lines) {
        expect(line).toContain(flag);
        expect(line.length).toBeLessThan(500);
      }
    }
  });

  test("as a flag of the command line is refused in one line", async () => {
    const { code, err } = await call(ownFolder(), "compare", `--${" ".repeat(letters)}x`);
    expect(code).toBe(2);
    expect(err.split("\n")).toHaveLength(2);
  });
});
