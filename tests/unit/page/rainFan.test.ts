import { expect, test } from "vitest";
import { comparisonOf } from "../../../src/answer/comparison/compare.ts";
import { prepare, runEnsemble } from "../../../src/answer/runs/ensemble.ts";
import { mmPerInch } from "../../../src/quantity/constants.ts";
import { openFan } from "../../../web/worker/rainFan.ts";
import { differing } from "../../browser/differing.ts";
import { demoAsWritten, resolved } from "../../support/demos.ts";

test("the fan opens from few runs, then passes through the answer's own points", async () => {
  const { evidence: _, ...written } = demoAsWritten("sorghum-over-plough-pan");
  const scenario = await resolved({ ...written, ensemble: { years: 64, seed: 2 } });
  const fan = openFan(prepare(scenario));
  while (!fan.isOpen()) fan.step();
  const rough = fan.shown("us");
  expect(rough).toMatchObject({ runs: 60, whole: false });
  expect(rough.points).toHaveLength(13);

  const shownAgain: boolean[] = [];
  while (!fan.isWhole()) shownAgain.push(fan.step());
  expect(shownAgain.filter(Boolean)).toHaveLength(1);
  const whole = fan.shown("us");
  expect(whole).toMatchObject({ runs: 64, whole: true });
  expect(whole.points).toHaveLength(13);

  const { byRainTotal } = comparisonOf(runEnsemble(scenario), "us");
  let met = 0;
  for (const at of byRainTotal) {
    const point = whole.points.find(
      ({ rainTotalMm }) => Math.abs(rainTotalMm - at.rainTotalMm!) < mmPerInch / 100,
    );
    if (point === undefined) continue;
    met += 1;
    expect(differing(point.differences, at.differences)).toEqual([]);
  }
  expect(met).toBe(3);
});
