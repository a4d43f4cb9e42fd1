import {
  chmodSync,
  existsSync,
  lstatSync,
  readdirSync,
  readFileSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import type { Comparison } from "../../src/answer/comparison/comparison.ts";
import { call, ownFolder, smallScenario, writeJson } from "./callCli.ts";

const folder = ownFolder();
writeJson(folder, "small.json", smallScenario);
const question = [
  "--texture",
  "silt loam",
  "--rain",
  "12..14 in",
  "--crop",
  "grain sorghum",
  "--deeper",
  "2 in",
];
const quick = [...question, "--years", "12"];

async function compareJson(...args: string[]): Promise<Comparison> {
  const { code, out, err } = await call(folder, "compare", ...args, "--json");
  expect({ code, err }).toEqual({ code: 0, err: "" });
  return JSON.parse(out) as Comparison;
}

function longestLine(text: string): number {
  return Math.max(...text.split("\n").map((line) => line.length));
}

describe("compare FILE", () => {
  test("says the answer first, then tables, defaults, method, cautions", async () => {
    const { code, out, err } = await call(folder, "compare", "small.json");
    expect({ code, err }).toEqual({ code: 0, err: "" });
    expect(out).toMatch(/^At 13 in of rain the deeper roots took up /);
    const parts = ["small and invented (invented data)", "The cases, in:", "The differences, in:"];
    const places = [...parts, "Not stated, and decides most (", "\nMethod\n", "\nCautions\n"].map((part) =>
      out.indexOf(part),
    );
    expect(places.every((place) => place > 0)).toBe(true);
    expect(places).toEqual([...places].sort((a, b) => a - b));
  });

  test.each(["us", "metric"])("fits 80 columns in %s units", async (units) => {
    const { out } = await call(folder, "compare", "small.json", "--units", units);
    expect(longestLine(out)).toBeLessThanOrEqual(80);
  });

  test("the same call gives the same bytes, another seed does not", async () => {
    const [one, two, other] = [
      await call(folder, "compare", "small.json", "--json"),
      await call(folder, "compare", "small.json", "--json"),
      await call(folder, "compare", "small.json", "--json", "--seed", "2"),
    ];
    expect(one.out).toBe(two.out);
    expect(other.out).not.toBe(one.out);
  });

  test("a case like the first differs by exactly 0", async () => {
    writeJson(folder, "same.json", { ...smallScenario, cases: [{ name: "one" }, { name: "the same" }] });
    const { byRainTotal } = await compareJson("same.json");
    expect(byRainTotal).toHaveLength(3);
    for (const { differences } of byRainTotal) {
      expect(differences).toEqual([
        {
          from: "one",
          to: "the same",
          onlyRootsDiffer: true,
          extraDepthMm: 0,
          ruleOfThumbMm: 0,
          storedInExtraDepthMm: 0,
          extraWaterUsedMm: { p10: 0, p50: 0, p90: 0 },
          shareAfterFlowering: null,
          shareOfSeasonsItMattered: 0,
          extraYield: { unit: "bu/ac", p10: 0, p50: 0, p90: 0 },
        },
      ]);
    }
    const { out } = await call(folder, "compare", "same.json");
    expect(out).toMatch(/^At 13 in of rain "the same" took up exactly as much water as "one": no/);
  });

  test("the JSON has all that is promised, for the middle total on top", async () => {
    const answer = await compareJson("small.json", "--units", "metric");
    expect(answer.format).toBe("rootfront-comparison/1");
    expect(answer.method).toMatchObject({ runs: 12, seed: 1, uptake: "by slice", densityReading: "range" });
    expect(answer.method.referenceEt).toContain("FAO-56");
    expect(answer.rainTotalMm).toBe(330.2);
    expect(answer.byRainTotal.map(({ rainTotalMm }) => rainTotalMm)).toEqual([304.8, 330.2, 355.6]);
    expect(answer.cases).toEqual(answer.byRainTotal[1]!.cases);
    expect(answer.differences).toEqual(answer.byRainTotal[1]!.differences);
    for (const { name, balanceErrorMm, waterUseMm, ...rest } of answer.cases) {
      expect(["as dug", "deeper"]).toContain(name);
      expect(balanceErrorMm).toBeLessThan(1e-9);
      expect(waterUseMm).toBeGreaterThan(50);
      expect(rest.yield.unit).toBe("kg/ha");
      expect(rest.yield.p10).toBeLessThanOrEqual(rest.yield.p50);
      expect(rest.yield.p50).toBeLessThanOrEqual(rest.yield.p90);
    }
    const [difference] = answer.differences;
    expect(difference!.extraDepthMm).toBeCloseTo(50.8, 6);
    expect(difference!.ruleOfThumbMm).toBeGreaterThan(difference!.storedInExtraDepthMm);
    expect(answer.cautions.join(" ")).toContain("not a basis for insurance or credit");
    expect(answer.defaults.length).toBeGreaterThan(20);
  });

  test("--rain and --years stand in for the file's own", async () => {
    const answer = await compareJson("small.json", "--rain", "400 mm", "--years", "5");
    expect(answer.byRainTotal.map(({ rainTotalMm }) => rainTotalMm)).toEqual([400]);
    expect(answer.annualRainMm).toEqual({ p10: 400, p50: 400, p90: 400 });
    expect(answer.method.runs).toBe(5);
  });

  test("one case alone is told, with nothing to compare", async () => {
    writeJson(folder, "alone.json", { ...smallScenario, cases: undefined });
    const { code, out } = await call(folder, "compare", "alone.json");
    expect(code).toBe(0);
    expect(out).toMatch(/^At 13 in of rain the roots reached .* in and crop and soil used/);
    expect(out).toMatch(/There\s+is\s+only\s+one\s+case:\s+nothing\s+to\s+compare\s+it\s+with/);
    expect(out).not.toContain("The differences");
  });

  test("a shallower case is told as what is lost", async () => {
    writeJson(folder, "less.json", {
      ...smallScenario,
      cases: [{ name: "as dug" }, { name: "shallow", rootingDepth: "-8 in" }],
    });
    const { out } = await call(folder, "compare", "less.json", "--years", "30");
    expect(out).toMatch(/^At 13 in of rain the shallower roots took up .* less water/);
    const { differences } = await compareJson("less.json");
    expect(differences[0]!.extraDepthMm).toBeCloseTo(-203.2, 6);
    expect(differences[0]!.ruleOfThumbMm).toBeLessThan(0);
    expect(differences[0]!.extraWaterUsedMm.p50).toBeLessThan(0);
  });

  test("--out writes the whole result and leaves nothing else behind", async () => {
    const { code, out } = await call(folder, "compare", "small.json", "--json", "--out", "answer.json");
    expect({ code, out }).toEqual({ code: 0, out: "" });
    const printed = await call(folder, "compare", "small.json", "--json");
    expect(readFileSync(join(folder, "answer.json"), "utf8")).toBe(printed.out);
    expect(readdirSync(folder).filter((name) => name.endsWith(".tmp"))).toEqual([]);
  });
});

describe("where a result is written", () => {
  test("through a link to the file behind it, whose permissions stay", async () => {
    writeFileSync(join(folder, "behind.txt"), "old");
    chmodSync(join(folder, "behind.txt"), 0o600);
    symlinkSync("behind.txt", join(folder, "link.txt"));
    expect((await call(folder, "compare", "small.json", "--out", "link.txt")).code).toBe(0);
    expect(lstatSync(join(folder, "link.txt")).isSymbolicLink()).toBe(true);
    expect(readFileSync(join(folder, "behind.txt"), "utf8")).toMatch(/^At 13 in of rain/);
    expect(statSync(join(folder, "behind.txt")).mode & 0o777).toBe(0o600);
  });

  test("--out - is standard output", async () => {
    const { out } = await call(folder, "compare", "small.json", "--out", "-");
    expect(out).toBe((await call(folder, "compare", "small.json")).out);
    expect(existsSync(join(folder, "-"))).toBe(false);
  });

  test("what was refused is as it was", async () => {
    const before = readFileSync(join(folder, "small.json"), "utf8");
    expect((await call(folder, "compare", "small.json", "--out", "./small.json")).code).toBe(2);
    expect((await call(folder, "compare", ...quick, "--save", "small.json")).code).toBe(2);
    expect(readFileSync(join(folder, "small.json"), "utf8")).toBe(before);
    expect(statSync("/dev/null").isCharacterDevice()).toBe(true);
  });
});

test("roots that the described soil ends, and those that rock ends, are told apart", async () => {
  const { soil } = smallScenario;
  const cases = [{ name: "as dug" }, { name: "far deeper", rootingDepth: "+60 in" }];
  writeJson(folder, "ends.json", { ...smallScenario, cases });
  writeJson(folder, "rock.json", {
    ...smallScenario,
    soil: { ...soil, restriction: { depth: "75 in", kind: "rock" } },
    cases,
  });
  const flowing = async (file: string) => (await call(folder, "compare", file)).out.replaceAll(/\s+/g, " ");
  expect(await flowing("ends.json")).toContain(
    'The roots of "far deeper" could not go deeper: the soil is described to 110.0 in.',
  );
  expect(await flowing("rock.json")).toContain(
    '"far deeper" could not go deeper: rock at 75.0 in ends them.',
  );
});

test("a rooting depth above the seed is refused, by the name of the case", async () => {
  const cases = [{ name: "as dug" }, { name: "none", rootingDepth: "1 in" }];
  writeJson(folder, "rootless.json", { ...smallScenario, cases });
  expect(await call(folder, "compare", "rootless.json")).toEqual({
    code: 1,
    out: "",
    err: 'rootless.json: cases[1].rootingDepth: expected a depth below the seed of "none", 1.2 in, found 1 in; give a depth that leaves it roots\n',
  });
});

describe("the quick question", () => {
  test("describes soil deep enough for the crop and the extra depth", async () => {
    const sunflower = ["--texture", "clay", "--rain", "20 in", "--crop", "sunflower", "--deeper", "30 in"];
    const { defaults, cases } = await compareJson(...sunflower, "--years", "4");
    // 2.76 m, 109 in, and 30 in: the next whole foot is 144 in.
    expect(defaults).toContainEqual(
      expect.objectContaining({ field: "soil.layers[1].bottom", value: "144 in" }),
    );
    expect(cases.map(({ rootsEndAt }) => rootsEndAt)).toEqual([null, null]);
  });

  test("answers without a file and lists every default it used", async () => {
    const { code, out, err } = await call(folder, "compare", ...quick, "--defaults");
    expect({ code, err }).toEqual({ code: 0, err: "" });
    expect(out).toMatch(/^At a mean of 13 in of rain a year, the deeper roots bring /);
    expect(longestLine(out)).toBeLessThanOrEqual(80);
    const answer = await compareJson(...quick);
    expect(out).toContain(`Defaults used (${answer.defaults.length})`);
    const plain = out.replace(/\s+/g, " ");
    for (const { field, value } of answer.defaults) expect(plain).toContain(`${field}: ${value}`);
    expect(answer.defaults.map(({ field }) => field)).toContain("weather.pattern");
  });

  test.each(["winter-peak", "even"])("takes the rain pattern %s", async (pattern) => {
    const answer = await compareJson(...quick, "--pattern", pattern);
    expect(answer.defaults.map(({ field }) => field)).not.toContain("weather.pattern");
    expect(answer.cases).not.toEqual((await compareJson(...quick)).cases);
  });

  test("--save writes a scenario that gives the same answer", async () => {
    const asked = await compareJson(...quick, "--seed", "5", "--save", "quick.json");
    const again = await compareJson("quick.json");
    expect(again.byRainTotal).toEqual(asked.byRainTotal);
    expect(again.method).toEqual(asked.method);
    expect((await call(folder, "check", "quick.json")).code).toBe(0);
  });

  test("nothing is saved when the question is wrong", async () => {
    await call(folder, "compare", ...quick, "--sowing", "6/1", "--save", "wrong.json");
    expect(existsSync(join(folder, "wrong.json"))).toBe(false);
  });
});

const goodwell = join(import.meta.dirname, "../../../shared/data/uscrn-2020-goodwell-ok.csv");

describe.skipIf(!existsSync(goodwell))(
  "on an open station record (skipped where ../shared/data is absent)",
  () => {
    test("a spring crop on one year of Goodwell, 2020", async () => {
      writeJson(folder, "goodwell.json", {
        ...smallScenario,
        weather: { record: goodwell },
        crop: { name: "grain sorghum" },
      });
      const answer = await compareJson("goodwell.json");
      expect(answer.rainTotalMm).toBeNull();
      expect(answer.annualRainMm!.p50).toBeCloseTo(478, 0); // SOURCES.md there: 478 mm
      expect(answer.method).toMatchObject({ sowingYears: 1, firstSowingYear: 2020, lastSowingYear: 2020 });
      expect(answer.method.referenceEt).toContain("solar radiation");
      expect(answer.cautions.join("\n")).toContain("one season only");
      const { out } = await call(folder, "compare", "goodwell.json");
      expect(out).toMatch(/^With 18.8 in of rain in the year, as it came, the deeper\s+roots\s+took\s+up/);
    });
  },
);
