/**
 * How much of a 14-month fallow's rain is still there at sowing. Ranges: data-reference/fallow-checks.json.
 *
 * The run: a silt loam 6 ft deep that a wheat crop left at 10 % of its available water; from 20 July to sowing on 20 September
 * of the next year; 40 years generated from the normals of Akron (data-reference/scoreboard/places.json); residue as
 * the scoreboard has it (data-reference/scoreboard/residue.json). Texture and starting water are ours.
 */
import { describe, expect, test } from "vitest";
import checks from "../../../data-reference/fallow-checks.json" with { type: "json" };
import { runEnsemble } from "../../../src/answer/runs/ensemble.ts";
import { resolved } from "../../support/demos.ts";
import { surfaceOf, type FallowSystem } from "../../../truth/residue.ts";
import { layersOf, normalsOf, placeNamed, siteOf } from "../../../truth/places.ts";
import { markOf, recordsOf, sourceOf } from "../weather/records.ts";

const { take, noneLeft } = recordsOf(checks);

const akronPlace = placeNamed("akron");

/** Percent of the fallow's rain and snow, by season. */
async function efficiencies(system: FallowSystem): Promise<number[]> {
  const scenario = await resolved({
    format: "rootfront-scenario/1",
    name: "fallow of 14 months",
    site: siteOf(akronPlace),
    soil: { layers: layersOf(akronPlace), startingWater: { share: "10 %" } },
    weather: normalsOf(akronPlace),
    crop: { name: "winter wheat", sowing: "Sep 20" },
    fallow: { length: "14 months" },
    surface: surfaceOf(system),
    cases: [{ name: "as it is" }],
    ensemble: { years: 40, seed: 1 },
  });
  const { fallowRainMm, fallowGainMm } = runEnsemble(scenario).byRainTotal[0]!.cases[0]!.byRun;
  return Array.from(fallowRainMm, (rain, run) => (100 * fallowGainMm[run]!) / rain);
}

const mean = (values: readonly number[]) => values.reduce((sum, each) => sum + each, 0) / values.length;

async function bothGrounds() {
  const [bare, covered] = [await efficiencies("tilled"), await efficiencies("no-till")];
  for (const [ground, values] of Object.entries({ tilled: bare, "no-till": covered })) {
    const [least, most] = [Math.min(...values), Math.max(...values)].map((each) => each.toFixed(0));
    console.info(`fallow storage, ${ground}: ${mean(values).toFixed(1)} % (${least} to ${most})`);
  }
  return { tilled: mean(bare), noTill: mean(covered) };
}

const akron = take<
  null,
  { tilled: number; tilledRange: [number, number]; noTill: number; noTillRange: [number, number] }
>("FA-01");
const plains = take<null, { range: [number, number] }>("FA-04");
const mulched = take<null, { sidney: number; akron: number; northPlatte: number }>("FA-06");

const within = (value: number, [least, most]: readonly [number, number]) => {
  expect(value).toBeGreaterThanOrEqual(least);
  expect(value).toBeLessThanOrEqual(most);
};

describe("storage of a 14-month fallow", async () => {
  const { tilled, noTill } = await bothGrounds();

  test(`${sourceOf(akron)} (${markOf(akron)}): the means lie within the range of ten seasons at Akron, tilled and no-till`, () => {
    within(tilled, akron.expected.tilledRange);
    within(noTill, akron.expected.noTillRange);
  });
  test("tilled within 5 of its mean, 20: other years, other soil, the same country", () => {
    expect(Math.abs(tilled - akron.expected.tilled)).toBeLessThan(5);
  });
  test("known shortfall: no-till 4 to 9 below its mean, 35, for want of winter storage", () => {
    within(akron.expected.noTill - noTill, [4, 9]);
  });
  test(`${sourceOf(plains)} (${markOf(plains)}): both lie within the range of published means`, () => {
    within(tilled, plains.expected.range);
    within(noTill, plains.expected.range);
  });
  test(`${sourceOf(mulched)} (${markOf(mulched)}): known shortfall: straw mulch at Akron, 30 %, lies above both grounds`, () => {
    within(mulched.expected.akron - noTill, [0, 4]);
    expect(noTill).toBeGreaterThan(tilled);
  });
});

noneLeft();
