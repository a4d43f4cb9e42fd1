import { describe, expect, test } from "vitest";
import table from "../../../data-reference/uptake-by-depth.json" with { type: "json" };
import { cropDefaults, defaultPlan } from "../../../src/crop/crops.ts";
import { demoAsWritten, resolved } from "../../support/demos.ts";

/** The numbers stand in the crop table, their sources in the table of uptake by depth: the two say the same. */
describe("uptake by depth, as the crop table has it", () => {
  test.each(cropDefaults.map((crop) => [crop.name, defaultPlan(crop)] as const))("%s", (name, plan) => {
    const own = [plan.denseRootsMm, plan.uptakeHalvingMm];
    if (name === "perennial grass") {
      const { sharePerDay, denseRootsMm, halvingMm } = table.grass;
      expect([plan.uptakeSharePerDay, ...own]).toEqual([sharePerDay, denseRootsMm, halvingMm]);
    } else if (name === "sunflower") {
      // Dries deep soil longer: the upper end of the range.
      expect(own).toEqual([table.denseRootsMm.value, table.halvingMm.range[1]]);
    } else {
      expect(own).toEqual([table.denseRootsMm.value, table.halvingMm.value]);
    }
  });

  test("the runs draw over the range of the table unless told otherwise", async () => {
    const { ensemble } = await resolved(demoAsWritten("wheat-after-fallow"));
    expect([1 / (1 + ensemble.deepUptakeSpread), 1 + ensemble.deepUptakeSpread]).toEqual([
      table.draws.from,
      table.draws.to,
    ]);
  });
});
