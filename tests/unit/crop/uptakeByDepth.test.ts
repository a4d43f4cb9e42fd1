import { describe, expect, test } from "vitest";
import table from "../../../data-reference/uptake-by-depth.json" with { type: "json" };
import { cropDefaults, defaultPlan } from "../../../src/crop/crops.ts";
import { demoAsWritten, resolved } from "../../support/demos.ts";

const { denseRootsMm, halvingMm, grass, draws } = table;
/** Sunflower dries deep soil longer: the upper end of the range. */
const own: Readonly<Record<string, readonly number[]>> = {
  sunflower: [denseRootsMm.value, halvingMm.range[1]!],
  "perennial grass": [grass.denseRootsMm, grass.halvingMm],
};

/** The numbers stand in the crop table, their sources in the table of uptake by depth: the two say the same. */
describe("uptake by depth, as the crop table has it", () => {
  test.each(cropDefaults.map((crop) => [crop.name, defaultPlan(crop)] as const))("%s", (name, plan) => {
    const said = own[name] ?? [denseRootsMm.value, halvingMm.value];
    expect([plan.denseRootsMm, plan.uptakeHalvingMm]).toEqual(said);
  });

  test("the runs draw over the range of the table unless told otherwise", async () => {
    const { ensemble } = await resolved(demoAsWritten("wheat-after-fallow"));
    const drawn = [1 / (1 + ensemble.deepUptakeSpread), 1 + ensemble.deepUptakeSpread];
    expect(drawn).toEqual([draws.from, draws.to]);
  });
});
