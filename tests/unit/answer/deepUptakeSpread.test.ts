import { expect, test } from "vitest";
import { comparisonOf } from "../../../src/answer/comparison/compare.ts";
import { runEnsemble } from "../../../src/answer/runs/ensemble.ts";
import { demoAsWritten, resolved } from "../../support/demos.ts";

/** Width of the middle 80 % of the extra water, mm, where nothing else of the soil is drawn. */
async function widthMm(deepUptakeSpread: string): Promise<number> {
  const written = demoAsWritten("sorghum-over-plough-pan");
  const scenario = await resolved({
    ...written,
    ensemble: {
      years: 60,
      seed: 3,
      availableCapacitySpread: "0 %",
      deepWaterSpread: "0 %",
      density: "usual",
      deepUptakeSpread,
    },
  });
  const { extraWaterUsedMm } = comparisonOf(runEnsemble(scenario), "us").differences[0]!;
  return extraWaterUsedMm.p90 - extraWaterUsedMm.p10;
}

test("the less is known of uptake at depth, the wider the extra water of a demo is spread", async () => {
  const widths = [await widthMm("0 %"), await widthMm("100 %"), await widthMm("300 %")];
  expect(widths[0]!).toBeGreaterThan(0); // the years differ
  expect(widths[1]!, `${widths}`).toBeGreaterThan(widths[0]!);
  expect(widths[2]!, `${widths}`).toBeGreaterThan(widths[1]!);
});
