import { expect, test } from "vitest";
import table from "../../../data-reference/straw-after-harvest.json" with { type: "json" };
import weights from "../../../data-reference/test-weights.json" with { type: "json" };
import { cropNames } from "../../../src/crop/crops.ts";
import { strawLeftBy } from "../../../src/crop/strawAfterHarvest.ts";
import { coverOfMass } from "../../../src/season/residue/mulch.ts";

const tPerHaOfLbPerAcre = 0.453592 / 404.686;
/** Pea has no row among the test weights: 60 lb (memory). */
const lbPerBushel = (crop: string) =>
  weights.records.find(({ inputs }) => inputs.crop === crop)?.expected.lbPerBushel ?? 60;

test.each(table.crops)("$crop gives the grain that its reason names", ({ crop, grainTPerHa, why }) => {
  const lb = Number(/(\d+) lb\/ac/.exec(why)?.[1]);
  const bushelsLb = Number(/(\d+) bu\/ac/.exec(why)?.[1]) * lbPerBushel(crop);
  const said = [lb, bushelsLb].filter((lbPerAcre) => !Number.isNaN(lbPerAcre));
  expect(said).not.toEqual([]);
  for (const lbPerAcre of said) expect(lbPerAcre * tPerHaOfLbPerAcre).toBeCloseTo(grainTPerHa, 1);
});

const covering = table.crops.flatMap(({ crop, why }) => {
  const said = /(\d+) % of the ground/.exec(why)?.[1];
  return said === undefined ? [] : [[crop, Number(said)] as const];
});
test.each(covering)("the straw of %s covers %d %% of the ground, as its reason says", (crop, percent) => {
  expect(Math.round(100 * coverOfMass(strawLeftBy(crop).tPerHa))).toBe(percent);
});

test("every crop of ours that is sown is in the table; a crop of the user's own is as `other` says", () => {
  const listed = table.crops.map(({ crop }) => crop);
  expect(cropNames.filter((name) => !listed.includes(name))).toEqual(["perennial grass"]);
  expect(strawLeftBy("teff").tPerHa).toBe(table.other.strawTPerHaLikeWheat);
  expect(Math.round(100 * coverOfMass(1.2))).toBe(Number(/(\d+) % of the ground/.exec(table.other.why)?.[1]));
});
