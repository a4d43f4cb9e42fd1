import { describe, expect, test } from "vitest";
import { embeddedText } from "../../src/report/page/index.ts";
import { readHorizonTable, numberIn } from "../../src/soil/horizonTable.ts";
import { readColumnName } from "../../src/weather/readers/columnName.ts";
import { readWeather } from "../../src/weather/readers/index.ts";
import { pastedCells } from "../../web/inputs/pasted.ts";
import { cellValue } from "../../web/views/field/counts/cellText.ts";
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
    expect(cellValue(`3 in${blanks};${blanks}4 in`, "quantities", "in")).toEqual(["3 in", "4 in"]);
    expect(cellValue(`3${blanks}x`, "quantities", "in")).toEqual([`3${blanks}x`]);
  });

  test("as a flag of the command line is refused in one line", async () => {
    const { code, err } = await call(ownFolder(), "compare", `--${" ".repeat(letters)}x`);
    expect(code).toBe(2);
    expect(err.split("\n")).toHaveLength(2);
  });
});
