import { expect, test } from "vitest";
import { caseLook, markPath, strokeDashes } from "../../../../web/pictures/kit/caseLooks.ts";
import { lettersOf } from "../../../../web/pictures/pit/cropLetters.ts";

/** As many as a scenario may have. */
const cases = Array.from({ length: 20 }, (_, c) => caseLook(c));

test("ten cases have marks and dashes of their own, as they are drawn", () => {
  const ten = cases.slice(0, 10);
  expect(new Set(ten.map(({ mark }) => markPath(mark, 0, 0, 8))).size).toBe(10);
  expect(new Set(ten.map(({ dash }) => strokeDashes[dash] ?? "")).size).toBe(10);
});

test("of all cases that a scenario may have, none has mark and dash of another", () =>
  expect(new Set(cases.map(({ mark, dash }) => `${mark} ${dash}`)).size).toBe(20));

test.each(cases.slice(0, 10).map(({ mark }) => mark))("%s stays within its place and closes", (mark) => {
  const path = markPath(mark, 0, 0, 1);
  expect(path).toMatch(/z$/);
  let [x, y] = [0, 0];
  for (const [, step, numbers] of path.matchAll(/([Mmlhva])([^Mmlhvaz]*)/g)) {
    const at = (numbers!.match(/-?[\d.]+/g) ?? []).map(Number);
    if (step === "M") [x, y] = [at[0]!, at[1]!];
    else if (step === "h") x += at[0]!;
    else if (step === "v") y += at[0]!;
    else [x, y] = [x + at.at(-2)!, y + at.at(-1)!];
    expect(Math.hypot(x, y), path).toBeLessThan(1.7);
  }
});

test("letters of crops do not repeat, as short as can be", () => {
  const letters = lettersOf([
    "winter wheat",
    "winter barley",
    "grain sorghum",
    "spring wheat",
    "sunflower",
    "soybean",
    "winter wheat",
  ]);
  expect([...letters.values()]).toEqual(["W", "WB", "G", "S", "SU", "SO"]);
});
