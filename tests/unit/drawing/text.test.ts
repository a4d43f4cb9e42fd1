import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { shortened, widthOf, wrapped } from "../../../src/drawing/text.ts";

describe("text in a drawing", () => {
  test("is broken at words", () => {
    expect(wrapped("Stored there at sowing", 100, 13)).toEqual(["Stored there", "at sowing"]);
    expect(wrapped("", 100, 13)).toEqual([""]);
    expect(wrapped("plough pan", 0, 13)).toEqual(["plough", "pan"]);
  });
  test("keeps its words, and its lines to their room but for a longer word", () => {
    fc.assert(
      fc.property(fc.array(fc.string({ minLength: 1, unit: fc.constantFrom("a", "b", "é") })), (words) => {
        const text = words.join(" ");
        const lines = wrapped(text, 70, 10);
        expect(lines.join(" ")).toBe(text);
        const several = lines.filter((line) => line.includes(" "));
        for (const line of several) expect(widthOf(line, 10)).toBeLessThanOrEqual(70);
      }),
    );
  });
  test.each([
    ["pan", 3, "pan"],
    ["pan", 4, "pan"],
    ["stiff subsoil", 8, "stiff s…"],
    ["stiff subsoil", 7, "stiff…"],
    ["subsoil", 1, "s…"],
    ["subsoil", 0, "s…"],
    ["subsoil", -3, "s…"],
    ["", 0, ""],
    ["🌾🌾🌾", 2, "🌾…"],
  ])("%s for %d letters is %s", (text, most, short) => expect(shortened(text, most)).toBe(short));
  test("says by another mark that more follows", () =>
    expect(shortened("0123456789", 8, "...")).toBe("01234..."));
});
