import { describe, expect, test } from "vitest";
import { InputError } from "../../../src/problem.ts";
import { readJson } from "../../../src/scenario/read/readJson.ts";
import { resolveScenario } from "../../../src/scenario/index.ts";
import { conversionFrom } from "../../../src/weather/records/units.ts";
import { readColumnName } from "../../../src/weather/records/readers/columnName.ts";
import { readTextureClass } from "../../../src/soil/equations/texture.ts";
import { placeInWords } from "../../../web/forms/placeWords.ts";
import { goodScenario } from "./good-scenario.ts";

/** Names that every object of the language has: to us they are as unknown as any other. */
const names = ["constructor", "__proto__", "toString", "valueOf", "hasOwnProperty"];
/** Unknown, and near to nothing that is known. */
const unknown = "zzqqxxww";

/** The good scenario as JSON with one name in it: only a text can hold the key `__proto__` as a file does. */
const changes: Readonly<Record<string, (name: string) => object>> = {
  "a crop": (name) => ({ crop: { name } }),
  "a texture": (name) => ({
    soil: { ...goodScenario.soil, layers: [{ name: "all", bottom: "90 in", texture: name }] },
  }),
  "a unit": (name) => ({ site: { ...goodScenario.site, elevation: `3300 ${name}` } }),
  "a unit below a slash": (name) => ({ crop: { ...goodScenario.crop, population: `24 plants/${name}` } }),
  "a unit of rain": (name) => ({ weather: { ...goodScenario.weather, annualRain: `12..14 ${name}` } }),
  "a pattern of rain": (name) => ({ weather: { ...goodScenario.weather, pattern: name } }),
  "a case in the evidence": (name) => ({
    evidence: { rootDepths: [{ case: name, date: "2024-07-18", depths: ["24 in"] }] },
  }),
  "the dense layer": (name) => ({
    evidence: {
      rootDepths: [{ case: goodScenario.cases[0]!.name, date: "2024-07-18", depths: ["24 in"] }],
      denseLayer: name,
    },
  }),
  "a layer of a case": (name) => ({
    cases: [{ name: "as it is" }, { name: "other", soil: { layers: [{ name, bulkDensity: 1.4 }] } }],
  }),
  "a published line": (name) => ({ yield: { line: name } }),
};

async function saidOf(text: string): Promise<string> {
  try {
    await resolveScenario(readJson(text, "f.json"), { fileName: "f.json", readText: () => "" });
  } catch (error) {
    if (error instanceof InputError) return error.message;
    throw error;
  }
  return "taken";
}

/** Some are near to a known name, others are not. */
const withoutMend = (said: string): string => said.replace(/; .*$/gm, "");

describe.each(Object.entries(changes))("%s", (_, change) => {
  const said = (name: string) => saidOf(JSON.stringify({ ...goodScenario, ...change(name) }));
  test.each(names)("of the name %s is told as any unknown one is", async (name) => {
    const usual = await said(unknown);
    expect(usual).toContain(unknown);
    expect(withoutMend(await said(name))).toBe(withoutMend(usual.replaceAll(unknown, name)));
  });
});

test.each(names)(
  "a key of the name %s is told as any unknown one is, at the top and within",
  async (name) => {
    const top = (key: string) => saidOf(JSON.stringify(goodScenario).replace("{", `{"${key}":{"a":1},`));
    expect(await top(unknown)).toContain(unknown);
    expect(await top(name)).toBe((await top(unknown)).replaceAll(unknown, name));
    const within = (key: string) =>
      saidOf(JSON.stringify(goodScenario).replace('"crop":{', `"crop":{"${key}":1,`));
    expect(await within(unknown)).toContain(unknown);
    expect(await within(name)).toBe((await within(unknown)).replaceAll(unknown, name));
  },
);

test.each(names)("%s is a name for a case like any other", async (name) => {
  const cases = [{ name }, { name: "other", rootingDepth: "+2 in" }];
  const read = await resolveScenario(JSON.parse(JSON.stringify({ ...goodScenario, cases })), {
    fileName: "f.json",
    readText: () => "",
  });
  expect(read.cases.map((one) => one.name)).toEqual([name, "other"]);
});

test.each(names)("%s is no unit, column or class, and has no words of its own on the page", (name) => {
  expect(conversionFrom(name, "depth")).toBeNull();
  expect(conversionFrom(name, "temperature")).toBeNull();
  expect(readColumnName(name)).toBeNull();
  expect(readColumnName(`rain_${name}`)?.conversion ?? null).toBeNull();
  expect(readTextureClass(name)).toBeNull();
  expect(placeInWords(name, { [name]: 1 })).not.toContain("function");
  expect(placeInWords(`crop.${name}`, { crop: { [name]: 1 } })).not.toContain("function");
});
