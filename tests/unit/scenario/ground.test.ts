import { describe, expect, test } from "vitest";
import { refuse } from "../../../src/problem.ts";
import { snowCatchUnder } from "../../../src/season/snow.ts";
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
    ["in fallow counts", { residueCover: "10 %", residueCoverFallow: "80 %" }, 0.176, "11 months"],
    ["at sowing does not yet while fallow lasts", { residueCoverCrop: "80 %" }, 0, "11 months"],
    ["at sowing does without", { residueCover: "10 %", residueCoverCrop: "80 %" }, 0.176],
  ])("follows the residue: %s", async (_, surface, share, length?: string) => {
    const { cases, defaults } = await resolved({ surface, fallow: length && { length } });
    const { ground } = cases[0];
    const cover = length === undefined ? ground.residueCoverCrop! : ground.residueCoverFallow;
    expect(snowCatchUnder(cover, ground)).toBeCloseTo(share, 12);
    expect(defaults.find(({ field }) => field === "surface.snowCatch")?.why).toMatch(/Pomeroy/);
  });

  test.each([
    ["60 %", 0.6],
    ["0 %", 0],
  ])("and a stated %s wins", async (snowCatch, share) => {
    const { cases, defaults } = await resolved({ surface: { residueCover: "100 %", snowCatch } });
    for (const cover of [0, 0.4, 1]) expect(snowCatchUnder(cover, cases[0].ground)).toBe(share);
    expect(defaults.some(({ field }) => field === "surface.snowCatch")).toBe(false);
  });
});

describe("residue on the ground", () => {
  const fallow = { length: "14 months" };
  const told = (defaults: Scenario["defaults"], key: string) =>
    defaults.find(({ field }) => field === `surface.${key}`);

  test("is stated for the first day, rots by weather, and the crop has what the fallow leaves", async () => {
    const { cases, defaults } = await resolved({ surface: { residueCover: "90 %" }, fallow });
    expect(cases[0].ground).toMatchObject({
      residueCoverFallow: 0.9,
      residueCoverCrop: null,
      residueDecays: true,
    });
    expect(told(defaults, "residueDecay")).toMatchObject({
      value: "by weather",
      why: expect.stringMatching(/first day.*Renard/),
    });
  });
  test.each([
    ["no fallow: the cover is the crop's", { residueCover: "60 %" }, undefined, 0.6],
    ["the crop's own", { residueCover: "90 %", residueCoverCrop: "20 %" }, fallow, 0.2],
    [
      "beside the fallow's own, the one for both is the crop's",
      { residueCover: "30 %", residueCoverFallow: "90 %" },
      fallow,
      0.3,
    ],
    ["no fallow: the fallow's says nothing", { residueCoverFallow: "90 %" }, undefined, 0],
  ])("at sowing: %s", async (_, surface, length, crop) => {
    const { cases } = await resolved({ surface, fallow: length });
    expect(cases[0].ground.residueCoverCrop).toBe(crop);
  });
  // TR-55 Table 2-2b (read): row crops, straight row, group B; with residue from 5 % of the ground, good from 20 %.
  test.each([
    [{}, 81],
    [{ residueCover: "10 %" }, 80],
    [{ residueCover: "60 %" }, 75],
    [{ residueCoverCrop: "10 %" }, 80],
    [{ residueCover: "60 %", residueCoverCrop: "0 %" }, 81],
    [{ residueCover: "10 %", residueCoverFallow: "60 %" }, 80],
  ])("%o after a fallow: the crop's curve number is %d", async (surface, number) => {
    const { cases } = await resolved({ surface, fallow, "soil.hydrologicGroup": "B" });
    expect(cases[0].ground.curveNumberCrop).toBe(number);
  });
  test("is kept where that is said, and what a stated curve number and snow catch are stays too", async () => {
    const surface = { residueCover: "60 %", residueDecay: "none", curveNumber: 80, snowCatch: "10 %" };
    const { cases, defaults } = await resolved({ surface, fallow });
    expect(cases[0].ground).toMatchObject({
      residueDecays: false,
      curveNumberFallow: 80,
      curveNumberBareFallow: 80,
      snowCatchBareShare: 0.1,
      snowCatchByCover: 0,
    });
    expect(told(defaults, "residueDecay")).toBeUndefined();
  });
  test("goes unmentioned where there is none", async () => {
    const { cases, defaults } = await resolved({ fallow });
    expect(cases[0].ground.residueDecays).toBe(false);
    expect(told(defaults, "residueDecay")).toBeUndefined();
  });
  test("does not rot under sod, whose litter comes anew", async () => {
    const { cases } = await resolved({
      crop: { name: "perennial grass" },
      surface: { residueCover: "60 %" },
    });
    expect(cases[0].ground.residueDecays).toBe(false);
  });
});

describe("how the ground dries", () => {
  test("what is stated to leave freely may be all that the evaporating depth can give, whatever its layers", async () => {
    const layered = {
      "soil.layers[0]": { name: "sand over silt loam", thickness: "1 in", texture: "sand" },
      "surface.readilyEvaporable": "0.5 in",
    };
    const { cases } = await resolved(layered);
    expect(cases[0].ground.readilyEvaporableMm).toBeCloseTo(12.7, 9);
    await expect(
      resolved({ ...layered, "soil.layers[0].thickness": "4 in", "soil.layers[1].thickness": "5 in" }),
    ).rejects.toThrow(/surface\.readilyEvaporable/);
  });

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

describe("sod", () => {
  const sod = { crop: { name: "sod" } };
  const groundOf = async (changes: Record<string, unknown>) =>
    (await resolved({ ...sod, ...changes })).cases[0].ground;
  // TR-55 Table 2-2c (memory): pasture, group B.
  test.each([
    ["fair unless said otherwise", {}, 69, 0.62],
    ["poor as stated", { condition: "poor" }, 79, 0.25],
    ["good as stated", { condition: "good" }, 61, 0.87],
    ["poor by a stated cover", { residueCover: "40 %" }, 79, 0.4],
    ["good by a stated cover", { residueCover: "80 %" }, 61, 0.8],
    ["fair from half covered", { residueCover: "50 %" }, 69, 0.5],
    ["fair up to three quarters", { residueCover: "75 %" }, 69, 0.75],
  ])(
    "has the handbook's pasture row all year, %s, and covers its ground",
    async (_, surface, number, cover) => {
      const ground = await groundOf({ surface, "soil.hydrologicGroup": "B" });
      expect([ground.curveNumberFallow, ground.curveNumberCrop]).toEqual([number, number]);
      expect([ground.residueCoverFallow, ground.residueCoverCrop]).toEqual([cover, cover]);
    },
  );

  test("says where its cover comes from, and nothing of seed or ripeness", async () => {
    const { defaults } = await resolved(sod);
    expect(defaults.find(({ field }) => field === "surface.residueCoverCrop")?.why).toMatch(
      /Table 2-2c \(memory\)/,
    );
    expect(defaults.filter(({ field }) => /sowingDepth|maturity|rootsEnd|treatment/.test(field))).toEqual([]);
  });

  test("a crop that is sown has the bare ground it had", async () => {
    const { cases } = await resolved({});
    expect(cases[0].ground.residueCoverCrop).toBe(0);
  });
});
