import { describe, expect, test } from "vitest";
import { comparisonOf } from "../../../../src/answer/comparison/compare.ts";
import { prepare } from "../../../../src/answer/runs/prepare.ts";
import { runEnsemble } from "../../../../src/answer/runs/ensemble.ts";
import { mmPerInch } from "../../../../src/quantity/constants.ts";
import { fanSpan } from "../../../../web/worker/fanSpan.ts";
import { openFan } from "../../../../web/worker/rainFan.ts";
import { differing } from "../../../browser/differing.ts";
import { demoAsWritten, resolved } from "../../../support/demos.ts";

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

describe("the span of the fan", () => {
  const inches = (ownIn: readonly number[]) => {
    const { fromMm, toMm, stepMm } = fanSpan(ownIn.map((one) => one * mmPerInch));
    return [fromMm, toMm, stepMm].map((mm) => Number((mm / mmPerInch).toFixed(6)));
  };
  test.each([
    ["a dryland's", [12, 14], [8, 20, 1]],
    ["where no rain is known", [], [8, 20, 1]],
    ["a wetter edge of it", [14, 18], [8, 24, 2]],
    ["a dry place", [6, 7], [4, 20, 2]],
    ["a wet place", [36, 73], [27, 93, 6]],
  ])("%s", (_, own, span) => expect(inches(own)).toEqual(span));

  test("reaches a quarter beyond the field's own rain and has few points", () => {
    for (let least = 1; least < 150; least += 3)
      for (const most of [least, least + 1, 1.4 * least, 3 * least]) {
        const [from, to, step] = inches([least, most]);
        expect(from).toBeLessThanOrEqual(Math.max(1, 0.75 * least));
        expect(to).toBeGreaterThanOrEqual(1.25 * most);
        expect((to! - from!) / step!).toBeLessThanOrEqual(12);
      }
  });

  test("follows a record's own years", async () => {
    const { evidence: _, weather: __, ...written } = demoAsWritten("sorghum-over-plough-pan");
    const months = [2, 2, 3, 4, 6, 6, 5, 5, 4, 4, 3, 2];
    const monthlyNormals = {
      rain: months.map((rain) => `${rain} in`),
      tMax: Array.from({ length: 12 }, () => "80 F"),
      tMin: Array.from({ length: 12 }, () => "60 F"),
    };
    const scenario = await resolved({
      ...written,
      weather: { monthlyNormals },
      ensemble: { years: 8, seed: 2 },
    });
    const { fromMm, toMm } = openFan(prepare(scenario)).shown("us");
    expect(fromMm).toBeLessThan(40 * mmPerInch);
    expect(toMm).toBeGreaterThan(50 * mmPerInch);
  });
});
