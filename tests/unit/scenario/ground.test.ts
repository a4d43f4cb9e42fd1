import { describe, expect, test } from "vitest";
import { refuse } from "../../../src/problem.ts";
import { resolveScenario, type Scenario } from "../../../src/scenario/index.ts";
import { withChanges } from "./good-scenario.ts";

const resolved = (changes: Record<string, unknown>): Promise<Scenario> =>
  resolveScenario(withChanges(changes), {
    fileName: "scenario.json",
    readText: (path: string, field: string) => refuse(field, "a file", path, ""),
  });

describe("snow that stubble catches", () => {
  // 22 % of the snowfall under full residue (Pomeroy et al. 1990, read in part); in proportion is ours.
  test.each([
    ["none stated", {}, 0],
    ["on half of the ground", { residueCover: "50 %" }, 0.11],
    ["on all of it", { residueCover: "100 %" }, 0.22],
    ["in fallow counts", { residueCover: "10 %", residueCoverFallow: "80 %" }, 0.176],
    ["in the crop does not", { residueCoverCrop: "80 %" }, 0],
  ])("follows the residue: %s", async (_, surface, share) => {
    const { cases, defaults } = await resolved({ surface });
    expect(cases[0].ground.snowCatchShare).toBeCloseTo(share, 12);
    expect(defaults.find(({ field }) => field === "surface.snowCatch")?.why).toMatch(/Pomeroy/);
  });

  test.each([
    ["60 %", 0.6],
    ["0 %", 0],
  ])("and a stated %s wins", async (snowCatch, share) => {
    const { cases, defaults } = await resolved({ surface: { residueCover: "100 %", snowCatch } });
    expect(cases[0].ground.snowCatchShare).toBe(share);
    expect(defaults.some(({ field }) => field === "surface.snowCatch")).toBe(false);
  });
});

describe("how the ground dries", () => {
  test("by two stages, unless said otherwise, and the default says why", async () => {
    const { cases, defaults } = await resolved({});
    expect(cases.map(({ evaporation }) => evaporation)).toEqual(["two-stage", "two-stage"]);
    expect(defaults.find(({ field }) => field === "model.evaporation")).toEqual({
      field: "model.evaporation",
      value: "two-stage",
      why: expect.stringMatching(/Ritchie 1972/),
    });
  });

  test("by the dual coefficient where it is said: of all cases, or of one", async () => {
    const all = await resolved({ "model.evaporation": "dual coefficient" });
    expect(all.cases.map(({ evaporation }) => evaporation)).toEqual(["dual coefficient", "dual coefficient"]);
    expect(all.defaults.some(({ field }) => field === "model.evaporation")).toBe(false);
    const one = await resolved({ "cases[1].model.evaporation": "dual coefficient" });
    expect(one.cases.map(({ evaporation }) => evaporation)).toEqual(["two-stage", "dual coefficient"]);
  });

  test("its second stage by the clay of the topsoil", async () => {
    const at = async (texture: string) =>
      (await resolved({ "soil.layers[0].texture": texture })).cases[0].ground.secondStageMmPerRootDay;
    // Ritchie 1972 (memory): clay loam slows least, sand most.
    expect(await at("clay loam")).toBeGreaterThan(await at("loam"));
    expect(await at("loam")).toBeGreaterThan(await at("sand"));
  });
});
