import { expect, test } from "vitest";
import { overRain } from "../../../../src/answer/runs/overRain.ts";
import { shownIn } from "../../../../src/report/tables/formatters.ts";
import { overRainLayout, overRainTable } from "../../../../web/pictures/answer/overRainLayout.ts";

const box = { left: 50, right: 850, top: 20, bottom: 320 };
/** Depth brings a tenth of the rain beyond 400 mm. */
const years = (count: number) =>
  Array.from({ length: count }, (_, i) => {
    const rainMm = 300 + 10 * i;
    const extraWaterUsedMm = Math.max(0, rainMm - 400) / 10;
    return { rainMm, extraWaterUsedMm, extraYieldKgPerHa: 20 * extraWaterUsedMm };
  });
const units = (of: "water" | "yield", system: "us" | "metric" = "metric") => ({
  of,
  shown: shownIn(system),
  yieldUnit: system === "metric" ? "kg/ha" : "bu/ac",
  yieldFactor: system === "metric" ? 1 : 1 / 62.77,
});

test("the axis follows the record: every dot and band lies in the box, and the rain begins where it does", () => {
  const { x, y, dots, bands } = overRainLayout(overRain(years(41)), units("water"), box);
  expect([x.from, x.to]).toEqual([300, 700]);
  expect(y.from).toBe(0);
  for (const dot of dots) {
    expect(dot.x).toBeGreaterThanOrEqual(box.left);
    expect(dot.x).toBeLessThanOrEqual(box.right);
    expect(dot.y).toBeGreaterThanOrEqual(box.top);
    expect(dot.y).toBeLessThanOrEqual(box.bottom);
  }
  expect(bands).toHaveLength(4);
  // They meet.
  bands.slice(1).forEach(({ from }, i) => expect(from).toBeCloseTo(bands[i]!.to, 9));
  // Higher on the page in wetter years.
  expect(bands[3]!.middle).toBeLessThan(bands[1]!.middle);
});

test("yield is in the unit of the answer", () => {
  const { y } = overRainLayout(overRain(years(41)), units("yield", "us"), box);
  // 600 kg/ha is 9.6 bu/ac.
  expect(y.to).toBe(10);
});

test("the table has the bands, or where there are too few years each of them", () => {
  expect(overRainTable(overRain(years(41)), units("water")).rows[0]).toEqual([
    "300 to 390",
    "10",
    "0.0 (0.0 to 0.0)",
    "0 (0 to 0)",
  ]);
  expect(overRainTable(overRain(years(15)), units("water")).rows).toHaveLength(1);
  expect(overRainTable(overRain(years(12).slice(0, 9)), units("water")).rows).toHaveLength(9);
});
