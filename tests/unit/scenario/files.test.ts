import { existsSync, readFileSync, readdirSync } from "node:fs";
import fc from "fast-check";
import { beforeAll, describe, expect, test } from "vitest";
import * as z from "zod";
import { cropNames } from "../../../src/crop/crops.ts";
import { InputError, refuse } from "../../../src/problem.ts";
import { loadUnits } from "../../../src/quantity/index.ts";
import {
  describeScenario,
  inFlags,
  formFields,
  quickScenario,
  readJson,
  resolveScenario,
  scenarioJsonSchema,
  starterScenario,
} from "../../../src/scenario/index.ts";
import { goodScenario, withChanges } from "./good-scenario.ts";
import { casesOf } from "../../support/laws.ts";

const noFiles = {
  fileName: "scenario.json",
  readText: (path: string, field: string) => refuse(field, "a file", path, ""),
};
const openData = "../shared/data";

describe("the JSON Schema", () => {
  const path = "shared/rootfront-scenario-1.schema.json";
  const written = JSON.parse(readFileSync(path, "utf8")) as Record<string, unknown>;

  test(`${path} is what scripts/write-schema.ts writes`, () => expect(written).toEqual(scenarioJsonSchema()));

  test("the table of the page's forms is what it writes too", () => {
    expect(JSON.parse(readFileSync("web/forms/formFields.json", "utf8"))).toEqual(formFields());
  });

  test("takes the starter, and not a misspelt key or a weight for a flag", () => {
    const schema = z.fromJSONSchema(written as Parameters<typeof z.fromJSONSchema>[0]);
    expect(schema.safeParse(JSON.parse(starterScenario())).success).toBe(true);
    expect(schema.safeParse(goodScenario).success).toBe(true);
    expect(schema.safeParse(withChanges({ "soil.layers[0].bulkdensity": "1.4 g/cm^3" })).success).toBe(false);
    expect(schema.safeParse(withChanges({ "model.evaporation": "1 kg" })).success).toBe(false);
  });

  test("every field says what it means", () => {
    const silent: string[] = [];
    const look = (node: unknown, at: string): void => {
      const { properties, items, description } = (node ?? {}) as Record<string, unknown>;
      if (description === undefined) silent.push(at);
      for (const [key, child] of Object.entries(properties ?? {})) look(child, `${at}.${key}`);
      if (items !== undefined) look(items, `${at}[]`);
    };
    look(written, "");
    expect(silent).toEqual([]);
  });
});

describe("the demo scenarios", () => {
  const folder = "shared/scenarios";
  const demos = readdirSync(folder).filter((name) => name.endsWith(".json"));
  const schema = z.fromJSONSchema(scenarioJsonSchema() as Parameters<typeof z.fromJSONSchema>[0]);

  test("there are three", () => expect(demos.length).toBeGreaterThanOrEqual(3));

  test.each(demos)("%s is right, invented, and taken by the JSON Schema", async (name) => {
    const raw = readJson(readFileSync(`${folder}/${name}`, "utf8"), name);
    const readText = (path: string) => readFileSync(`${folder}/${path}`, "utf8");
    const scenario = await resolveScenario(raw, { fileName: name, readText });
    expect(scenario.invented).toBe(true);
    expect(schema.safeParse(raw).error?.issues ?? []).toEqual([]);
  });
});

describe("the starter", () => {
  test("passes, says that it is invented, and fits 80 columns in plain words", async () => {
    const scenario = await resolveScenario(readJson(starterScenario(), "starter.json"), noFiles);
    expect(scenario.invented).toBe(true);
    for (const units of ["us", "metric"] as const) {
      const lines = describeScenario(scenario, units).split("\n");
      expect(Math.max(...lines.map(({ length }) => length))).toBeLessThanOrEqual(80);
      for (const { name } of scenario.cases) expect(lines).toContain(`Case "${name}"`);
    }
  });

  test("every default it uses is told", async () => {
    const scenario = await resolveScenario(readJson(starterScenario(), "starter.json"), noFiles);
    const said = describeScenario(scenario, "us");
    for (const { field, value } of scenario.defaults)
      expect(said).toContain(`- ${field}: ${value.split(" ")[0]}`);
  });
});

describe("the quick question", () => {
  beforeAll(loadUnits);

  const question = { texture: "silt loam", rain: "12..14 in", crop: "grain sorghum", deeper: "2 in" };

  test("is a scenario file: saved and read again it is the same", async () => {
    const { file } = quickScenario(question);
    const direct = await resolveScenario(file, noFiles);
    const saved = await resolveScenario(readJson(JSON.stringify(file), "quick.json"), noFiles);
    expect(saved).toEqual(direct);
    expect(direct.weather.rainTotalsMm).toEqual([304.8, 330.2, 355.6]);
    expect(direct.cases[1]?.rooting).toEqual({ kind: "relative", extraMm: 50.8 });
  });

  test("tells what it assumed, the rain pattern included", () => {
    const fields = quickScenario(question).assumed.map(({ field }) => field);
    expect(fields).toContain("weather.pattern");
    expect(fields).toContain("rotation");
    expect(fields).not.toContain("soil.startingWater.share");
    const asked = quickScenario({ ...question, pattern: "even", latitude: "45 N" }).assumed.map(
      ({ field }) => field,
    );
    expect(asked).not.toContain("weather.pattern");
    expect(asked).not.toContain("site.latitude");
  });

  test("begins with what the years before left, unless a probe tells the water", async () => {
    const { file } = quickScenario(question);
    expect([file["rotation"], file["fallow"]]).toEqual(["wheat-sorghum-fallow", undefined]);
    const read = await resolveScenario(file, noFiles);
    expect([read.rotation!.startsAsStated, read.rotation!.warmUpYears]).toEqual([false, 6]);
    expect(read.defaults.map(({ field }) => field)).toContain("soil.startingWater");
    const probed = quickScenario({ ...question, moist: "36 in" }).file;
    expect(probed["rotation"]).toBeUndefined();
    expect((await resolveScenario(probed, noFiles)).rotation).toBeNull();
  });

  test("a winter crop follows a fallow; sod is in no rotation", async () => {
    const rotationOf = (crop: string) => quickScenario({ ...question, crop }).file["rotation"];
    expect(rotationOf("winter wheat")).toBe("wheat-fallow");
    const sod = quickScenario({ ...question, crop: "perennial grass" }).file;
    expect([sod["rotation"], sod["fallow"]]).toEqual([undefined, { length: "8 months" }]);
    for (const crop of cropNames) await resolveScenario(quickScenario({ ...question, crop }).file, noFiles);
  });

  test("roots may be less deep, too", async () => {
    const { cases } = await resolveScenario(quickScenario({ ...question, deeper: "-2 in" }).file, noFiles);
    expect(cases[1]).toMatchObject({ name: "2 in less deep", rooting: { kind: "relative", extraMm: -50.8 } });
  });

  test.each([
    [
      { texture: undefined },
      '--texture: expected an answer such as "silt loam", found nothing; add --texture "silt loam"',
    ],
    [{ rain: " " }, '--rain: expected an answer such as "12..14 in", found " "; add --rain "12..14 in"'],
    [{ crop: "sorgum" }, /^--crop: .*did you mean "sorghum"\?$/],
    [{ texture: "sitl loam" }, /^--texture: .*did you mean "silt loam"\?$/],
    [{ deeper: "2 kg" }, /^--deeper: expected a rooting depth .*found "\+2 kg"/],
    [{ sowing: "Jun 31" }, /^--sowing: expected a day of the year/],
    [{ rain: "wet" }, /^--rain: expected rainfall totals/],
    [{ latitude: "98" }, /^--latitude: expected a latitude/],
  ])("%j is refused by its flag", async (change, line) => {
    let said = "";
    try {
      await resolveScenario(quickScenario({ ...question, ...change }).file, noFiles);
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
      said = inFlags(error.problems).message;
    }
    expect(said).toMatch(line);
    expect(said.split("\n")).toHaveLength(1);
  });
});

describe("whatever is handed in, it is a scenario or an InputError", () => {
  const told = async (raw: unknown): Promise<void> => {
    try {
      await resolveScenario(raw, noFiles);
    } catch (error) {
      if (!(error instanceof InputError)) throw error;
      expect(error.problems.length).toBeGreaterThan(0);
      for (const line of error.message.split("\n")) expect(line).toMatch(/^.+: expected .+, found .+; .+/);
    }
  };

  test("any JSON value", () => fc.assert(fc.asyncProperty(fc.jsonValue(), told), { numRuns: 200 }));

  test("a right scenario with any value anywhere", () => {
    const paths = pathsOf(goodScenario);
    const odd = fc.oneof(
      fc.jsonValue({ maxDepth: 1 }),
      fc.constantFrom("-1 in", "0", "1e9 in", "99 %", "", "\u0000", "__proto__"),
    );
    return fc.assert(
      fc.asyncProperty(fc.constantFrom(...paths), odd, (path, value) => told(withChanges({ [path]: value }))),
      { numRuns: casesOf({ whole: 600, usually: 200 }) },
    );
  });

  test("any text as JSON", () => {
    const texts = fc.oneof(
      fc.string(),
      fc.json(),
      fc.json().map((text) => text.slice(0, -1)),
    );
    fc.assert(
      fc.property(texts, (text) => {
        const ours = tried(() => readJson(text, "f.json"));
        const theirs = tried(() => JSON.parse(text) as unknown);
        const place = /^f\.json line \d+, column \d+: expected .+, found .+; .+/;
        // Twice the same key, or nested past all sense: JSON to others, not to us.
        const ourOwn = /each key once|less nested/;
        if ("value" in ours) return JSON.stringify(ours) === JSON.stringify(theirs);
        const message = ours.error instanceof InputError ? ours.error.message : "";
        return place.test(message) && (!("value" in theirs) || ourOwn.test(message));
      }),
      { numRuns: 1000 },
    );
  });
});

function tried(act: () => unknown): { value: unknown } | { error: unknown } {
  try {
    return { value: act() };
  } catch (error) {
    return { error };
  }
}

describe.skipIf(!existsSync(openData))(
  `open station files and horizons (skipped where ${openData} is absent)`,
  () => {
    const files = { fileName: "scenario.json", readText: (path: string) => readFileSync(path, "utf8") };

    test("a station record: its latitude and elevation stand in for the site's", async () => {
      const record = `${openData}/weather-daily/ghcnd_cdo_death_valley_2021_us-units.csv`;
      const weather = { record, units: "us", maxGapDays: 30 };
      const scenario = await resolveScenario(withChanges({ weather }), files);
      expect(scenario.weather.source.kind).toBe("record");
      expect(describeScenario(scenario, "us")).toContain("2021");
    });

    test("a year of a station with everything", async () => {
      const record = `${openData}/uscrn-2020-goodwell-ok.csv`;
      const scenario = await resolveScenario(withChanges({ weather: { record } }), files);
      const { source } = scenario.weather;
      expect(source.kind === "record" && source.record.days).toBe(366);
    });

    test("layers of a survey component", async () => {
      const file = `${openData}/soil-horizons/ssurgo_chorizon_amarillo_TX-NM.csv`;
      const soil = { horizons: { file, component: "1687020" } };
      const { cases, notes } = await resolveScenario(
        withChanges({
          soil,
          cases: [
            { name: "a" },
            { name: "b", soil: { layers: [{ name: "Bt", bulkDensity: "1.65 g/cm^3" }] } },
          ],
        }),
        files,
      );
      expect(cases[1]?.layers[1]?.bulkDensityKgPerM3).toBe(1650);
      expect(notes[0]).toMatch(/^Soil layers are those of Amarillo/);
    });

    test("a component that is not there", async () => {
      const file = `${openData}/soil-horizons/ssurgo_chorizon_amarillo_TX-NM.csv`;
      const soil = { horizons: { file, component: "nowhere" } };
      await expect(resolveScenario(withChanges({ soil }), files)).rejects.toThrow('found "nowhere"');
    });
  },
);

/** Every path of a value: groups, lists and what is in them. */
function pathsOf(value: unknown, at = ""): string[] {
  if (typeof value !== "object" || value === null) return [at];
  const below = Object.entries(value).flatMap(([key, child]) =>
    pathsOf(child, Array.isArray(value) ? `${at}[${key}]` : at === "" ? key : `${at}.${key}`),
  );
  return at === "" ? below : [at, ...below];
}
