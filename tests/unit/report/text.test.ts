import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { comparisonText } from "../../../src/report/sentences/comparisonText.ts";
import { jsonText, roundForPrint } from "../../../src/report/tables/roundForPrint.ts";
import { fixed } from "../../../src/report/tables/formatters.ts";
import { tableLines } from "../../../src/report/tables/textTable.ts";
import { bullets, textWidth, wrap } from "../../../src/wrap.ts";
import { someComparison } from "./someComparison.ts";

describe("wrapping at 80 columns", () => {
  test("later lines hang", () => {
    const lines = bullets([Array(30).fill("word").join(" ")]);
    expect(lines).toHaveLength(2);
    expect(lines[0]).toMatch(/^- word/);
    expect(lines[1]).toMatch(/^ {2}word/);
  });
  test("no line is longer, no word is lost, whatever the words", () => {
    fc.assert(
      fc.property(
        fc.array(fc.stringMatching(/^[a-z0-9"]{1,200}$/), { minLength: 1, maxLength: 40 }),
        (words) => {
          const lines = wrap(words.join(" "), "  ");
          expect(Math.max(...lines.map((line) => line.length))).toBeLessThanOrEqual(textWidth);
          expect(lines.join("").replaceAll(" ", "")).toBe(words.join(""));
        },
      ),
    );
  });
});

describe("tables", () => {
  test("first column left, others right", () => {
    expect(
      tableLines({
        head: [["rain", "use"]],
        rows: [
          ["13 in", "7.5"],
          ["14 in", "10.5"],
        ],
      }),
    ).toEqual(["rain    use", "13 in   7.5", "14 in  10.5"]);
  });
  test("a long name is cut to fit 80 columns", () => {
    const [line] = tableLines({ head: [], rows: [["x".repeat(100), "12345", "12345"]] });
    expect(line).toHaveLength(textWidth);
    expect(line).toContain("~  12345");
  });
});

describe("printed numbers", () => {
  test.each([
    [1 / 3, 0.333333],
    [123456.789, 123457],
    [-0, 0],
    [1e-13, 1e-13],
  ])("%d prints as %d", (value, printed) => expect(Object.is(roundForPrint(value), printed)).toBe(true));
  test("no NaN or Infinity leaves", () => {
    expect(() => roundForPrint(NaN)).toThrow("NaN");
    expect(() => jsonText({ deep: [Infinity] })).toThrow("Infinity");
  });
  test("no minus zero", () => expect(fixed(-0.04, 1)).toBe("0.0"));
});

describe("what the crop takes up and what crop and soil use", () => {
  const text = comparisonText(someComparison(), "us", "deciding");
  test("are two words: the sentence and the difference say taken up, the column of both says water use", () => {
    expect(text.split("\n")[0]).toMatch(/took up/);
    expect(text).toContain("3 taken up");
    expect(text.replaceAll(/\s+/g, " ")).toContain(
      "Water use is what the crop transpires and the soil evaporates.",
    );
    expect(text).not.toMatch(/extra (water )?used/i);
  });
});
