import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { InputError, type Problem } from "../../../../src/problem.ts";
import { readHorizons } from "../../../../src/soil/horizons/horizons.ts";
import { readWeather } from "../../../../src/weather/records/readers/index.ts";
import { profilesAsked, stationsAsked } from "../../../../web/forms/choicesAsked.ts";
import { equivalent } from "../../../../web/forms/equivalent.ts";
import { listText, textList } from "../../../../web/forms/listText.ts";
import { sayDefault } from "../../../../web/forms/sayDefault.ts";
import { startingNormals } from "../../../../web/forms/edits/startingNormals.ts";
import { forThePage, placeInWords } from "../../../../web/forms/placeWords.ts";
import { sayWhy } from "../../../../web/forms/sayWhy.ts";
import { listWithUnits, withUnit } from "../../../../web/forms/withUnit.ts";

function problemsOf(act: () => unknown): readonly Problem[] {
  try {
    act();
  } catch (error) {
    if (error instanceof InputError) return error.problems;
    throw error;
  }
  return [];
}

describe("a number typed alone", () => {
  test.each([
    ["10", "in", "10 in"],
    [" +2 ", "in", "+2 in"],
    ["24,000", "plants/ac", "24,000 plants/ac"],
    [".5", "%", ".5"],
    ["0.35", "%", "0.35"],
    ["40", "%", "40 %"],
    ["1.5", "%", "1.5 %"],
    ["10 cm", "in", "10 cm"],
    ["1,42", "g/cm^3", "1,42"],
    ["half", "%", "half"],
    ["", "%", ""],
    ["10", "", "10"],
  ])("%j in %s", (text, unit, whole) => expect(withUnit(text, unit)).toBe(whole));

  test.each([
    ["12, 15 in, 1,300", "12 in, 15 in, 1,300 in"],
    ["12..14", "12..14 in"],
    ["12..14 in", "12..14 in"],
    ["12 in, ", "12 in, "],
  ])("in a list: %j", (text, whole) => expect(listWithUnits(text, "in")).toBe(whole));
});

describe("what was typed in the other system", () => {
  test.each([
    ["14 in", "depth", "metric", "356 mm"],
    ["3 ft", "depth", "metric", "914 mm"],
    ["14 in", "depth", "us", null],
    ["340 mm", "rain", "us", "13.4 in"],
    ["10 C", "temperature", "us", "50 F"],
    ["300 psi", "resistance", "metric", "2.07 MPa"],
    ["1.42 g/cm^3", "density", "us", null],
    ["about 14 in", "depth", "metric", null],
    ["14", "depth", "us", null],
  ] as const)("%s as %s in %s", (text, kind, units, said) =>
    expect(equivalent(text, kind, units)).toBe(said),
  );
});

describe("a place in words", () => {
  const scenario = {
    soil: { layers: [{ name: "topsoil" }, { name: "plough pan" }] },
    cases: [{ name: "as it is" }, { name: "loosened", soil: { layers: [{ name: "plough pan" }] } }],
    colour: "red",
  };
  test.each([
    ["soil.layers[1].bulkDensity", "Soil, plough pan: bulk density"],
    ["soil.layers[4].bulkDensity", "Soil, layer 5: bulk density"],
    ["cases[1].soil.layers[0].bulkDensity", "case “loosened”, soil, plough pan: bulk density"],
    ["surface.residueCover", "Surface: residue cover"],
    ["soil.startingWater.share", "Soil, water at the start: share of the available water"],
    ["weather.monthlyNormals.rain[0]", "Weather, monthly normals, rain: month 1"],
    ["colour", "Colour"],
    ["bad.csv line 12", "bad.csv line 12"],
    ["station.csv", "station.csv"],
  ])("%s", (path, said) => expect(placeInWords(path, scenario)).toBe(said));
});

describe("texts made for the command line too", () => {
  test.each([
    [
      "set weather.station in the scenario, or --weather-station, to one of them",
      "set “Station” to one of them",
    ],
    [', or set weather.units or --weather-units to "us"', ', or set “Units of the record” to "us"'],
    ["write the unit as in or mm", "write the unit as in or mm"],
  ])("%s", (text, said) => expect(forThePage(text)).toBe(said));

  test.each([
    ["FAO-56 Ze, 100 to 150 mm (read)", "FAO-56 Ze, 100 to 150 mm"],
    [
      "by texture (Ritchie et al. 1989, memory)",
      "by texture (Ritchie et al. 1989, not yet checked against the source)",
    ],
    ["a handbook (memory)", "a handbook (not yet checked against the source)"],
    ["TR-55 Table 2-2b (read): fallow, bare", "TR-55 Table 2-2b: fallow, bare"],
  ])("%s", (text, said) => expect(sayWhy(text)).toBe(said));
});

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

describe("what a reader asks becomes choices", () => {
  const fixture = (name: string) =>
    readFileSync(new URL(`../../../fixtures/weather/${name}`, import.meta.url), "utf8");
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
