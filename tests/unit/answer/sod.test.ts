import { describe, expect, test } from "vitest";
import {
  comparisonOf,
  comparisonText,
  resolveScenario,
  runEnsemble,
  scenarioFormat,
} from "../../../src/index.ts";

/** Grass over silt loam, dry enough that it goes short about the middle of its season. */
const answerOf = async (crop: string, cases: readonly object[]) => {
  const scenario = {
    format: scenarioFormat,
    name: "grass",
    site: { latitude: "38.5 N", elevation: "3400 ft" },
    soil: {
      layers: [{ name: "silt loam", bottom: "72 in", texture: "silt loam" }],
      startingWater: { share: "10 %" },
    },
    weather: { pattern: "winter-peak", annualRain: "8 in" },
    crop: { name: crop },
    cases,
    ensemble: { years: 12, seed: 1 },
  };
  const resolved = await resolveScenario(scenario, { fileName: "grass.json", readText: () => "" });
  return comparisonOf(runEnsemble(resolved), "us");
};
const cases = [
  { name: "usual" },
  { name: "shallow", rootingDepth: "20 in" },
  { name: "deep", rootingDepth: "60 in" },
  { name: "deeper", rootingDepth: "+2 in" },
];

describe("sod", () => {
  test("has its roots from the first day, as deep as is stated, and only the roots differ", async () => {
    const { cases: found, differences } = await answerOf("perennial grass", cases);
    const depths = found.map(({ finalRootDepthMm }) => finalRootDepthMm);
    [1000, 508, 1524, 1050.8].forEach((depthMm, c) => expect(depths[c]).toBeCloseTo(depthMm, 6));
    expect(differences.map(({ onlyRootsDiffer }) => onlyRootsDiffer)).toEqual([true, true, true]);
    const used = found.map(({ transpirationMm }) => transpirationMm);
    expect(used[1]!).toBeLessThan(used[0]!);
    expect(used[2]!).toBeGreaterThan(used[0]!);
  });

  test("is told nothing of seed, flowering or grain, which a crop in its place is", async () => {
    const said = (crop: string) => answerOf(crop, cases).then((one) => comparisonText(one, "us", "deciding"));
    const grain = /below the seed|flowering|set no grain/;
    expect(await said("grain sorghum")).toMatch(grain);
    expect(await said("perennial grass")).not.toMatch(grain);
  });
});
