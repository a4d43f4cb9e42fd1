/** Every default said is the default used: schema, answers and page tell what holds while a field is left out. */
import { readFileSync } from "node:fs";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import * as z from "zod";
import { cropDefaults } from "../../../src/crop/crops.ts";
import { loadUnits, sayQuantity } from "../../../src/quantity/index.ts";
import {
  bareGround,
  byTexture,
  snowCatchAtFullCover,
  surfaceFields,
} from "../../../src/scenario/fields/surfaceFields.ts";
import { sayDefault, type Default } from "../../../src/scenario/fields/facts/withDefault.ts";
import { fullStand } from "../../../src/scenario/fields/cropFields.ts";
import { usualStart } from "../../../src/scenario/fields/soilFields.ts";
import { pastureGroundCover, usualPastureCondition } from "../../../src/season/curveNumber.ts";
import { newRecordCache } from "../../../src/scenario/read/recordCache.ts";
import { resolveScenario, scenarioFileFields, type Scenario } from "../../../src/scenario/index.ts";
import { sayDefault as sayOnPage } from "../../../web/forms/sayDefault.ts";
import { units } from "../../../web/state/view.ts";
import { goodScenario, withChanges } from "./good-scenario.ts";

beforeAll(loadUnits);

interface Found {
  readonly path: string;
  readonly description: string;
  readonly byDefault: Default<string | number | boolean>;
}

/** The fields of the base that have a constant default, an index as `[0]`. Those of a case or of a rotation's crop are the same fields. */
function withDefaults(type: z.core.$ZodType, path: string): Found[] {
  if (type instanceof z.ZodOptional) {
    const field = type.unwrap() as z.ZodType;
    if (!("byDefault" in type)) return withDefaults(field, path);
    return [{ path, description: field.description ?? "", byDefault: type.byDefault as Found["byDefault"] }];
  }
  if (type instanceof z.ZodArray) return withDefaults(type.element as z.core.$ZodType, `${path}[0]`);
  if (type instanceof z.ZodUnion) return type.options.flatMap((one) => withDefaults(one, path));
  if (!(type instanceof z.ZodObject)) return [];
  return Object.entries(type.shape).flatMap(([key, child]) =>
    (key === "cases" || key === "rotation") && path === ""
      ? []
      : withDefaults(child as z.core.$ZodType, path === "" ? key : `${path}.${key}`),
  );
}

const fields = withDefaults(scenarioFileFields, "");

/** In which every field with a default counts, and none is given. */
const { invented: _invented, ...good } = goodScenario;
const spots = {
  case: "as it is",
  rowWidth: "30 in",
  seedSize: "medium",
  filled: "91 %",
  spots: [{ heads: 21, headDiameters: ["7 in"] }],
};
const cost = { name: "ripper", amount: "4000 USD", years: 5 };
const full = {
  ...good,
  weather: { record: "station.csv" },
  crop: { name: "sunflower", sowing: "Jun 1", population: "12000 plants/ac" },
  money: { price: "0.2 USD/lb", area: "160 ac", costs: [cost], returns: [cost] },
  rowPositions: { rows: 16, rowsInTrack: 2, inTrack: "as it is", other: "deeper" },
  evidence: {
    rootDepths: [{ case: "as it is", date: "2021-07-14", depths: ["30 in", "32 in"] }],
    counts: [spots],
    strips: {
      cases: ["as it is", "deeper"],
      yields: [
        ["900 lb/ac", "950 lb/ac"],
        ["880 lb/ac", "990 lb/ac"],
      ],
      detect: "100 lb/ac",
    },
  },
};
const record = readFileSync("shared/scenarios/invented-station.csv", "utf8")
  .split("\n")
  .slice(0, 1500)
  .join("\n");
const surroundings = { fileName: "scenario.json", readText: () => record, recordCache: newRecordCache() };
const read = (changes: Readonly<Record<string, unknown>>) =>
  resolveScenario(withChanges(changes, full), surroundings);

/** Beside which a field of `chain` counts. */
const beside = (path: string): Readonly<Record<string, unknown>> =>
  path.startsWith("chain.") ? { rotation: "every year", "soil.startingWater": undefined } : {};

// Files share modules: what another one finds is what it would find alone.
afterAll(() => {
  units.value = "us";
});

test("fields with a default are found at every depth", () => {
  expect(fields.length).toBeGreaterThan(30);
  for (const path of ["invented", "surface.melt", "evidence.counts[0].spots[0].rows", "money.costs[0].kind"])
    expect(fields.map((one) => one.path)).toContain(path);
});

describe("the schema says it", () => {
  test.each(fields)("$path", ({ description, byDefault }) => {
    expect(description).toMatch(/\. Left out: .+\.$/);
    expect(description.endsWith(` Left out: ${sayDefault(byDefault)}.`)).toBe(true);
  });
});

describe("the answer says it, with its reason, and the page in the units chosen", () => {
  let used: Scenario["defaults"];
  let inRotation: Scenario["defaults"];
  beforeAll(async () => {
    ({ defaults: used } = await read({}));
    ({ defaults: inRotation } = await read(beside("chain.")));
  });
  test.each(fields.filter(({ byDefault }) => byDefault.why !== ""))("$path", ({ path, byDefault }) => {
    const told = (path.startsWith("chain.") ? inRotation : used).find(({ field }) => field === path);
    expect(told).toEqual({ field: path, value: sayDefault(byDefault), why: byDefault.why });
    const { value, kind } = byDefault;
    for (const system of ["us", "metric"] as const) {
      units.value = system;
      const wanted = typeof value === "number" && kind ? sayQuantity(value, kind, system) : String(value);
      expect(sayOnPage(told!.value)).toBe(wanted);
    }
  });
});

describe("it is what is used: a file that gives it is resolved as one that leaves it out", () => {
  let without: Omit<Scenario, "defaults">;
  let inRotation: Omit<Scenario, "defaults">;
  const bare = async (changes: Readonly<Record<string, unknown>>) => {
    const { defaults: _, ...rest } = await read(changes);
    return rest;
  };
  beforeAll(async () => {
    without = await bare({});
    inRotation = await bare(beside("chain."));
  });
  test.each(fields)("$path", async ({ path, byDefault }) =>
    expect(await bare({ ...beside(path), [path]: byDefault.value })).toEqual(
      path.startsWith("chain.") ? inRotation : without,
    ),
  );
});

test("what has no field of its own, or is computed, is said alike too", async () => {
  const { defaults } = await resolveScenario(withChanges({ "soil.startingWater": undefined }), surroundings);
  const told = (path: string) => defaults.find(({ field }) => field === path);
  const said = (key: keyof typeof surfaceFields.shape) => surfaceFields.shape[key].unwrap().description;
  for (const key of ["residueCoverFallow", "residueCoverCrop"])
    expect(told(`surface.${key}`)?.value).toBe(sayDefault(bareGround));
  const ofPasture = sayQuantity(pastureGroundCover(usualPastureCondition), "share", "us");
  expect(said("residueCover")).toContain(`Left out: ${sayDefault(bareGround)}; ${ofPasture} for pasture`);
  expect(told("soil.startingWater.share")?.value).toBe(sayDefault(usualStart));
  expect(told("surface.readilyEvaporable")?.why).toContain(byTexture);
  expect(said("readilyEvaporable")).toContain(`Left out: ${byTexture}.`);
  const caught = sayQuantity(snowCatchAtFullCover, "share", "us");
  expect(told("surface.snowCatch")?.why).toContain(caught);
  expect(said("snowCatch")).toContain(`Left out: ${caught} of`);
});

test.each(cropDefaults)("$name stands as full as is said", ({ values }) => {
  expect(values.standShare.value).toBe(fullStand.value);
});
