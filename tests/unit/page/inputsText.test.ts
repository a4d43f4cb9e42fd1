import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { InputError, type Problem } from "../../../src/problem.ts";
import { readHorizons } from "../../../src/soil/horizons.ts";
import { readWeather } from "../../../src/weather/readers/index.ts";
import { profilesAsked, stationsAsked } from "../../../web/inputs/choicesAsked.ts";
import { listText, textList } from "../../../web/inputs/listText.ts";
import { monthColumns, pastedCells } from "../../../web/inputs/pasted.ts";
import { sayDefault } from "../../../web/inputs/sayDefault.ts";
import { startingNormals } from "../../../web/inputs/startingNormals.ts";

function problemsOf(act: () => unknown): readonly Problem[] {
  try {
    act();
  } catch (error) {
    if (error instanceof InputError) return error.problems;
    throw error;
  }
  return [];
}

describe("a list typed as one text", () => {
  test.each([
    "12 in",
    "12 in, 13 in",
    "12 in, ",
    "12 in,",
    "1,300 mm",
    "12..14 in",
    "20 days, 35 days, 40 days, 30 days",
  ])("%j comes back as it was typed", (text) => expect(listText(textList(text))).toBe(text));
  test("parts at a comma with a space only", () => {
    expect(textList("12 in, 13 in")).toEqual(["12 in", "13 in"]);
    expect(textList("1,300 mm")).toBe("1,300 mm");
  });
});

describe("cells from a spreadsheet", () => {
  const twelve = Array.from({ length: 12 }, (_, month) => String(month + 1));
  test("run down, with head and names of months", () => {
    const rows = pastedCells(["Month\tRain\tHigh", ...twelve.map((n) => `M\t${n}\t${n}0`)].join("\r\n"));
    expect(monthColumns(rows!)).toEqual([twelve, twelve.map((n) => `${n}0`)]);
  });
  test("run across", () => {
    expect(monthColumns(pastedCells(`${twelve.join("\t")}\n${twelve.join("\t")}\n`)!)).toEqual([
      twelve,
      twelve,
    ]);
  });
  test("of one column", () => expect(monthColumns(pastedCells(twelve.join("\n"))!)).toEqual([twelve]));
  test("one alone is pasted as any text", () => expect(pastedCells("0.6 in")).toBeNull());
});

describe("what a reader asks becomes choices", () => {
  const fixture = (name: string) =>
    readFileSync(new URL(`../../fixtures/weather/${name}`, import.meta.url), "utf8");
  test("stations of a file", () => {
    const fileName = "invented-ghcn-summaries-two-stations.csv";
    const asked = problemsOf(() => readWeather(fixture(fileName), { fileName })).flatMap(stationsAsked);
    expect(asked.map(({ value }) => value)).toEqual(["XXC00000001", "XXC00000002"]);
    expect(asked[0]!.word).toMatch(/^XXC00000001 \(INVENTED EAST, \d lines\)$/);
    const named = problemsOf(() =>
      readWeather(fixture(fileName), { fileName, station: "nowhere", units: "metric" }),
    );
    expect(named.flatMap(stationsAsked).map(({ value }) => value)).toEqual(["XXC00000001", "XXC00000002"]);
  });
  test("components of a survey", () => {
    const csv = [
      "compname,cokey,areasymbol,musym,hzname,hzdept_r,hzdepb_r,sandtotal_r,claytotal_r",
      "Invented,11,XX001,Aa,H1,0,20,40,20",
      "Made-up,12,XX001,Bb,H1,0,20,30,25",
    ].join("\n");
    const [problem] = problemsOf(() => readHorizons(csv, "soil.csv", {}));
    const asked = profilesAsked(problem!);
    expect(asked?.key).toBe("component");
    expect(asked?.choices.map(({ value }) => value)).toEqual(["11", "12"]);
    expect(readHorizons(csv, "soil.csv", { component: asked!.choices[1]!.value }).name).toContain("Made-up");
  });
  test("another problem asks nothing", () => {
    const other = { field: "x.csv line 3", expected: "a date", found: '"soon"', mend: "write one" };
    expect(stationsAsked(other)).toEqual([]);
    expect(profilesAsked(other)).toBeNull();
  });
});

test("a default told in two systems is shown in one; a year in brackets stays", () => {
  expect(sayDefault("4 in (100 mm)")).toBe("4 in");
  expect(sayDefault("Borg & Grimes (1986)")).toBe("Borg & Grimes (1986)");
});

test("a table of normals begins with twelve of each, in the units shown", () => {
  const { rain, tMin } = startingNormals(null, "even", 330, "us") as { rain: string[]; tMin: string[] };
  expect(rain).toHaveLength(12);
  expect(rain.every((text) => text.endsWith(" in"))).toBe(true);
  expect(tMin.every((text) => text.endsWith(" F"))).toBe(true);
  const lacking = { rainMm: Array(12).fill(30), wetDays: Array(12).fill(4), tMaxC: null, tMinC: null };
  expect(startingNormals(lacking, "even", 330, "us")).toEqual(startingNormals(null, "even", 330, "us"));
});
