import { describe, expect, test } from "vitest";
import { answerOf } from "../../src/answer/chain/answerOf.ts";
import { jsonText } from "../../src/report/tables/roundForPrint.ts";
import { resolved } from "../support/demos.ts";

/**
 * Without a rotation and with measured water a season gives to the last printed digit what it gave before years in a row came in:
 * the figures are those of the command line built from the commit before them. A change of the daily model itself changes them too;
 * then they are written anew, and the message says why.
 */

const field = (annualRain: string, years: number, more: object) => ({
  format: "rootfront-scenario/1",
  name: "Invented",
  invented: true,
  site: { latitude: "39 N", elevation: "3400 ft" },
  soil: {
    layers: [
      { name: "top", bottom: "6 in", texture: "loam", bulkDensity: "1.32 g/cm^3" },
      { name: "sub", bottom: "90 in", sand: "35 %", clay: "22 %", bulkDensity: "1.38 g/cm^3" },
    ],
    startingWater: { moistDepth: "30 in", shareBelow: "20 %" },
  },
  weather: { pattern: "summer-peak", annualRain },
  cases: [
    { name: "a", rootingDepth: "30 in" },
    { name: "b", rootingDepth: "40 in" },
  ],
  ensemble: { years, seed: 3 },
  ...more,
});

/** As `compare --json` prints it. */
async function printed(written: object) {
  const answer = answerOf(await resolved(written), "us");
  expect(answer.chain).toBeUndefined();
  return JSON.parse(jsonText(answer)) as typeof answer;
}

describe("one season, no rotation, measured water: as before years in a row", () => {
  test("one year of grain sorghum", async () => {
    const crop = { name: "grain sorghum", sowing: "Jun 1" };
    const { cases, differences } = await printed(field("15 in", 1, { crop, fallow: { length: "2 months" } }));
    expect(cases[1]).toMatchObject({
      finalRootDepthMm: 1016,
      transpirationMm: 174.231,
      evaporationMm: 108.451,
      runoffMm: 21.0835,
      drainageMm: 0,
      storedAtSowingMm: 115.746,
      fallowStorageShare: 0.282786,
      demandMetAroundFlowering: 0.384959,
      yield: { p10: 49.3188, p50: 49.3188, p90: 49.3188 },
    });
    expect(differences[0]).toMatchObject({
      extraWaterUsedMm: { p50: 24.2996 },
      ruleOfThumbMm: 24.6022,
      storedInExtraDepthMm: 25.6623,
      shareAfterFlowering: 0.400826,
    });
  });

  test("thirty years of winter wheat, snow and frost on the way", async () => {
    const crop = { name: "winter wheat", sowing: "Sep 20" };
    const { differences } = await printed(field("12..20 in", 30, { crop, fallow: { length: "5 months" } }));
    expect(differences[0]).toMatchObject({
      ruleOfThumbMm: 37.2899,
      storedInExtraDepthMm: 28.7479,
      extraWaterUsedMm: { p10: 18.9696, p50: 28.1281, p90: 43.1176 },
      shareAfterFlowering: 0.213952,
      shareOfSeasonsItMattered: 0.966667,
      extraYield: { p10: 3.31742, p50: 5.16118, p90: 8.13129 },
    });
  });
});
