import { describe, expect, test } from "vitest";
import table from "../../../data-reference/straw-after-harvest.json" with { type: "json" };
import weights from "../../../data-reference/test-weights.json" with { type: "json" };
import { cropNames } from "../../../src/crop/crops.ts";
import { strawLeftBy } from "../../../src/crop/strawAfterHarvest.ts";
import { coverOfMass } from "../../../src/season/residue/mulch.ts";

const tPerHaOfLbPerAcre = 0.453592 / 404.686;
/** Pea has no row among the test weights: 60 lb (memory). */
const lbPerBushel = (crop: string) =>
  weights.records.find(({ inputs }) => inputs.crop === crop)?.expected.lbPerBushel ?? 60;

describe.each(table.crops)("$crop", ({ crop, grainTPerHa, strawPerGrain, likeWheat, why }) => {
  test("its grain is the yield that its reason names", () => {
    const [lb, bushels] = [/(\d+) lb\/ac/, /(\d+) bu\/ac/].map((said) => said.exec(why)?.[1]);
    expect(lb ?? bushels, why).toBeDefined();
    for (const lbPerAcre of [lb, bushels && Number(bushels) * lbPerBushel(crop)])
      if (lbPerAcre !== undefined)
        expect(Number(lbPerAcre) * tPerHaOfLbPerAcre, why).toBeCloseTo(grainTPerHa, 1);
  });
  test("it covers the ground that its reason names", () => {
    const { tPerHa } = strawLeftBy(crop);
    expect(tPerHa).toBeCloseTo(grainTPerHa * strawPerGrain * likeWheat, 12);
    const said = /(\d+) % of the ground/.exec(why)?.[1];
    if (said !== undefined) expect(Math.round(100 * coverOfMass(tPerHa))).toBe(Number(said));
  });
});

test("every crop of ours that is sown is in the table; a crop of the user's own is as `other` says", () => {
  const listed = table.crops.map(({ crop }) => crop);
  expect(cropNames.filter((name) => !listed.includes(name))).toEqual(["perennial grass"]);
  expect(strawLeftBy("teff").tPerHa).toBe(table.other.strawTPerHaLikeWheat);
  expect(Math.round(100 * coverOfMass(1.2))).toBe(Number(/(\d+) % of the ground/.exec(table.other.why)?.[1]));
});
