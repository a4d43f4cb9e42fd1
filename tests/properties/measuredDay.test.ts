/** Water measured on a day: runs begin on it, by themselves and in a chain. Invented field. */
import { describe, expect, test } from "vitest";
import { runChains } from "../../src/answer/chain/runChains.ts";
import { prepareChains } from "../../src/answer/chain/prepareChains.ts";
import { dayOfMonth, monthOf } from "../../src/quantity/calendar.ts";
import { resolved } from "../support/demos.ts";

const field = (more: Record<string, unknown>) => ({
  format: "rootfront-scenario/1",
  name: "Invented",
  site: { latitude: "38.5 N", elevation: "3300 ft" },
  soil: {
    layers: [{ name: "soil", bottom: "72 in", texture: "silt loam" }],
    startingWater: { moistDepth: "36 in", shareBelow: "20 %" },
    waterMeasured: "Mar 12",
  },
  weather: { pattern: "summer-peak", annualRain: "16 in" },
  crop: { name: "grain sorghum", sowing: "Jun 1" },
  cases: [{ name: "as now" }, { name: "the same" }],
  ensemble: { years: 20 },
  ...more,
});

test("a season by itself begins on the day: from March 12 to June 1 are 81 days, later sown more", async () => {
  const cases = [{ name: "as now" }, { name: "later", crop: { sowing: "Jun 11" } }];
  const { cases: read, defaults } = await resolved(field({ cases }));
  expect(read.map(({ fallowDays }) => fallowDays)).toEqual([81, 91]);
  expect(defaults.find(({ field: at }) => at === "fallow.length")).toEqual({
    field: "fallow.length",
    value: "81 days",
    why: "from Mar 12, when the water was measured, to sowing",
  });
  const autumn = field({ crop: { name: "winter wheat", sowing: "Sep 25" } });
  expect((await resolved(autumn)).cases[0].fallowDays).toBe(197);
});

describe("years in a row", () => {
  test("begin on the day with the water that was measured; the years after it on the day after each harvest", async () => {
    const scenario = await resolved(field({ rotation: "every year" }));
    expect(scenario.rotation).toMatchObject({ startsAsStated: true, startsOn: { month: 3, day: 12 } });
    const links = runChains(prepareChains(scenario, scenario.rotation!)).flatMap((at) => at.links);
    let before = -1;
    for (const { own, sinceChange, firstYear } of links) {
      const days = [own[0]!.firstDay, ...(firstYear === null ? [] : [firstYear[0]!.firstDay])];
      // What is told of a first year begins with what was measured, whichever year it is.
      const measured = sinceChange === 1 ? days : days.slice(1);
      for (const day of measured) expect([monthOf(day), dayOfMonth(day)]).toEqual([3, 12]);
      const begins = sinceChange > 1 ? before + 1 : days[0];
      expect(own[0]!.firstDay).toBe(begins);
      before = own[0]!.harvestDay;
    }
    // A soil is a soil, and what was measured in it is the same whichever year it is run in.
    for (const chain of new Set(links.map((link) => link.chain))) {
      const stored = links.flatMap((link) =>
        link.chain === chain ? (link.firstYear?.[0]?.storedAtFirstMm ?? []) : [],
      );
      expect(stored.length).toBeGreaterThan(1);
      expect(new Set(stored).size).toBe(1);
      expect(stored[0]).toBeGreaterThan(0);
    }
  });

  test("another crop's turn, whose fallow does not hold the day, begins after its harvest as ever", async () => {
    const scenario = await resolved(field({ rotation: "wheat-sorghum-fallow" }));
    const links = runChains(prepareChains(scenario, scenario.rotation!)).flatMap((at) => at.links);
    const first = links.filter(({ sinceChange }) => sinceChange === 1);
    const begins = (crop: string) =>
      first.flatMap(({ own }) => (own[0]!.crop === crop ? monthOf(own[0]!.firstDay) : []));
    expect(new Set(begins("grain sorghum"))).toEqual(new Set([3]));
    expect(begins("winter wheat").length).toBeGreaterThan(0);
  });
});
